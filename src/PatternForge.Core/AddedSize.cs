using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Sizing;
using PatternForge.Core.Text;

namespace PatternForge.Core;

/// <summary>A size that a pattern is to have beside its own.</summary>
/// <param name="Name">Its name.</param>
public sealed record SizeWish(string Name)
{
    /// <summary>The size that it stands before; null where that is not said.</summary>
    public string? Before { get; init; }

    /// <summary>The size that it stands behind; null where that is not said.</summary>
    public string? After { get; init; }

    /// <summary>Measurements and numbers of the new size, by their names in the header ("bust", "finished.bust"). The first that every size has tells how far it is from its neighbours.</summary>
    public ImmutableArray<(string Name, string Value)> Given { get; init; } = [];
}

/// <summary>A pattern with one more size.</summary>
public sealed record AddedSize
{
    /// <summary>Why it cannot be added; null when it can.</summary>
    public string? Refusal { get; init; }

    /// <summary>Its place among the sizes, from 0.</summary>
    public int Index { get; init; }

    /// <summary>The names of all sizes, the new one among them.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>What must change, in the order of the file.</summary>
    public ImmutableArray<SizeChange> Changes { get; init; } = [];

    /// <summary>The file with the new size written in; null when it cannot be added.</summary>
    public SourceText? Source { get; init; }

    /// <summary>What is found in that file and not in the one as it is, at places of the one as it is; sizes are numbered with the new one.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>False where the file was mended in reading, so that the places of the new values in it are not certain.</summary>
    public bool CanBeWritten { get; init; } = true;

    /// <summary>True when an error stands that the pattern as it is does not have.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error && f.Accepted is null);
}
