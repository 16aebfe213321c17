using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Holds finished measurements against what the rows make: what both the check of widths and that of lengths do.</summary>
internal static class PieceDiffers
{
    // Rounding to whole stitches and repeats moves small things by more than their share (common practice).
    private const decimal LeastCm = 1;

    /// <summary>Tells each measurement that the rows do not make.</summary>
    public static void Check(CheckContext context, Rule rule, bool byRows)
    {
        foreach (var measure in PieceMeasures.Of(context).Where(m => m.ByRows == byRows))
        {
            if (MeasurementOutOfRun.Breaks(measure.Measurement.Values))
            {
                continue;
            }

            int[] wrong = [.. Enumerable.Range(0, measure.Sizes.Length).Where(size => Differs(context, measure, size))];
            if (wrong.Length == 0)
            {
                continue;
            }

            var worst = wrong[0];
            var (reckoned, said) = (measure.Sizes[worst]!, measure.Measurement.Values[worst]!);
            var unit = said.Unit;
            var makes = reckoned.LeastCm == reckoned.MostCm ? Number(reckoned.MostCm / unit.InBase) : $"{Number(reckoned.LeastCm / unit.InBase)} to {Number(reckoned.MostCm / unit.InBase)}";
            var names = context.Facts.Sizes;
            var where = names.Count > 1 ? $" in size {names.Names[worst]}" : "";
            var (what, rate, over) = byRows
                ? (measure.Gauge.RowsAreRounds ? "rounds" : "rows", measure.Gauge.Rows, measure.Gauge.Height)
                : ("stitches", measure.Gauge.Stitches, measure.Gauge.Width);
            var allowed = (context.Tolerances.Measurement * 100).ToString("0.#", CultureInfo.InvariantCulture);
            context.Bag.Add(new Finding(rule, context.Source, measure.Measurement.Origin, $"`{measure.Measurement.Name}` is {said}{where}, but {reckoned.Count} {what} at {rate:0.##} to {over} make {makes} {unit.Symbol}, {Share(reckoned, said)} off where {allowed} % are allowed")
            {
                Sizes = wrong.Length == measure.Sizes.Length ? [] : [.. wrong],
                Labels = [new Label(reckoned.Line.Origin, $"{reckoned.Count} {what} here{where}")],
                Help = Help(context, measure, said, wrong, byRows),
            });
        }
    }

    private static string Help(CheckContext context, PieceMeasure measure, Quantity said, int[] wrong, bool byRows)
    {
        var perCm = byRows ? measure.Gauge.RowsPerCm : measure.Gauge.StitchesPerCm;
        var wanted = Math.Round((said.InBase + Overlap(context, measure, wrong[0])) * perCm!.Value);
        var others = wrong.Length < measure.Sizes.Length && measure.Sizes.Length > 1 ? "the other sizes agree; " : "";
        var piece = measure.IsSaid ? "" : $"; if another piece has this measurement, say which under `measured`, as in `{measure.Measurement.Name}: Body`";
        return $"{others}{said} would be about {wanted} {(byRows ? "rows" : "stitches")}: check the measurement, the count and the gauge{piece}";
    }

    private static bool Differs(CheckContext context, PieceMeasure measure, int size)
    {
        if (measure.Sizes[size] is not { } reckoned || MeasureNames.Cm(measure.Measurement.Values, size) is not var (least, most) || most <= 0)
        {
            return false;
        }

        var overlap = Overlap(context, measure, size);
        if (Agrees(context, reckoned, least + overlap, most + overlap))
        {
            return false;
        }

        // A cowl may be told by its edge, where the count stays for some rows as well.
        if (!measure.ByRows && measure.Lines.Any() && OnePiece.Plateaus(measure.Lines, size).Any(count => PieceWidth.Across(context.Facts, measure.Gauge, count, reckoned.Line) is { } other && Agrees(context, other, least + overlap, most + overlap)))
        {
            return false;
        }

        // What was not said outright may be another of the measurements: a scarf that is worked sideways, a back that is widest at the hips.
        return measure.IsSaid || !context.Facts.Finished.Any(m => m != measure.Measurement && MeasureNames.Cm(m.Values, size) is var (from, to) && Agrees(context, reckoned, from, to));
    }

    private static decimal Overlap(CheckContext context, PieceMeasure measure, int size) =>
        !measure.ByRows && MeasureNames.Plain(measure.Measurement.Name) is "bust" or "waist" or "hips" && context.Facts.BandOverlap is { } overlap ? MeasureNames.Cm(overlap, size)?.Least ?? 0 : 0;

    private static bool Agrees(CheckContext context, Reckoned reckoned, decimal least, decimal most)
    {
        var slack = Math.Max(LeastCm, context.Tolerances.Measurement * most);
        return reckoned.MostCm >= least - slack && reckoned.LeastCm <= most + slack;
    }

    private static string Share(Reckoned reckoned, Quantity said)
    {
        var nearest = Math.Min(Math.Abs(reckoned.LeastCm - said.InBase), Math.Abs(reckoned.MostCm - said.InBase));
        return string.Create(CultureInfo.InvariantCulture, $"{nearest / said.InBase * 100:0} %");
    }

    private static string Number(decimal value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
