using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads phrases that stand for whole rows: "Knit 6 rows", "work even until ...", "Rep Rows 1-4 five more times", "rep last 2 rows until 20 sts rem".</summary>
internal static class RowsReader
{
    private static readonly string[] OrdinalWords = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];

    /// <summary>"..., then every 4th row twice": the same row again, at another pace; null with the cursor unmoved.</summary>
    public static RepeatRowsStep? GoOn(PhraseCursor c, RowContext context, RepeatRowsStep before)
    {
        var start = c.At;
        c.Eat("and");
        c.Eat("then");
        var again = c.Is("every|on|each") ? Ending(c, context, before with { WithPlainRows = false, Value = null }, isOpen: false) : null;
        if (again is null || again.Until == RowsUntil.Open || !c.IsDone)
        {
            c.At = start;
            return null;
        }

        return again with { Origin = c.SpanFrom(start) };
    }

    /// <summary>A step for whole rows that the words from the cursor to the end of the phrase say, or null with the cursor unmoved.</summary>
    public static RowsStep? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("and");
        c.Eat("then");
        RowsStep? step = StitchPatternReader.TryRows(c, context) ?? Repeat(c, context);
        if (step is null)
        {
            c.At = start;
            step = EvenRowsReader.TryRead(c, context);
        }

        if (step is null)
        {
            c.At = start;
        }

        return step;
    }

    /// <summary>"Rep ...", "as Row 3", "work Rows 1-4 twice", "same as Row 2".</summary>
    private static RepeatRowsStep? Repeat(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var isRepeat = c.Eat("rep");
        var isAs = false;
        if (!isRepeat)
        {
            var work = c.Eat("work");
            c.Eat("same");
            var asRow = c.Eat("as");
            c.Eat("for");
            if (!work && !asRow)
            {
                return null;
            }

            if (!asRow && !(c.Is("row|rnd") && c.IsNumber(1) && !context.HasChart) && !IsNamedAgain(c))
            {
                return null;
            }

            isAs = asRow;
        }

        c.Eat("the");
        var reference = c.At;
        var step = new RepeatRowsStep(default);
        if (c.Is("last|this|previous|prev|above|foll") || (c.IsNumber() && c.Is("row|rnd", 1)))
        {
            c.Eat("last|this|previous|prev|above");
            var last = c.EatNumber();
            c.Eat("previous|prev");
            if (!c.Eat("row|rnd"))
            {
                return null;
            }

            step = step with { Last = last is null ? RowContext.Constant(1, c.SpanFrom(reference)) : context.AmountOf(last) };
        }
        else if (Array.FindIndex(OrdinalWords, word => c.Is(word)) is var nth and >= 0 && (c.Is("row|rnd", 1) || (c.Is("and|to", 1) && c.Is("row|rnd", 3))))
        {
            // "as first row"
            c.At++;
            var to = c.Eat("and|to") ? Array.FindIndex(OrdinalWords, word => c.Eat(word)) : nth;
            c.Eat("row|rnd");
            step = step with { Numbers = [.. Enumerable.Range(nth + 1, Math.Max(1, to - nth + 1))] };
        }
        else if (c.Peek()?.Number is { IsOrdinal: true })
        {
            // "as 5th and 6th rows"
            var numbers = ImmutableArray.CreateBuilder<int>();
            while (c.Peek()?.Number is { IsOrdinal: true } ordinal && numbers.Count < 50)
            {
                numbers.Add((int)Math.Min(ordinal.Values[0] ?? 0, 1_000_000));
                c.At++;
                c.Eat("and|to");
            }

            if (!c.Eat("row|rnd"))
            {
                return null;
            }

            step = step with { Numbers = numbers.ToImmutable() };
        }
        else if (c.Is("row|rnd") && c.IsNumber(1))
        {
            c.At++;
            if (Numbers(c) is not { } numbers)
            {
                return null;
            }

            step = step with { Numbers = numbers };
        }
        else if (Name(c) is { } name)
        {
            step = step with { Name = name };
        }
        else
        {
            return null;
        }

        step = step with { Reference = c.SpanFrom(reference) };
        if (c.Is("but|except") && c.Is("with|using|in", 1) && c.Peek(2) is { } yarn && c.Peek(3) is null && (context.IsYarn(yarn.Atom.Text) || yarn.Is("mc") || yarn.Is("cc")))
        {
            c.At += 3; // "as Row 9 but with CC"
        }

        c.Eat("only");
        c.Eat("inclusive|incl");
        if (c.EatAll("of", "patt|pattern") || c.EatAll("of", "the|this", "patt|pattern"))
        {
        }

        return Ending(c, context, step, isOpen: isRepeat || isAs) is { } done ? done with { Origin = c.SpanFrom(start) } : null;
    }

    // "Work Dec row every 4th row", "work Inc rnd 3 times": the name of a row and how often, not "work rib rows".
    private static bool IsNamedAgain(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("the|a");
        var named = !c.Is("next|last|each|every|first|foll|all|even|rs|ws|in|plain") && Name(c) is not null && (c.Is("every|on|once|twice") || (c.IsNumber() && c.Is("times|more", 1)));
        c.At = start;
        return named;
    }

    /// <summary>"1-4", "1 and 3": the numbers of rows; null where there are none.</summary>
    public static ImmutableArray<int>? Numbers(PhraseCursor c)
    {
        var numbers = ImmutableArray.CreateBuilder<int>();
        while (c.EatNumber() is { } lexeme)
        {
            if (lexeme.Number is not { IsList: false } number || number.Values[0] is not { } value || value > 1_000_000)
            {
                return null;
            }

            var from = (int)value;
            var to = from;
            var isRange = c.Is("to|through") ? c.IsNumber(1) && !c.Is("st|cm|in|mm", 2) : c.Peek()?.Atom.Kind == TokenKind.Dash;
            if (isRange && c.At++ >= 0 && c.EatNumber()?.Number is { IsList: false } last)
            {
                to = (int)Math.Min(last.Values[0] ?? 0, from + 9_999);
            }

            for (var n = from; n <= to; n++)
            {
                numbers.Add(n);
            }

            if (!c.Eat("and|&") && !(c.Peek()?.Atom.Text == "&" && c.At++ >= 0))
            {
                break;
            }

            c.Eat("row|rnd");
        }

        return numbers.Count == 0 ? null : numbers.ToImmutable();
    }

    /// <summary>"dec row", "set-up rnd": up to four words and then row or round.</summary>
    private static string? Name(PhraseCursor c)
    {
        for (var words = 1; words <= 4 && c.Peek(words) is { } end; words++)
        {
            if (end.Is("row") || end.Is("rnd"))
            {
                if (Enumerable.Range(0, words).Any(i => c.Peek(i)!.IsNumber || c.Peek(i)!.Is("every") || c.Peek(i)!.Is("from")))
                {
                    return null;
                }

                var name = string.Join(' ', Enumerable.Range(0, words + 1).Select(i => c.Peek(i)!.Atom.Text.ToLowerInvariant()));
                c.At += words + 1;
                if (c.IsNumber() && !c.Is("more|times", 1))
                {
                    name += " " + c.EatNumber()!.Atom.Text;
                }

                return RowNames.Key(name);
            }
        }

        return null;
    }

    private static RepeatRowsStep? Ending(PhraseCursor c, RowContext context, RepeatRowsStep step, bool isOpen)
    {
        if (c.IsDone)
        {
            return step with { Until = isOpen ? RowsUntil.Open : RowsUntil.Times, Value = RowContext.Constant(1, step.Reference) };
        }

        if (c.EatAll("on", "next|foll", "rs|ws", "row|rnd") || c.EatAll("on", "next|foll", "row|rnd"))
        {
            return AtEnd(c, step with { Until = RowsUntil.Times, Value = RowContext.Constant(1, step.Reference) });
        }

        if (c.Eat("every|on"))
        {
            c.Eat("every|each");
            step = step with { WithPlainRows = true };
            c.Eat("foll");
            if (c.Peek() is { IsNumber: true })
            {
                c.At++;
            }

            c.Eat("other|alt|rs|ws|foll|even|odd");
            if (!c.Eat("row|rnd"))
            {
                return null;
            }

            if (c.IsDone)
            {
                return step with { Until = RowsUntil.Open, Value = RowContext.Constant(1, step.Reference) };
            }
        }

        if (c.Eat("until"))
        {
            c.Eat("there");
            c.Eat("are");
            c.Eat("you");
            c.Eat("have");
            if (c.EatNumber() is { } count && c.Eat("st"))
            {
                while (c.Eat("rem|on|left|the|your|needle|in|total"))
                {
                }

                return c.IsDone ? step with { Until = RowsUntil.Count, Value = context.AmountOf(count) } : null;
            }

            c.At = c.Lexemes.Count;
            return step with { Until = RowsUntil.Length };
        }

        if (c.Eat("for|to"))
        {
            if (c.Eat("patt"))
            {
                c.At = c.Lexemes.Count;
                return step with { Until = RowsUntil.Open, Value = RowContext.Constant(1, step.Reference) };
            }

            if (c.EatAll("a", "total", "of") && c.EatNumber() is { } total && c.Eat("times"))
            {
                return InAll(step, context.AmountOf(total), c);
            }

            if (c.IsNumber())
            {
                var number = c.EatNumber()!;
                if (c.Eat("st"))
                {
                    return step with { Until = RowsUntil.Count, Value = context.AmountOf(number) };
                }

                c.At = c.Lexemes.Count;
                return step with { Until = RowsUntil.Length };
            }

            return null;
        }

        if (c.EatAll("a", "total", "of") && c.EatNumber() is { } all && c.Eat("times"))
        {
            return InAll(step, context.AmountOf(all), c);
        }

        c.Eat("another");
        if (c.Eat("more"))
        {
            return null;
        }

        if (TimesReader.TryRead(c, context) is { } times)
        {
            c.Eat("more|again");
            return AtEnd(c, step with { Until = RowsUntil.Times, Value = times });
        }

        if (c.EatNumber() is { } more && c.Eat("more") && c.Eat("times"))
        {
            return AtEnd(c, step with { Until = RowsUntil.Times, Value = context.AmountOf(more) });
        }

        return null;
    }

    private static RepeatRowsStep? AtEnd(PhraseCursor c, RepeatRowsStep step)
    {
        if (c.Is("as|for|in"))
        {
            c.At = c.Lexemes.Count;
        }

        return c.IsDone ? step : null;
    }

    // "a total of 6 times" takes in the time already worked.
    private static RepeatRowsStep? InAll(RepeatRowsStep step, Amount all, PhraseCursor c) =>
        AtEnd(c, step with { Until = RowsUntil.Times, Value = step.Last is null && step.Name is null ? all : all with { Values = all.Values.Map(v => v - 1) } });
}
