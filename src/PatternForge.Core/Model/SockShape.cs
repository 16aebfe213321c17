using System.Collections.Immutable;

namespace PatternForge.Core.Model;

/// <summary>A place on the foot of a sock: how far from the back of the heel, and half of what is around it, both in centimetres.</summary>
/// <param name="AlongCm">From the back of the heel.</param>
/// <param name="HalfCm">The width as it lies flat.</param>
public readonly record struct SockPlace(decimal AlongCm, decimal HalfCm);

/// <summary>The parts of a sock, in centimetres as it lies flat: its heel a flap, a turn and gussets, or two halves of short rows.</summary>
public sealed record SockShape
{
    /// <summary>What is measured around the leg.</summary>
    public const string AroundLeg = "around the leg";

    /// <summary>What is measured around the foot.</summary>
    public const string AroundFoot = "around the foot";

    /// <summary>From the cuff to the flap.</summary>
    public const string Leg = "leg, down to the heel flap";

    /// <summary>From the cuff to a heel of short rows.</summary>
    public const string LegToHeel = "leg, up to the heel";

    /// <summary>The flap.</summary>
    public const string Flap = "heel flap";

    /// <summary>The half of a heel of short rows that goes on with the leg.</summary>
    public const string BackOfHeel = "heel, along the back";

    /// <summary>From the back of the heel to the toe.</summary>
    public const string Foot = "foot, up to the toe";

    /// <summary>The toe.</summary>
    public const string Toe = "toe";

    /// <summary>From the back of the heel to the tip.</summary>
    public const string WholeFoot = "whole foot";

    /// <summary>The leg from its upper edge down: how far below it, and half of what is around it.</summary>
    public required ImmutableArray<SockPlace> LegPlaces { get; init; }

    /// <summary>How high the heel flap is; 0 where there is none.</summary>
    public required decimal FlapCm { get; init; }

    /// <summary>How wide half of the flap is: as much of it as is seen from the side.</summary>
    public required decimal FlapHalfCm { get; init; }

    /// <summary>
    /// Half of the width of the heel when it has been turned: it lies under the foot, and its edge so far above the middle of the sole. Of a heel of short rows the
    /// half that goes on with the leg, along its middle.
    /// </summary>
    public required decimal CupCm { get; init; }

    /// <summary>The rows of the turn, or of the half of a heel that goes on with the sole, along the middle of the sole.</summary>
    public required decimal TurnCm { get; init; }

    /// <summary>Half of the narrowest row of a heel of short rows; null for a heel with a flap.</summary>
    public decimal? MiddleHalfCm { get; init; }

    /// <summary>Where the gusset has been worked away, from the back of the heel.</summary>
    public required decimal GussetEndCm { get; init; }

    /// <summary>From the end of the gusset to the tip; the first place of the toe is number <see cref="ToeFrom"/>.</summary>
    public required ImmutableArray<SockPlace> FootPlaces { get; init; }

    /// <summary>The place among those of the foot where the toe begins.</summary>
    public required int ToeFrom { get; init; }

    /// <summary>The length of the leg.</summary>
    public decimal LegCm => LegPlaces[^1].AlongCm;

    /// <summary>From the back of the heel to where the toe begins.</summary>
    public decimal ToeFromCm => FootPlaces[ToeFrom].AlongCm;

    /// <summary>From the back of the heel to the tip.</summary>
    public decimal FootCm => FootPlaces[^1].AlongCm;

    /// <summary>How high the lower end of the leg stands above the sole.</summary>
    public decimal AnkleCm => FlapCm + CupCm;

    /// <summary>What one side takes in, in square centimetres.</summary>
    public decimal AreaCm2 => Strips(LegPlaces) + Strips(FootPlaces) + (MiddleHalfCm is { } middle
        ? (CupCm + TurnCm) * (FlapHalfCm + middle) / 2
        : (AnkleCm * LegPlaces[^1].HalfCm) - (CupCm * TurnCm / 4)
        + (Math.Max(0, GussetEndCm - LegPlaces[^1].HalfCm) * (AnkleCm + FootPlaces[0].HalfCm) / 2));

    private static decimal Strips(ImmutableArray<SockPlace> places) =>
        Enumerable.Range(1, Math.Max(0, places.Length - 1)).Sum(i => (places[i].AlongCm - places[i - 1].AlongCm) * (places[i].HalfCm + places[i - 1].HalfCm) / 2);
}
