using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Binding;

/// <summary>Reads increases and decreases that are told in words around a stitch: "4 hdc inc", "sc next 2 sts together", "inc 6 dc evenly", "dec 1 sc at each end".</summary>
internal static class CrochetChangeReader
{
    private const int MostTogether = 20;

    /// <summary>The step behind a stitch that has just been read, or null with the cursor unmoved.</summary>
    /// <param name="c">The words.</param>
    /// <param name="context">What is known.</param>
    /// <param name="start">Where the phrase's stitch begins.</param>
    /// <param name="operation">The stitch.</param>
    /// <param name="number">The number before it; null for none.</param>
    public static Step? TryRead(PhraseCursor c, RowContext context, int start, Operation operation, Lexeme? number)
    {
        var at = c.At;
        var step = IsChange(operation) ? number is null ? Spread(c, context, start, operation) : null
            : operation is { Takes: 1, Makes: 1 } ? Named(c, context, start, operation, number) ?? Together(c, context, start, operation, number) : null;
        c.At = step is null ? at : c.At;
        return step;
    }

    private static bool IsChange(Operation operation) => operation.Id is "inc" or "dec" or "invdec";

    /// <summary>"hdc inc", "4 hdc inc", "dc dec over next 2 sts".</summary>
    private static Step? Named(PhraseCursor c, RowContext context, int start, Operation stitch, Lexeme? number)
    {
        if (!c.Is("inc|dec|invdec") || CrochetReader.OperationAt(c, context) is not { } change || !IsChange(change))
        {
            return null;
        }

        context.Use(change, c.SpanFrom(start));
        if (PlaceReader.TryRead(c, context) is { } place)
        {
            return new CrochetStep(c.SpanFrom(start), stitch with { Takes = change.Takes, Makes = change.Makes }, number is null ? null : context.AmountOf(number), place);
        }

        var times = TimesReader.TryRead(c, context);
        if (times is null && number is null && c.IsNumber())
        {
            times = context.AmountOf(c.EatNumber()!);
        }

        return c.IsDone ? new NamedIncreaseStep(c.SpanFrom(start), stitch, change, number is null ? null : context.AmountOf(number), times) : null;
    }

    /// <summary>"sc next 2 sts together", "sc 2 tog".</summary>
    private static CrochetStep? Together(PhraseCursor c, RowContext context, int start, Operation stitch, Lexeme? number)
    {
        c.Eat("over|in");
        c.Eat("the");
        c.Eat("next|first|last|foll");
        if (number is not null || c.EatNumber() is not { Number: { IsList: false } many } || many.Values[0] is not (>= 2 and <= MostTogether and var count))
        {
            return null;
        }

        c.Eat("next");
        ThingReader.TryRead(c, context);
        if (!c.Eat("tog"))
        {
            return null;
        }

        context.Use(stitch, c.SpanFrom(start));
        return new CrochetStep(c.SpanFrom(start), stitch with { Takes = (int)count }, TimesReader.TryRead(c, context), null);
    }

    /// <summary>"inc 6 dc evenly spaced", "dec 1 sc at each end of row": so many more or fewer in the row; "inc 1 sc in first sc" is at a place.</summary>
    private static Step? Spread(PhraseCursor c, RowContext context, int start, Operation change)
    {
        if (c.EatNumber() is not { } number)
        {
            return null;
        }

        if (ThingReader.TryRead(c, context) is { Kind: ThingKind.Named or ThingKind.Stitch } thing && !c.Is("evenly"))
        {
            var ends = c.At;
            if (Ends(c) > 0)
            {
                c.At = ends;
            }
            else if (PlaceReader.TryRead(c, context) is { Kind: not PlaceKind.Unclear } place && number.Number is { IsList: false } one && one.Values[0] == 1)
            {
                var stitch = thing.Named is { } named ? named with { Takes = change.Takes, Makes = change.Makes } : change;
                return new CrochetStep(c.SpanFrom(start), stitch, null, place);
            }
        }

        var factor = c.Eat("evenly") ? 1 : Ends(c);
        if (factor == 0)
        {
            return null;
        }

        c.At = c.Lexemes.FindIndex(c.At, l => l.Is("and") || l.Is("then")) is >= 0 and var and ? and : c.Lexemes.Count;
        return new SpreadStep(c.SpanFrom(start), RowContext.Times(context.AmountOf(number), change.Makes > change.Takes ? factor : -factor));
    }

    // "at each end", "at beg and end of row", "on both sides": two places; "at beg", "at neck edge": one.
    private static int Ends(PhraseCursor c)
    {
        if (!c.Eat("at|on") && !c.Is("each|both"))
        {
            return 0;
        }

        c.Eat("the");
        if (c.Eat("each|both") && c.Eat("end|side|edge"))
        {
            return 2;
        }

        if (c.Eat("beg|end"))
        {
            var both = c.EatAll("and", "end|beg") || c.EatAll("and", "at", "end|beg");
            c.EatAll("of", "row|rnd|each|every|this|next");
            return both ? 2 : 1;
        }

        return 0;
    }
}
