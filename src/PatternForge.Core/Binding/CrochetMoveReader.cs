using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads what a crochet row says beside its stitches: chains, skips, joins, rings, the other side of a chain, what is left unworked.</summary>
internal static class CrochetMoveReader
{
    /// <summary>The step at the cursor, or null with the cursor unmoved.</summary>
    public static Step? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var step = CrochetJoinReader.Standing(c, context) ?? FromChain(c, context) ?? SlipKnot(c) ?? Yarn(c) ?? Across(c) ?? (Step?)Ring(c) ?? Leave(c) ?? OtherSide(c) ?? FastenOff(c) ?? Return(c, context) ?? LastOfThem(c) ?? Loops(c) ?? CrochetJoinReader.TryRead(c, context) ?? Skip(c, context) ?? (Step?)Chain(c, context);
        if (step is null)
        {
            c.At = start;
        }

        return step;
    }

    /// <summary>"Beginning in 2nd ch from hook, ...": where the stitches told next begin.</summary>
    private static BeginAtStep? FromChain(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var isSaid = c.Eat("beg");
        if ((isSaid || c.Is("in|into")) && PlaceReader.TryRead(c, context) is { Kind: PlaceKind.ChainFromHook } place && (isSaid || c.IsDone))
        {
            return new BeginAtStep(c.SpanFrom(start), place);
        }

        return Nothing<BeginAtStep>(c, start);
    }

    private static RingStep? Ring(PhraseCursor c)
    {
        var start = c.At;
        var isColour = c.Is("with|using") && c.Is("mc", 1); // the main colour, no magic circle
        c.Eat("make|form|beg|with|into|in|using|work");
        c.Eat("a|with|the|an");
        c.Eat("a");
        if (c.Eat(isColour ? "mr" : "mr|mc") || (c.Eat("magic|adjustable|sliding") && c.Eat("ring|circle|loop")))
        {
            return new RingStep(c.SpanFrom(start));
        }

        c.At = start;
        return c.EatAll("form|make", "a|the", "ring|circle") ? new RingStep(c.SpanFrom(start)) : Nothing<RingStep>(c, start);
    }

    private static LeaveStep? Leave(PhraseCursor c)
    {
        var start = c.At;
        if (c.Eat("leave") && c.Lexemes.Skip(c.At).Any(l => l.Is("unworked") || l.Is("unused")))
        {
            var isTurningChain = c.Lexemes.Skip(c.At).Any(l => l.Norm is "tch" or "turn");
            c.At = c.Lexemes.Count;
            return new LeaveStep(c.SpanFrom(start)) { IsTurningChain = isTurningChain };
        }

        c.At = start;
        if (c.Eat("rest|rem") && c.Lexemes.Skip(c.At).Any(l => l.Is("unworked")))
        {
            c.At = c.Lexemes.Count;
            return new LeaveStep(c.SpanFrom(start));
        }

        c.At = start;
        if (c.EatAll("do", "not", "finish|complete") || c.EatAll("without", "finishing|completing"))
        {
            c.At = c.Lexemes.Count;
            return new LeaveStep(c.SpanFrom(start));
        }

        if (c.EatAll("do", "not", "work") && c.Lexemes.Skip(c.At).Any(l => l.Norm is "rem" or "last" or "tch" or "turn" or "unworked"))
        {
            var isTurningChain = c.Lexemes.Skip(c.At).Any(l => l.Norm is "tch" or "turn");
            c.At = c.Lexemes.Count;
            return new LeaveStep(c.SpanFrom(start)) { IsTurningChain = isTurningChain };
        }

        return Nothing<LeaveStep>(c, start);
    }

    private static OtherSideStep? OtherSide(PhraseCursor c)
    {
        var start = c.At;
        if ((c.Eat("work|now|rotate|cont|turn|flip") || c.Is("on|along|in|into|across|down")) && c.Lexemes.Skip(c.At).Take(6).Any(l => l.Norm is "bottom" or "opposite" or "other" or "free" or "unused") && c.Lexemes.Skip(c.At).Any(l => l.Norm is "side" or "loop" or "loops" or "lps" or "ch" or "chain" or "edge"))
        {
            c.At = c.Lexemes.Count;
            return new OtherSideStep(c.SpanFrom(start));
        }

        return Nothing<OtherSideStep>(c, start);
    }

    /// <summary>"Work across": each stitch as it comes.</summary>
    private static RunStep? Across(PhraseCursor c)
    {
        var start = c.At;
        return c.At == 0 && c.Eat("work") && (c.Eat("across|around") || c.EatAll("to", "end")) && c.IsDone ? new RunStep(c.SpanFrom(start), StitchBook.InPattern, new Target(Extent.End)) : Nothing<RunStep>(c, start);
    }

    /// <summary>"In A", "pick up B", "A:": the yarn that what follows is worked with.</summary>
    private static RemarkStep? Yarn(PhraseCursor c)
    {
        var start = c.At;
        var isTaken = c.EatAll("pu") || c.EatAll("pick", "up") || c.Eat("in|with|using|to") || c.At == 0;
        c.Eat("color|yarn|strand");
        var mayBeRing = start > 0 && c.At > start && c.Lexemes[c.At - 1].Is("in"); // "6 sc in MC" is a magic circle
        if (isTaken && !(mayBeRing && c.Is("mc")) && c.Peek() is { Atom.Text: "A" or "B" or "C" or "D" or "E" or "F" or "MC" or "CC" } && c.Peek(1) is null)
        {
            c.At++;
            return new RemarkStep(c.SpanFrom(start));
        }

        return Nothing<RemarkStep>(c, start);
    }

    /// <summary>"Make a slip knot": before the chain, and no stitch of it.</summary>
    private static RemarkStep? SlipKnot(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("make|with|beg");
        c.Eat("with|a");
        c.Eat("a");
        if (c.EatAll("sl", "knot") || c.Eat("slipknot"))
        {
            c.EatAll("on|onto", "hook");
            c.EatAll("on|onto", "your|the", "hook");
            return new RemarkStep(c.SpanFrom(start));
        }

        return Nothing<RemarkStep>(c, start);
    }

    private static FastenOffStep? FastenOff(PhraseCursor c)
    {
        var start = c.At;
        if (c.EatAll("fasten", "off") || c.EatAll("finish", "off") || c.Eat("fo") || c.EatAll("and", "fasten", "off"))
        {
            c.At = c.Lexemes.Count;
            return new FastenOffStep(c.SpanFrom(start));
        }

        return Nothing<FastenOffStep>(c, start);
    }

    /// <summary>The return pass of Tunisian crochet works the loops off; it changes no count.</summary>
    private static RemarkStep? Return(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (context.Facts.Craft == Stitches.Craft.Tunisian && TunisianPasses.IsPassName(c))
        {
            c.At = c.Lexemes.Count;
            return new RemarkStep(c.SpanFrom(start));
        }

        return Nothing<RemarkStep>(c, start);
    }

    // "working last st into top of tch": the last of the stitches told, and where it goes.
    private static RemarkStep? LastOfThem(PhraseCursor c)
    {
        var start = c.At;
        if (c.Eat("work") && c.Eat("last|final"))
        {
            c.At = c.Lexemes.Count;
            return new RemarkStep(c.SpanFrom(start));
        }

        c.At = start;
        if (c.At == 0 && c.Eat("including|incl") && c.Lexemes.Exists(l => l.Is("last") || l.Is("first")))
        {
            c.At = c.Lexemes.Count; // "across, including last st"
            return new RemarkStep(c.SpanFrom(start));
        }

        c.Eat("the");
        if (c.Eat("last|final") && c.Peek() is not null && c.Is("goes|falls|will|is|should|comes", 1))
        {
            c.At = c.Lexemes.Count; // "last hdc goes into turning ch"
            return new RemarkStep(c.SpanFrom(start));
        }

        c.At = start;
        if (c.Eat("rotate|flip") || (c.Eat("work") && c.Eat("in|over|around") && c.Eat("front|back|the|strand|ends|last|previous|prev")))
        {
            if (c.Is("piece|work|it|to|and") || c.IsDone || c.Is("of"))
            {
                c.At = c.Lexemes.Count; // "rotate work", "working in front of dc just made"
                return new RemarkStep(c.SpanFrom(start));
            }
        }

        return Nothing<RemarkStep>(c, start);
    }

    /// <summary>"Working in BLO", "in back loops only", "BLO:": said of what follows, and no matter of counts.</summary>
    private static RemarkStep? Loops(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("work");
        if (c.EatAll("taking", "up") || c.EatAll("pick", "up") || c.Eat("taking"))
        {
            c.At = c.Lexemes.Exists(l => l.Norm is "loop" or "loops") ? c.Lexemes.Count : start; // "taking up back loops only"
            return c.At > start ? new RemarkStep(c.SpanFrom(start)) : null;
        }

        c.Eat("in|through|into");
        c.Eat("the");
        var at = c.At;
        ThingReader.EatLoops(c);
        if (c.At > at && c.At > start + 1 && c.Is("ch|chain|foundation"))
        {
            c.At = c.Lexemes.Count; // "working in back bumps of ch"
        }

        if (c.At > at && (c.IsDone || (c.At > start + 1 && c.Is("around|round|the")) || c.Is("only|throughout|across|around|from")))
        {
            c.At = c.Lexemes.Count;
            return new RemarkStep(c.SpanFrom(start));
        }

        return Nothing<RemarkStep>(c, start);
    }

    private static SkipStep? Skip(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (!c.Eat("sk|skip|miss|skipping|missing|skipped"))
        {
            return null;
        }

        c.Eat("the");
        if (c.Eat("tch|t-ch") || c.EatAll("turn|beg", "ch|chain"))
        {
            return new SkipStep(c.SpanFrom(start), new Place(PlaceKind.Same, new Thing(ThingKind.Any), c.SpanFrom(start)));
        }

        var first = c.Eat("first");
        if (!first && c.Peek()?.Number is { IsOrdinal: true, IsList: false } nth && nth.Values[0] == 1)
        {
            c.At++;
            first = true;
        }

        var next = c.Eat("next|foll|last");
        c.Eat("the");
        var number = c.EatNumber();
        next |= c.Eat("next|foll|rem");
        if (ThingReader.TryRead(c, context) is not { } thing)
        {
            if (number is null && !c.Is("a"))
            {
                return Nothing<SkipStep>(c, start);
            }

            thing = c.EatAll("a") ? ThingReader.TryRead(c, context) ?? new Thing(ThingKind.Stitch) : new Thing(ThingKind.Stitch); // "sk 2"
        }

        if (c.Is("at") && c.Lexemes.Skip(c.At).Any(l => l.Is("base")))
        {
            c.At = c.Lexemes.Count;
            return new SkipStep(c.SpanFrom(start), new Place(PlaceKind.Same, thing, c.SpanFrom(start))); // under the turning chain
        }

        if (number is null && thing.Kind == ThingKind.Stitch && PlaceTail.Until(c, context, new Place(PlaceKind.Each, thing, c.SpanFrom(start))) is { } until)
        {
            return new SkipStep(c.SpanFrom(start), until); // "sk sts to next ch-1 sp"
        }

        var place = new Place(first ? PlaceKind.First : PlaceKind.Next, thing, c.SpanFrom(start)) { Count = number is null ? null : context.AmountOf(number) };
        while (!c.IsDone && c.Is("to|of|at|for|made|on|on|below|previous|row|rnd|the|armhole|underarm|opening"))
        {
            c.At = c.Lexemes.FindIndex(c.At, l => l.Is("and") || l.Is("then")) is >= 0 and var and ? and : c.Lexemes.Count;
        }

        return new SkipStep(c.SpanFrom(start), place) { SaysNext = first || next };
    }

    /// <summary>"ch 3", "3 ch", "3ch", "CH1": chains made now. "ch-3" are chains that are there.</summary>
    private static ChainStep? Chain(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("beg|commence");
        c.Eat("by");
        c.Eat("make|with|work|loosely");
        c.Eat("a");
        c.Eat("foundation|starting|base|beg");
        if (c.Is("chaining") || (c.Is("ch|chain|chains|chs")) && !c.Is("sp|space|sps|loop|loops", 1))
        {
            var said = ChainAsSaid(c.Peek()!);
            c.At++;
            context.LastName = "ch";
            context.UseNamed(said, c.SpanFrom(start));
            c.Eat("of");
            var length = c.EatNumber();
            if (length is not null && c.Is("st") && (c.Peek(1) is null || c.Is("loosely", 1)))
            {
                c.At++; // "a chain of 31 stitches"
            }

            if (length is not null && !c.EatAll("to", "turn"))
            {
                c.EatAll("for", "turn"); // "ch 1 to turn"
            }

            if (length is { Number: { IsList: false } one } && c.Is("+|plus") && c.Peek(1)?.Number is { IsList: false, IsOrdinal: false } more && (c.Peek(2) is null || c.Is("for|turn", 2)))
            {
                c.At = c.Lexemes.Count; // "ch 30 + 1 for turning"
                return new ChainStep(c.SpanFrom(start), RowContext.Constant((int)Math.Min((one.Values[0] ?? 0) + (more.Values[0] ?? 0), 1_000_000), c.SpanFrom(start)));
            }

            return new ChainStep(c.SpanFrom(start), length is null ? RowContext.Constant(1, c.SpanFrom(start)) : start == 0 && c.IsDone ? context.LongList(length) : context.AmountOf(length));
        }

        c.At = start;
        if (BeginningChain(c, context) is { } beginning)
        {
            return beginning;
        }

        c.Eat("make|with|work|commence|beg");
        c.Eat("with|a");
        if (OtherName(c, context) is { } named)
        {
            return named;
        }

        if (c.IsNumber() && c.Is("ch|chain|chains|chs", 1) && !c.Is("sp|space|sps|loop|loops|from", 2))
        {
            var number = c.EatNumber()!;
            var said = ChainAsSaid(c.Peek()!);
            c.At++;
            context.UseNamed(said, c.SpanFrom(start));
            return new ChainStep(c.SpanFrom(start), context.AmountOf(number));
        }

        if (c.Peek() is { Atom.Kind: TokenKind.Word } word && StitchReader.Split(word.Atom.Text) is (var stem, >= 0 and var digits) && stem.Equals("ch", StringComparison.OrdinalIgnoreCase) && !word.Atom.Text.Contains('-', StringComparison.Ordinal))
        {
            c.At++;
            context.UseNamed("ch", word.Span);
            return new ChainStep(word.Span, word.Atom.Number is { } list ? context.AmountOf(list) : RowContext.Constant(digits, word.Span));
        }

        return Nothing<ChainStep>(c, start);
    }

    // A chain that is named in full needs no line in the table of abbreviations.
    private static string ChainAsSaid(Lexeme word) => word.Atom.Text.StartsWith("chain", StringComparison.OrdinalIgnoreCase) ? "chain" : "ch";

    /// <summary>"Beg ch-3" as a phrase of its own: the chains that the row begins with.</summary>
    private static ChainStep? BeginningChain(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (c.Eat("beg") && ThingReader.TryChainLength(c) is { } length && c.IsDone)
        {
            context.UseNamed("ch", c.SpanFrom(start));
            return new ChainStep(c.SpanFrom(start), RowContext.Constant(length, c.SpanFrom(start)));
        }

        c.At = start;
        return null;
    }

    // "3 c s", where the header says that c s is the chain stitch.
    private static ChainStep? OtherName(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var number = c.EatNumber();
        if (!c.IsDone && CrochetReader.OperationAt(c, context) is { Gives: Stitches.StitchKind.Chain } chain)
        {
            context.Use(chain, c.SpanFrom(start));
            number ??= c.EatNumber();
            return new ChainStep(c.SpanFrom(start), number is null ? RowContext.Constant(1, c.SpanFrom(start)) : context.AmountOf(number));
        }

        c.At = start;
        return null;
    }

    private static T? Nothing<T>(PhraseCursor c, int start)
        where T : Step
    {
        c.At = start;
        return null;
    }
}
