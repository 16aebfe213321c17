using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads stated counts: "(24 sts)", "— 48 (52, 56) sts", "= 48", "48 sts rem", "6 sts dec'd", "you should have 20 sts".</summary>
internal static class ClaimReader
{
    /// <summary>A claim that takes up the whole phrase, or null. A number alone counts only where its place introduces it: in brackets, behind an equals sign, last in the row.</summary>
    public static Claim? TryRead(List<Lexeme> lexemes, RowContext context, bool introduced)
    {
        var c = new PhraseCursor(lexemes);
        return Read(c, context, introduced) is { } claim && c.IsDone ? claim : null;
    }

    /// <summary>"for a total of 30 sts" inside a phrase; null with the cursor unmoved.</summary>
    public static Claim? TryReadTotal(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("for");
        c.Eat("a");
        if (c.EatAll("total", "of") && c.EatNumber() is { } number && c.Eat("st") && !c.Is("times"))
        {
            return Total(number, c, start, context);
        }

        c.At = start;
        return null;
    }

    private static Claim? Read(PhraseCursor c, RowContext context, bool introduced)
    {
        if (c.Peek()?.Atom.Kind == TokenKind.EqualsSign)
        {
            c.At++;
            introduced = true;
        }

        var start = c.At;
        if (c.EatAll("you", "should", "now", "have") || c.EatAll("you", "should", "have") || c.EatAll("should", "have") || c.EatAll("you", "now", "have") || c.EatAll("you", "have")
            || c.EatAll("there", "should", "be") || c.EatAll("there", "are", "now") || c.EatAll("there", "are") || c.EatAll("now", "have") || c.EatAll("you", "will", "have") || c.EatAll("for", "a", "total", "of")
            || c.EatAll("a", "total", "of") || c.EatAll("total", "of") || c.Eat("total|leaving|makes"))
        {
            introduced = true;
        }

        if (c.Eat("inc'd|dec'd"))
        {
            return null;
        }

        if (c.EatNumber() is not { } number)
        {
            return null;
        }

        var noun = c.Eat("st") || c.EatAll("live", "st") || c.EatAll("total", "st") || c.EatAll("heel", "st");
        if (noun && c.Is("inc'd|dec'd|inc|dec"))
        {
            var down = c.Is("dec'd|dec");
            c.At++;
            c.EatAll("in", "total");
            c.Eat("each|every|per|this");
            c.Eat("row|rnd");
            if (!c.IsDone)
            {
                return null;
            }

            var (values, trusted) = Values(number, context);
            return new Claim(c.SpanFrom(start), ClaimKind.Change, down ? values.Map(v => -v) : values, trusted);
        }

        if (!noun && !introduced && !c.Is("rem"))
        {
            return null;
        }

        if (!noun && !c.IsDone && !c.Is("rem|total|on"))
        {
            return null;
        }

        return Total(number, c, start, context);
    }

    private static Claim? Total(Lexeme number, PhraseCursor c, int start, RowContext context)
    {
        while (c.Eat("rem|total|altogether|left|now|in") || c.EatAll("on", "the", "needle") || c.EatAll("on", "needle") || c.EatAll("on", "your", "needle") || c.EatAll("for", "each", "needle")
            || c.EatAll("on", "last", "row|rnd") || c.EatAll("on", "left-needle|right-needle"))
        {
        }

        var (values, trusted) = Values(number, context);
        return new Claim(c.SpanFrom(start), ClaimKind.Total, values, trusted);
    }

    /// <summary>The values of a claim; a list of the wrong length is one finding and the claim is otherwise ignored.</summary>
    private static (PerSize<int?> Values, bool Trusted) Values(Lexeme number, RowContext context)
    {
        if (number.Atom.Kind == TokenKind.Placeholder)
        {
            return (context.AmountOf(number).Values, true);
        }

        var bad = context.HasBadNumber;
        var spread = context.Spread(number.Number!);
        context.HasBadNumber = bad;
        return spread is null ? (PerSize.Shared<int?>(null), false) : (spread, true);
    }
}
