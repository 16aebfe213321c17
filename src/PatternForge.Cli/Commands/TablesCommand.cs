using System.Collections.Immutable;
using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Reference;

namespace PatternForge.Cli.Commands;

/// <summary><c>tables NAME</c>: the published tables that findings rely on, with their sources.</summary>
internal static class TablesCommand
{
    private static readonly string[] Forms = ["text", "json"];
    private static readonly string[] Names = ["needles", "hooks", "yarn-weights", "body-sizes", "parts", "ease"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var name = new Argument<string[]>("TABLE") { Description = string.Join(", ", Names), Arity = ArgumentArity.ZeroOrMore };
        name.CompletionSources.Add(Names);
        var format = Arguments.Form("How to tell it", Forms);
        var command = new Command("tables", "Show a table: needles, hooks, yarn weights, body sizes, heads, hands and feet, or ease, with its source.") { name, format };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(name) is not [var said])
            {
                return CommandLine.Refuse($"say which table: {string.Join(", ", Names)}", around, "tables");
            }

            if (Arguments.Choice(parsed.GetValue(format) ?? Forms[0], "form", Forms, around, "tables") is not { } form || Arguments.Choice(said, "table", Names, around, "tables") is not { } table)
            {
                return ExitCode.Usage;
            }

            var answer = new Answer("tables").Text("table", table);
            _ = table switch
            {
                "needles" => Needles(answer),
                "hooks" => Hooks(answer),
                "yarn-weights" => YarnWeights(answer),
                "body-sizes" => Bodies(answer),
                "parts" => Parts(answer),
                _ => Ease(answer),
            };
            around.Write(answer.In(form));
            return ExitCode.Clean;
        });
        return command;
    }

    private static Answer Needles(Answer answer) => answer
        .Table("needles", "Knitting needles", ["mm", "US", "old UK", "also US", "also UK"], NeedleSizes.All.Select(n => new[] { Answer.Figure(n.Mm), Printed(n.Us), n.Uk, Listed(n.OtherUs), Listed(n.OtherUk) }))
        .Text("source", Sources.CommonPractice.ToString(), $"Source: {Sources.CommonPractice}; charts of makers and shops, which differ in places.");

    private static Answer Hooks(Answer answer) => answer
        .Table("hooks", "Crochet hooks", ["mm", "letter", "number", "old UK", "also US", "also UK"], HookSizes.All.Select(h => new[] { Answer.Figure(h.Mm), h.Letter, Printed(h.Number), h.Uk, Listed(h.OtherUs), Listed(h.OtherUk) }))
        .Table("steel", "Steel hooks", ["number", "mm", "source"], HookSizes.Steel.Select(h => new[] { h.Number, string.Join(" or ", h.Mm.Select(Answer.Figure)), h.Source.ToString() }))
        .Text("source", Sources.CommonPractice.ToString(), $"Source: {Sources.CommonPractice}; charts of makers and shops, which differ in places.");

    private static Answer YarnWeights(Answer answer) => answer
        .Table("weights", "Yarn weights: stitches over 4 in, tools in mm, metres in 100 g", ["class", "name", "also", "knit", "needles", "crochet", "hooks", "metres"],
            YarnWeight.All.Zip(YarnWeightRanges.All, (w, r) => new[] { Answer.Figure(w.Class), w.Name, string.Join(", ", w.Kinds), r.KnitStitches.ToString(), r.Needles.ToString(), r.CrochetStitches.ToString(), r.Hooks.ToString(), r.MetresPer100Grams.ToString() }))
        .Text("source", $"{Sources.YarnWeights}; {Sources.YarnWeightsQuoted}; {Sources.YarnLengths}", $"Source: {Sources.YarnWeights}; {Sources.YarnWeightsQuoted}; {Sources.YarnLengths}. Where printings differ the span takes all in.");

    private static Answer Bodies(Answer answer)
    {
        foreach (var group in Enum.GetValues<BodyGroup>())
        {
            var names = BodySizes.Names(group);
            var rows = BodySizes.All.Where(t => t.Group == group)
                .SelectMany(t => new[] { (t, "in", t.Sizes.Select(s => Span(s.LeastInches, s.MostInches))), (t, "cm", t.Sizes.Select(s => Span(s.LeastCm, s.MostCm))) })
                .Select(r => (string?[])[r.t.Measure, r.Item2, .. r.Item3, r.t.Source == Sources.BodySizes ? "1" : r.t.Source == Sources.ChildSizes ? "2" : "3"]);
            answer.Table(NameOf(group).ToLowerInvariant(), $"{NameOf(group)}: body measurements", ["measure", "unit", .. names, "source"], rows);
        }

        return answer
            .Text("source1", Sources.BodySizes.ToString(), $"Source 1: {Sources.BodySizes}.")
            .Text("source2", Sources.ChildSizes.ToString(), $"Source 2: {Sources.ChildSizes}.")
            .Text("source3", Sources.BustSizes.ToString(), $"Source 3: {Sources.BustSizes}.");
    }

    private static Answer Parts(Answer answer)
    {
        foreach (var table in PartSizes.All)
        {
            answer.Table(table.Name, $"{table.Title} ({(table.InCentimetres ? "cm" : "in")}; {table.Source})", ["measure", .. table.Sizes], table.Measures.Select(m => (string?[])[m.Measure, .. m.Spans.Select(i => i is { } span ? Span(span.Least, span.Most) : null)]));
        }

        return answer;
    }

    private static Answer Ease(Answer answer) => answer
        .Table("ease", "Ease of a garment in inches", ["fit", "inches"], FitEase.All.Select(f => new[] { f.Name, f.Inches.ToString() }))
        .Text("source", Sources.FitChart.ToString(), $"Source: {Sources.FitChart}. Neighbouring fits share their ends.");

    private static string NameOf(BodyGroup group) => group switch
    {
        BodyGroup.Baby => "Babies",
        BodyGroup.Child => "Children",
        BodyGroup.Woman => "Women",
        _ => "Men",
    };

    private static string Span(decimal least, decimal most) => least == most ? Answer.Figure(least) : $"{Answer.Figure(least)}-{Answer.Figure(most)}";

    private static string? Printed(string? number) => number is null ? null : ToolSizes.Printed(number);

    private static string? Listed(ImmutableArray<string> names) => names.IsEmpty ? null : string.Join(", ", names.Select(ToolSizes.Printed));
}
