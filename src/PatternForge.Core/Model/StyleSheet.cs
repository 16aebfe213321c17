using System.Collections.Immutable;

namespace PatternForge.Core.Model;

/// <summary>One thing that patterns write in several ways of the same meaning.</summary>
/// <param name="Key">Its key in a style sheet.</param>
/// <param name="About">What it is, in a few words.</param>
/// <param name="Forms">The ways to write it, as a style sheet names them.</param>
/// <param name="InProse">True when prose is looked at as well as rows.</param>
public sealed record StyleMatter(string Key, string About, ImmutableArray<string> Forms, bool InProse = false)
{
    /// <summary>The word for a round.</summary>
    public static StyleMatter Round { get; } = new("round", "the word for a round", ["rnd", "round"]);

    /// <summary>The word for stitches.</summary>
    public static StyleMatter Stitches { get; } = new("stitches", "the word for stitches", ["sts", "stitches"]);

    /// <summary>The word that asks for a repeat.</summary>
    public static StyleMatter Repeat { get; } = new("repeat", "the word that asks for a repeat", ["rep", "repeat"]);

    /// <summary>How knit and purl stitches begin inside a row; the first word of a sentence is left alone.</summary>
    public static StyleMatter Letters { get; } = new("letters", "the first letter of knit and purl stitches inside a row", ["k2tog", "K2tog"]);

    /// <summary>The dash between two numbers of rows.</summary>
    public static StyleMatter Dash { get; } = new("dash", "the dash between two numbers of rows", ["1-4", "1–4"], InProse: true);

    /// <summary>The blank between a number and its unit.</summary>
    public static StyleMatter UnitSpace { get; } = new("unit-space", "the blank between a number and its unit", ["10 cm", "10cm"], InProse: true);

    /// <summary>How inches are written.</summary>
    public static StyleMatter Inches { get; } = new("inches", "how inches are written", ["4 in", "4 inches", "4\""], InProse: true);

    /// <summary>Every matter.</summary>
    public static ImmutableArray<StyleMatter> All { get; } = [Round, Stitches, Repeat, Letters, Dash, UnitSpace, Inches];
}

/// <summary>How a studio writes what can be written in several ways. A matter that it leaves open is each pattern's own.</summary>
/// <param name="Choices">The form chosen, by its place in <see cref="StyleMatter.Forms"/>, for each matter that is settled.</param>
public sealed record StyleSheet(ImmutableDictionary<StyleMatter, int> Choices)
{
    /// <summary>Nothing is settled.</summary>
    public static StyleSheet Open { get; } = new(ImmutableDictionary<StyleMatter, int>.Empty);

    /// <summary>The form chosen for a matter, as its place in the list of forms; null where it is open.</summary>
    public int? FormOf(StyleMatter matter) => Choices.TryGetValue(matter, out var form) ? form : null;
}
