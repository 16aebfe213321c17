using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PatternForge.Core.Findings;

namespace PatternForge.Cli.Reporting;

/// <summary>For people: each finding with its source line and a likely repair, then how much was checked and how many findings there are.</summary>
internal static class TextReport
{
    private const int MostOpenLines = 12;
    private const int MostSummary = 40;

    /// <summary>The whole report.</summary>
    /// <param name="files">The files in the order of the command line.</param>
    /// <param name="width">Columns that a line may take.</param>
    /// <param name="paint">The colours.</param>
    public static string Of(IReadOnlyList<FileReport> files, int width, Paint paint)
    {
        var page = new StringBuilder();
        foreach (var file in files)
        {
            foreach (var finding in file.Findings)
            {
                AppendFinding(page, file, finding, width, paint);
            }
        }

        foreach (var file in files)
        {
            if (file.Coverage is { } coverage && (files.Count == 1 || !file.OpenLines.IsEmpty))
            {
                AppendCoverage(page, file, coverage, paint);
            }
        }

        if (files.Count(f => f.IsPattern) > 1 && files.Any(f => f.Coverage is not null))
        {
            var all = files.Aggregate(LineTally.None, (sum, f) => sum.Plus(f.Coverage ?? LineTally.None));
            page.AppendLine(CultureInfo.InvariantCulture, $"in {files.Count(f => f.IsPattern)} files: {Checked(all)}");
        }

        if (files.Count > 1)
        {
            AppendSummary(page, files, paint);
        }

        AppendTotals(page, files, paint);
        return page.ToString().ReplaceLineEndings("\n");
    }

    private static void AppendFinding(StringBuilder page, FileReport file, Finding finding, int width, Paint paint)
    {
        var gutter = SourceFrame.GutterOf(finding);
        var (line, column) = finding.Source.Lines.PositionOf(finding.Span.Start);
        var sizes = file.SizesOf(finding) is { } names ? " · " + Described(names) : "";
        var place = string.Create(CultureInfo.InvariantCulture, $"{DisplayText.OneLine(file.Path)}:{line}:{column}");
        var weight = finding.Accepted is null ? Words.Of(finding.Severity) : $"accepted {Words.Of(finding.Severity)}";
        var head = $"{weight}[{finding.Rule.Code}]";
        page.Append(finding.Accepted is null ? paint.Weight(finding.Severity, head) : paint.Faint(head))
            .Append(' ').AppendLine(paint.Strong(DisplayText.OneLine(finding.Message)));
        page.Append(' ', gutter).Append(paint.Faint(" ┌ ")).AppendLine(place + sizes);
        if (finding.Accepted is { } reason)
        {
            page.Append(' ', gutter).Append(paint.Faint(" └ ")).AppendLine("accepted: " + DisplayText.OneLine(reason)).AppendLine();
            return;
        }

        SourceFrame.Append(page, finding, gutter, Math.Max(40, width - gutter - 3), paint);
        if (finding.Reckoning is { } reckoning)
        {
            page.Append(' ', gutter).Append(paint.Faint(" = ")).AppendLine("worked: " + DisplayText.OneLine(reckoning));
        }

        if (finding.Help is { } help)
        {
            page.Append(' ', gutter).Append(paint.Faint(" = ")).AppendLine("help: " + DisplayText.OneLine(help));
        }

        if (finding.Fix is { } fix)
        {
            page.Append(' ', gutter).Append(paint.Faint(" = ")).AppendLine("repair: " + DisplayText.OneLine(fix.Title));
        }

        page.AppendLine();
    }

    private static void AppendCoverage(StringBuilder page, FileReport file, LineTally coverage, Paint paint)
    {
        page.AppendLine($"{DisplayText.OneLine(file.Path)}: {Checked(coverage)}");
        foreach (var open in file.OpenLines.Take(MostOpenLines))
        {
            page.AppendLine(CultureInfo.InvariantCulture,
                $"   line {open.Line} {(open.IsTrusted ? "taken on trust" : "not understood")}: {paint.Faint(DisplayText.Cut(open.Words, 60))}");
        }

        if (file.OpenLines.Length > MostOpenLines)
        {
            page.AppendLine(CultureInfo.InvariantCulture, $"   and {file.OpenLines.Length - MostOpenLines} more");
        }
    }

