using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads where crochet stitches go: "in next st", "in each of next 4 dc", "in 2nd ch from hook", "in next ch-2 sp", "around".</summary>
internal static class PlaceReader
{
    private static readonly Thing AnyStitch = new(ThingKind.Stitch);
    private static readonly Thing Anything = new(ThingKind.Any);

    /// <summary>The place at the cursor, or null with the cursor unmoved.</summary>
    public static Place? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (c.IsDone || Read(c, context) is not { } place)
        {
            c.At = start;
            return null;
        }

        return place with { Origin = c.SpanFrom(start) };
    }

    private static Place? Read(PhraseCursor c, RowContext context)
    {
        var origin = c.Peek()!.Span;
        if (c.Is("all") && c.Is("in|into", 1) && c.Is("same|next|one|this|the|indicated|st|sp", 2))
        {
            c.At++; // "all in same st"
        }

        if (WholeRow(c))
        {
            var whole = new Place(PlaceKind.Each, AnyStitch, origin);
            return PlaceTail.Until(c, context, whole) ?? whole;
        }

        if ((ToLast(c, context, origin) ?? UntilRemain(c, context, origin)) is { } toLast)
        {
            return toLast;
        }

        if (c.Is("over") && c.Is("to", 1))
        {
            c.At++; // "slip stitch over to the corner"
        }

        var prepositioned = c.Eat("in|into|to|over|on|at|through|under|around|round|rnd|from|with|inside") || (c.Is("across|along") && c.Is("next|first|last|each|the", 1) && c.Eat("across|along"));
        var before = c.At;
        ThingReader.EatLoops(c);
        if (prepositioned && c.At > before && (ToLast(c, context, origin) ?? (WholeRow(c) ? new Place(PlaceKind.Each, AnyStitch, origin) : null)) is { } inLoops)
        {
            return inLoops; // "sc in BLO across to last st"
        }

        if (!prepositioned && !c.Is("each|every|next|same|between"))
        {
            return null;
        }

        if (c.Is("both|all|two") && c.Is("layers|thicknesses|pieces", 1))
        {
            c.At = c.Lexemes.Count;
            return new Place(PlaceKind.Unclear, AnyStitch, origin);
        }

        c.Eat("the");
        ThingReader.EatLoops(c);
        if (PlaceBack.JustMade(c, context, origin) is { } made)
        {
            return made;
        }

        if (c.EatAll("center", "of"))
        {
            c.Eat("the"); // "sl st to center of first loop"
        }

        return Between(c, origin) ?? Ring(c, origin) ?? FromHook(c, context, origin) ?? PlaceBack.Same(c, context, origin) ?? InGroup(c, context, origin) ?? TurningChain(c, context, origin) ?? PlaceBack.Indicated(c, origin) ?? Counted(c, context, origin, prepositioned);
    }

    /// <summary>"sc to last 2 sts", "sc until last st", "sc to end": how far, and no place.</summary>
    private static Place? ToLast(PhraseCursor c, RowContext context, TextSpan origin)
    {
        var start = c.At;
        if (c.Eat("to|until|across"))
        {
            c.Eat("to");
            c.Eat("within");
            c.Eat("the");
            if (c.Eat("last"))
            {
                var count = c.EatNumber();
                if ((ThingReader.TryRead(c, context) ?? (count is not null && (c.IsDone || c.Is("and|then")) ? AnyStitch : null)) is { } until) // "sc to last 2"
                {
                    return new Place(PlaceKind.EachToLast, AnyStitch, origin) { Until = until, Count = count is null ? RowContext.Constant(1, origin) : context.AmountOf(count) };
                }
            }
            else if (c.Eat("end"))
            {
                TargetReader.EatWholeRow(c);
                return new Place(PlaceKind.Each, AnyStitch, origin);
            }
        }

        c.At = start;
        return null;
    }

    /// <summary>"until 2 sc remain", "to 1 st from end": so many are left; null with the cursor unmoved.</summary>
    public static Place? UntilRemain(PhraseCursor c, RowContext context, TextSpan origin)
    {
        var start = c.At;
        c.Eat("across");
        c.Eat("up");
        if (c.Eat("to|until"))
        {
            c.Eat("only");
            if (c.EatNumber() is { } count && ThingReader.TryRead(c, context) is { } until && (c.Eat("rem|left") || c.EatAll("from|before", "end") || c.EatAll("from|before", "the", "end")))
            {
                return new Place(PlaceKind.EachToLast, AnyStitch, origin) { Until = until, Count = context.AmountOf(count) };
            }
        }

        c.At = start;
        return null;
    }

    /// <summary>"across", "around", "across row", "around to end": the whole row, and no edge ("across long edge").</summary>
    private static bool WholeRow(PhraseCursor c)
    {
        var start = c.At;
        if (!c.Eat("across|around"))
        {
            return false;
        }

        c.EatAll("all", "st");
        c.Eat("entire|whole|the");
        TargetReader.EatWholeRow(c);
        if (c.IsDone || c.Is("and|then|working|work|rep|to|join|turn|=") || (c.IsNumber() && !c.Is("skipped|missed", 1)))
        {
            return true;
        }

        c.At = start;
        return false;
    }

    /// <summary>"between next 2 sts" is the gap; "in each sp between groups" cannot be told from the counts.</summary>
    private static Place? Between(PhraseCursor c, TextSpan origin)
    {
        var start = c.At;
        var spaces = c.Eat("each|every|next|first|last|same") | c.Eat("sp|sps|space|spaces|gap");
        if (spaces && c.Eat("before|after") && c.Eat("next|last|first|this") && c.Eat("st|bar|m"))
        {
            return new Place(PlaceKind.Same, Anything, origin); // "Tss in sp before next st": one more, and no stitch used
        }

        if (!c.Eat("between"))
        {
            c.At = start;
            return null;
        }

        var many = c.At > start + 1 && spaces;
        c.Eat("the");
        if (many && GroupGap(c, start) is { } gap)
        {
            return new Place(gap, new Thing(ThingKind.Gap), origin);
        }

        c.Eat("next");
        var number = c.EatNumber();
        var isPlain = c.Eat("st|dc|tr|sc|hdc|htr|sts") && (c.IsDone || c.Is("and|then"));
        if (isPlain && !many)
        {
            return new Place(PlaceKind.Gap, AnyStitch, origin);
        }

        c.At = c.Lexemes.Count;
        return new Place(PlaceKind.Unclear, AnyStitch, origin);
    }

    // "each sp between groups", "next space between 3-dc groups": which of them; null with the cursor unmoved
    private static PlaceKind? GroupGap(PhraseCursor c, int start)
    {
        var at = c.At;
        c.Eat("2|two");
        if (c.IsNumber() && c.Peek(1)?.Atom.Kind == Syntax.TokenKind.Dash)
        {
            c.At += 2;
        }

        c.Eat("st|dc|tr|hdc|htr");
        if (c.Eat("group|groups|grp|grps|cluster|clusters") && (c.Eat("across") || c.IsDone || c.Is("and|then")) && (c.IsDone || c.Is("and|then")))
        {
            return c.Lexemes[start].Norm switch
            {
                "each" or "every" => PlaceKind.Each,
                "first" => PlaceKind.First,
                "last" => PlaceKind.Last,
                "next" => PlaceKind.Next,
                _ => null,
            };
        }

        c.At = at;
        return null;
    }

    private static Place? Ring(PhraseCursor c, TextSpan origin)
    {
        var start = c.At;
        c.Eat("center");
        c.Eat("of");
        c.Eat("the|magic|adjustable");
        if (c.Eat("ring|circle|mr") || (c.At > start && c.Lexemes[c.At - 1].Is("magic") && c.Eat("loop")))
        {
            return new Place(PlaceKind.Ring, AnyStitch, origin);
        }

        c.At = start;
        return null;
    }

    // "2nd ch from hook"
    private static Place? FromHook(PhraseCursor c, RowContext context, TextSpan origin)
    {
        var start = c.At;
        if (Ordinal(c, context) is { } number && c.Eat("ch|st|chain") && c.Eat("from"))
        {
            c.Eat("the");
            if (c.Eat("hook"))
            {
                return new Place(PlaceKind.ChainFromHook, new Thing(ThingKind.Chain), origin) { Count = number };
            }
        }

        c.At = start;
        return null;
    }

    /// <summary>To the end of what is said of the place.</summary>
    public static void SkipToNext(PhraseCursor c)
    {
        while (!c.IsDone && !c.Is("and|then"))
        {
            c.At++;
        }
    }

    // "center dc of next shell", "3rd dc of 5-dc group"
    private static Place? InGroup(PhraseCursor c, RowContext context, TextSpan origin)
    {
        var start = c.At;
        Amount? number = null;
        if (Ordinal(c, context) is { } nth)
        {
            number = nth;
        }
        else if (!c.Eat("center|middle"))
        {
            return null;
        }

        if (ThingReader.TryRead(c, context) is { Kind: ThingKind.Stitch or ThingKind.Named } && c.Eat("of|in|at"))
        {
            c.Eat("the");
            if (number is null && CornerOf(c, origin) is { } corner)
            {
                return corner;
            }

            c.Eat("next|each|same|foll|first");
            var group = c.EatNumber() is not null;
            if (c.Lexemes.Skip(c.At).Take(4).Any(l => l.Norm is "shell" or "shells" or "group" or "grp" or "fan" or "cluster" or "v-st") || group)
            {
                SkipToNext(c);
                return new Place(PlaceKind.InGroup, AnyStitch, origin) { Count = number };
            }
        }

        c.At = start;
        return null;
    }

    /// <summary>"(center sc) of each corner", "of next 3-sc corner": the stitch at a corner's point; null with the cursor unmoved.</summary>
    private static Place? CornerOf(PhraseCursor c, TextSpan origin)
    {
        var start = c.At;
        var kind = c.Eat("each|every|all") ? PlaceKind.Each : c.Eat("first") ? PlaceKind.First : PlaceKind.Next;
        c.Eat("next|foll|of|the");
        if (c.IsNumber() && (c.Peek(1)?.Atom.Kind == Syntax.TokenKind.Dash || c.Is("st|sc|dc|hdc|tr|htr", 1)))
        {
            c.At += c.Peek(1)!.Atom.Kind == Syntax.TokenKind.Dash ? 3 : 2;
        }

        if (c.Eat("corner|corners") && (c.IsDone || c.Is("and|then|across|around")))
        {
            c.Eat("across|around");
            return new Place(kind, new Thing(ThingKind.Stitch, IsCorner: true), origin);
        }

        c.At = start;
        return null;
    }

    private static Place? TurningChain(PhraseCursor c, RowContext context, TextSpan origin)
    {
        var start = c.At;
        var isTop = false;
        if (Ordinal(c, context) is not null && !(c.Is("st") && c.Peek(1) is null) && (c.Eat("ch|st|chain") | c.Is("of")) && (c.Is("of|to") || c.IsDone))
        {
            isTop = true;
            var isFirst = c.At - start == 2 && c.Lexemes[start].Number is { IsList: false } first && first.Values[0] == 1 && c.Lexemes[start + 1].Is("st");
            if (!c.Eat("of"))
            {
                return new Place(PlaceKind.TurningChain, Anything, origin);
            }

            if (isFirst && c.Eat("ch|chain") && (c.IsDone || c.Is("and")))
            {
                return new Place(PlaceKind.TurningChain, Anything, origin) { FromStart = 1 }; // "in 1st st of ch": of the chain that this round begins with, or of the round below
            }
        }
        else
        {
            c.At = start;
            isTop = c.EatAll("top", "of");
        }

        c.Eat("the");
        var isBeginning = c.Eat("beg|turn|first|starting");
        isBeginning |= c.Eat("turn|beg");
        if (c.Eat("tch|t-ch"))
        {
            return new Place(PlaceKind.TurningChain, Anything, origin);
        }

        var length = ThingReader.TryChainLength(c);
        if (c.Is("sp|space|loop") || (length is null && !((isTop || isBeginning) && c.Eat("ch|chain|chains"))) || !(isTop || isBeginning) || (length is null && isBeginning && !isTop && c.Lexemes[c.At - 2].Is("first")))
        {
            c.At = start;
            return null;
        }

        return new Place(PlaceKind.TurningChain, new Thing(ThingKind.Any, null, length), origin);
    }

    /// <summary>"each of next 4 sts", "next ch-2 sp", "first st", "last 3 dc", "each st across".</summary>
    private static Place? Counted(PhraseCursor c, RowContext context, TextSpan origin, bool prepositioned)
    {
        PlaceKind? said = null;
        if (c.Eat("each|every|all"))
        {
            said = PlaceKind.Each;
            c.Eat("of");
            c.Eat("the");
            said = c.Eat("next|foll") ? PlaceKind.Next : c.Eat("first") ? PlaceKind.First : c.Eat("last") ? PlaceKind.Last : said;
            c.Eat("rem");
        }
        else if (c.Eat("next|foll"))
        {
            said = PlaceKind.Next;
        }
        else if (c.Eat("first|beg"))
        {
            said = PlaceKind.First;
        }
        else if (c.Is("last") || (c.Is("end") && c.Peek(1) is not null))
        {
            c.At++;
            said = PlaceKind.Last;
        }
        else if (c.Eat("rem|any"))
        {
            said = c.Lexemes[c.At - 1].Is("any") ? PlaceKind.First : PlaceKind.Each;
        }

        var ordinal = said is PlaceKind.Next or null ? Ordinal(c, context) : null;
        var count = ordinal is null && !IsLengthOfSpace(c, context) ? c.EatNumber() : null;
        if (c.Eat("of"))
        {
            c.Eat("the");
        }

        c.Eat("next|foll");
        ThingReader.EatLoops(c);
        if (said == PlaceKind.First && c.EatAll("ch", "made"))
        {
            return new Place(PlaceKind.ChainFromHook, new Thing(ThingKind.Chain), origin) { Count = RowContext.Constant(2, origin) }; // "in first ch made"
        }

        var isCorner = c.Is("corner") && c.Is("st|sc|dc|hdc|tr|htr", 1);
        var thing = ThingReader.TryRead(c, context);
        if (thing is null && said is not null && (count is not null || c.IsDone || c.Is("and|then|times")))
        {
            thing = AnyStitch; // "sc in next 5", "1 sc in next"
        }
        else if (thing is null && ordinal is not null && c.IsDone)
        {
            thing = AnyStitch; // "miss 3, 1 dc into fourth"
        }

        if (thing is not { } found || (said is null && count is null && !prepositioned))
        {
            return null;
        }

        if (found.Kind is ThingKind.Space or ThingKind.Chain && OfGroup(c, context, found) is { } of)
        {
            (found, said, count, ordinal) = (of.Thing, of.Said ?? said, found.Kind == ThingKind.Chain ? null : count, null);
        }

        if (said == PlaceKind.Last && c.Eat("made|worked"))
        {
            return new Place(PlaceKind.JustMade, found, origin); // "sl st in last sc made"
        }

        int? fromStart = ordinal?[0] is > 1 and var skipped && !FollowsSkip(context, skipped) ? skipped : null;
        if (isCorner)
        {
            found = new Thing(ThingKind.Stitch, IsCorner: true);
        }

        if (fromStart is not null && (isCorner || found.Kind is not (ThingKind.Stitch or ThingKind.Named)))
        {
            return new Place(PlaceKind.Unclear, found, origin);
        }

        var kind = said ?? PlaceKind.Next;
        var place = new Place(kind == PlaceKind.Each && count is not null ? PlaceKind.Next : kind, found, origin) { Count = count is null ? null : context.AmountOf(count), FromStart = fromStart };
        return PlaceTail.Read(c, context, place);
    }

    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];

    /// <summary>"2nd" or "second"; "first" is left for the caller. Null with the cursor unmoved.</summary>
    public static Amount? Ordinal(PhraseCursor c, RowContext context)
    {
        if (c.Peek()?.Number is { IsOrdinal: true } number)
        {
            c.At++;
            return context.AmountOf(number);
        }

        if (c.Peek() is { } word && Array.IndexOf(Ordinals, word.Norm) is > 0 and var at)
        {
            c.At++;
            return RowContext.Constant(at + 1, word.Span);
        }

        return null;
    }

    /// <summary>"ch-1 sp of each V-st", "first 3 chs of next ch-5 loop": the space of a group, or the space whose chains they are; null with the cursor unmoved.</summary>
    private static (Thing Thing, PlaceKind? Said)? OfGroup(PhraseCursor c, RowContext context, Thing found)
    {
        var start = c.At;
        if (c.Eat("of|in"))
        {
            c.Eat("the");
            PlaceKind? said = c.Eat("each|every|all") ? PlaceKind.Each : c.Eat("next|foll") ? PlaceKind.Next : c.Eat("first") ? PlaceKind.First : c.Eat("last") ? PlaceKind.Last : c.Eat("same") ? PlaceKind.Same : null;
            if ((said is not null || found.Kind == ThingKind.Chain) && ThingReader.TryRead(c, context) is { Kind: ThingKind.Space or ThingKind.Named } of && (found.Kind == ThingKind.Space ? of.Kind == ThingKind.Named : of.Kind == ThingKind.Space))
            {
                return (found.Kind == ThingKind.Space ? found : of, said);
            }
        }

        c.At = start;
        return null;
    }

    // "3ch sp" is one space, not three.
    private static bool IsLengthOfSpace(PhraseCursor c, RowContext context)
    {
        var at = c.At;
        var isLength = c.IsNumber() && ThingReader.TryRead(c, context) is { Kind: ThingKind.Space, Length: not null };
        c.At = at;
        return isLength;
    }

    // "miss 3; 1 dc into fourth": the fourth is the next one.
    private static bool FollowsSkip(RowContext context, int ordinal) => context.LastSkip == ordinal - 1;
}
