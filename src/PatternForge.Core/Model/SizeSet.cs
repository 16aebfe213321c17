using System.Collections.Immutable;

namespace PatternForge.Core.Model;

/// <summary>The sizes of a pattern in order, smallest first. A pattern without sizes has one, with an empty name.</summary>
public sealed record SizeSet(ImmutableArray<string> Names)
{
    /// <summary>One size that needs no name.</summary>
    public static SizeSet One { get; } = new([""]);

    /// <summary>A word that stands once after all names ("years"); null when there is none.</summary>
    public string? Word { get; init; }

    /// <summary>How many sizes there are; at least one.</summary>
    public int Count => Names.Length;

    /// <summary>The index of a size by its name, ignoring case; -1 when there is none such.</summary>
    public int IndexOf(string name)
    {
        for (var i = 0; i < Names.Length; i++)
        {
            if (string.Equals(Names[i], name, StringComparison.OrdinalIgnoreCase))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>"size M", "sizes S and L", or an empty text when all sizes are meant or there is only one.</summary>
    public string Describe(IReadOnlyCollection<int> sizes)
    {
        if (Count <= 1 || sizes.Count == 0 || sizes.Count == Count)
        {
            return "";
        }

        var names = sizes.Order().Select(i => Names[i]).ToArray();
        return names.Length == 1 ? $"size {names[0]}" : $"sizes {string.Join(", ", names[..^1])} and {names[^1]}";
    }
}
