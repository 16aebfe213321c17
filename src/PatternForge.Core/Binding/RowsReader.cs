using System.Collections.Frozen;
using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads phrases that stand for whole rows: "Knit 6 rows", "work even until ...", "Rep Rows 1-4 five more times", "rep last 2 rows until 20 sts rem".</summary>
internal static class RowsReader
{
    private static readonly Lazy<FrozenDictionary<string, PhrasePattern[]>> Even = new(() => Index(
        "k|p {n} more? row|rnd ...",
        "k|p the? next {n} row|rnd ...",
        "k|p the? next row|rnd ...",
        "work {n} more? row|rnd ...",
        "work another {n} row|rnd ...",
        "work even|straight|plain ...",
        "work in ... until|for ...",
        "work in ... st|stst|rib|garter|patt ...",
        "work as-set ...",
        "work in-patt ...",
        "cont even ...",
        "cont as-set ...",
        "cont in-patt ...",
        "cont in ...",
        "cont to work ...",
        "cont working ...",
        "cont until ...",
        "cont to foll chart {w} ...",
        "k|p every|each row|rnd ...",
        "k|p until ... measure ...",
        "k|p for {n} ...",
        "work until ... measure ...",
        "work for {n} ...",
        "work stst|garter|rib ...",
        "work {w} {w} rib ...",
        "stst|garter for ...",
        "beg with ... row|rnd work {n} row|rnd ...",
        "beg with ... row|rnd work|cont ...",
        "beg with ... row|rnd",
        "without shaping ...",
        "work without shaping ..."));

    /// <summary>A step for whole rows that the words from the cursor to the end of the phrase say, or null with the cursor unmoved.</summary>
    public static RowsStep? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        RowsStep? step = Repeat(c, context);
        if (step is null)
        {
            c.At = start;
            step = EvenRows(c, context);
        }

        if (step is null)
        {
            c.At = start;
        }

        return step;
    }

    private static FrozenDictionary<string, PhrasePattern[]> Index(params string[] patterns) => patterns.Select(p => new PhrasePattern(p))
        .SelectMany(p => p.FirstWords!.Split('|').Select(word => (word, p)))
        .GroupBy(x => x.word, StringComparer.Ordinal)
        .ToFrozenDictionary(g => g.Key, g => g.Select(x => x.p).ToArray(), StringComparer.Ordinal);

    private static EvenRowsStep? EvenRows(PhraseCursor c, RowContext context)
    {
        if (c.Peek() is not { } first || !Even.Value.TryGetValue(first.Norm, out var patterns))
        {
            return null;
        }

        foreach (var pattern in patterns)
        {
            if (pattern.Match(c.Lexemes, c.At) is not { } match)
            {
                continue;
            }

            // "until 5 sts rem" is no even work: the count changes.
            if (c.Lexemes.FindIndex(l => l.Is("until")) is var until and >= 0 && until + 2 < c.Lexemes.Count && c.Lexemes.Skip(until).Take(4).Any(l => l.Is("st")) && !c.Lexemes.Exists(l => l.Is("measure")))
            {
                continue;
            }

            // A count of rows is a number with "row" behind it; a length is not.
            var rows = match.Numbers.FirstOrDefault(n => c.Lexemes.IndexOf(n) is var at && c.Lexemes.Skip(at + 1).Take(2).Any(l => l.Is("row") || l.Is("rnd")));
            var hasPlainStitch = c.Lexemes.Skip(c.At + 1).Any(l => l.Is("m") || l.Is("last"));
            if (rows is null && hasPlainStitch && !c.Lexemes.Any(l => l.Is("measure")))
            {
                continue;
            }

            // "work in K1, P1 rib for 2 in" is cut at the comma: its second half is read with it by the row binder.
            c.At = match.End;
            var one = rows is null && c.Lexemes.Count > 1 && c.Lexemes[..Math.Min(3, c.Lexemes.Count)].Exists(l => l.Is("next")) ? RowContext.Constant(1, match.Span) : null;
            return new EvenRowsStep(match.Span, rows is null ? one : context.AmountOf(rows));
        }

        return null;
    }

    /// <summary>"Rep ...", "as Row 3", "work Rows 1-4 twice", "same as Row 2".</summary>
    private static RepeatRowsStep? Repeat(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var isRepeat = c.Eat("rep");
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

            if (!asRow && !(c.Is("row|rnd") && c.IsNumber(1)))
            {
                return null;
            }
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
        c.Eat("inclusive|incl");
        return Ending(c, context, step, isRepeat) is { } done ? done with { Origin = c.SpanFrom(start) } : null;
    }

    private static ImmutableArray<int>? Numbers(PhraseCursor c)
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
            if ((c.Eat("to|through") || EatDash(c)) && c.EatNumber()?.Number is { IsList: false } last)
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

    private static bool EatDash(PhraseCursor c)
    {
        if (c.Peek()?.Atom.Kind != TokenKind.Dash)
        {
            return false;
        }

        c.At++;
        return true;
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

    private static RepeatRowsStep? Ending(PhraseCursor c, RowContext context, RepeatRowsStep step, bool isRepeat)
    {
        if (c.IsDone)
        {
            return step with { Until = isRepeat ? RowsUntil.Open : RowsUntil.Times, Value = RowContext.Constant(1, step.Reference) };
        }

        if (c.Eat("every|on"))
        {
            c.Eat("every");
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
                c.Eat("rem|on|left");
                c.Eat("needle|in");
                c.Eat("total");
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
