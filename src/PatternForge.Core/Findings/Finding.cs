using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Findings;

/// <summary>A second place that a finding speaks of, with a few words on it.</summary>
public sealed record Label(TextSpan Span, string Text);

/// <summary>One replacement of text that mends a finding exactly.</summary>
public sealed record Edit(TextSpan Span, string NewText);

/// <summary>An exact repair: a title in the imperative and its edits.</summary>
public sealed record Fix(string Title, ImmutableArray<Edit> Edits);

/// <summary>One occurrence of a rule at a place.</summary>
/// <param name="Rule">The kind.</param>
/// <param name="Source">The file.</param>
/// <param name="Span">The place.</param>
/// <param name="Message">One sentence in the designer's words, numbers included, no full stop.</param>
public sealed record Finding(Rule Rule, SourceText Source, TextSpan Span, string Message)
{
    /// <summary>Indices of the sizes concerned; empty means all of them.</summary>
    public ImmutableArray<int> Sizes { get; init; } = [];

    /// <summary>Where the other number came from.</summary>
    public ImmutableArray<Label> Labels { get; init; } = [];

    /// <summary>The likely repair, one sentence; null where nothing useful can be said.</summary>
    public string? Help { get; init; }

    /// <summary>How the count comes about, clause by clause, in one line ("k2 (2), ssk (2 to 1), ..."); null where no count is concerned.</summary>
    public string? Reckoning { get; init; }

    /// <summary>An exact repair; null where there is none.</summary>
    public Fix? Fix { get; init; }

    /// <summary>The reason written beside it when the designer accepted this occurrence; null otherwise.</summary>
    public string? Accepted { get; init; }

    /// <summary>The name of the edition that alone has it; null where the pattern as it is written has it.</summary>
    public string? Edition { get; init; }

    /// <summary>The rule's severity.</summary>
    public Severity Severity => Rule.Severity;
}
