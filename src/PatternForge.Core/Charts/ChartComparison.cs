using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Compares a chart with the words of the same rows, stitch by stitch.</summary>
public static class ChartComparison
{
    /// <summary>PF323.</summary>
    public static Rule Rule { get; } = new(
        "PF323", "chart-and-words-differ", Area.Counts, Severity.Error,
        "A chart and the written row of the same number are not the same stitches.",
        "One maker follows the chart and another the words; both must get the same fabric. Every stitch of both is compared as it looks on the right side.")
    {
        Bad = """
            ## Ladder

            CO 6 sts.

            Row 1 (RS): K1, k2tog, yo, k3.

            ```chart
            key: . = k, o = yo, / = k2tog
                . . . / o .     1
                ^^^^^^^^^^^
            ```
            """,
        Good = """
            ## Ladder

            CO 6 sts.

            Row 1 (RS): K1, k2tog, yo, k3.

            ```chart
            key: . = k, o = yo, / = k2tog
                . . . o / .     1
            ```
            """,
    };

    /// <summary>Reports a row of the chart that cannot be worked over the stitches that the words have there.</summary>
    internal static void DoesNotFit(BoundRow row, int stitches, FindingBag bag) => bag.Add(
        Rule, row.Origin, string.Create(CultureInfo.InvariantCulture, $"row {row.Numbers[0]} of the chart cannot be worked over the {stitches} stitches that the words have there"), "check its squares and where its repeat stands");

    /// <summary>Reports, for each row, the first stitch in which chart and words differ.</summary>
    /// <param name="source">The chart.</param>
    /// <param name="chart">Its rows, worked.</param>
    /// <param name="words">The words of the same rows, worked over the same stitches.</param>
    /// <param name="bag">Where to report.</param>
    internal static void Report(ChartSource source, Fabric chart, Fabric words, FindingBag bag)
    {
        for (var i = 0; i < chart.Rows.Length; i++)
        {
            var (drawn, written) = (chart.Rows[i], words.Rows[i]);
            if (drawn.Side != written.Side)
            {
                continue; // told by the labels
            }

            var most = Math.Max(drawn.Stitches.Length, written.Stitches.Length);
            for (var at = 0; at < most; at++)
            {
                var (one, other) = (at < drawn.Stitches.Length ? drawn.Stitches[at] : null, at < written.Stitches.Length ? written.Stitches[at] : null);
                var (first, second) = (at < drawn.Colours.Length ? drawn.Colours[at] : null, at < written.Colours.Length ? written.Colours[at] : null);
                if ((first is null || second is null || first == second) && one is not null && other is not null && one.Takes == other.Takes && one.Makes == other.Makes && (one.Id == other.Id || IsSlip(one, other) || StitchLook.Of(one, drawn.Side) == StitchLook.Of(other, drawn.Side)))
                {
                    continue;
                }

                var name = chart.IsRound ? "round" : "row";
                bag.Add(new Finding(Rule, bag.Source, source.Rows.First(r => r.Numbers[0] == drawn.Number).Origin, string.Create(CultureInfo.InvariantCulture,
                    $"{name} {drawn.Number}, stitch {at + 1}: the chart has {Named(one, first)}, the words have {Named(other, second)}"))
                {
                    Labels = [new Label(written.Origin, "the words of this row")],
                    Help = "correct the one that is wrong; a chart alone writes its own words",
                });
                break;
            }
        }
    }

    /// <summary>True for slipped stitches of which one does not say where its yarn lies.</summary>
    private static bool IsSlip(Stitches.Operation one, Stitches.Operation other) => one.Family == Stitches.Family.Slip && other.Family == Stitches.Family.Slip && (one.Id is "sl" or "sl1p" || other.Id is "sl" or "sl1p");

    private static string Named(Stitches.Operation? operation, string? colour) => operation is null ? "nothing" : colour is null ? operation.Id : $"{operation.Id} {colour}";
}
