using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>What a buyer must know before paying, in the order of the built-in listing.</summary>
public sealed record ListingView
{
    /// <summary>The paragraph to decide by, whole or its beginning; null when there is none.</summary>
    public ProseText? Summary { get; init; }

    /// <summary>The parts: level, sizes, yarn, gauge, tools, language, what the release holds.</summary>
    public ImmutableArray<ListingPartView> Parts { get; init; } = [];
}

/// <summary>One part of the listing.</summary>
public sealed record ListingPartView
{
    /// <summary>What it is about ("Sizes").</summary>
    public required string Name { get; init; }

    /// <summary>Its lines, never none.</summary>
    public required ImmutableArray<string> Lines { get; init; }
}
