using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core;

/// <summary>How much of a pattern is checked.</summary>
public enum Checking
{
    /// <summary>Everything.</summary>
    Whole,

    /// <summary>What may be an error: enough to know whether it can be released.</summary>
    ErrorsAlone,

    /// <summary>The rows and their counts: for another form of a pattern that has been checked.</summary>
    RowsAlone,
}

/// <summary>Limits that no input can exceed, each with its own finding, and what a studio may set for its patterns.</summary>
public sealed record CompileOptions
{
    /// <summary>The defaults.</summary>
    public static CompileOptions Default { get; } = new();

    /// <summary>Largest file in UTF-16 units.</summary>
    public int MaxLength { get; init; } = 8 * 1024 * 1024;

    /// <summary>Longest header in UTF-16 units.</summary>
    public int MaxHeaderLength { get; init; } = 256 * 1024;

    /// <summary>Most sizes of a pattern.</summary>
    public int MaxSizes { get; init; } = 64;

    /// <summary>Deepest nesting of brackets in a row and of blocks in the header.</summary>
    public int MaxDepth { get; init; } = 32;

    /// <summary>Most live stitches of a size.</summary>
    public int MaxStitches { get; init; } = 100_000;

    /// <summary>Most rows that one line may stand for.</summary>
    public int MaxRows { get; init; } = 10_000;

    /// <summary>Most steps that one line may take in one size, repeats spelled out.</summary>
    public int MaxSteps { get; init; } = 200_000;

    /// <summary>Steps that all lines of a file may take together, in all sizes, before each line is held to <see cref="LeastSteps"/>.</summary>
    public long MaxStepsOfFile { get; init; } = 20_000_000;

    /// <summary>Steps that every line may take in one size, whatever the lines before it took; an ordinary row takes some tens.</summary>
    public int LeastSteps { get; init; } = 1_000;

    /// <summary>True to write down what each clause of each row does in every size: for people who want to see how a count comes about.</summary>
    public bool Trace { get; init; }

    /// <summary>How much is checked beyond the rows.</summary>
    public Checking Checking { get; init; }

    /// <summary>What became of addresses that were asked for over the network, by address; empty when none was: the compiler itself asks nobody.</summary>
    public IReadOnlyDictionary<string, LinkAnswer> Answers { get; init; } = ImmutableDictionary<string, LinkAnswer>.Empty;

    /// <summary>How far two figures may stand apart before a check speaks; a studio may set its own.</summary>
    public Tolerances Tolerances { get; init; } = Tolerances.Default;

    /// <summary>What a studio settles for all its patterns.</summary>
    public House House { get; init; } = House.None;

    /// <summary>Looks at a photo by the name that the pattern gives it; null where nobody looks, and then nothing is said of its file.</summary>
    public Func<string, PhotoFacts>? LookAtPhoto { get; init; }

    /// <summary>Reads a text file that a header names, such as a size table, by the name that it gives; null for one that is not there, and null where nobody reads.</summary>
    public Func<string, string?>? ReadFile { get; init; }

    /// <summary>The same for the patterns of a studio.</summary>
    public CompileOptions Under(House house) => this with { House = house, Tolerances = house.Tolerances };
}
