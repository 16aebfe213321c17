using System.Text.Encodings.Web;
using System.Text.Json;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Cli.Reporting;

/// <summary>For other programs: the shape that the README promises, on one line.</summary>
internal static class JsonReport
{
    /// <summary>Letters stay letters: the output is read by programs, never put into a page.</summary>
    public static JsonShapes Shapes { get; } =
        new(new JsonSerializerOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, PropertyNamingPolicy = JsonNamingPolicy.CamelCase });

    /// <summary>The whole report.</summary>
    public static string Of(IReadOnlyList<FileReport> files)
    {
        var totals = Totals.Of(files);
        var shape = new LintShape(1, [.. files.Select(ShapeOf)], new(totals.Errors, totals.Warnings, totals.Notes));
        return JsonSerializer.Serialize(shape, Shapes.LintShape) + "\n";
    }

    private static FileShape ShapeOf(FileReport file) => new(
        Words.WellFormed(file.Path),
        Clean(file.Title),
        [.. file.Sizes.Select(Words.WellFormed)],
        file.Coverage is { } c ? new(c.Instructions, c.Checked, c.Trusted, c.Unread) : new(0, 0, 0, 0),
        [.. file.Findings.Select(f => ShapeOf(f, file.SizesOf(f)))],
        file.Editions);

    /// <summary>One finding; null sizes are all of them.</summary>
    public static FindingShape ShapeOf(Finding finding, IReadOnlyList<string>? sizes)
    {
        var (start, end) = PlaceOf(finding.Source, finding.Span);
        return new(
            finding.Rule.Code,
            finding.Rule.Name,
            Words.Of(finding.Rule.Area),
            Words.Of(finding.Severity),
            start.Line,
            start.Column,
            end.Line,
            end.Column,
            sizes is { } names ? [.. names.Select(Words.WellFormed)] : null,
            Words.WellFormed(finding.Message),
            Clean(finding.Help),
            finding.Fix is { } fix ? ShapeOf(finding.Source, fix) : null,
            Clean(finding.Accepted),
            Clean(finding.Reckoning),
            finding.Edition);
    }

    private static FixShape ShapeOf(SourceText source, Fix fix) => new(
        Words.WellFormed(fix.Title),
        [.. fix.Edits.Select(edit =>
        {
            var (start, end) = PlaceOf(source, edit.Span);
            return new EditShape(start.Line, start.Column, end.Line, end.Column, Words.WellFormed(edit.NewText));
        })]);

    private static (LinePosition Start, LinePosition End) PlaceOf(SourceText source, TextSpan span) =>
        (source.Lines.PositionOf(span.Start), source.Lines.PositionOf(span.End));

    private static string? Clean(string? text) => text is null ? null : Words.WellFormed(text);
}
