using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>What the reader of a page may choose there. A page offers nothing that its pattern does not have.</summary>
public sealed record ReaderView
{
    /// <summary>What a reader's ticks and choices are kept under on the reader's own device: title and version.</summary>
    public required string Key { get; init; }

    /// <summary>True when the page knows what each size works, so that the numbers and steps of the other sizes can go.</summary>
    public bool LeavesOut { get; init; }

    /// <summary>The terms to choose from, those of the pattern first; empty where it has one kind.</summary>
    public ImmutableArray<ChoiceView> Terms { get; init; } = [];

    /// <summary>The units to choose from, as the pattern is written first; empty where there is nothing to choose.</summary>
    public ImmutableArray<ChoiceView> Units { get; init; } = [];
}

/// <summary>One thing to choose.</summary>
public sealed record ChoiceView
{
    /// <summary>Its number, from 0.</summary>
    public required int Value { get; init; }

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }
}
