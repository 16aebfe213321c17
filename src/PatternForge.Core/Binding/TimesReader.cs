using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads how often: "twice", "3 times", "x 6", "four (five) times", "once".</summary>
internal static class TimesReader
{
    /// <summary>Takes "in all", "in total", "total" or "altogether" behind a number of times.</summary>
    public static bool EatInAll(PhraseCursor c) => c.EatAll("in", "all|total") || c.Eat("total|altogether");

    /// <summary>The number at the cursor, or null with the cursor unmoved. "more" behind it is left for the caller.</summary>
    public static Amount? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (c.Peek() is not { } first)
        {
            return null;
        }

        if (c.Eat("once"))
        {
            return RowContext.Constant(1, first.Span);
        }

        if (c.Eat("twice"))
        {
            return RowContext.Constant(2, first.Span);
        }

        if (c.Eat("thrice"))
        {
            return RowContext.Constant(3, first.Span);
        }

        if (c.EatNumber() is { } number)
        {
            if (c.Eat("times"))
            {
                return context.AmountOf(number);
            }

            c.At = start;
            return null;
        }

        if (c.Eat("times") && c.EatNumber() is { } factor)
        {
            c.Eat("times"); // "* 4 times"
            return factor.Number is { } times ? context.TimesOf(times) : context.AmountOf(factor);
        }

        c.At = start;

        // "x6" is one word.
        if (first.Atom.Kind == TokenKind.Word && first.Atom.Text.Length > 1 && first.Atom.Text[0] is 'x' or 'X' && first.Atom.Text.AsSpan(1).IndexOfAnyExceptInRange('0', '9') < 0)
        {
            c.At++;
            if (first.Atom.Number is { } list)
            {
                return context.TimesOf(list);
            }

            return RowContext.Constant(int.TryParse(first.Atom.Text.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? Math.Min(n, 1_000_000_000) : 1_000_000_000, first.Span);
        }

        return null;
    }
}
