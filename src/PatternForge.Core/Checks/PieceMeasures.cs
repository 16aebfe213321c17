using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>A finished measurement and what the rows make of it, one value a size; null in sizes where that is not sure.</summary>
/// <param name="Measurement">The finished measurement.</param>
/// <param name="ByRows">True for a length told by rows.</param>
/// <param name="Sizes">What the pieces measure together.</param>
/// <param name="Gauge">The gauge that was reckoned with.</param>
/// <param name="IsSaid">True when the header says which piece measures it; false where that is plain from the pattern.</param>
internal sealed record PieceMeasure(Measurement Measurement, bool ByRows, ImmutableArray<Reckoned?> Sizes, Gauge Gauge, bool IsSaid)
{
    /// <summary>The lines of the one piece that is measured; empty where several are, or the header says which.</summary>
    public ImmutableArray<WorkedLine> Lines { get; init; } = [];
}

/// <summary>Finds what each finished measurement is measured over: as the header says, else where no other piece can be meant.</summary>
internal static class PieceMeasures
{
    /// <summary>Every measurement that the rows can be held against.</summary>
    public static IEnumerable<PieceMeasure> Of(CheckContext context)
    {
        var facts = context.Facts;
        if (facts.Gauges.IsEmpty || facts.Finished.IsEmpty || context.Lines.IsEmpty)
        {
            yield break;
        }

        foreach (var measured in facts.Measured)
        {
            if (Find(facts.Finished, measured.Name) is { } measurement && Said(context, measured, measurement) is { } measure)
            {
                yield return measure;
            }
        }

        foreach (var measure in OnePiece.Of(context).Concat(Garment(context)))
        {
            if (!facts.Measured.Any(m => MeasureNames.AreSame(m.Name, measure.Measurement.Name)))
            {
                yield return measure;
            }
        }
    }

    /// <summary>The measurement of a name; null where there is none.</summary>
    public static Measurement? Find(ImmutableArray<Measurement> measurements, string name) =>
        measurements.FirstOrDefault(m => string.Equals(m.Name.Trim(), name, StringComparison.OrdinalIgnoreCase)) ?? measurements.FirstOrDefault(m => MeasureNames.AreSame(m.Name, name));

    private static PieceMeasure? Said(CheckContext context, MeasuredPieces measured, Measurement measurement)
    {
        if (measured.Pieces.IsEmpty || PieceWidth.GaugeOf(context, measured.Gauge, measured.Pieces[0].Piece) is not { } gauge)
        {
            return null;
        }

        var sizes = Enumerable.Range(0, context.Facts.Sizes.Count).Select(size => Together(context, measured, gauge, size)).ToImmutableArray();
        return new PieceMeasure(measurement, measured.ByRows, sizes, gauge, true);
    }

    private static Reckoned? Together(CheckContext context, MeasuredPieces measured, Gauge gauge, int size)
    {
        Reckoned? sum = null;
        foreach (var share in measured.Pieces)
        {
            var lines = PieceWidth.LinesOf(context, share.Piece);
            var counted = measured.ByRows ? null
                : share.After is { } label ? lines.FirstOrDefault(l => string.Equals(l.Label, label, StringComparison.OrdinalIgnoreCase)) is { Kinds.IsEmpty: true } row && row.After[size] is { } count ? (count, row) : null
                : PieceWidth.Widest(lines, size);
            var one = measured.ByRows ? PieceWidth.Along(gauge, lines, size) : counted is var (stitches, line) ? PieceWidth.Across(context.Facts, gauge, stitches, line) : null;
            if (one is null)
            {
                return null;
            }

            one = one with { LeastCm = one.LeastCm * share.Times, MostCm = one.MostCm * share.Times };
            sum = sum is null ? one : one with { LeastCm = sum.LeastCm + one.LeastCm, MostCm = sum.MostCm + one.MostCm, Count = sum.Count + one.Count };
        }

        return sum;
    }

    /// <summary>The bust: of a body worked in the round, or of a back and a front that are worked flat.</summary>
    private static IEnumerable<PieceMeasure> Garment(CheckContext context)
    {
        var facts = context.Facts;
        if (facts.Finished.FirstOrDefault(m => MeasureNames.Plain(m.Name) == "bust") is not { } bust)
        {
            yield break;
        }

        var body = PieceWidth.LinesOf(context, "Body");
        if (!body.IsEmpty && body.All(l => l.InTheRound == true) && OnePiece.GaugeFor(context, body) is { } around)
        {
            yield return new PieceMeasure(bust, false, [.. Sizes(context, size => OnePiece.Plateau(body, size) is var (count, line) ? PieceWidth.Across(facts, around, count, line) : null)], around, false) { Lines = body };
            yield break;
        }

        var (back, front) = (PieceWidth.LinesOf(context, "Back"), PieceWidth.LinesOf(context, "Front"));
        if (body.IsEmpty && !back.IsEmpty && !front.IsEmpty && back.Concat(front).All(l => l.InTheRound == false) && OnePiece.GaugeFor(context, [.. back, .. front]) is { } flat)
        {
            yield return new PieceMeasure(bust, false, [.. Sizes(context, size => Both(facts, flat, back, front, size))], flat, false);
        }
    }

    private static Reckoned? Both(PatternFacts facts, Gauge gauge, ImmutableArray<WorkedLine> back, ImmutableArray<WorkedLine> front, int size)
    {
        if (OnePiece.Plateau(back, size) is not var (behind, backLine) || OnePiece.Plateau(front, size) is not var (before, frontLine)
            || PieceWidth.Across(facts, gauge, behind, backLine) is not { } one || PieceWidth.Across(facts, gauge, before, frontLine) is not { } other)
        {
            return null;
        }

        return one with { LeastCm = one.LeastCm + other.LeastCm, MostCm = one.MostCm + other.MostCm, Count = one.Count + other.Count };
    }

    private static IEnumerable<Reckoned?> Sizes(CheckContext context, Func<int, Reckoned?> of) => Enumerable.Range(0, context.Facts.Sizes.Count).Select(of);
}
