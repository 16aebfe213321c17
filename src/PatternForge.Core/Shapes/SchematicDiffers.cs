using System.Globalization;
using PatternForge.Core.Checks;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Shapes;

/// <summary>Holds the finished lengths of a garment against those of its schematic: also where rows are worked to a length that is told in words.</summary>
internal static class SchematicDiffers
{
    // A length may be told from the shoulder or from the nape, with a neckband or without (common practice): less than this is never a difference, in centimetres.
    private const decimal LeastBody = 3;
    private const decimal Least = 2;

    /// <summary>A finished length is not what the schematic comes to.</summary>
    public static Rule Rule { get; } = new(
        "PF634", "schematic-differs", Area.Gauge, Severity.Note,
        "A finished length differs from the one that the schematic comes to.",
        "The schematic adds up the rows of a piece at the gauge and the lengths that its words tell. The length of a garment is held against its back or its body, `sleeve length` against the sleeve up to the underarm or as a whole, `height` and `depth` against a tube. As a length may be told from the shoulder or from the nape, with a band or without, three centimeters are allowed on a body and two elsewhere, five in a hundred in any case. Where `measured` says what is measured, that is looked at instead (PF619).")
    {
        Bad = """
            ---
            title: Harbour pullover
            sizes: {names: S (M), fits: {bust: 80 (90) cm}}
            finished: {bust: 90 (100) cm, sleeve length: 48 (49) cm}
                                                         ^^^^^^^^^^
            gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked
            ---

            ## Sleeve

            CO 40 (44) sts.

            Row 1 (RS): Knit.

            Work even in stockinette until piece measures 38 (39) cm.

            BO all sts.
            """,
        Good = """
            ---
            title: Harbour pullover
            sizes: {names: S (M), fits: {bust: 80 (90) cm}}
            finished: {bust: 90 (100) cm, sleeve length: 38 (39) cm}
            gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked
            ---

            ## Sleeve

            CO 40 (44) sts.

            Row 1 (RS): Knit.

            Work even in stockinette until piece measures 38 (39) cm.

            BO all sts.
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    /// <summary>Tells each length that differs.</summary>
    public static void Check(CheckContext context)
    {
        var facts = context.Facts;
        if (!WornPiece.IsFitted(facts) || facts.Gauges.IsEmpty)
        {
            return;
        }

        foreach (var said in facts.Finished)
        {
            var name = said.Name.Trim().ToLowerInvariant();
            if (name is not ("length" or "total length" or "sleeve length" or "height" or "depth") || facts.Measured.Any(m => MeasureNames.AreSame(m.Name, said.Name)) || PieceMeasures.Of(context).Any(m => m.Measurement == said && m.Sizes.Any(s => s is not null)))
            {
                continue;
            }

            if (Meant(context, name) is { } piece)
            {
                Hold(context, said, piece, name is "length" or "total length" ? LeastBody : Least);
            }
        }
    }

    private static PieceOutline? Meant(CheckContext context, string name)
    {
        var drawn = context.Outlines.Value.Where(o => o.IsDrawn).ToArray();
        bool Says(string word) => context.Source.Text.Contains(word, StringComparison.OrdinalIgnoreCase);
        if (name is "sleeve length")
        {
            var sleeves = drawn.Where(o => Is(o, "sleeve")).ToArray();
            return sleeves.Length == 1 ? sleeves[0] : null;
        }

        if (name is "height" or "depth")
        {
            // What is folded or turned up is told by what shows.
            return drawn is [{ View: OutlineView.Tube } only] && context.Outlines.Value.Length == 1 && !Says("fold") && !Says("turned up") && !Says("turn up") && !Says("turned-up") ? only : null;
        }

        // A band that is picked up along the hem, or a skirt sewn on, lengthens the garment.
        return !WornPiece.IsGarment(context.Facts) || Says("along the hem") || Says("lower edge of") || Says("peplum") || Says("skirt") || Says("hem band") || Says("along the lower edge") || Says("waistband") ? null
            : Array.Find(drawn, o => Is(o, "back") && o.View == OutlineView.Flat) ?? Array.Find(drawn, o => o.View == OutlineView.Yoke);
    }

    private static void Hold(CheckContext context, Measurement said, PieceOutline piece, decimal least)
    {
        var lengths = piece.Measures.Where(m => m.Name is "whole length" || (least == Least && m.Name is "up to the underarm")).ToArray();
        bool Differs(int size) => MeasureNames.Cm(said.Values, size) is var (from, to) && lengths.All(l => l.Cm[size] < from - Slack(from) || l.Cm[size] > to + Slack(to));
        decimal Slack(decimal cm) => Math.Max(least, context.Tolerances.Measurement * cm);
        int[] wrong = [.. Enumerable.Range(0, context.Facts.Sizes.Count).Where(Differs)];
        if (wrong.Length == 0 || lengths.Length == 0 || MeasurementOutOfRun.Breaks(said.Values))
        {
            return;
        }

        var (at, sizes) = (wrong[0], context.Facts.Sizes);
        var value = said.Values[at]!;
        var comes = lengths.OrderBy(l => Math.Abs(l.Cm[at] - value.InBase)).First();
        context.Bag.Add(new Finding(Rule, context.Source, said.Origin, $"`{said.Name}` is {value}{(sizes.Count > 1 ? $" in size {sizes.Names[at]}" : "")}, but the schematic of {piece.Name} comes to {(comes.Cm[at] / value.Unit.InBase).ToString("0.#", CultureInfo.InvariantCulture)} {value.Unit.Symbol}")
        {
            Sizes = wrong.Length == sizes.Count ? [] : [.. wrong],
            Labels = [new Label(piece.Origin, "the piece that is drawn")],
            Help = $"check the measurement, the lengths that {piece.Name} is worked to, and its row gauge; if another piece has this measurement, say which under `measured`",
        });
    }

    private static bool Is(PieceOutline outline, string word) => outline.Name.Contains(word, StringComparison.OrdinalIgnoreCase);
}
