using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Work;

/// <summary>A piece around a made row: where its stitches come from, a plain row before it, and plain rows with their counts after it.</summary>
internal sealed record MetamorphicPiece(Compilation Compiled, string Text)
{
    /// <summary>Where the made row stands among the instruction lines.</summary>
    private const int At = 2;

    public WorkedLine Row => Compiled.Lines[At];

    public ImmutableArray<int?>[] Counts => [.. Compiled.Lines.Select(line => line.After)];

    public Finding[] Errors => [.. Compiled.Findings.Where(f => f.Severity == Severity.Error)];

    public static MetamorphicPiece Work(MadeRow row, MetamorphicStyle? style = null, string? text = null, string terms = "us", ImmutableArray<int>? order = null)
    {
        style ??= MetamorphicStyle.Plain;
        var names = Enumerable.Range(0, row.Sizes).Select(i => string.Create(CultureInfo.InvariantCulture, $"Z{(order is { } o ? o[i] : i) + 1}")).ToArray();
        var sizes = row.Sizes == 1 ? "one size" : $"{names[0]} ({string.Join(", ", names[1..])})";
        var (before, after, crochet) = (MetamorphicStyle.Plain.List(row.Before), MetamorphicStyle.Plain.List(row.After), row.Craft.Name == "crochet");
        var label = row.Round ? "Rnd" : "Row";
        var plain = crochet ? style.Words($"{(row.Round ? "" : "Ch 1 (does not count as a st), turn, ")}{{sc}} in each st {(row.Round ? "around" : "across")}") : row.Round ? "Knit" : "Purl";
        var turn = crochet && !row.Round ? style.Words("ch 1 (does not count as a st), turn, ") : "";
        string[] body =
        [
            crochet ? $"Begin with {before} sts{(row.Round ? ", in the round" : "")}." : $"Cast on {before} sts.{(row.Round ? " Join in the round." : "")}",
            $"{label} 1: {plain}.",
            style.Label($"{label} 2", turn + (text ?? row.Write(style))),
            $"{label} 3: {plain}. {after} sts.",
            $"{label} 4: {plain}.",
            $"{label} 5: {plain}. ({after} sts)",
        ];
        var file = $"---\ntitle: Harbour piece\ncraft: {row.Craft.Name}\nterms: {terms}\nsizes: {sizes}\n---\n\n## Piece\n\n{string.Join("\n\n", body)}\n";
        return new MetamorphicPiece(Compiler.Compile(new SourceText("rows.pattern.md", file)), $"{before} sts | {body[At]} | {after} sts");
    }

    /// <summary>No error, every line checked, and after every row the right counts in every size.</summary>
    public void IsSound(MadeRow row)
    {
        Assert.True(Errors.Length == 0, Tell());
        Assert.True(Compiled.Lines.All(line => line.Status == LineStatus.Checked), Tell());
        Assert.True(Compiled.Lines.Length == 6, Tell());
        Assert.True(row.After.SequenceEqual(Row.After.Select(n => n ?? -1)), Tell());
        Assert.True(Compiled.Lines.Take(2).All(line => row.Before.SequenceEqual(line.After.Select(n => n ?? -1))), Tell());
    }

    /// <summary>One error, at the made row, for just these sizes.</summary>
    public void FailsThereAlone(ImmutableArray<int> sizes)
    {
        Assert.True(Errors.Length == 1, Tell());
        Assert.True(Row.Origin.Contains(Errors[0].Span), Tell());
        Assert.True((Errors[0].Sizes.IsEmpty ? Enumerable.Range(0, Row.After.Length) : Errors[0].Sizes.Order()).SequenceEqual(sizes), Tell());
    }

    public string Tell() =>
        $"{Text} | {string.Join(" / ", Compiled.Lines.Select(l => $"{l.Status} {string.Join(" ", l.After)}"))} | {string.Join("; ", Compiled.Findings.Where(f => f.Severity == Severity.Error || f.Rule.Area == Area.Counts || f.Rule.Code == "PF208").Select(f => $"{f.Rule.Code} [{string.Join(' ', f.Sizes)}] {f.Message}"))}";
}
