using System.Collections.Immutable;

namespace PatternForge.Core.Corrections;

/// <summary>A size that both versions have.</summary>
/// <param name="Name">Its name now.</param>
/// <param name="Old">Its number in the old version, from 0.</param>
/// <param name="New">Its number in the new version.</param>
internal sealed record SharedSize(string Name, int Old, int New);

/// <summary>The two versions, the sizes that both have, and where what is found is collected.</summary>
internal sealed class Versions
{
    private const int MostGroups = 3;

    private readonly List<Correction> _corrections = [];

    /// <summary>Holds two versions.</summary>
    public Versions(Compilation old, Compilation now)
    {
        (Old, New) = (old, now);
        var (a, b) = (old.Pattern.Facts.Sizes, now.Pattern.Facts.Sizes);
        var shared = new List<SharedSize>();
        for (var i = 0; i < b.Count; i++)
        {
            // A size that is called otherwise is the same one where nothing else about the sizes has changed.
            var at = i < a.Count && string.Equals(a.Names[i], b.Names[i], StringComparison.OrdinalIgnoreCase) ? i : a.IndexOf(b.Names[i]);
            if (at < 0 && a.Count == b.Count && b.IndexOf(a.Names[i]) < 0)
            {
                at = i;
                Renamed = Renamed.Add((a.Names[i], b.Names[i]));
            }

            if (at >= 0)
            {
                shared.Add(new(b.Names[i], at, i));
            }
        }

        Sizes = [.. shared];
        Added = [.. b.Names.Where((_, i) => shared.TrueForAll(s => s.New != i))];
        Removed = [.. a.Names.Where((_, i) => shared.TrueForAll(s => s.Old != i))];
    }

    /// <summary>Says words of the old version in the terms of the new one.</summary>
    public Func<string, string> InNewTerms { get; init; } = words => words;

    /// <summary>The old version.</summary>
    public Compilation Old { get; }

    /// <summary>The new one.</summary>
    public Compilation New { get; }

    /// <summary>The sizes that both have, in the order of the new version.</summary>
    public ImmutableArray<SharedSize> Sizes { get; }

    /// <summary>Sizes that are new.</summary>
    public ImmutableArray<string> Added { get; }

    /// <summary>Sizes that are gone.</summary>
    public ImmutableArray<string> Removed { get; }

    /// <summary>Sizes that have another name now.</summary>
    public ImmutableArray<(string Old, string New)> Renamed { get; } = [];

    /// <summary>What was found.</summary>
    public ImmutableArray<Correction> Corrections => [.. _corrections];

    /// <summary>Adds a difference.</summary>
    public void Add(Correction correction) => _corrections.Add(correction);

    /// <summary>Adds differences that are told size by size: sizes of which the same is to be said share one.</summary>
    /// <param name="said">What is said of each size, by its place among <see cref="Sizes"/>; null for those that are as they were.</param>
    /// <param name="whole">What is said where the sizes fall into many groups.</param>
    /// <param name="make">Makes the difference of a sentence.</param>
    /// <param name="tail">What is said behind it, for the sizes that share it; null for nothing.</param>
    public void AddBySize(IReadOnlyList<string?> said, Func<string> whole, Func<string, Correction> make, Func<int[], string?>? tail = null)
    {
        var groups = said.Select((text, i) => (Text: text, Size: i)).Where(s => s.Text is not null).GroupBy(s => s.Text!, StringComparer.Ordinal).ToArray();
        if (groups.Length > MostGroups)
        {
            Add(make(whole()) with { Sizes = Names([.. groups.SelectMany(g => g).Select(s => s.Size).Order()]) });
            return;
        }

        foreach (var group in groups)
        {
            ImmutableArray<int> sizes = [.. group.Select(s => s.Size)];
            var text = string.Join("; ", new[] { group.Key, tail?.Invoke([.. sizes]) }.Where(t => !string.IsNullOrEmpty(t)));
            Add(make(text) with { Sizes = Names(sizes) });
        }
    }

    /// <summary>The names of sizes by their places among <see cref="Sizes"/>; empty for all of the new version.</summary>
    public ImmutableArray<string> Names(ImmutableArray<int> places) =>
        places.Length == Sizes.Length && Added.IsEmpty ? [] : [.. places.Select(p => Sizes[p].Name).Where(n => n.Length > 0)];

    /// <summary>"84 (92, 100)": a value a size, one alone where all are alike.</summary>
    public static string List(IReadOnlyList<string> values) =>
        values.Distinct(StringComparer.Ordinal).Count() == 1 ? values[0] : $"{values[0]} ({string.Join(", ", values.Skip(1))})";
}
