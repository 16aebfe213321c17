using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads joins: "join", "join with sl st in first sc", "sl st in first sc to join", "join B with standing dc in st", "join yarn in any ch-2 sp".</summary>
internal static class CrochetJoinReader
{
    /// <summary>The step at the cursor, or null with the cursor unmoved.</summary>
    public static Step? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var step = Join(c, context) ?? SlipToJoin(c, context);
        if (step is null)
        {
            c.At = start;
        }

        return step;
    }

    private static Step? Join(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("and");
        c.Eat("re-join|rejoin");
        if (!c.Eat("join|attach") && c.At == start)
        {
            return null;
        }

        if (c.At == start + 1 && c.Lexemes[start].Is("and"))
        {
            return null;
        }

        var rest = c.Lexemes.Skip(c.At).ToList();
        if (rest.Exists(l => l.Norm is "ring" or "circle") && !rest.Exists(l => l.Norm is "any" or "yarn"))
        {
            c.At = c.Lexemes.Count;
            return new RingStep(c.SpanFrom(start));
        }

        if (rest.FindIndex(l => l.Is("standing")) is var standing and >= 0)
        {
            c.At += standing + 1;
            return Standing(c, context, start);
        }

        if (IsNewYarn(rest))
        {
            return NewYarn(c, context, start);
        }

        var length = rest.Select(ThingReader.LengthOf).FirstOrDefault(l => l is not null) ?? NumberBehind(rest);
        if (rest.FindIndex(l => l.Norm is "sl" or "ss") is >= 0 and var slip && (rest[slip].Is("ss") || (slip + 1 < rest.Count && rest[slip + 1].Is("st"))))
        {
            var span = rest[slip].Is("ss") ? rest[slip].Span : rest[slip].Span.Cover(rest[slip + 1].Span);
            context.UseNamed(context.Source.ToString(span), span);
        }

        c.At = c.Lexemes.FindIndex(c.At, l => l.Norm is "turn" or "and") is >= 0 and var stop ? stop : c.Lexemes.Count;
        return new CloseStep(c.SpanFrom(start), length);
    }

    /// <summary>"standing dc in any ch-1 sp" by itself, the yarn being named before it; null with the cursor unmoved for other words.</summary>
    public static Step? Standing(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("work|make");
        c.Eat("a|one");
        if (c.EatAll("stacked", "sc") && context.Book.Find("dc") is { } tall)
        {
            return new CrochetStep(c.SpanFrom(start), tall, null, new Place(PlaceKind.First, new Thing(ThingKind.Any), c.SpanFrom(start))); // two short stitches, one on the other
        }

        if (c.Is("beg") && c.Is("standing|chainless|chain-less|false", 1))
        {
            c.At++;
        }

        var isStanding = c.Eat("standing|chainless|chain-less|false");
        c.At += isStanding && c.Is("beg|standing") ? 1 : 0;
        if (isStanding && Standing(c, context, start) is { } step)
        {
            return step;
        }

        c.At = start;
        return null;
    }

    /// <summary>"standing dc in same st as sl st": a first stitch without a chain.</summary>
    private static CrochetStep? Standing(PhraseCursor c, RowContext context, int start)
    {
        if (CrochetReader.OperationAt(c, context) is not { } operation)
        {
            return null;
        }

        var place = PlaceReader.TryRead(c, context);
        c.At = c.Lexemes.Count;
        context.Use(operation, c.SpanFrom(start));
        var first = new Place(PlaceKind.First, new Thing(ThingKind.Any), c.SpanFrom(start));
        return new CrochetStep(c.SpanFrom(start), operation, null, place is { Thing.Kind: ThingKind.Space } ? first with { Thing = place.Thing } : first);
    }

    private static bool IsNewYarn(List<Lexeme> rest) =>
        rest.Exists(l => l.Norm is "yarn" or "any" or "color" or "mc" or "cc" or "new" or "thread" or "cotton") || (rest.Count > 0 && rest[0].Atom.Text.Length == 1 && char.IsUpper(rest[0].Atom.Text[0]));

    /// <summary>"Join yarn in any ch-2 sp", "join A with sc in first st": the row begins there.</summary>
    private static Step NewYarn(PhraseCursor c, RowContext context, int start)
    {
        while (!c.IsDone && !c.Is("in|to|at|with|into"))
        {
            c.At++;
        }

        if (c.Is("with") && !c.Is("sl|ss|a", 1) && !c.Is("rs|ws", 1))
        {
            // "join A with sc in first st": that stitch is the first.
            c.At++;
            if (CrochetReader.OperationAt(c, context) is { Takes: 1 } stitch)
            {
                var place = PlaceReader.TryRead(c, context) ?? new Place(PlaceKind.First, new Thing(ThingKind.Any), c.SpanFrom(start));
                context.Use(stitch, c.SpanFrom(start));
                return new CrochetStep(c.SpanFrom(start), stitch, null, place with { Kind = place.Kind == PlaceKind.Next ? PlaceKind.First : place.Kind });
            }
        }

        while (!c.IsDone && !c.Is("in|to|at|into"))
        {
            c.At++;
        }

        if (c.Lexemes.Skip(c.At).Any(l => l.Norm is "foundation" or "starting" or "free" or "opposite") && c.Lexemes.Skip(c.At).Any(l => l.Norm is "ch" or "chain" or "edge" or "side"))
        {
            c.At = c.Lexemes.Count;
            return new FreeSideStep(c.SpanFrom(start));
        }

        var to = c.IsDone ? null : PlaceReader.TryRead(c, context);
        c.At = c.Lexemes.Count;
        if (to is { Kind: PlaceKind.Next, Thing.Kind: ThingKind.Stitch or ThingKind.Named, Count: null } && context.LastSkip > 0)
        {
            return new BeginAtStep(c.SpanFrom(start), to) { IsJoin = true }; // "skip next 6 sts, join yarn in next st"
        }

        return to is { Kind: PlaceKind.First or PlaceKind.Next, Thing.Kind: ThingKind.Space } ? new BeginAtStep(c.SpanFrom(start), to with { Kind = PlaceKind.First, Count = null }) : new RemarkStep(c.SpanFrom(start));
    }

    /// <summary>"sl st in first sc to join", "ss to top of 3ch", "sl st to close": no stitch of the round.</summary>
    private static Step? SlipToJoin(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (!c.EatAll("sl", "st") && !c.Eat("ss|slst"))
        {
            return null;
        }

        var said = context.Source.ToString(c.SpanFrom(start));
        var rest = c.Lexemes.Skip(c.At).ToList();
        var end = rest.FindIndex(l => l.Norm is "and" or "then" or "turn");
        rest = end >= 0 ? rest[..end] : rest;
        if (rest.FindIndex(l => l.Norm is "of" or "on" or "to" or "in") >= 0 && rest.Exists(l => Vocabulary.AlternativesContain(Pieces, l.Norm)))
        {
            c.At += rest.Count; // "sl st in next 2 sts of body": the row is joined to another piece
            context.UseNamed(said, c.SpanFrom(start));
            return new RemarkStep(c.SpanFrom(start));
        }

        if (rest.FindIndex(l => l.Norm is "join" or "close" or "ring" or "circle") is var join and >= 0 && (join > 0 || rest.Count == 1 || rest[1].Norm is "in" or "to" or "into" or "at") && !rest.Exists(l => l.Is("same")))
        {
            var isRing = rest.Exists(l => l.Norm is "ring" or "circle") && rest.Exists(l => l.Is("form") || l.Is("make") || l.Is("join"));
            c.At += rest.Count;
            context.UseNamed(said, c.SpanFrom(start));
            return isRing ? new RingStep(c.SpanFrom(start)) : new CloseStep(c.SpanFrom(start), rest.Select(ThingReader.LengthOf).FirstOrDefault(l => l is not null) ?? NumberBehind(rest));
        }

        return null;
    }

    private const string Pieces = "slipper|body|hat|brim|sweater|sleeve|yoke|panel|main|blanket|cuff|crown|shawl|bag|motif|square|adjacent|corresponding|neckline|armhole";

    // "top of ch 3", "top of 3 ch"
    private static int? NumberBehind(List<Lexeme> rest)
    {
        var ch = rest.FindIndex(l => l.Is("ch"));
        var number = ch < 0 ? null : ch + 1 < rest.Count && rest[ch + 1].Number is { IsOrdinal: false } behind ? behind : ch > 0 && rest[ch - 1].Number is { IsOrdinal: false } before ? before : null;
        return number is { IsList: false } ? (int?)Math.Min(number.Values[0] ?? 0, 1000) : null;
    }
}