    /// <summary>Where the findings are and which they are: the files with most first, then the rules with most.</summary>
    private static void AppendSummary(StringBuilder page, IReadOnlyList<FileReport> files, Paint paint)
    {
        var open = files.SelectMany(f => f.Findings.Where(x => x.Accepted is null).Select(x => (File: f, Finding: x))).ToArray();
        if (open.Length == 0)
        {
            return;
        }

        page.AppendLine("by file:");
        var byFile = open.GroupBy(o => o.File.Path, StringComparer.Ordinal)
            .Select(g => (Path: g.Key, Totals: Totals.Of([g.First().File])))
            .OrderByDescending(g => g.Totals.Errors).ThenByDescending(g => g.Totals.Warnings).ThenByDescending(g => g.Totals.Notes).ThenBy(g => g.Path, StringComparer.Ordinal)
            .ToArray();
        foreach (var (path, totals) in byFile.Take(MostSummary))
        {
            page.AppendLine($"   {DisplayText.OneLine(path)}: {Counted(totals, paint)}");
        }

        AppendMore(page, byFile.Length);
        page.AppendLine("by rule:");
        var byRule = open.GroupBy(o => o.Finding.Rule.Code, StringComparer.Ordinal)
            .Select(g => (g.First().Finding.Rule, Count: g.Count(), Files: g.Select(o => o.File.Path).Distinct(StringComparer.Ordinal).Count()))
            .OrderByDescending(g => g.Rule.Severity).ThenByDescending(g => g.Count).ThenBy(g => g.Rule.Code, StringComparer.Ordinal)
            .ToArray();
        foreach (var (rule, count, places) in byRule.Take(MostSummary))
        {
            page.AppendLine(CultureInfo.InvariantCulture, $"   {paint.Weight(rule.Severity, rule.Code)} {rule.Name}: {count} in {Words.Counted(places, "file")}");
        }

        AppendMore(page, byRule.Length);
    }

    private static void AppendMore(StringBuilder page, int count)
    {
        if (count > MostSummary)
        {
            page.AppendLine(CultureInfo.InvariantCulture, $"   and {count - MostSummary} more");
        }
    }

    /// <summary>"2 errors, 1 note": only what there is.</summary>
    private static string Counted(Totals totals, Paint paint) => string.Join(
        ", ",
        new[] { (totals.Errors, "error", Severity.Error), (totals.Warnings, "warning", Severity.Warning), (totals.Notes, "note", Severity.Note) }
            .Where(part => part.Item1 > 0)
            .Select(part => Painted(part.Item1, part.Item2, part.Item3, paint)));

    private static void AppendTotals(StringBuilder page, IReadOnlyList<FileReport> files, Paint paint)
    {
        var totals = Totals.Of(files);
        var parts = new[]
        {
            Painted(totals.Errors, "error", Severity.Error, paint),
            Painted(totals.Warnings, "warning", Severity.Warning, paint),
            Painted(totals.Notes, "note", Severity.Note, paint),
        };
        page.Append(string.Join(", ", parts));
        page.AppendLine(totals.Accepted == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" ({totals.Accepted} accepted)"));
        var first = files.SelectMany(f => f.Findings).Where(f => f.Accepted is null).MaxBy(f => f.Severity);
        if (first is not null)
        {
            page.AppendLine(paint.Faint($"`patternforge explain {first.Rule.Code}` says more about a finding"));
        }
    }

    private static string Painted(int count, string what, Severity severity, Paint paint)
    {
        var text = Words.Counted(count, what);
        return count == 0 ? text : paint.Weight(severity, text);
    }

    private static string Checked(LineTally tally) =>
        string.Create(CultureInfo.InvariantCulture, $"{tally.Checked} of {Words.Counted(tally.Instructions, "instruction line")} checked");

    /// <summary>"size M", "sizes S and L".</summary>
    private static string Described(IReadOnlyList<string> names)
    {
        var shown = names.Select(DisplayText.OneLine).ToImmutableArray();
        return shown.Length == 1 ? $"size {shown[0]}" : $"sizes {string.Join(", ", shown[..^1])} and {shown[^1]}";
    }
}
