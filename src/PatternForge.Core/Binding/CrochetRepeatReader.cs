using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads repeats of a crochet row that have neither star nor bracket: "sc in next st, 2 sc in next st, repeat 6 times".</summary>
internal static class CrochetRepeatReader
{
    /// <summary>A phrase that says only how often what stands before it is repeated; false, with the cursor unmoved, for other words.</summary>
    public static bool TryBare(PhraseCursor cursor, List<Step> steps, RowContext context)
    {
        var start = cursor.At;
        cursor.Eat("and|then");
        var begin = cursor.At;
        if (cursor.Eat("rep") && (cursor.EatAll("from", "beg") || cursor.EatAll("from", "the", "beg")) && (cursor.Eat("across|around") || cursor.EatAll("to|until", "end") || cursor.IsDone) && Hoist(steps) is var first && Repeatable(steps, first))
        {
            TargetReader.EatWholeRow(cursor);
            ImmutableArray<Step> all = [.. steps.Skip(first)];
            steps.RemoveRange(first, all.Length);
            steps.Add(new RepeatStep(all[0].Origin.Cover(cursor.SpanFrom(start)), all) { To = new Target(Extent.End) });
            return cursor.IsDone;
        }

        cursor.At = begin;
        if (cursor.Eat("rep") && Number(cursor, context) is { } times && cursor.IsDone && Hoist(steps) is var from && Repeatable(steps, from))
        {
            ImmutableArray<Step> body = [.. steps.Skip(from)];
            steps.RemoveRange(from, body.Length);
            steps.Add(new RepeatStep(body[0].Origin.Cover(cursor.SpanFrom(start)), body) { Times = times.Times, IsMore = times.IsMore, IsTwoWays = times.IsTwoWays });
            return true;
        }

        cursor.At = start;
        return false;
    }

    /// <summary>Takes out of a repeat without a star what is only made once: the turning chain before it.</summary>
    public static ImmutableArray<Step> Once(ImmutableArray<Step> body)
    {
        var from = Hoist([.. body]);
        return from < body.Length ? body[..from] : [];
    }

    private static (Amount Times, bool IsMore, bool IsTwoWays)? Number(PhraseCursor cursor, RowContext context)
    {
        cursor.Eat("this");
        if (TimesReader.TryRead(cursor, context) is { } times)
        {
            var more = cursor.Eat("more|again");
            return (times, more, !more && !TimesReader.EatInAll(cursor));
        }

        if (cursor.IsNumber() && cursor.Is("more", 1))
        {
            var number = context.AmountOf(cursor.EatNumber()!);
            cursor.At++;
            cursor.Eat("times");
            return (number, true, false);
        }

        return null;
    }

    private static int Hoist(List<Step> steps)
    {
        var from = 0;
        while (from < steps.Count && steps[from] is ChainStep or TurnStep or RemarkStep or SentenceStep or JoinStep or BeginAtStep or CloseStep or CrochetStep { Operation.Id: "sl st" })
        {
            from++;
        }

        return from;
    }

    // What goes to the end by itself is repeated as a row, not within one.
    private static bool Repeatable(List<Step> steps, int from) =>
        from < steps.Count && steps.Skip(from).All(s => s is CrochetStep { Place: null or { Kind: PlaceKind.Next or PlaceKind.Same or PlaceKind.Ring } } or ShellStep { Place.Kind: PlaceKind.Next or PlaceKind.Same or PlaceKind.Ring } or ChainStep or SkipStep or GroupStep or RemarkStep or SentenceStep or NamedIncreaseStep);
}
