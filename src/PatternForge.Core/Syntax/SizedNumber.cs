using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>
/// A number as the rows write it: one value, or a list for the sizes in any punctuation of the trade
/// (<c>80 (88, 96)</c>, <c>64[67, 69]</c>, <c>82 (90: 94)</c>, <c>10(11-12-13)</c>, <c>60/66/72</c>). A null value is a size that skips it.
/// </summary>
public sealed class SizedNumber
{
    /// <summary>Holds the values.</summary>
    public SizedNumber(ImmutableArray<decimal?> values, TextSpan span, bool isOrdinal = false, bool isWord = false)
    {
        Values = values;
        Span = span;
        IsOrdinal = isOrdinal;
        IsWord = isWord;
    }

    /// <summary>The values in order.</summary>
    public ImmutableArray<decimal?> Values { get; }

    /// <summary>Where the whole list stands.</summary>
    public TextSpan Span { get; }

    /// <summary>True for 4th, 1st and the like.</summary>
    public bool IsOrdinal { get; }

    /// <summary>True for a number in letters.</summary>
    public bool IsWord { get; }

    /// <summary>True when there is more than one value.</summary>
    public bool IsList => Values.Length > 1;
}
