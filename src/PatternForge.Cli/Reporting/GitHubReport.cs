using System.Globalization;
using System.Text;
using PatternForge.Core.Findings;

namespace PatternForge.Cli.Reporting;

/// <summary>Annotations as GitHub's workflow commands: the ten weightiest findings, then a line that says what was left out.</summary>
internal static class GitHubReport
{
    // GitHub shows ten annotations a step and drops the rest in silence.
    private const int Most = 10;

    /// <summary>The whole report.</summary>
    public static string Of(IReadOnlyList<FileReport> files)
    {
        var all = files
            .SelectMany(file => file.Findings.Where(f => f.Accepted is null).Select(finding => (file, finding)))
            .OrderByDescending(pair => pair.finding.Severity)
            .ToArray();
        var page = new StringBuilder();
        foreach (var (file, finding) in all.Take(Most))
        {
            Append(page, file, finding);
        }

        if (all.Length > Most)
        {
            var rest = all.Skip(Most).Select(pair => pair.finding.Severity).ToArray();
            var parts = new[] { Severity.Error, Severity.Warning, Severity.Note }
                .Select(severity => (severity, count: rest.Count(s => s == severity)))
                .Where(part => part.count > 0)
                .Select(part => Words.Counted(part.count, Words.Of(part.severity)));
            page.Append(CultureInfo.InvariantCulture, $"{all.Length - Most} more not shown as annotations: {string.Join(", ", parts)}; `lint --format text` lists them\n");
        }

        return page.ToString();
    }

    private static void Append(StringBuilder page, FileReport file, Finding finding)
    {
        var start = finding.Source.Lines.PositionOf(finding.Span.Start);
        var end = finding.Source.Lines.PositionOf(finding.Span.End);
        var command = finding.Severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "notice",
        };
        page.Append(CultureInfo.InvariantCulture, $"::{command} file={Property(file.Path)},line={start.Line},endLine={end.Line}");
        if (start.Line == end.Line)
        {
            // Columns are understood on one line alone; the last one is meant inclusively.
            page.Append(CultureInfo.InvariantCulture, $",col={start.Column},endColumn={Math.Max(start.Column, end.Column - 1)}");
        }

        page.Append(CultureInfo.InvariantCulture, $",title={Property($"{finding.Rule.Code} {finding.Rule.Name}")}::");
        var sizes = file.SizesOf(finding) is { } names ? $" (sizes: {string.Join(", ", names)})" : "";
        var help = Words.Advice(finding);
        page.Append(Data(finding.Message + sizes + help)).Append('\n');
    }

    /// <summary>Escapes the text of a command.</summary>
    public static string Data(string text) => Words.WellFormed(text)
        .Replace("%", "%25", StringComparison.Ordinal)
        .Replace("\r", "%0D", StringComparison.Ordinal)
        .Replace("\n", "%0A", StringComparison.Ordinal);

    /// <summary>Escapes the value of a command's property.</summary>
    public static string Property(string text) => Data(text)
        .Replace(":", "%3A", StringComparison.Ordinal)
        .Replace(",", "%2C", StringComparison.Ordinal);
}
