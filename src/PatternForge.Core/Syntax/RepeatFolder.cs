using System.Collections.Immutable;

namespace PatternForge.Core.Syntax;

/// <summary>Finds the partner of each repeat mark: "*A; rep from * to end", "*A* 3 times", "A. Rep to end.". A mark without one stays a <see cref="MarkNode"/>.</summary>
public static class RepeatFolder
{
    /// <summary>Folds one level of a row.</summary>
    public static ImmutableArray<StepNode> Fold(ImmutableArray<StepNode> steps)
    {
        if (!MayRepeat(steps))
        {
            return steps;
        }

        var folded = ImmutableArray.CreateBuilder<StepNode>(steps.Length);
        var at = 0;
        while (at < steps.Length)
        {
            switch (steps[at])
            {
                case MarkNode mark when WorkedAgain(steps, at, mark.Mark) is { } again:
                    folded.AddRange(again.Parts);
                    at = again.Next;
                    break;
                case MarkNode mark when Partner(steps, at, mark.Mark) is { } partner:
                    folded.Add(Make(steps, at, mark, partner, out at));
                    break;
                case PhraseNode phrase when at > 0 && !(steps[at - 1] is GroupNode && phrase.Before == Separator.None) && IsBareRepeat(phrase, steps, at, out var extent, out var next) && !folded.Any(s => s is RepeatNode):
                    var body = folded.ToImmutable();
                    folded.Clear();
                    folded.Add(new RepeatNode(body[0].Span.Cover(steps[next - 1].Span), body[0].Before, body, extent, saysRepeat: false));
                    at = next;
                    break;
                default:
                    folded.Add(steps[at]);
                    at++;
                    break;
            }
        }

        return folded.DrainToImmutable();
    }

    private static bool MayRepeat(ImmutableArray<StepNode> steps)
    {
        foreach (var step in steps)
        {
            if (step is MarkNode || (step is PhraseNode phrase && IsRepeatWord(phrase.Atoms[0])))
            {
                return true;
            }
        }

        return false;
    }

    private readonly record struct Found(int End, bool SaysRepeat);

    /// <summary>The "rep from *" or closing star that belongs to the mark at <paramref name="open"/>.</summary>
    private static Found? Partner(ImmutableArray<StepNode> steps, int open, string mark)
    {
        for (var i = open + 1; i < steps.Length; i++)
        {
            if (steps[i] is PhraseNode phrase && SaysRepeat(phrase)
                && i + 1 < steps.Length && steps[i + 1] is MarkNode named && named.Mark == mark)
            {
                return i == open + 1 ? null : new Found(i, true);
            }

            if (steps[i] is MarkNode other && other.Mark == mark)
            {
                return i == open + 1 ? null : new Found(i, false);
            }
        }

        // "*A. 11 times.": the number stands alone, and nothing else says what is repeated.
        for (var i = open + 2; i < steps.Length; i++)
        {
            if (steps[i] is PhraseNode { Before: Separator.Stop, Atoms: [{ Kind: TokenKind.Number }, var times] } && times.Is("times"))
            {
                return new Found(i, false);
            }
        }

        return null;
    }

