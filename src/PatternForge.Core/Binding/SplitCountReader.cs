using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads a count told in parts: "24 [26] sts each front, 44 back", "34 sts each sleeve, 52 each for front and back". The parts add up to the whole.</summary>
internal static class SplitCountReader
{
    private const string Parts = "front|back|sleeve|sleeves|shoulder|shoulders|side|half|neck|instep|sole|heel|body|underarm|edge|arm|fronts";

    /// <summary>The whole, and the last node taken; null when the phrases are something else.</summary>
    public static Claim? TryRead(ImmutableArray<StepNode> nodes, int at, RowContext context, out int last)
    {
        last = at;
        var sections = ImmutableArray.CreateBuilder<PerSize<int?>>();
        var parts = 0;
        var isEachSide = false;
        for (var i = at; i < nodes.Length && nodes[i] is PhraseNode phrase && (i == at || phrase.Before is Separator.Comma or Separator.Semicolon); i++)
        {
            var c = new PhraseCursor(Vocabulary.Normalise(phrase.Atoms));
            if (Part(c, context) is not var (amount, times))
            {
                break;
            }

            sections.AddRange(Enumerable.Repeat(amount.Values, times));
            parts++;
            isEachSide |= !context.IsCrochet && times == 2 && phrase.Atoms[^1].Text.ToLowerInvariant() is "side" or "front" or "shoulder" or "half";
            last = i;
        }

        return parts < (isEachSide ? 1 : 2) ? null : Whole(nodes[at].Span.Cover(nodes[last].Span), sections.ToImmutable(), context);
    }

    /// <summary>"164: 26, 34, 44, 34, 26": the whole, and behind a colon its sections as bare numbers; null where that is not it.</summary>
    public static Claim? TryReadNumbers(ImmutableArray<StepNode> nodes, int at, RowContext context, out int last)
    {
        last = at;
        if (nodes[at] is not PhraseNode whole || ClaimReader.TryRead(Vocabulary.Normalise(whole.Atoms), context, introduced: true) is not { Kind: ClaimKind.Total, Of: null } total)
        {
            return null;
        }

        var sections = ImmutableArray.CreateBuilder<PerSize<int?>>();
        for (var i = at + 1; i < nodes.Length && IsSection(nodes[i], sections.Count == 0) is { } number; i++)
        {
            sections.Add(context.AmountOf(number).Values);
            last = i;
        }

        return sections.Count < 2 ? null : total with { Origin = nodes[at].Span.Cover(nodes[last].Span), Sections = sections.ToImmutable() };
    }

    private static SizedNumber? IsSection(StepNode node, bool isFirst) =>
        node is PhraseNode { Atoms: [{ Kind: TokenKind.Number, Number: { IsOrdinal: false } number }, .. var rest] } phrase
        && phrase.Before == (isFirst ? Separator.Semicolon : Separator.Comma) && (rest is [] || (rest is [var noun] && Vocabulary.NormOf(noun) == "st")) ? number : null;

    private static Claim Whole(TextSpan span, ImmutableArray<PerSize<int?>> sections, RowContext context) =>
        new(span, ClaimKind.Total, PerSize.Each([.. Enumerable.Range(0, context.SizeCount).Select(size => SumOf(sections, size))])) { Sections = sections };

    private static int? SumOf(ImmutableArray<PerSize<int?>> sections, int size)
    {
        long? sum = 0;
        foreach (var section in sections)
        {
            sum += section[size];
        }

        return sum is { } n ? (int)Math.Min(n, int.MaxValue) : null;
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
