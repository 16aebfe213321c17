using System.CommandLine;
using System.CommandLine.Completions;
using System.Globalization;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Findings;
using PatternForge.Core.Plans;
using PatternForge.Core.Reference;

namespace PatternForge.Cli.Commands;

/// <summary><c>amount</c>: the yarn that a piece takes, with its likely error, in balls, in another yarn and in several strands.</summary>
internal static class AmountCommand
{
    private static readonly string[] Forms = ["text", "json"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var metres = new Option<string>("--metres") { Description = "Metres that are known to be needed", HelpName = "M" };
        var area = new Option<string>("--area") { Description = "Area of the piece: square centimetres, or \"1534 sq in\"", HelpName = "AREA" };
        var stitches = new Option<string>("--stitches") { Description = "Stitches of the piece", HelpName = "N" };
        var swatchArea = new Option<string>("--swatch-area") { Description = "Area of a swatch", HelpName = "AREA" };
        var swatchStitches = new Option<string>("--swatch-stitches") { Description = "Stitches of a swatch", HelpName = "N" };
        var swatchGrams = new Option<string>("--swatch-grams") { Description = "What the swatch weighs", HelpName = "G" };
        var swatchMetres = new Option<string>("--swatch-metres") { Description = "The yarn in the swatch", HelpName = "M" };
        var gauge = new Option<string>("--gauge") { Description = "Without a swatch, roughly: the gauge of stockinette", HelpName = "GAUGE" };
        var weight = new Option<string>("--weight") { Description = "Without a swatch, roughly: the weight of the yarn, 1 to 6 or by name", HelpName = "DK" };
        weight.CompletionSources.Add(_ => YarnWeight.All.Select(w => new CompletionItem(w.Name)));
        var fabric = new Option<string>("--fabric") { Description = "What the amount is multiplied for: lace, cables, stranded and others", HelpName = "FABRIC" };
        fabric.CompletionSources.Add(_ => YarnAmount.Factors.Select(f => new CompletionItem(f.Name)));
        var margin = new Option<string>("--margin") { Description = "Margin in per cent", HelpName = "N" };
        var strands = new Option<string>("--strands") { Description = "Strands held together", HelpName = "N" };
        var run = new Option<string>("--metres-per-100g") { Description = "Length of 100 grams of the yarn, or of its substitute", HelpName = "M" };
        var ballMetres = new Option<string>("--ball-metres") { Description = "Metres of a ball", HelpName = "M" };
        var ballGrams = new Option<string>("--ball-grams") { Description = "Grams of a ball", HelpName = "G" };
        var format = Arguments.Form("How to tell it", Forms);
        var command = new Command("amount", "Reckon the yarn that a piece takes, with its likely error.")
        {
            metres, area, stitches, swatchArea, swatchStitches, swatchGrams, swatchMetres, gauge, weight, fabric, margin, strands, run, ballMetres, ballGrams, format,
        };
        command.SetAction(parsed =>
        {
            if (Arguments.Choice(parsed.GetValue(format) ?? Forms[0], "form", Forms, around, "amount") is not { } form)
            {
                return ExitCode.Usage;
            }

            var figures = new Figures("amount", around);
            var known = figures.Number(parsed.GetValue(metres), "number of metres");
            var swatch = (figures.Number(parsed.GetValue(swatchMetres), "number of metres"), figures.Number(parsed.GetValue(swatchGrams), "number of grams"));
            var need = known is { } told
                ? new YarnNeed(told, null, 0, Sources.CommonPractice)
                : NeedOf(figures, swatch, figures.SquareCm(parsed.GetValue(area), "area"), figures.Whole(parsed.GetValue(stitches), "count of stitches", 1, (int)PlanLimits.MostMeasure),
                    figures.SquareCm(parsed.GetValue(swatchArea), "area"), figures.Whole(parsed.GetValue(swatchStitches), "count of stitches", 1), figures.Gauge(parsed.GetValue(gauge), "gauge"), parsed.GetValue(weight));
            var (percent, ends) = (figures.Whole(parsed.GetValue(margin), "margin in per cent", 0, 1000) ?? 0, figures.Whole(parsed.GetValue(strands), "number of strands", 1, 20) ?? 1);
            var (per100, perBall, ballWeight) = (figures.Number(parsed.GetValue(run), "length of 100 grams"), figures.Number(parsed.GetValue(ballMetres), "number of metres of a ball"), figures.Number(parsed.GetValue(ballGrams), "number of grams of a ball"));
            var factor = Factor(parsed.GetValue(fabric), figures);
            if (figures.Failed || need is null)
            {
                return figures.Failed ? ExitCode.Usage : figures.Refuse("say what is known: --metres, or --area or --stitches with a swatch (--swatch-area or --swatch-stitches, --swatch-grams or --swatch-metres), or --area with --gauge or --weight");
            }

            if (per100 is null && perBall is { } length && ballWeight is { } heavy)
            {
                per100 = length * 100 / heavy;
            }

            need = need.Times(factor?.Usual ?? 1).WithMargin(percent).Times(ends);
            if (per100 is { } metresOf100)
            {
                // A substitute takes the same metres; what it weighs follows from its own length.
                need = (need.Metres is null ? need : need with { Grams = null }).Filled(metresOf100);
            }

            around.Write(AnswerOf(need, factor, percent, ends, perBall, ballWeight).In(form));
            return ExitCode.Clean;
        });
        return command;
    }

