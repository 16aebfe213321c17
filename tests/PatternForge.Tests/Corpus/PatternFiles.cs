using System.Globalization;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Corpus;

/// <summary>Pattern files of the repository, compiled, and what was found in them as a text that a person can review.</summary>
internal static class PatternFiles
{
    /// <summary>The names of the pattern files in a folder, in order.</summary>
    public static IEnumerable<string> In(params ReadOnlySpan<string> folder) =>
        Directory.EnumerateFiles(RepositoryRoot.Path(folder), "*.pattern.md").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal);

    /// <summary>A file of the repository, compiled.</summary>
    public static Compilation Compile(params ReadOnlySpan<string> parts)
    {
        var path = RepositoryRoot.Path(parts);
        return Compiler.Compile(new SourceText(Path.GetFileName(path), File.ReadAllText(path)));
    }

    /// <summary>Lines that were not checked, with their text; empty when all were.</summary>
    public static string NotChecked(Compilation compilation) => string.Join(
        "\n",
        compilation.Lines.Where(l => l.Status != LineStatus.Checked).Select(l => $"{l.Status}: {compilation.Text.Text.ToString(l.Origin)}"));

    /// <summary>
    /// What was found, one block a finding: code, name, severity and place, then the words that are marked, the sizes, the message and the help.
    /// </summary>
    public static string Tell(Compilation compilation)
    {
        var text = new StringBuilder();
        foreach (var finding in compilation.Findings)
        {
            if (text.Length > 0)
            {
                text.Append('\n');
            }

            var (line, column) = finding.Source.Lines.PositionOf(finding.Span.Start);
            text.Append(CultureInfo.InvariantCulture, $"{finding.Rule.Code} {finding.Rule.Name}, {finding.Severity.ToString().ToLowerInvariant()}, line {line}, column {column}\n");
            text.Append(CultureInfo.InvariantCulture, $"  marks:   {Marked(finding)}\n");
            if (finding.Sizes is { IsEmpty: false } sizes)
            {
                text.Append(CultureInfo.InvariantCulture, $"  sizes:   {string.Join(", ", sizes.Select(s => compilation.Pattern.Facts.Sizes.Names[s]))}\n");
            }

            text.Append(CultureInfo.InvariantCulture, $"  message: {finding.Message}\n");
            if (finding.Help is { } help)
            {
                text.Append(CultureInfo.InvariantCulture, $"  help:    {help}\n");
            }
        }

        return text.ToString();
    }

    private static string Marked(Finding finding)
    {
        var words = finding.Source.ToString(finding.Span).ReplaceLineEndings(" / ").Replace("\t", "\\t", StringComparison.Ordinal);
        return words.Length > 90 ? words[..89] + "…" : words;
    }
}
