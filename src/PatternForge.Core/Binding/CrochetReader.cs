using System.Collections.Frozen;
using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads the stitches of a crochet row with their places: "2 dc in next st", "sc in each of next 5 sts and in last st", "5 sc", "inc".</summary>
internal static class CrochetReader
{
    private const int MostAtoms = 5;

    /// <summary>The steps at the cursor, usually one; empty with the cursor unmoved when it is none.</summary>
    public static ImmutableArray<Step> TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (MeshReader.TryRead(c, context) is { } meshes)
        {
            return [meshes];
        }

        if (CrochetMoveReader.TryRead(c, context) is { } move)
        {
            context.LastSkip = move is SkipStep { Place.Count: { } skipped } ? skipped[0] ?? 0 : move is SkipStep ? 1 : 0;
            return [move];
        }

        c.At = start;
        var used = context.Used.Count;
        var stitches = Stitches(c, context);
        if (stitches.IsEmpty)
        {
            c.At = start;
            context.Used.RemoveRange(used, context.Used.Count - used);
        }
        else
        {
            context.LastSkip = 0;
        }

        return stitches;
    }

    /// <summary>True when a stitch or chains stand at the cursor.</summary>
    public static bool IsNext(PhraseCursor cursor, RowContext context)
    {
        var (at, used, bad, skip) = (cursor.At, context.Used.Count, context.HasBadNumber, context.LastSkip);
        var findings = context.Bag.Count;
        var found = TryRead(cursor, context) is [CrochetStep or ChainStep or SkipStep or ShellStep or GroupStep or MeshStep, ..];
        cursor.At = at;
        (context.HasBadNumber, context.LastSkip) = (bad, skip);
        context.Bag.TakeBack(findings);
        context.Used.RemoveRange(used, context.Used.Count - used);
        return found;
    }

    /// <summary>How far a repeat goes in crochet's words: "to last ch-1 sp", "to last 2 dc"; null with the cursor unmoved.</summary>
    public static Target? TryTarget(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (c.Is("across|around") && c.Is("to|until", 1) && c.Is("last|within|the", 2))
        {
            c.At++; // "rep from * across to last ch-1 sp"
        }

        if (c.Eat("to|until"))
        {
            c.Eat("within");
            c.Eat("the");
            if (c.IsNumber())
            {
                c.At = start;
                if (PlaceReader.UntilRemain(c, context, c.Peek()!.Span) is { Count: { } remain } place)
                {
                    return new Target(place.Until.Kind == ThingKind.Space ? Extent.LastSpaces : Extent.LastStitches, remain);
                }
            }
            else if (c.Eat("last"))
            {
                var left = c.EatNumber();
                if (ThingReader.TryRead(c, context) is { } thing)
                {
                    return new Target(thing.Kind == ThingKind.Space ? Extent.LastSpaces : Extent.LastStitches, left is null ? RowContext.Constant(1, c.SpanFrom(start)) : context.AmountOf(left));
                }
            }
        }

        c.At = start;
        if (c.EatAll("to", "around|across|eor") || c.EatAll("all", "around|across") || c.EatAll("rep", "around|across") || c.EatAll("in", "each", "rep") || c.EatAll("all", "the", "way", "around|across"))
        {
            TargetReader.EatWholeRow(c);
            return new Target(Extent.End);
        }

        c.At = start;
        return null;
    }

    private static ImmutableArray<Step> Stitches(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var isInstead = c.Peek() is { } first && first.Atom.Text.Equals("working", StringComparison.OrdinalIgnoreCase);
        if (c.At == 0 && c.Is("beg"))
        {
            var name = OperationAt(c, context); // "beg shell"
            c.At = name is null ? 1 : 0; // "start 6 sc in magic ring"
        }

        c.Eat("work|make");
        c.Eat("a|an|one");
        var number = c.EatNumber();
        if (number is not null && Popcorn(c, context, start) is { } popcorn)
        {
            return With(c, context, start, popcorn, null);
        }

        if (number is not null && c.Peek() is { Norm: "times", Atom.Text: "x" or "X" or "×" } && c.Peek(1) is { IsNumber: false })
        {
            c.At++; // "3 x inc"
        }

        if (number is null && (c.EatAll("shell|fan|scallop", "of") || c.EatAll("shell|fan|scallop", "made", "of")))
        {
            number = c.EatNumber(); // "shell of 5 dc in next ch"
        }

        var operation = OperationAt(c, context); // "front post dc" is a stitch of its own
        if (operation is null)
        {
            ThingReader.EatLoops(c);
            operation = OperationAt(c, context);
        }

        if (operation is null && number is not null)
        {
            // "17 stitches, 2 stitches in next stitch", "2 in next stitch": the stitch in hand.
            var at = c.At;
            operation = c.Eat("st") ? (c.IsDone || c.Is("in|into|evenly|across|around") ? StitchBook.AnyCrochet : null) : c.Is("in|into") && c.Is("next|same|each|last|first|the", 1) ? StitchBook.AnyCrochet : null;
            c.At = operation is null ? at : c.At;
        }

        operation ??= InFull(c, context);
        if (operation is null)
        {
            return [];
        }

        if (CrochetChangeReader.TryRead(c, context, start, operation, number) is { } change)
        {
            return [change];
        }

        var steps = With(c, context, start, operation, number);
        return isInstead && steps is [CrochetStep { Place: { Kind: PlaceKind.Each, Thing: { Kind: ThingKind.Space or ThingKind.Named } or { IsCorner: true } } each } stitch]
            ? [new InsteadStep(stitch.Origin, [stitch with { Place = null }], each.Thing)] // "..., working 3 sc in each ch-2 sp"
            : steps;
    }

    /// <summary>"popcorn in next st", "cluster in next sp": written in full and not defined, it is one stitch all the same.</summary>
    private static Operation? InFull(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (c.Eat("popcorn|bobble|cluster") || (c.Eat("puff") && (c.Eat("st") || c.Is("in|into"))))
        {
            c.Eat("st");
            if (c.Is("in|into"))
            {
                return StitchBook.OneStitch(context.Source.ToString(c.SpanFrom(start)).ToLowerInvariant());
            }
        }

        c.At = start;
        return null;
    }

    /// <summary>"5-dc popcorn", "3-tr cluster": one stitch, whatever it is made of.</summary>
    private static Operation? Popcorn(PhraseCursor c, RowContext context, int start)
    {
        var at = c.At;
        if (c.Peek()?.Atom.Kind == TokenKind.Dash)
        {
            c.At++;
        }

        if (OperationAt(c, context) is not null && c.Eat("popcorn|popcorns|pop|pc|cluster|clusters|cl|bobble|bobbles|puff|bob"))
        {
            return StitchBook.OneStitch(context.Source.ToString(c.SpanFrom(start)));
        }

        c.At = at;
        return null;
    }

    private static ImmutableArray<Step> With(PhraseCursor c, RowContext context, int start, Operation operation, Lexeme? number)
    {
        ThingReader.EatLoops(c);
        if (operation.Id != StitchBook.AnyCrochet.Id || c.Lexemes[c.At - 1].Is("st"))
        {
            context.Use(operation, c.SpanFrom(start));
        }

        var isEven = c.Eat("evenly");
        var each = number is null ? null : context.AmountOf(number);
        if (number is null && operation.Takes == 0 && c.IsNumber() && !c.Is("times", 1))
        {
            each = context.AmountOf(c.EatNumber()!); // "fsc 61"
        }

        if (operation.Makes > operation.Takes && number is null && EveryNth(c, context) is { } nth)
        {
            var span = c.SpanFrom(start);
            return [new RepeatStep(span, [new CrochetStep(span, StitchBook.AnyCrochet, RowContext.Constant(nth - 1, span), null), new CrochetStep(span, operation, null, null)]) { To = new Target(Extent.End) }];
        }

        var before = c.At;
        var place = PlaceReader.TryRead(c, context);
        if (place is { Kind: PlaceKind.Next, Thing.Kind: ThingKind.Chain, Count: null } && number is not null && c.Lexemes.Skip(before).Take(c.At - before).All(l => l.Norm is "in" or "into" or "on" or "the" or "ch" or "chain" or "foundation"))
        {
            place = null; // "40 sc in chain": one in each of so many
        }

        if (place is null && number is not null && before == c.At && (isEven || c.Is("around|along|on|evenly|across|down|up")))
        {
            // Along an edge, a leg, a side: the number is given, and nothing can be checked.
            while (!c.IsDone && !c.Is("and|then|="))
            {
                c.At++;
            }

            place = new Place(PlaceKind.Edge, new Thing(ThingKind.Any), c.SpanFrom(start));
        }

        if (place is null && isEven && number is null && before == c.At)
        {
            PlaceReader.SkipToNext(c);
            place = new Place(PlaceKind.Unclear, new Thing(ThingKind.Any), c.SpanFrom(start)); // "inc evenly": how many the count alone can tell
        }

        if (place is { Kind: PlaceKind.Each, Until: { Kind: ThingKind.Stitch, Named: null } } && isEven && number is not null)
        {
            place = place with { Kind = PlaceKind.Edge, Count = null }; // "work 40 sc evenly around"
        }

        if (place is { Kind: PlaceKind.Each } && isEven && number is null)
        {
            place = place with { Kind = PlaceKind.Unclear }; // "sc evenly around": as many as the edge takes
        }

        if (place is null)
        {
            var times = TimesReader.TryRead(c, context);
            if (times is null && each is null && c.IsNumber() && !c.Is("times", 1))
            {
                times = context.AmountOf(c.EatNumber()!); // "sc 5"
            }

            EatYarn(c);
            return [Step(operation, each ?? times, null, c, start, context)];
        }

        var steps = ImmutableArray.CreateBuilder<Step>();
        var said = c.Lexemes.Skip(before).Take(c.At - before);
        if (said.Any(l => l.Norm is "other" or "opposite") && said.Any(l => l.Is("side")))
        {
            steps.Add(new OtherSideStep(c.SpanFrom(start))); // "sc in next 10 chs along other side"
        }

        steps.Add(Step(operation, each, place, c, start, context));
        while (AndAlso(c, context) is { } next)
        {
            steps.Add(Step(operation, each, next, c, start, context));
        }

        if (place.Kind == PlaceKind.Each && AndEach(c, context) is { } other)
        {
            steps.Add(other);
        }

        EatYarn(c);
        if (c.Is("to") && c.Is("join|close|form|make|count|complete", 1))
        {
            c.At = c.Lexemes.FindIndex(c.At, l => l.Norm is "and" or "then") is >= 0 and var stop ? stop : c.Lexemes.Count; // "hdc in first sc to form last ch-3 sp"
        }

        if (c.EatAll("through", "both") || c.EatAll("through", "all"))
        {
            c.At = c.Lexemes.FindIndex(c.At, l => l.Norm is "then") is >= 0 and var stop ? stop : c.Lexemes.Count; // "through both arm and body"
        }

        if (c.Eat("as") && c.Eat("if|for|usual|before"))
        {
            c.At = c.Lexemes.Count; // "as if to tss"
        }

        return TimesReader.TryRead(c, context) is { } again ? [new GroupStep(c.SpanFrom(start), steps.ToImmutable(), again)] : steps.ToImmutable();
    }

    /// <summary>"inc in every 4th st": three plain ones before each; null with the cursor unmoved.</summary>
    private static int? EveryNth(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("in|into");
        if (c.Eat("every|each") && PlaceReader.Ordinal(c, context)?[0] is > 1 and < 1000 and var value && c.Eat("st") && (c.IsDone || (c.Eat("around|across") && c.IsDone)))
        {
            return value;
        }

        c.At = start;
        return null;
    }

    // "12 sc in A", "sc in each st across with MC"
    private static void EatYarn(PhraseCursor c)
    {
        var isYarn = c.Is("in|with") && c.Peek(1) is { } name && ((name.Norm is "mc" && c.Is("with")) || name.Norm is "cc" || (name.Atom.Text.Length == 1 && char.IsUpper(name.Atom.Text[0]))) && (c.Peek(2) is null || c.Is("and|then", 2));
        if (c.Is("in|with") && c.Peek(1) is { } colour && Colours.Contains(colour.Norm) && (c.Peek(2) is null || c.Is("and|then", 2)))
        {
            isYarn = true; // "sc 12 in white"
        }

        c.At += isYarn ? 2 : 0;
        if (c.Peek() is { Atom.Text: "A" or "B" or "C" or "D" or "E" or "MC" or "CC" } && c.Peek(1) is null)
        {
            c.At++; // "sc 10 A"
        }
    }

    private static readonly FrozenSet<string> Colours = FrozenSet.Create(StringComparer.Ordinal, "white", "black", "grey", "gray", "red", "blue", "green", "yellow", "orange", "pink", "purple", "brown", "beige", "cream", "tan", "gold", "silver", "teal", "navy", "turquoise");

    /// <summary>"1 dc in each tr and 3 dc in each ch-2 sp around": the second where its places stand among the first; null with the cursor unmoved.</summary>
    private static InsteadStep? AndEach(PhraseCursor c, RowContext context)
    {
        var (at, used) = (c.At, context.Used.Count);
        if (c.Eat("and") && c.Peek() is not null && Stitches(c, context) is [CrochetStep { Place: { Kind: PlaceKind.Each } each } stitch])
        {
            return new InsteadStep(stitch.Origin, [stitch with { Place = null }], each.Thing);
        }

        c.At = at;
        context.Used.RemoveRange(used, context.Used.Count - used);
        return null;
    }

    // "... and in each ch across", ", in last st"
    private static Place? AndAlso(PhraseCursor c, RowContext context)
    {
        var at = c.At;
        if (c.Eat("and|then") && PlaceReader.TryRead(c, context) is { } next)
        {
            return next;
        }

        c.At = at;
        return null;
    }

    private static Step Step(Operation operation, Amount? each, Place? place, PhraseCursor c, int start, RowContext context)
    {
        var span = c.SpanFrom(start);
        if (context.Book.ShellOf(operation) is not { } body)
        {
            return new CrochetStep(span, operation, each, place);
        }

        if (SeveralPlaces.Of(body) is var (places, _) && places > 1)
        {
            var takes = RowContext.Constant(places, span);
            var own = new ShellStep(span, body, new Place(PlaceKind.Own, new Thing(ThingKind.Stitch), span) { Count = takes }) { Name = operation.Id, Times = each };
            return place switch
            {
                { Kind: PlaceKind.Each } => new RepeatStep(span, [own]) { To = new Target(Extent.End) },
                { Kind: PlaceKind.EachToLast, Count: { } left } => new RepeatStep(span, [own]) { To = new Target(place.Until.Kind == ThingKind.Space ? Extent.LastSpaces : Extent.LastStitches, left) },
                { Kind: PlaceKind.Next or PlaceKind.First, Count: { } over } when over.Values.Map(n => n % places == 0 ? n / places : null) is var times => own with { Times = new Amount(times, over.Origin) },
                _ => own,
            };
        }

        if (body[0] is ChainStep && body.Length > 1 && SpecialStitches.BeginningOf(operation.Id) is { } begun && context.Book.Find(begun) is { } whole && context.Book.ShellOf(whole) is not null)
        {
            // "beg shell": the first of the row's shells, whose chain stands for a stitch
            return new ShellStep(span, body, place ?? new Place(PlaceKind.Same, new Thing(ThingKind.Any), span)) { Name = whole.Id, Times = each };
        }

        var isPicot = body.All(s => s is ChainStep or CrochetStep { Operation.Id: "sl st" });
        return place is null || isPicot
            ? new ShellStep(span, body, new Place(isPicot ? PlaceKind.Same : PlaceKind.Next, new Thing(ThingKind.Any), span) { Count = each }) { Name = operation.Id }
            : new ShellStep(span, body, place) { Name = operation.Id, Times = each };
    }

    /// <summary>The longest run of words that names a stitch.</summary>
    public static Operation? OperationAt(PhraseCursor c, RowContext context)
    {
        for (var length = Math.Min(MostAtoms, c.Lexemes.Count - c.At); length >= 1; length--)
        {
            var (first, last) = (c.Lexemes[c.At], c.Lexemes[c.At + length - 1]);
            var span = first.Span.Cover(last.Span);
            if (span.Length > 48 || first.Atom.Kind != TokenKind.Word || last.Atom.Kind is not (TokenKind.Word or TokenKind.Number) || first.Is("ch"))
            {
                continue;
            }

            var name = context.Source.ToString(span);
            if (context.Book.FindPlural(name) is { Id: not "ch" } operation && (length == 1 || !IsTwoStitches(c, length, context)))
            {
                c.At += length;
                context.LastName = name;
                return operation;
            }
        }

        return null;
    }

    private static bool IsTwoStitches(PhraseCursor c, int length, RowContext context) =>
        context.Book.Find(c.Lexemes[c.At].Atom.Text) is not null && Enumerable.Range(1, length - 1).Any(i => c.Lexemes[c.At + i].Norm is not ("st" or "tog" or "sl") && context.Book.Find(c.Lexemes[c.At + i].Atom.Text) is not null);
}
