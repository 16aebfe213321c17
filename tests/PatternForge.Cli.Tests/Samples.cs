using System.Collections.Immutable;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Cli.Tests;

/// <summary>Hand-made findings: the reports are tried on these, whatever the compiler finds today.</summary>
internal static class Samples
{
    public static Rule Rule(Severity severity = Severity.Error, string code = "PF301", string name = "stated-count-differs") =>
        new(code, name, Area.Counts, severity, "The stated count differs from what the row makes.", "The count is the maker's safety net.") { Bad = "", Good = "" };

    /// <summary>A finding at the first place where the words stand in the text.</summary>
    public static Finding Finding(SourceText source, string words, string message, Severity severity = Severity.Error, string code = "PF301") =>
        new(Rule(severity, code), source, SpanOf(source, words), message);

    public static TextSpan SpanOf(SourceText source, string words)
    {
        var at = source.Text.IndexOf(words, StringComparison.Ordinal);
        Assert.True(at >= 0, $"`{words}` does not stand in the sample");
        return new(at, words.Length);
    }

    public static FileReport Report(SourceText source, params ImmutableArray<Finding> findings) => new()
    {
        Path = source.Path,
        Title = "Harbour Hat",
        Sizes = ["S", "M", "L"],
        Coverage = new(64, 61, 2, 1),
        Findings = findings,
        OpenLines = [new(30, "Row 12 (RS): work as set", IsTrusted: true), new(33, "Row 14: as before", IsTrusted: true), new(40, "Work the earflap", IsTrusted: false)],
    };
}
