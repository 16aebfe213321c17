using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads "inc" with its place: "inc in next st", "inc 1", "increase in each of next 3 sts".</summary>
internal static class IncreaseReader
{
    /// <summary>"inc": where it says into which stitch it is a kfb, else it may be either.</summary>
    public static Step? TryRead(PhraseCursor c, RowContext context)
    {
        if (!c.Is("inc") || context.Book.IsSpecial(c.Peek()!.Atom.Text))
        {
            return null;
        }

        var start = c.At;
        context.LastName = c.Peek()!.Atom.Text;
        c.At++;
        var number = c.EatNumber();
        c.Eat("st");
        if (c.Is("evenly|each|at"))
        {
            return null; // shaping, not a stitch
        }

        if (c.Eat("in|into"))
        {
            c.Eat("the");
            if (c.Eat("center"))
            {
                return null;
            }

            if (c.Eat("next|first|last|foll|this|same") || c.EatOrdinal())
            {
                var many = c.EatNumber();
                c.Eat("st");
                context.Use(context.Book.Kfb, c.SpanFrom(start));
                return new OperationStep(c.SpanFrom(start), context.Book.Kfb, many is null ? null : context.AmountOf(many));
            }

            c.Eat("each|every|all");
            c.Eat("of");
            c.Eat("next|foll");
            var each = c.EatNumber();
            if (!c.Eat("st"))
            {
                return null;
            }

            context.Use(context.Book.Kfb, c.SpanFrom(start));
            if (each is not null)
            {
                return new OperationStep(c.SpanFrom(start), context.Book.Kfb, context.AmountOf(each));
            }

            TargetReader.EatWholeRow(c);
            return new RunStep(c.SpanFrom(start), context.Book.Kfb, new Target(Extent.End));
        }

        if (!c.IsDone && number is not null && c.Is("between"))
        {
            return null;
        }

        var times = number is null ? null : context.AmountOf(number);
        context.Use(context.Book.Kfb, c.SpanFrom(start));
        return new IncreaseStep(c.SpanFrom(start), context.Book.Kfb, context.Book.MakeOne, StitchReader.Multiply(times, TimesReader.TryRead(c, context)));
    }
}