    /// <summary>"*A*, B; rep from * to * once": A, then B, then A again.</summary>
    private static (ImmutableArray<StepNode> Parts, int Next)? WorkedAgain(ImmutableArray<StepNode> steps, int open, string mark)
    {
        bool IsMark(int at) => at < steps.Length && steps[at] is MarkNode other && other.Mark == mark;
        var close = open + 1;
        while (close < steps.Length && !IsMark(close))
        {
            close++;
        }

        var says = close + 1;
        while (says < steps.Length && !(steps[says] is PhraseNode phrase && SaysRepeat(phrase)))
        {
            if (IsMark(says))
            {
                return null;
            }

            says++;
        }

        var isNamed = says > close + 1 && IsMark(says + 1) && says + 2 < steps.Length && steps[says + 2] is PhraseNode { Atoms: [var to] } && (to.Is("to") || to.Is("and")) && IsMark(says + 3);
        if (close == open + 1 || !isNamed || steps[close] is not MarkNode || (close > open && steps[close - 1] is PhraseNode before && SaysRepeat(before)))
        {
            return null;
        }

        var body = steps.AsSpan(open + 1, close - open - 1).ToImmutableArray();
        var next = says + 4;
        ImmutableArray<Atom> extent = [];
        if (next < steps.Length && steps[next] is PhraseNode { Before: Separator.None } words)
        {
            extent = [.. words.Atoms.Where(a => !a.Is("more"))];
            next++;
        }

        var again = new RepeatNode(steps[says].Span.Cover(steps[next - 1].Span), steps[says].Before, body, extent, saysRepeat: false);
        return ([.. body, .. steps[(close + 1)..says], again], next);
    }

    private static RepeatNode Make(ImmutableArray<StepNode> steps, int open, MarkNode mark, Found partner, out int next)
    {
        var body = steps.AsSpan(open + 1, partner.End - open - 1).ToImmutableArray();
        next = partner.End + 1;
        var saysRepeat = partner.SaysRepeat;
        if (steps[partner.End] is PhraseNode alone && !saysRepeat)
        {
            return new RepeatNode(mark.Span.Cover(alone.Span), mark.Before, body, alone.Atoms, saysRepeat: false);
        }

        if (saysRepeat)
        {
            next++; // the mark named behind "rep from"
        }
        else if (next + 1 < steps.Length && steps[next] is PhraseNode phrase && SaysRepeat(phrase)
            && steps[next + 1] is MarkNode again && again.Mark == mark.Mark)
        {
            next += 2; // "*A*; rep from * ..."
            saysRepeat = true;
        }

        // "... from * to *", "between * and *": the second mark only says where the group ends.
        if (next + 1 < steps.Length && steps[next] is PhraseNode { Atoms: [var to] } && (to.Is("to") || to.Is("and")) && steps[next + 1] is MarkNode { Mark: var last } && last == mark.Mark)
        {
            next += 2;
        }

        ImmutableArray<Atom> extent = [];
        if (next < steps.Length && steps[next] is PhraseNode { Before: Separator.None } words)
        {
            // "between *s to end": the plural of the mark.
            extent = words.Atoms[0] is { SpaceBefore: false, Text: "s" } ? words.Atoms[1..] : words.Atoms;
            next++;
        }
        else if (next < steps.Length && steps[next] is GroupNode { Body: [PhraseNode times] } && times.Atoms.Any(a => a.Is("times") || a.Is("time")))
        {
            extent = times.Atoms;
            next++;
        }
        else if (next < steps.Length && steps[next] is PhraseNode { Before: Separator.Comma } afterComma && IsExtent(afterComma))
        {
            extent = afterComma.Atoms;
            next++;
        }

        var lastPass = LastPass(steps, body, mark.Mark, ref extent, ref next);
        return new RepeatNode(mark.Span.Cover(steps[next - 1].Span), mark.Before, body, extent, saysRepeat, lastPass);
    }

