using System.Text.Json.Serialization;

namespace PatternForge.Cli.Reporting;

// Static Analysis Results Interchange Format 2.1.0 (OASIS Standard, 2020, with errata 01), as far as findings need it.
// The names of the properties are the keys of the standard.

/// <summary>The file.</summary>
internal sealed record SarifLog(
    [property: JsonPropertyName("$schema")] string Schema, string Version, IReadOnlyList<SarifRun> Runs);

/// <summary>One run of one tool.</summary>
internal sealed record SarifRun(
    SarifTool Tool, IReadOnlyList<SarifInvocation> Invocations, string ColumnKind, IReadOnlyList<SarifResult> Results);

/// <summary>Whether the run came to its end, and remarks on it.</summary>
internal sealed record SarifInvocation(bool ExecutionSuccessful, IReadOnlyList<SarifNotification>? ToolExecutionNotifications);

/// <summary>A remark on the run.</summary>
internal sealed record SarifNotification(string Level, SarifText Message);

/// <summary>The tool.</summary>
internal sealed record SarifTool(SarifDriver Driver);

/// <summary>The tool's name, version and rules.</summary>
internal sealed record SarifDriver(string Name, string Version, IReadOnlyList<SarifRule> Rules);

/// <summary>A rule.</summary>
internal sealed record SarifRule(
    string Id, string Name, SarifText ShortDescription, SarifText FullDescription, SarifLevel DefaultConfiguration, SarifProperties Properties);

/// <summary>A level: error, warning or note.</summary>
internal sealed record SarifLevel(string Level);

/// <summary>A text.</summary>
internal sealed record SarifText(string Text);

/// <summary>What the standard leaves to the tool: the area of a rule, the sizes that a result holds for.</summary>
internal sealed record SarifProperties(string? Area, IReadOnlyList<string>? Sizes);

/// <summary>One finding.</summary>
internal sealed record SarifResult(
    string RuleId,
    int RuleIndex,
    string Level,
    SarifText Message,
    IReadOnlyList<SarifLocation> Locations,
    IReadOnlyList<SarifLocation>? RelatedLocations,
    IReadOnlyList<SarifFix>? Fixes,
    IReadOnlyList<SarifSuppression>? Suppressions,
    SarifProperties? Properties);

/// <summary>A place, perhaps with words on it.</summary>
internal sealed record SarifLocation(SarifPhysicalLocation PhysicalLocation, SarifText? Message);

/// <summary>A stretch of a file.</summary>
internal sealed record SarifPhysicalLocation(SarifArtifact ArtifactLocation, SarifRegion Region);

/// <summary>A file by its address.</summary>
internal sealed record SarifArtifact(string Uri);

/// <summary>Lines and columns from 1, the end exclusive.</summary>
internal sealed record SarifRegion(int StartLine, int StartColumn, int EndLine, int EndColumn);

/// <summary>An exact repair.</summary>
internal sealed record SarifFix(SarifText Description, IReadOnlyList<SarifChange> ArtifactChanges);

/// <summary>The replacements in one file.</summary>
internal sealed record SarifChange(SarifArtifact ArtifactLocation, IReadOnlyList<SarifReplacement> Replacements);

/// <summary>One replacement.</summary>
internal sealed record SarifReplacement(SarifRegion DeletedRegion, SarifText InsertedContent);

/// <summary>An acceptance with its reason.</summary>
internal sealed record SarifSuppression(string Kind, string Justification);

/// <summary>Source-generated writing: no reflection at run time.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(SarifLog))]
internal sealed partial class SarifShapes : JsonSerializerContext;
