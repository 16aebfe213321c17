using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>Rows that follow each other in the same yarn, or in the same yarns where it changes from stitch to stitch.</summary>
/// <param name="Yarns">The letters: one, or several for rows in several yarns.</param>
/// <param name="First">The first row, counted from the beginning of the part, from 1.</param>
/// <param name="Rows">How many rows.</param>
public sealed record Stripe(ImmutableArray<string> Yarns, int First, int Rows)
{
    /// <summary>The last row.</summary>
    public int Last => First + Rows - 1;
}

/// <summary>Stripes of a sequence that are worked again and again.</summary>
/// <param name="From">The first of them among those that are shown, from 0.</param>
/// <param name="Stripes">How many there are.</param>
/// <param name="Times">How often they are worked in all.</param>
/// <param name="Rows">How many rows they have together.</param>
public sealed record StripeRepeat(int From, int Stripes, int Times, int Rows);

/// <summary>The colours of a part of a pattern, row by row.</summary>
public sealed record StripeSequence
{
    /// <summary>The heading of the part.</summary>
    public required string Name { get; init; }

    /// <summary>The number of the section in the body, from 1, that it is drawn in.</summary>
    public required int Section { get; init; }

    /// <summary>The block that asks for it; null where it stands at the end of its section by itself.</summary>
    public TextSpan? Block { get; init; }

    /// <summary>The sizes that it is for; empty for all.</summary>
    public ImmutableArray<int> Sizes { get; init; } = [];

    /// <summary>True when it is worked in rounds.</summary>
    public required bool IsRound { get; init; }

    /// <summary>The stripes from the first; those of a repeat once.</summary>
    public required ImmutableArray<Stripe> Stripes { get; init; }

    /// <summary>Which of them are repeated; null for none.</summary>
    public StripeRepeat? Repeat { get; init; }

    /// <summary>How many rows it has in all.</summary>
    public required int Rows { get; init; }
}

/// <summary>How the stitches of a part of a pattern are shared out among its yarns.</summary>
/// <param name="Name">The heading of the part.</param>
/// <param name="Section">The number of its section, from 1.</param>
/// <param name="Yarns">The letters of the yarns, in the order of the header.</param>
/// <param name="Stitches">Stitches of each of them, one list a size; empty for a size in which they are not known.</param>
public sealed record YarnShares(string Name, int Section, ImmutableArray<string> Yarns, ImmutableArray<ImmutableArray<int>> Stitches)
{
    /// <summary>
    /// What each of them has of the whole amount by its stitches, one list a size, where the colours are all of one yarn and the pattern has no other part; empty for a size in which that is not known.
    /// </summary>
    public ImmutableArray<ImmutableArray<ColourAmount>> Amounts { get; init; } = [];

    /// <summary>The share of a yarn in a size, of one; null where it is not known.</summary>
    public decimal? Of(int yarn, int size) => size < Stitches.Length && !Stitches[size].IsEmpty && Stitches[size].Sum(s => (long)s) is > 0 and var all ? (decimal)Stitches[size][yarn] / all : null;
}

/// <summary>The part of one colour in the whole amount of a yarn.</summary>
/// <param name="Metres">Its length in metres; null where that is not known.</param>
/// <param name="Grams">Its mass in grams; null where that is not known.</param>
public readonly record struct ColourAmount(decimal? Metres, decimal? Grams);
