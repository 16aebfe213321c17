using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

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
