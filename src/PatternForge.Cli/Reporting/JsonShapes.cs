using System.Text.Json.Serialization;

namespace PatternForge.Cli.Reporting;

// What other programs read. Keys are only ever added; the names of the properties are the keys.

/// <summary>`lint --format json`.</summary>
internal sealed record LintShape(int Version, IReadOnlyList<FileShape> Files, SummaryShape Summary);

/// <summary>One file of a lint.</summary>
internal sealed record FileShape(
    string Path, string? Title, IReadOnlyList<string> Sizes, CoverageShape Coverage, IReadOnlyList<FindingShape> Findings, IReadOnlyList<string> Editions);

/// <summary>How many instruction lines ended in each state.</summary>
internal sealed record CoverageShape(int Instructions, int Checked, int Trusted, int Unread);

/// <summary>One finding; lines and columns from 1, columns in UTF-16 units, the end exclusive; sizes null = all.</summary>
internal sealed record FindingShape(
    string Code,
    string Name,
    string Area,
    string Severity,
    int Line,
    int Column,
    int EndLine,
    int EndColumn,
    IReadOnlyList<string>? Sizes,
    string Message,
    string? Help,
    FixShape? Fix,
    string? Accepted,
    string? Reckoning,
    string? Edition);

/// <summary>An exact repair.</summary>
internal sealed record FixShape(string Title, IReadOnlyList<EditShape> Edits);

/// <summary>One replacement of text.</summary>
internal sealed record EditShape(int Line, int Column, int EndLine, int EndColumn, string NewText);

/// <summary>How many findings stand, accepted ones left out.</summary>
internal sealed record SummaryShape(int Errors, int Warnings, int Notes);

/// <summary>`counts --format json`.</summary>
internal sealed record CountsShape(
    int Version,
    string Path,
    IReadOnlyList<string> Sizes,
    IReadOnlyList<PieceShape> Pieces,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<SharesShape>? Shares);

/// <summary>How the stitches of a part are shared out among its yarns: one entry a size with one value a yarn, null where a size is not known; metres and grams are what the shares come to of the whole amount, left out where that is not known.</summary>
internal sealed record SharesShape(
    string Part,
    IReadOnlyList<string> Yarns,
    IReadOnlyList<IReadOnlyList<int>?> Stitches,
    IReadOnlyList<IReadOnlyList<decimal>?> Shares,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<IReadOnlyList<decimal?>?>? Metres,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<IReadOnlyList<decimal?>?>? Grams);

/// <summary>The rows under one heading.</summary>
internal sealed record PieceShape(string Name, IReadOnlyList<RowShape> Rows);

/// <summary>One instruction line; before, after and stated are one number a size, null where a size skips it or it is not known.</summary>
internal sealed record RowShape(
    string Label,
    int Line,
    string Text,
    string Status,
    IReadOnlyList<int> Worked,
    IReadOnlyList<int?> Before,
    IReadOnlyList<int?> After,
    IReadOnlyList<IReadOnlyDictionary<string, int>>? Kinds,
    IReadOnlyList<int?>? Stated,
    string? Reading,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<IReadOnlyList<StretchShape>>? Trace,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<MirroredShape>? Mirrored,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<IReadOnlyList<SectionShape>>? Sections,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] TogetherShape? Together);

/// <summary>Stitches between markers, as the next row meets them; marker is the name of the one behind them, empty for one without a name, null at the end of the row.</summary>
internal sealed record SectionShape(int Stitches, string? Marker);

/// <summary>A row that "reversing shaping" stands for; writtenOut is false where it is given as it stands on the side that is mirrored.</summary>
internal sealed record MirroredShape(string Label, string Text, IReadOnlyList<int?> After, bool WrittenOut);

/// <summary>Shapings that go on at the same time: their words, and the rows of each size in which something is shaped.</summary>
internal sealed record TogetherShape(IReadOnlyList<string> Shapings, IReadOnlyList<IReadOnlyList<TogetherRowShape>> Sizes);

/// <summary>One of these rows: its number from the first row of the line, what each shaping changes, and the stitches after it.</summary>
internal sealed record TogetherRowShape(int Row, IReadOnlyList<int> Changes, int Count);

/// <summary>A part of a traced line in one size: a row with its clauses, or words that stand for whole rows.</summary>
internal sealed record StretchShape(string Text, int? Before, int? After, int Rows, int Times, IReadOnlyList<ClauseShape> Clauses);

/// <summary>A clause of a traced row; times 0 for one that is neither bracket nor repeat, within what it holds the first time through.</summary>
internal sealed record ClauseShape(string Text, int? Uses, int? Makes, int Left, int Times, IReadOnlyList<ClauseShape> Within);

