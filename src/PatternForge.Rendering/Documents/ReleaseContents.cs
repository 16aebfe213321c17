using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>What a release holds beside the listing itself, as far as it was made.</summary>
public sealed record ReleaseContents
{
    /// <summary>Nothing is known of it.</summary>
    public static ReleaseContents Unknown { get; } = new();

    /// <summary>Sheets of paper with the pages of the PDF on each ("A4", 9), in order.</summary>
    public ImmutableArray<(string Paper, int Pages)> Papers { get; init; } = [];

    /// <summary>The other files, a few words each ("a web page").</summary>
    public ImmutableArray<string> Files { get; init; } = [];

    /// <summary>The titles of other editions in it ("British terms").</summary>
    public ImmutableArray<string> Editions { get; init; } = [];
}
