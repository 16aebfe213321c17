using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads stitches worked from a chart or panel: "work 21 sts of Cable Panel", "6 sts of Chart A 2 times", "next row of Chart A over 19 sts", "rem 4 sts in rev St st".</summary>
internal static class ChartReader
{
    /// <summary>The step at the cursor, or null with the cursor unmoved.</summary>
    public static Step? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var work = c.Eat("work");
        if ((c.EatAll("next", "row|rnd", "of") || c.EatAll("row|rnd", "{n}", "of") || work) && c.Peek() is not null)
        {
            var name = c.At;
            while (!c.IsDone && !c.Is("over|across"))
            {
                c.At++;
            }

            if (c.At > name && c.Eat("over|across"))
            {
                c.Eat("the");
                c.Eat("next");
                if (c.EatNumber() is { } over && c.Eat("st"))
                {
                    return new OperationStep(c.SpanFrom(start), StitchBook.InPattern, context.AmountOf(over));
                }
            }

            c.At = start;
            if (Named(c, context) is { } chart)
            {
                return chart;
            }

            c.At = start;
            c.Eat("work");
        }

        c.Eat("the");
        c.Eat("rem|next|foll|last|first");
        if (c.EatNumber() is { } number && c.Eat("st") && c.Eat("of|in|as-set|in-patt"))
        {
            var amount = context.AmountOf(number);
            Amount? times = null;
            while (!c.IsDone && !c.Is("pm|sm|and") && !StitchWords.IsCounted(c.Peek()!, context.Book))
            {
                times = TimesReader.TryRead(c, context) ?? times;
                if (!c.IsDone)
                {
                    c.At++;
                }
            }

            var step = new OperationStep(c.SpanFrom(start), StitchBook.InPattern, times is null ? amount : Product(context, amount, times));
            return step;
        }

        c.At = start;
        return null;
    }

    /// <summary>"work Chart A", "work Chart A 3 times across", "work row 3 of Chart A to last 10 sts": so often its width, else to where it says, else to the end.</summary>
    private static Step? Named(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("work");
        if (c.EatAll("row|rnd", "{n}", "of") || c.EatAll("next", "row|rnd", "of"))
        {
            c.Eat("the");
        }

        if (!c.Eat("chart") || c.Peek() is not { } name || name.Atom.Text.Length > 2)
        {
            return null;
        }

        c.At++;
        c.EatAll("row|rnd", "{n}");
        c.Eat("as-set");
        if (TargetReader.TryRead(c, context) is { } target)
        {
            return new RunStep(c.SpanFrom(start), StitchBook.InPattern, target);
        }

        if (TimesReader.TryRead(c, context) is { } times)
        {
            TargetReader.EatWholeRow(c);
            var width = context.Facts.Charts.FirstOrDefault(k => k.Name.EndsWith(name.Atom.Text, StringComparison.OrdinalIgnoreCase))?.Values;
            return width is null ? null : new OperationStep(c.SpanFrom(start), StitchBook.InPattern, Product(context, new Amount(width.Map(q => (int?)q?.Value), times.Origin), times));
        }

        return c.IsDone ? new RunStep(c.SpanFrom(start), StitchBook.InPattern, new Target(Extent.End)) : null;
    }

    private static Amount Product(RowContext context, Amount a, Amount b) => a with
    {
        Values = PerSize.Each([.. Enumerable.Range(0, context.SizeCount).Select(i => a[i] is { } x && b[i] is { } y ? (int?)Math.Clamp((long)x * y, 0, 1_000_000_000) : null)]),
    };
}