/// <summary>`counts --numbers --format json`.</summary>
internal sealed record NumbersShape(int Version, string Path, IReadOnlyList<string> Sizes, IReadOnlyList<NumberShape> Numbers);

/// <summary>A number or a measurement of the header: where it stands, its formula, and one value a size; null where it is no formula, or a size has none.</summary>
internal sealed record NumberShape(
    string Of,
    string Name,
    string? Formula,
    string? Measures,
    string Unit,
    IReadOnlyList<decimal?> Values,
    IReadOnlyList<decimal?>? Unrounded,
    IReadOnlyList<decimal?>? MovedCm);

/// <summary>`counts --yarn --format json`; areas are square centimetres, one a size, none where they cannot be told.</summary>
internal sealed record YarnsShape(int Version, string Path, IReadOnlyList<string> Sizes, decimal Margin, IReadOnlyList<decimal> Areas, IReadOnlyList<YarnShape> Yarns);

/// <summary>One yarn: what its amounts come from (sample, swatch, published), how, and how far they may be out as a share; or the reason why there are none.</summary>
internal sealed record YarnShape(string? Name, string? Label, string? Basis, string? Method, decimal? LikelyError, string? Reason, IReadOnlyList<YarnSizeShape> Sizes);

/// <summary>The yarn in one size; amounts without the margin but for those that say so, null where not known.</summary>
internal sealed record YarnSizeShape(
    decimal? Stitches,
    decimal? Weighted,
    decimal? Grams,
    decimal? Metres,
    decimal? GramsByArea,
    decimal? MetresByArea,
    decimal? GramsWithMargin,
    decimal? MetresWithMargin,
    int? Balls,
    IReadOnlyList<AlternativeShape> Alternatives);

/// <summary>Another yarn in place of it, the margin counted in.</summary>
internal sealed record AlternativeShape(string Name, decimal Grams, int Balls);

/// <summary>`add-size --format json`.</summary>
internal sealed record AddedSizeShape(int Version, string Path, string Size, IReadOnlyList<string> Sizes, IReadOnlyList<SizeChangeShape> Changes, IReadOnlyList<FindingShape> Findings, bool Written);

/// <summary>One place that hangs on the sizes: before and after are null where nothing is rewritten, value where it says nothing of the new size.</summary>
internal sealed record SizeChangeShape(int Line, string Kind, string What, string? Value, string? Before, string? After, string Why);

/// <summary>`diff --format json`: what changed in meaning, and what was not understood.</summary>
internal sealed record DiffShape(int Version, string Old, string New, string? Title, string? OldVersion, string? NewVersion, IReadOnlyList<CorrectionShape> Corrections, IReadOnlyList<UnreadPlaceShape> NotUnderstood);

/// <summary>One difference; concerns is at-work, not-begun or wording, sizes null = all, lines from 1 and null where it does not stand in that file.</summary>
internal sealed record CorrectionShape(string About, string Concerns, string Section, string Label, IReadOnlyList<string>? Sizes, string Text, string? Was, string? Now, string? Why, int? OldLine, int? NewLine);

/// <summary>A line that was compared by its words alone.</summary>
internal sealed record UnreadPlaceShape(string File, int Line, string Text);

/// <summary>`test-results --format json`: what came back of a test, beside what the pattern says.</summary>
internal sealed record TestResultsShape(
    int Version,
    string Path,
    string Title,
    string PatternVersion,
    IReadOnlyList<TestedSizeShape> Sizes,
    IReadOnlyList<TestNumberShape> Numbers,
    IReadOnlyList<TestCommentShape> Mistakes,
    IReadOnlyList<TestCommentShape> Comments,
    IReadOnlyList<TestCommentShape> Questions);

/// <summary>How many answers there are of a size, and the fewest and most hours; null where nobody said.</summary>
internal sealed record TestedSizeShape(string Size, int Answers, decimal? HoursFrom, decimal? HoursTo);

/// <summary>A number: told by the pattern (null where it tells none) and got by the maker, the difference as a share of what was told, and what to look at (null for nothing).</summary>
internal sealed record TestNumberShape(string Size, string Maker, string Kind, string Name, decimal? Told, decimal Got, string Unit, decimal? Difference, string? Flag);

/// <summary>What a maker said of a row, a section or a question.</summary>
internal sealed record TestCommentShape(string Size, string Maker, string About, string Text);

/// <summary>Source-generated writing: no reflection at run time.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Serialization | JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(LintShape))]
[JsonSerializable(typeof(CountsShape))]
[JsonSerializable(typeof(NumbersShape))]
[JsonSerializable(typeof(YarnsShape))]
[JsonSerializable(typeof(AddedSizeShape))]
[JsonSerializable(typeof(DiffShape))]
[JsonSerializable(typeof(TestResultsShape))]
internal sealed partial class JsonShapes : JsonSerializerContext;
