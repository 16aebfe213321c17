using System.Collections.Immutable;

namespace PatternForge.Core.Model;

/// <summary>What a studio settles once for all its patterns, in its project file.</summary>
public sealed record House
{
    /// <summary>Nothing is settled: every pattern stands for itself.</summary>
    public static House None { get; } = new();

    /// <summary>What the header of a pattern is taken to say where it says nothing itself. Places in it are places of the project file.</summary>
    public PatternFacts Defaults { get; init; } = new();

    /// <summary>The header keys that <see cref="Defaults"/> gives.</summary>
    public ImmutableArray<string> DefaultKeys { get; init; } = [];

    /// <summary>How far figures may stand apart.</summary>
    public Tolerances Tolerances { get; init; } = Tolerances.Default;

    /// <summary>How things are written.</summary>
    public StyleSheet Style { get; init; } = StyleSheet.Open;

    /// <summary>Codes of findings that nobody may accept in a pattern.</summary>
    public ImmutableArray<string> NeverAccepted { get; init; } = [];
}
