using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>A length or mass that stands in rows or prose: its values, one or one a size, and their unit.</summary>
/// <param name="Values">In order.</param>
/// <param name="Unit">The unit of all of them.</param>
/// <param name="Rounding">How much a value may have been rounded by, in the unit.</param>
/// <param name="Start">Where it begins in the text.</param>
/// <param name="End">Where it ends, its unit included.</param>
/// <remarks>Of a range both ends are values.</remarks>
internal sealed record Measure(ImmutableArray<decimal> Values, Unit Unit, decimal Rounding, int Start, int End)
{
    /// <summary>True where the values, or some of them, are the ends of ranges and not the sizes'.</summary>
    public bool HasRanges { get; init; }

    /// <summary>True for inches, yards and ounces.</summary>
    public bool IsImperial => Unit == Unit.Inch || Unit == Unit.Yard || Unit == Unit.Ounce;

    /// <summary>What is sensibly given in both systems: lengths of fabric but not of tools, yarn and masses.</summary>
    public bool IsLength => Unit == Unit.Centimetre || Unit == Unit.Inch;
}

/// <summary>One measurement given by hand, perhaps in two units.</summary>
/// <param name="First">The first.</param>
/// <param name="Second">The same in the other system; null where it is given in one alone.</param>
/// <param name="Span">Both together.</param>
internal sealed record MeasuredPlace(Measure First, Measure? Second, TextSpan Span);

/// <summary>Finds measurements in the words of a pattern. What might be something else ("2 in next st") is none.</summary>
internal static class Measures
{
    // No pattern has more sizes.
    private const int MostValues = 64;

    /// <summary>Every measurement of the rows and the prose.</summary>
    public static IEnumerable<(Stretch Stretch, MeasuredPlace Place)> Of(CheckContext context)
    {
        foreach (var stretch in PlainText.Of(context))
        {
            for (var at = 0; Next(stretch.Text, at) is { } first;)
            {
                var second = Beside(stretch.Text, first);
                at = second?.End ?? first.End;
                yield return (stretch, new(first, second, stretch.At(first.Start, at - first.Start)));
            }
        }
    }

    private static Measure? Next(ReadOnlySpan<char> text, int at)
    {
        for (; at < text.Length; at++)
        {
            if (IsValueStart(text, at) && Read(text, at) is { } measure)
            {
                return measure;
            }
        }

        return null;
    }

    /// <summary>True when `in` that ends here is the unit and no preposition: a sign stands behind it.</summary>
    public static bool IsInch(ReadOnlySpan<char> text, int end) => end >= text.Length || text[end] is ')' or ']' or '.' or ',' or ';' or '/' or '\n' or '\r' or PlainText.Covered;

    private static bool IsValueStart(ReadOnlySpan<char> text, int at) =>
        (char.IsAsciiDigit(text[at]) || Fraction(text[at]) > 0) && (at == 0 || (!char.IsLetterOrDigit(text[at - 1]) && text[at - 1] is not ('.' or '/' or '-' or '–' or '$' or '£' or '€' or '#')));

    // The same in the other system: in brackets, or behind a slash, an equals sign or "or".
    private static Measure? Beside(ReadOnlySpan<char> text, Measure first)
    {
        var at = Blanks(text, first.End);
        if (at < text.Length && text[at] == '.' && first.Unit == Unit.Inch)
        {
            at = Blanks(text, at + 1);
        }

        if (at >= text.Length)
        {
            return null;
        }

        if (text[at] is '(' or '[' or '/' or '=')
        {
            at = Blanks(text, at + 1);
        }
        else if (PlainText.WordAt(text, at).Is("or"))
        {
            at = Blanks(text, at + 2);
        }
        else
        {
            return null;
        }

        return at < text.Length && IsDigit(text[at]) && Read(text, at) is { } second && second.Unit.Dimension == first.Unit.Dimension && second.IsImperial != first.IsImperial ? second : null;
    }

