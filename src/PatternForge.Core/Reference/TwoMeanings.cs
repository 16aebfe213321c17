using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>
/// An abbreviation that published lists explain in more than one way, in patterns of the same craft and terms. One that only the two sides of the water use differently
/// is no such word: the declared terms settle it.
/// </summary>
/// <param name="Key">The abbreviation in small letters.</param>
/// <param name="IsCrochet">True for crochet, false for knitting.</param>
/// <param name="Meanings">What it means to some and to others.</param>
/// <param name="Effect">What depends on it.</param>
public sealed record TwoMeanings(string Key, bool IsCrochet, ImmutableArray<string> Meanings, string Effect)
{
    /// <summary>True where British terms leave one meaning of them.</summary>
    public bool IsSettledInUk { get; init; }

    /// <summary>
    /// All of them (common practice: lists of abbreviations in books, magazines and leaflets, which differ). M1L and M1R are not among them: a single list takes them from the
    /// stitch below, for which the others have a name of its own.
    /// </summary>
    public static ImmutableArray<TwoMeanings> All { get; } =
    [
        new("ss", false, ["slip stitch", "stockinette stitch"], "a row of it is slipped or knitted"),
        new("k1b", false, ["knit into the back of the stitch", "knit into the stitch in the row below"], "the count is the same and the fabric is not"),
        new("m1", false, ["lift the bar between two stitches and knit it twisted", "any increase of one stitch", "a yarn over in old lace patterns"], "the count is the same and the hole is not"),
        new("inc", false, ["knit into the front and the back of a stitch, which uses it", "any increase, one between two stitches as well, which uses none"], "the stitches between the increases differ by one"),
        new("yf", false, ["a yarn over", "bring the yarn to the front, without a stitch"], "the count differs by one each time") { IsSettledInUk = true },
        new("yfwd", false, ["a yarn over", "bring the yarn to the front, without a stitch"], "the count differs by one each time") { IsSettledInUk = true },
        new("eor", false, ["every other row", "end of row"], "the shaping is another"),
    ];

    /// <summary>The entry of an abbreviation; null where all lists agree on it.</summary>
    public static TwoMeanings? Find(string key, bool isCrochet)
    {
        foreach (var one in All)
        {
            if (one.IsCrochet == isCrochet && string.Equals(one.Key, key, StringComparison.Ordinal))
            {
                return one;
            }
        }

        return null;
    }
}