    private static YarnNeed? NeedOf(Figures figures, (decimal? Metres, decimal? Grams) swatch, decimal? area, int? stitches, decimal? swatchArea, int? swatchStitches, GaugeSaid? gauge, string? weight)
    {
        if (figures.Failed)
        {
            return null;
        }

        if (stitches is { } count && swatchStitches is { } counted)
        {
            return YarnAmount.ByStitches(count, counted, swatch.Metres, swatch.Grams);
        }

        if (area is { } wide && swatchArea is { } weighed)
        {
            return YarnAmount.ByArea(wide, weighed, swatch.Metres, swatch.Grams);
        }

        if (area is { } rough && gauge is not null)
        {
            if (gauge is { Stitches: { } sts, Rows: { } rows })
            {
                return YarnAmount.Rough(rough, sts * 10 / gauge.OverCm, rows * 10 / gauge.OverCm);
            }

            figures.Refuse("the gauge must name stitches and rows");
        }

        if (area is { } large && weight is not null && !figures.Failed)
        {
            if (YarnWeight.Find(weight) is not { } kind)
            {
                var nearest = Suggest.Nearest(weight, YarnWeight.All.Select(w => w.Name), 1);
                figures.Refuse($"`{weight}` is not known as a yarn weight: {(nearest.Count > 0 ? $"did you mean `{nearest[0]}`?" : "`patternforge tables yarn-weights` lists them")}");
                return null;
            }

            if (YarnAmount.Rough(large, kind.Class) is { } found)
            {
                return found;
            }

            figures.Refuse($"class {kind.Class} ({kind.Name}) is open at one end, so that nothing can be reckoned from it: weigh a swatch");
        }

        return null;
    }

    private static FabricFactor? Factor(string? said, Figures figures)
    {
        if (said is null)
        {
            return null;
        }

        if (YarnAmount.Factors.FirstOrDefault(f => string.Equals(f.Name, said, StringComparison.OrdinalIgnoreCase)) is { } factor)
        {
            return factor;
        }

        var nearest = Suggest.Nearest(said, YarnAmount.Factors.Select(f => f.Name), 1);
        figures.Refuse($"`{said}` is not known as a fabric: {(nearest.Count > 0 ? $"did you mean `{nearest[0]}`?" : $"there are {string.Join(", ", YarnAmount.Factors.Select(f => f.Name))}")}");
        return null;
    }

    private static Answer AnswerOf(YarnNeed need, FabricFactor? factor, int percent, int strands, decimal? ballMetres, decimal? ballGrams)
    {
        var balls = need.Metres is { } m && ballMetres is { } length ? YarnAmount.Balls(m, length) : need.Grams is { } g && ballGrams is { } heavy ? YarnAmount.Balls(g, heavy) : null;
        var amount = string.Join(", ", new[] { need.Metres is { } metres ? $"{Answer.Figure(decimal.Ceiling(metres))} m" : "", need.Grams is { } grams ? $"{Answer.Figure(decimal.Ceiling(grams))} g" : "" }.Where(t => t.Length > 0));
        var counted = string.Concat(factor is null ? "" : $", {factor.Name} times {Answer.Figure(factor.Usual)}", percent == 0 ? "" : $", margin {percent} %", strands == 1 ? "" : $", {strands} strands");
        var answer = new Answer("amount")
            .Number("metres", need.Metres)
            .Number("grams", need.Grams)
            .Text("amount", amount, $"{amount}{counted}")
            .Number("likelyError", need.LikelyError, need.LikelyError == 0 ? "" : $"likely error: {Answer.Figure(need.LikelyError * 100)} % more or less ({need.Source})");
        if (factor is not null)
        {
            answer.Number("factor", factor.Usual, $"{factor.Name}: from {Answer.Figure(factor.Least)} to {Answer.Figure(factor.Most)} times stockinette ({factor.Source})");
        }

        return balls is { } whole ? answer.Number("balls", whole, string.Create(CultureInfo.InvariantCulture, $"{whole} {(whole == 1 ? "ball" : "balls")}")) : answer;
    }
}
