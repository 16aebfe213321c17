using System.Collections.Immutable;

namespace PatternForge.Core.Plans;

/// <summary>The stitches of a neck shared out for raglans.</summary>
/// <param name="Back">Stitches of the back.</param>
/// <param name="Sleeve">Stitches of each sleeve.</param>
/// <param name="Seams">Stitches of all seams together.</param>
/// <param name="Front">Stitches of the front.</param>
public readonly record struct RaglanNeck(int Back, int Sleeve, int Seams, int Front);

/// <summary>A raglan yoke: body and sleeves may grow at different paces.</summary>
/// <param name="Body">Each of front and back.</param>
/// <param name="Sleeve">Each sleeve.</param>
public sealed record RaglanPlan(ShapingPlan Body, ShapingPlan Sleeve)
{
    /// <summary>Rounds in which body and sleeves are both shaped; 8 sts each.</summary>
    public ImmutableArray<int> Together => [.. Body.Rows.Intersect(Sleeve.Rows)];

    /// <summary>Both schedules in trade words.</summary>
    public string Words() => $"front and back: {Body.Words()}; sleeves: {Sleeve.Words()}";
}

/// <summary>Raglans.</summary>
public static class Raglan
{
    /// <summary>A neck shared out: the back a third of it, each sleeve a quarter of the back, the seams, and the front the rest.</summary>
    /// <remarks>Worked example: 95 sts: back 31, sleeves 8 each, seams 8, front 40 (common practice).</remarks>
    /// <param name="neck">Stitches of the neck.</param>
    /// <param name="seamStitches">Stitches of one of the four seams.</param>
    /// <param name="backShare">The back's part of the neck.</param>
    /// <param name="sleeveShare">A sleeve's part of the back.</param>
    public static RaglanNeck? Neck(int neck, int seamStitches = 2, decimal backShare = 0.33m, decimal sleeveShare = 0.25m)
    {
        if (!PlanLimits.IsCount(neck) || seamStitches is < 0 or > 100 || backShare is <= 0 or >= 1 || sleeveShare is <= 0 or >= 1)
        {
            return null;
        }

        var back = (int)decimal.Round(neck * backShare, MidpointRounding.AwayFromZero);
        var sleeve = (int)decimal.Round(back * sleeveShare, MidpointRounding.AwayFromZero);
        var front = neck - back - (2 * sleeve) - (4 * seamStitches);
        return front < 1 || sleeve < 1 ? null : new(back, sleeve, 4 * seamStitches, front);
    }

    /// <summary>Stitches that one round adds: two at each seam.</summary>
    public static int PerRound(int seams = 4) => 2 * seams;

    /// <summary>Depth of the armhole at the back: the raglan's length and half of a sleeve's cast-on, which lies beside the neck.</summary>
    /// <remarks>Worked example: a sleeve cast on over 4 in and raglans of 5.5 in: back neck 2 in, armhole 7.5 in (common practice).</remarks>
    public static (decimal BackNeck, decimal Armhole) Depths(decimal sleeveCastOn, decimal raglan) => (sleeveCastOn / 2, raglan + (sleeveCastOn / 2));

    /// <summary>From the neck down: counts of one body piece and one sleeve before and after, over so many rounds.</summary>
    public static Planned<RaglanPlan> Plan(int bodyFrom, int bodyTo, int sleeveFrom, int sleeveTo, int rounds, ShapedRows on = ShapedRows.EveryOther)
    {
        var body = ShapingSchedule.Plan(new(bodyFrom, bodyTo, rounds) { On = on, InRound = true });
        var sleeve = ShapingSchedule.Plan(new(sleeveFrom, sleeveTo, rounds) { On = on, InRound = true });
        return !body.IsPlanned ? Planned.No<RaglanPlan>("front and back: " + body.Reason, body.Help)
            : !sleeve.IsPlanned ? Planned.No<RaglanPlan>("sleeves: " + sleeve.Reason, sleeve.Help)
            : Planned.Of(new RaglanPlan(body.Plan, sleeve.Plan));
    }

    /// <summary>
    /// A round in notation, from a round's start with a marker at each of the four seams, the last of them at its end: "k1, M1L, k to 1 st before m, M1R, k1, sm" for each
    /// piece that grows in it, "k to m, sm" for each that does not.
    /// </summary>
    /// <param name="first">Whether the first and the third piece grow: front and back.</param>
    /// <param name="second">Whether the second and the fourth grow: the sleeves.</param>
    public static string Round(bool first, bool second)
    {
        var pieces = new[] { first, second, first, second };
        return string.Join(", ", pieces.Select(grows => grows ? "k1, M1L, k to 1 st before m, M1R, k1, sm" : "k to m, sm"));
    }
}
