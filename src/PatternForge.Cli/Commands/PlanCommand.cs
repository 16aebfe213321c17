using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Plans;

namespace PatternForge.Cli.Commands;

/// <summary><c>plan FROM TO</c>: a schedule of increases or decreases that meets both counts and the rows.</summary>
internal static class PlanCommand
{
    private static readonly string[] Forms = ["text", "json"];
    private static readonly string[] Places = ["ends", "edge", "markers", "corners"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var counts = new Argument<string[]>("COUNT") { Description = "Stitches before and stitches after", Arity = ArgumentArity.ZeroOrMore };
        var rows = new Option<string>("--rows") { Description = "Rows that there are", HelpName = "N" };
        var length = new Option<string>("--length") { Description = "Length that there is, with --gauge in place of --rows: 43cm, 17in", HelpName = "LENGTH" };
        var gauge = new Option<string>("--gauge") { Description = "The gauge, with its rows: \"22 sts and 30 rows = 10 cm\"", HelpName = "GAUGE" };
        var each = new Option<string>("--at-a-time") { Description = "Stitches that one shaping row changes (usually 2, at markers 2 each)", HelpName = "N" };
        var at = new Option<string>("--at") { Description = $"Where is shaped: {string.Join(", ", Places)} (usually at both ends)", HelpName = string.Join('|', Places) };
        at.CompletionSources.Add(Places);
        var markers = new Option<string>("--markers") { Description = "How many markers (usually 4)", HelpName = "N" };
        var every = new Option<bool>("--every-row") { Description = "Any row may be shaped, not right-side rows alone" };
        var now = new Option<bool>("--now") { Description = "The first row is shaped at once" };
        var round = new Option<bool>("--round") { Description = "In the round" };
        var plain = new Option<string>("--plain") { Description = "Rows at the end that stay plain", HelpName = "N" };
        var longer = new Option<bool>("--longer-first") { Description = "The longer intervals first" };
        var crochet = new Option<string>("--crochet") { Description = "Crochet: the stitch, as your terms name it", HelpName = "sc" };
        var format = Arguments.Form("How to tell it", Forms);
        var command = new Command("plan", "Plan shaping from one count to another over rows or a length.") { counts, rows, length, gauge, each, at, markers, every, now, round, plain, longer, crochet, format };
        command.SetAction(parsed =>
        {
            if (Arguments.Choice(parsed.GetValue(format) ?? Forms[0], "form", Forms, around, "plan") is not { } form
                || Arguments.Choice(parsed.GetValue(at) ?? Places[0], "place", Places, around, "plan") is not { } where)
            {
                return ExitCode.Usage;
            }

            var figures = new Figures("plan", around);
            if (parsed.GetValue(counts) is not [var first, var last])
            {
                return figures.Refuse("say the stitches before and after: `patternforge plan 38 60 --rows 108`");
            }

            var from = figures.Whole(first, "count of stitches");
            var to = figures.Whole(last, "count of stitches");
            var marks = figures.Whole(parsed.GetValue(markers), "number of markers", 1, 100) ?? 4;
            var place = where == "ends" ? ShapingPlace.BothEnds : where == "edge" ? ShapingPlace.OneEnd : where == "markers" ? ShapingPlace.Markers : ShapingPlace.Corners;
            var perTime = figures.Whole(parsed.GetValue(each), "number of stitches at a time", 1) ?? (place == ShapingPlace.BothEnds ? 2 : place == ShapingPlace.OneEnd ? 1 : 2 * marks);
            var after = figures.Whole(parsed.GetValue(plain), "number of plain rows", 0, PlanLimits.MostRows) ?? 0;
            var there = Rows(parsed.GetValue(rows), parsed.GetValue(length), parsed.GetValue(gauge), figures);
            if (figures.Failed || from is not { } before || to is not { } behind || there is not { } allRows)
            {
                return ExitCode.Usage;
            }

            var planned = ShapingSchedule.Plan(new(before, behind, allRows)
            {
                PerTime = perTime,
                On = parsed.GetValue(every) ? ShapedRows.Any : ShapedRows.EveryOther,
                BeginsNow = parsed.GetValue(now),
                InRound = parsed.GetValue(round),
                PlainAtEnd = after,
                LongerFirst = parsed.GetValue(longer),
            });
            if (!planned.IsPlanned)
            {
                return figures.Refuse(planned);
            }

            // A row without a usual form is not written out.
            var work = ShapingWork.For(place, perTime, marks, parsed.GetValue(crochet)) is { } usual ? usual with { InRound = parsed.GetValue(round) } : null;
            around.Write(AnswerOf(planned.Plan, place, behind != before && work?.Row(behind - before, Math.Min(before, behind + perTime)) is null ? null : work).In(form));
            return ExitCode.Clean;
        });
        return command;
    }

    private static int? Rows(string? rows, string? length, string? gauge, Figures figures)
    {
        if (rows is not null)
        {
            return figures.Whole(rows, "number of rows", 0, PlanLimits.MostRows);
        }

        if (length is null || gauge is null)
        {
            figures.Refuse("say over how many rows: --rows 108, or --length 38cm with --gauge \"22 sts and 30 rows = 10 cm\"");
            return null;
        }

        var cm = figures.Cm(length, "length");
        if (figures.Gauge(gauge, "gauge") is not { } said || cm is null)
        {
            return null;
        }

        if (said.Rows is not { } perOver)
        {
            figures.Refuse($"the gauge `{gauge}` names no rows");
            return null;
        }

        return GaugeMath.Rows(cm.Value, perOver, said.OverCm) is { } exact && exact <= PlanLimits.MostRows ? (int)decimal.Floor(exact) : figures.Whole(length, "length that fits into the rows of a piece", 0, 0);
    }

    private static Answer AnswerOf(ShapingPlan plan, ShapingPlace place, ShapingWork? work)
    {
        var words = $"{plan.Words()}{(plan.RowsAfter > 0 ? $", then {plan.RowsAfter} plain {(plan.Ask.InRound ? "rnd" : "row")}{(plan.RowsAfter == 1 ? "" : "s")}" : "")}";
        var answer = new Answer("plan")
            .Number("from", plan.Ask.From)
            .Number("to", plan.Ask.To)
            .Number("rows", plan.Ask.Rows)
            .Number("times", plan.Times)
            .Text("words", plan.Words(), $"{plan.Ask.From} to {plan.Ask.To} sts over {plan.Ask.Rows} rows, {plan.Ask.PerTime} at a time, {plan.Times} times: {words}")
            .Numbers("shapedRows", plan.Rows)
            .Numbers("counts", plan.Counts)
            .Number("rowsAfter", plan.RowsAfter);
        if (plan.Sentence(place) is { } sentence)
        {
            answer.Text("instruction", sentence + ".", $"in one line: {sentence}.");
        }

        return work is null ? answer : answer.Lines("lines", plan.Lines(work));
    }
}
