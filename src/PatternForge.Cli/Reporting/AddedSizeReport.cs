using System.Globalization;
using System.Text;
using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Sizing;

namespace PatternForge.Cli.Reporting;

/// <summary>What must change for one more size, line by line, and what is then found.</summary>
internal static class AddedSizeReport
{
    private const int LongestWords = 60;

    /// <summary>For people.</summary>
    public static string Text(FileReport found, string name, AddedSize added, int width, Paint paint)
    {
        var page = new StringBuilder();
        page.Append($"{paint.Strong("size " + DisplayText.OneLine(name))} among {string.Join(", ", added.Names.Select(DisplayText.OneLine))}\n\n");
        foreach (var line in added.Changes.GroupBy(c => c.Line))
        {
            foreach (var change in line)
            {
                page.Append(CultureInfo.InvariantCulture, $"line {change.Line}  {Word(change.Kind)}: {DisplayText.Cut(change.What, LongestWords)}");
                if (change.Value is { } value)
                {
                    page.Append($" = {paint.Strong(DisplayText.OneLine(value))}");
                }

                page.Append('\n');
                if (change.Before.Length > 0)
                {
                    page.Append($"    {DisplayText.OneLine(change.Before)} -> {DisplayText.OneLine(change.After)}\n");
                }

                page.Append(paint.Faint("    " + DisplayText.OneLine(change.Why))).Append('\n');
            }
        }

        var counts = new[] { SizeChangeKind.Follows, SizeChangeKind.Given, SizeChangeKind.Proposed, SizeChangeKind.Decide }
            .Select(kind => (Word: Word(kind), Count: added.Changes.Count(c => c.Kind == kind)))
            .Where(c => c.Count > 0)
            .Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Count} {c.Word}"));
        page.Append($"\n{string.Join(", ", counts)}\n");
        page.Append(added.Findings.IsEmpty ? $"with these values nothing new is found in size {DisplayText.OneLine(name)}\n" : "\nwith these values is found:\n\n" + TextReport.Of([found], width, paint));
        return page.ToString();
    }

    /// <summary>For other programs, on one line.</summary>
    public static string Json(string path, string name, AddedSize added, bool isWritten) => JsonSerializer.Serialize(
        new AddedSizeShape(
            1,
            Words.WellFormed(path),
            Words.WellFormed(name),
            [.. added.Names.Select(Words.WellFormed)],
            [.. added.Changes.Select(c => new SizeChangeShape(
                c.Line, Word(c.Kind), Words.WellFormed(c.What), c.Value is null ? null : Words.WellFormed(c.Value),
                c.Before.Length == 0 ? null : Words.WellFormed(c.Before), c.After.Length == 0 ? null : Words.WellFormed(c.After), Words.WellFormed(c.Why)))],
            [.. added.Findings.Select(f => JsonReport.ShapeOf(f, f.Sizes.IsEmpty ? null : [.. f.Sizes.Where(i => i >= 0 && i < added.Names.Length).Select(i => added.Names[i])]))],
            isWritten),
        JsonReport.Shapes.AddedSizeShape) + "\n";

    private static string Word(SizeChangeKind kind) => kind switch
    {
        SizeChangeKind.Follows => "follows",
        SizeChangeKind.Given => "given",
        SizeChangeKind.Proposed => "proposed",
        _ => "to decide",
    };
}
