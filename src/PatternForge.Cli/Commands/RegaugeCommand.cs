using System.CommandLine;
using System.Globalization;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Plans;

namespace PatternForge.Cli.Commands;

/// <summary><c>regauge COUNT</c>: counts and measurements from one gauge to another.</summary>
internal static class RegaugeCommand
{
    private static readonly string[] Forms = ["text", "json"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var counts = new Argument<string[]>("COUNT") { Description = "Stitches; with --as-rows rows; with a unit (46in, 40cm) a measurement", Arity = ArgumentArity.ZeroOrMore };
        var from = new Option<string>("--from") { Description = "The gauge of the pattern: \"22 sts and 30 rows = 10 cm\"", HelpName = "GAUGE" };
        var to = new Option<string>("--to") { Description = "Your gauge", HelpName = "GAUGE" };
        var seam = new Option<string>("--seam") { Description = "Stitches among them that go into seams, which stay", HelpName = "N" };
        var multiple = new Option<string>("--multiple") { Description = "The stitch pattern's multiple: 6, or 6+1", HelpName = "6+1" };
        var asRows = new Option<bool>("--as-rows") { Description = "The counts are rows" };
        var format = Arguments.Form("How to tell it", Forms);
        var command = new Command("regauge", "Convert counts and measurements from one gauge to another.") { counts, from, to, seam, multiple, asRows, format };
        command.SetAction(parsed =>
        {
            if (Arguments.Choice(parsed.GetValue(format) ?? Forms[0], "form", Forms, around, "regauge") is not { } form)
            {
                return ExitCode.Usage;
            }

            var figures = new Figures("regauge", around);
            string[] said = parsed.GetValue(counts) ?? [];
            if (said.Length == 0 || parsed.GetValue(from) is not { } fromSaid || parsed.GetValue(to) is not { } toSaid)
            {
                return figures.Refuse("say counts and both gauges: `patternforge regauge 128 --from \"5.5 sts = 1 in\" --to \"6.5 sts = 1 in\"`");
            }

            var rows = parsed.GetValue(asRows);
            var (old, mine) = (figures.Gauge(fromSaid, "gauge"), figures.Gauge(toSaid, "gauge"));
            var seams = figures.Whole(parsed.GetValue(seam), "number of seam stitches") ?? 0;
            var (repeat, plus) = Multiple(parsed.GetValue(multiple), figures);
            if (figures.Failed || old is null || mine is null)
            {
                return ExitCode.Usage;
            }

            if ((rows ? old.Rows : old.Stitches) is not { } oldGauge || (rows ? mine.Rows : mine.Stitches) is not { } myGauge)
            {
                return figures.Refuse($"both gauges must name {(rows ? "rows" : "stitches")}");
            }

            var table = new List<string?[]>();
            foreach (var count in said.Take(1000))
            {
                if (Row(count, oldGauge / old.OverCm, myGauge / mine.OverCm, seams, repeat, plus, figures) is not { } row)
                {
                    return ExitCode.Usage;
                }

                table.Add(row);
            }

            around.Write(new Answer("regauge").Table("counts", $"from {fromSaid} to {toSaid}", ["said", "cm", "inches", "before", "exact", "count"], table).In(form));
            return ExitCode.Clean;
        });
        return command;
    }

    private static string?[]? Row(string said, decimal old, decimal mine, int seam, int repeat, int plus, Figures figures)
    {
        decimal? cm;
        decimal? before = null;
        decimal? exact;
        if (Figures.HasUnit(said))
        {
            cm = figures.Cm(said, "count or measurement");
            before = cm is { } width ? GaugeMath.Stitches(width, old, 1) + seam : null;
            exact = cm is { } wide ? GaugeMath.Stitches(wide, mine, 1) + seam : null;
        }
        else
        {
            var count = figures.Whole(said, "count", 1);
            if (count is { } stitches && stitches <= seam)
            {
                figures.Refuse(string.Create(CultureInfo.InvariantCulture, $"of {stitches} sts {seam} cannot go into seams"));
            }

            before = count;
            cm = count is { } sts && !figures.Failed ? GaugeMath.Measure(sts - seam, old, 1) : null;
            exact = count is { } all && !figures.Failed ? GaugeMath.Convert(all, old, mine, seam) : null;
        }

        if (figures.Failed || cm is null || exact is null)
        {
            return null;
        }

        var fit = GaugeMath.Fit(exact.Value - seam, repeat, plus) + seam;
        return [said, Answer.Figure(cm.Value), Answer.Figure(cm.Value / GaugeMath.CmPerInch), before is { } b ? Answer.Figure(b) : null, Answer.Figure(exact.Value), fit?.ToString(CultureInfo.InvariantCulture)];
    }

    private static (int Repeat, int Plus) Multiple(string? said, Figures figures)
    {
        if (said is null)
        {
            return (1, 0);
        }

        var parts = said.Split('+', 2, StringSplitOptions.TrimEntries);
        return (figures.Whole(parts[0], "multiple of a stitch pattern", 1) ?? 1, parts.Length > 1 ? figures.Whole(parts[1], "number of stitches beside the repeats") ?? 0 : 0);
    }
}
