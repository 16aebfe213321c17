using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads a count told in parts: "24 [26] sts each front, 44 back", "34 sts each sleeve, 52 each for front and back". The parts add up to the whole.</summary>
internal static class SplitCountReader
{
    private const string Parts = "front|back|sleeve|sleeves|shoulder|shoulders|side|half|neck|instep|sole|heel|body|underarm|edge|arm|fronts";

    /// <summary>The whole, and the last node taken; null when the phrases are something else.</summary>
    public static Claim? TryRead(ImmutableArray<StepNode> nodes, int at, RowContext context, out int last)
    {
        last = at;
        var sum = new long?[context.SizeCount];
        Array.Fill(sum, 0);
        var parts = 0;
        var isEachSide = false;
        for (var i = at; i < nodes.Length && nodes[i] is PhraseNode phrase && (i == at || phrase.Before is Separator.Comma or Separator.Semicolon); i++)
        {
            var c = new PhraseCursor(Vocabulary.Normalise(phrase.Atoms));
            if (Part(c, context) is not var (amount, times))
            {
                break;
            }

            for (var size = 0; size < sum.Length; size++)
            {
                sum[size] += (long?)amount[size] * times;
            }

            parts++;
            isEachSide |= !context.IsCrochet && times == 2 && phrase.Atoms[^1].Text.ToLowerInvariant() is "side" or "front" or "shoulder" or "half";
            last = i;
        }

        return parts < (isEachSide ? 1 : 2) ? null : new Claim(nodes[at].Span.Cover(nodes[last].Span), ClaimKind.Total, PerSize.Each([.. sum.Select(n => n is null ? (int?)null : (int)Math.Min(n.Value, int.MaxValue))]));
    }

    private static (Amount Amount, int Times)? Part(PhraseCursor c, RowContext context)
    {
        c.Eat("and");
        if (c.EatNumber() is not { } number)
        {
            return null;
        }

        var each = c.Eat("each");
        c.Eat("st");
        c.Eat("for|on|at");
        each |= c.Eat("each");
        c.Eat("for|on");
        c.Eat("the");
        each |= c.Eat("both|each");
        c.Eat("left|right");
        if (!c.Eat(Parts))
        {
            return null;
        }

        // "52 each for front and back"
        var named = 1;
        while (c.Eat("and"))
        {
            c.Eat("the");
            named += c.Eat(Parts) ? 1 : 10;
        }

        return !c.IsDone || named > 2 || (named == 2 && !each) ? null : (context.AmountOf(number), each ? 2 : 1);
    }
}
