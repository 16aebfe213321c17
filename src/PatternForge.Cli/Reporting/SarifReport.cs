using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Cli.Reporting;

/// <summary>SARIF 2.1.0 for code hosts and editors.</summary>
internal static class SarifReport
{
    // Code hosts take 5,000 results of a run: the weightiest are kept, and a notification says what was cut.
    private const int Most = 5000;

    private static readonly SarifShapes Shapes = new(new JsonSerializerOptions
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    });

    /// <summary>The whole report.</summary>
    /// <param name="files">The files in the order of the command line.</param>
    /// <param name="version">The tool's version.</param>
    /// <param name="complete">False when some input could not be read.</param>
    public static string Of(IReadOnlyList<FileReport> files, string version, bool complete)
    {
        var all = files.SelectMany(file => file.Findings.Select(finding => (file, finding))).ToArray();
        var kept = all.Length <= Most ? all : [.. all.OrderByDescending(pair => pair.finding.Severity).Take(Most)];
        var rules = kept.Select(pair => pair.finding.Rule).DistinctBy(r => r.Code, StringComparer.Ordinal)
            .OrderBy(r => r.Code, StringComparer.Ordinal).ToArray();
        var indices = rules.Index().ToDictionary(pair => pair.Item.Code, pair => pair.Index, StringComparer.Ordinal);
        var notifications = all.Length > Most
            ? new[] { new SarifNotification("warning", new($"{all.Length - Most} more findings are not listed; the weightiest {Most} are")) }
            : null;
        var run = new SarifRun(
            new(new("patternforge", version, [.. rules.Select(ShapeOf)])),
            [new(complete, notifications)],
            "utf16CodeUnits",
            [.. kept.Select(pair => ShapeOf(pair.file, pair.finding, indices[pair.finding.Rule.Code]))]);
        var log = new SarifLog("https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json", "2.1.0", [run]);
        return JsonSerializer.Serialize(log, Shapes.SarifLog) + "\n";
    }

    private static SarifRule ShapeOf(Rule rule) => new(
        rule.Code, rule.Name, new(rule.Summary), new(rule.Explanation), new(Words.Of(rule.Severity)), new(Words.Of(rule.Area), null));

    private static SarifResult ShapeOf(FileReport file, Finding finding, int rule)
    {
        var artifact = new SarifArtifact(AddressOf(file.Path));
        SarifLocation At(TextSpan span, string? words) =>
            new(new(artifact, RegionOf(finding.Source, span)), words is null ? null : new(Words.WellFormed(words)));

        var help = Words.Advice(finding);
        return new(
            finding.Rule.Code,
            rule,
            Words.Of(finding.Severity),
            new(Words.WellFormed(finding.Message + help)),
            [At(finding.Span, null)],
            finding.Labels.IsDefaultOrEmpty ? null : [.. finding.Labels.Select(l => At(l.Span, l.Text))],
            finding.Fix is { } fix ? [ShapeOf(finding.Source, artifact, fix)] : null,
            finding.Accepted is { } reason ? [new("inSource", Words.WellFormed(reason))] : null,
            file.SizesOf(finding) is { } names ? new(null, [.. names.Select(Words.WellFormed)]) : null);
    }

    private static SarifFix ShapeOf(SourceText source, SarifArtifact artifact, Fix fix) => new(
        new(Words.WellFormed(fix.Title)),
        [new(artifact, [.. fix.Edits.Select(e => new SarifReplacement(RegionOf(source, e.Span), new(Words.WellFormed(e.NewText))))])]);

    private static SarifRegion RegionOf(SourceText source, TextSpan span)
    {
        var start = source.Lines.PositionOf(span.Start);
        var end = source.Lines.PositionOf(span.End);
        return new(start.Line, start.Column, end.Line, end.Column);
    }

    // A relative path as a relative address, so that code hosts find the file from the root of the repository.
    private static string AddressOf(string path)
    {
        if (Path.IsPathFullyQualified(path) && Uri.TryCreate(path, UriKind.Absolute, out var absolute))
        {
            return absolute.AbsoluteUri;
        }

        return string.Join('/', Words.WellFormed(path).Replace(Path.DirectorySeparatorChar, '/').Split('/').Select(Uri.EscapeDataString));
    }
}