    /// <summary>"10 cm", "4½ in", "20 (22, 24) cm"; null where no such stands.</summary>
    private static Measure? Read(ReadOnlySpan<char> text, int start)
    {
        Span<decimal> values = stackalloc decimal[MostValues];
        var count = 0;
        var rounding = 0m;
        var at = start;
        if (!Value(text, ref at, values, ref count, ref rounding))
        {
            return null;
        }

        var list = Blanks(text, at);
        if (list < text.Length && text[list] is '(' or '[' && list + 1 < text.Length && IsDigit(text[list + 1]))
        {
            var close = text[list] == '(' ? ')' : ']';
            var inner = list + 1;
            while (Value(text, ref inner, values, ref count, ref rounding))
            {
                inner = Blanks(text, inner);
                if (inner < text.Length && text[inner] is ',' or ';' or ':')
                {
                    inner = Blanks(text, inner + 1);
                    continue;
                }

                break;
            }

            if (inner >= text.Length || text[inner] != close || count < 2)
            {
                return null;
            }

            at = inner + 1;
        }

        at = Blanks(text, at);
        if (at < text.Length && text[at] is '"' or '″')
        {
            // A quotation that ends behind a number has begun before it.
            return text[at] == '″' || text[..at].Count('"') % 2 == 0 ? new([.. values[..count]], Unit.Inch, rounding, start, at + 1) { HasRanges = HasRange(text[start..at]) } : null;
        }

        var word = PlainText.WordAt(text, at);
        var end = at + word.Length;
        if (word.IsEmpty || word.Length > 12 || (end < text.Length && char.IsDigit(text[end])) || Unit.Find(word.ToString()) is not { } unit || unit == Unit.Millimetre || unit == Unit.Metre || (unit == Unit.Inch && word.Is("in") && !IsInch(text, end)))
        {
            return null;
        }

        return new([.. values[..count]], unit, rounding, start, end) { HasRanges = HasRange(text[start..at]) };
    }

    private static bool HasRange(ReadOnlySpan<char> text) => text.IndexOfAny('-', '–') >= 0;

    // Trade rounding: whole numbers by a half, halves and finer by a quarter.
    private static bool Value(ReadOnlySpan<char> text, ref int at, Span<decimal> values, ref int count, ref decimal rounding)
    {
        var start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        var isWhole = true;
        var hasWhole = at > start;
        if (at - start > 6 || count == values.Length)
        {
            return false;
        }

        var value = hasWhole ? decimal.Parse(text[start..at], NumberStyles.None, CultureInfo.InvariantCulture) : 0;
        if (hasWhole && at + 1 < text.Length && text[at] == '.' && char.IsAsciiDigit(text[at + 1]))
        {
            var scale = 0.1m;
            for (at++; at < text.Length && char.IsAsciiDigit(text[at]); at++, scale /= 10)
            {
                value += (text[at] - '0') * scale;
            }

            isWhole = false;
        }
        else if (at < text.Length && Fraction(text[at]) is > 0 and var sign)
        {
            (value, isWhole, hasWhole) = (value + sign, false, true);
            at++;
        }
        else if (hasWhole && at + 3 < text.Length && text[at] is ' ' or '-' && char.IsAsciiDigit(text[at + 1]) && text[at + 2] == '/' && text[at + 3] is '2' or '4' or '8' && (at + 4 == text.Length || !char.IsAsciiDigit(text[at + 4])))
        {
            (value, isWhole) = (value + ((text[at + 1] - '0') / (decimal)(text[at + 3] - '0')), false);
            at += 4;
        }

        var more = at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]) ? text[at] : ' ';
        if (!hasWhole || more == '/')
        {
            return false;
        }

        values[count++] = value;
        rounding = Math.Max(rounding, isWhole ? 0.5m : 0.25m);
        if (more is not ('-' or '–'))
        {
            return true;
        }

        // A range: both of its ends.
        at++;
        return Value(text, ref at, values, ref count, ref rounding);
    }

    private static decimal Fraction(char sign) => sign switch { '½' => 0.5m, '¼' => 0.25m, '¾' => 0.75m, '⅓' => 1 / 3m, '⅔' => 2 / 3m, '⅛' => 0.125m, '⅜' => 0.375m, '⅝' => 0.625m, '⅞' => 0.875m, _ => 0 };

    private static bool IsDigit(char c) => char.IsAsciiDigit(c) || Fraction(c) > 0;

    private static int Blanks(ReadOnlySpan<char> text, int at)
    {
        while (at < text.Length && text[at] == ' ')
        {
            at++;
        }

        return at;
    }
}
