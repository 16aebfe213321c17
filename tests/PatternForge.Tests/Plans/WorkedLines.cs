using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Plans;

/// <summary>Lines of a plan worked by the compiler, as a designer would paste them into a pattern.</summary>
internal static class WorkedLines
{
    /// <summary>The stitches after each line; every line must be understood and none may be wrong.</summary>
    public static int?[] Knit(string start, IEnumerable<string> lines) => Work("knitting", [start, .. lines])[1..];

    /// <summary>The same in crochet, in American terms.</summary>
    public static int?[] Crochet(IEnumerable<string> lines, string? start = null) => Work("crochet\nterms: us", start is null ? [.. lines] : [start, .. lines]);

    private static int?[] Work(string craft, string[] lines)
    {
        var text = $"---\ntitle: Piece\ncraft: {craft}\n---\n\n## Piece\n\n{string.Join("\n\n", lines)}\n";
        var compiled = Compiler.Compile(new SourceText("piece.pattern.md", text));
        var wrong = compiled.Findings.Where(f => f.Severity == Severity.Error).Select(f => $"{f.Rule.Code} {f.Message}");
        var unsure = compiled.Lines.Where(l => l.Status != LineStatus.Checked).Select(l => $"{l.Status}: {l.Text}");
        var problems = wrong.Concat(unsure).ToArray();
        Assert.True(problems.Length == 0, string.Join("\n", problems) + "\n" + text);
        return [.. compiled.Lines.Select(l => l.After[0])];
    }
}
