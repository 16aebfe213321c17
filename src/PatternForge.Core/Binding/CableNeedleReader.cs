using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads stitches worked from the cable needle: "k2 from cn", "then K the 2 sts from cn".</summary>
internal static class CableNeedleReader
{
    /// <summary>The step at the cursor, or null with the cursor unmoved.</summary>
    public static CableNeedleStep? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (c.Peek() is not { Atom.Kind: TokenKind.Word } first || !IsAhead(c))
        {
            return null;
        }

        var (stem, digits) = StitchReader.Split(first.Atom.Text);
        if (context.Book.Find(stem) is not { Takes: 1, Makes: 1 } operation)
        {
            return null;
        }

        c.At++;
        c.Eat("the");
        var amount = digits >= 0 ? RowContext.Constant(digits, first.Span) : c.EatNumber() is { } number ? context.AmountOf(number) : null;
        StitchWords.Modifiers(c);
        c.Eat("st|this");
        if (c.Eat("from|off"))
        {
            c.Eat("the");
            if (c.Eat("cn"))
            {
                context.LastName = stem;
                context.Use(operation, first.Span);
                return new CableNeedleStep(c.SpanFrom(start), amount, operation);
            }
        }

        c.At = start;
        return null;
    }

    /// <summary>Stitches that go to the cable needle, and on which side of the work it waits, where the words say so.</summary>
    public static CableNeedleStep Held(TextSpan origin, Amount stitches, RowContext context)
    {
        var words = context.Source.Slice(origin);
        var front = words.Contains("front", StringComparison.OrdinalIgnoreCase);
        var back = words.Contains("back", StringComparison.OrdinalIgnoreCase) || words.Contains("behind", StringComparison.OrdinalIgnoreCase);
        return new CableNeedleStep(origin, stitches, null) { InFront = front == back ? null : front };
    }

    private static bool IsAhead(PhraseCursor c)
    {
        for (var ahead = 1; c.Peek(ahead) is { } lexeme; ahead++)
        {
            if (lexeme.Is("cn"))
            {
                return true;
            }
        }

        return false;
    }
}