    /// <summary>"..., ending last rep at **" and "..., then from * to ** once more": the body up to its own mark, worked once more.</summary>
    private static ImmutableArray<StepNode> LastPass(ImmutableArray<StepNode> steps, ImmutableArray<StepNode> body, string mark, ref ImmutableArray<Atom> extent, ref int next)
    {
        var inner = InnerMark(body, mark);
        if (inner.Node is null || next >= steps.Length)
        {
            return [];
        }

        bool IsInner(int at) => at < steps.Length && steps[at] is MarkNode named && named.Mark == inner.Node.Mark;
        if (extent is [.., var at] && at.Is("at") && EndAt(extent) is var cut and >= 0 && IsInner(next))
        {
            extent = extent[..cut];
            next++;
            return body[..inner.At];
        }

        if (steps[next] is not PhraseNode { Before: Separator.Comma or Separator.Semicolon } phrase)
        {
            return [];
        }

        if (phrase.Atoms[^1].Is("at") && EndAt(phrase.Atoms) == 0 && IsInner(next + 1))
        {
            next += 2;
            return body[..inner.At];
        }

        var isAgain = phrase.Atoms[^1].Is("from") && next + 3 < steps.Length && steps[next + 1] is MarkNode from && from.Mark == mark
            && steps[next + 2] is PhraseNode { Atoms: [var to] } && to.Is("to") && IsInner(next + 3);
        if (!isAgain)
        {
            return [];
        }

        next += 4;
        if (next < steps.Length && steps[next] is PhraseNode { Before: Separator.None, Atoms: [var once, ..] } && once.Is("once"))
        {
            next++;
        }

        return body[..inner.At];
    }

    /// <summary>The first mark in a repeat's body that is not the repeat's own.</summary>
    private static (MarkNode? Node, int At) InnerMark(ImmutableArray<StepNode> body, string mark)
    {
        for (var i = 0; i < body.Length; i++)
        {
            if (body[i] is MarkNode node && node.Mark != mark)
            {
                return (node, i);
            }
        }

        return (null, 0);
    }

    // Where "ending (last rep) at" begins; -1 when there are no such words.
    private static int EndAt(ImmutableArray<Atom> atoms)
    {
        for (var i = 0; i < atoms.Length; i++)
        {
            if (atoms[i].Is("ending") || atoms[i].Is("end") || atoms[i].Is("finishing") || atoms[i].Is("finish"))
            {
                return i;
            }
        }

        return -1;
    }

    // "rep from *, across": a comma too many.
    private static bool IsExtent(PhraseNode phrase) => phrase.Atoms[0].Is("across") || phrase.Atoms[0].Is("around");

    /// <summary>True for "rep from" and the like, and nothing else.</summary>
    public static bool SaysRepeat(PhraseNode phrase) => RepeatWords(phrase) == phrase.Atoms.Length;

    /// <summary>How many atoms "rep", "repeat", "rep from", "repeat between" take at the start of a phrase; null for other words.</summary>
    private static int? RepeatWords(PhraseNode phrase)
    {
        var atoms = phrase.Atoms;
        var at = 0;
        if ((atoms[0].Is("then") || atoms[0].Is("and")) && atoms.Length > 1)
        {
            at++;
        }

        if (!IsRepeatWord(atoms[at]))
        {
            return null;
        }

        at++;
        return at < atoms.Length && (atoms[at].Is("from") || atoms[at].Is("between")) ? at + 1 : at;
    }

    private static bool IsRepeatWord(Atom atom) => atom.Is("rep") || atom.Is("repeat") || atom.Is("repeating") || atom.Is("reps") || atom.Is("repeats");

    /// <summary>A bare "Rep.", "Repeat to end", "Rep until end of rnd": the row so far, to the end.</summary>
    private static bool IsBareRepeat(PhraseNode phrase, ImmutableArray<StepNode> steps, int at, out ImmutableArray<Atom> extent, out int next)
    {
        next = at + 1;
        extent = [];
        if (!IsRepeatWord(phrase.Atoms[0]))
        {
            return false;
        }

        if (phrase.Atoms.Length == 1)
        {
            // "Rep from" its own mark is handled above; "Rep * ..." without an opening mark is not a bare repeat.
            return next >= steps.Length || steps[next] is not (MarkNode or GroupNode);
        }

        var rest = phrase.Atoms[1..];
        if (rest[0].Is("until") || rest[0].Is("to") || rest[0].Is("around") || rest[0].Is("across"))
        {
            if (rest.Any(a => a.Is("end") || a.Is("around") || a.Is("across")) && !rest.Any(a => a.Is("measures")))
            {
                extent = rest;
                return true;
            }
        }

        return false;
    }
}
