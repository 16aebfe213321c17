using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads phrases for rows in which the count stays: "Knit 6 rows", "work even until ...", "work in K1, P1 rib for 2 in", "Work Rows 1-8 of Chart A".</summary>
internal static class EvenRowsReader
{
    private static readonly Lazy<FirstWords<PhrasePattern>> Even = new(() => Index(
        "cont without shaping ...",
        "work row|rnd ... of? chart ...",
        "work chart {w} row|rnd ...",
        "beg chart {w} ...",
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
        "work an? i-cord ...",
        "i-cord for ...",
        "stst|garter for ...",
        "beg with ... row|rnd work {n} row|rnd ...",
        "beg with ... row|rnd work|cont ...",
        "beg with ... row|rnd",
        "beg k|p row|rnd",
        "without shaping ...",
        "work without shaping ..."));

    /// <summary>The step that the words from the cursor to the end of the phrase say, or null.</summary>
    public static EvenRowsStep? TryRead(PhraseCursor c, RowContext context)
    {
        if (c.Peek() is not { } first || Even.Value.Of(first.Norm) is not { } patterns || IsNoEvenWork(c))
        {
            return null;
        }

        if (context.HasChart && c.Is("work") && c.Is("row|rnd", 1))
        {
            // "Begin Chart A: work Rows 1-8": the rows are the chart's.
            var start = c.At;
            c.At = c.Lexemes.Count;
            return new EvenRowsStep(c.SpanFrom(start), null);
        }

        foreach (var pattern in patterns)
        {
            if (pattern.Match(c.Lexemes, c.At) is { } match)
            {
                // "work in K1, P1 rib for 2 in" is cut at the comma: its second half is read with it by the row binder.
                var rows = Rows(c, context);
                var named = Named(c, context);
                c.At = match.End;
                return new EvenRowsStep(match.Span, rows, named);
            }
        }

        return null;
    }

    private static bool IsNoEvenWork(PhraseCursor c)
    {
        var words = c.Lexemes.Skip(c.At).ToList();
        if (words.Exists(l => l.Is("measure")))
        {
            return false;
        }

        if (words.Skip(1).Any(l => l.Is("inc") || l.Is("dec") || l.Is("bo") || l.Is("co") || l.Is("tog") || l.Is("yo")))
        {
            return true;
        }

        // "until 5 sts rem": the count changes. "to last 3 sts", "to marker", "to end": a run inside a row.
        var until = words.FindIndex(l => l.Is("until"));
        if (words.Exists(l => l.Is("chart")) && words.Exists(l => l.Is("over") || l.Is("across")))
        {
            return true;
        }

        var isCounted = until >= 0 && words.Skip(until).Take(4).Any(l => l.Is("st"));
        var to = words.FindIndex(l => l.Is("to"));
        var isRun = to > 0 && to + 1 < words.Count && words[to + 1].Is("end") && !words.Exists(l => l.Is("row") || l.Is("rnd"));
        var hasPlace = words.Skip(1).Any(l => l.Is("m") || l.Is("last")) && !words.Exists(l => l.Is("row") || l.Is("rnd"));
        return isCounted || isRun || hasPlace;
    }

    /// <summary>A count of rows is a number with "row" behind it; a length is not. "Knit next row" is one; the rows of a chart are those named.</summary>
    private static Amount? Rows(PhraseCursor c, RowContext context)
    {
        if (c.Lexemes.Exists(l => l.Is("chart")))
        {
            return null;
        }

        for (var i = c.At; i < c.Lexemes.Count; i++)
        {
            var isRows = c.Lexemes.Skip(i + 1).Take(2).Any(l => l.Is("row") || l.Is("rnd"));
            if (isRows && c.Lexemes[i] is { IsNumber: true, Number: not { IsOrdinal: true } } number)
            {
                return context.AmountOf(number);
            }

            if (isRows && c.Lexemes[i].Is("next"))
            {
                return RowContext.Constant(1, c.Lexemes[i].Span);
            }
        }

        return null;
    }

    /// <summary>"on 59 sts", "over these 34 sts".</summary>
    private static Amount? Named(PhraseCursor c, RowContext context)
    {
        for (var i = c.At + 1; i + 2 < c.Lexemes.Count; i++)
        {
            var number = c.Lexemes[i + 1].Is("this") || c.Lexemes[i + 1].Is("the") || c.Lexemes[i + 1].Is("all") ? i + 2 : i + 1;
            if ((c.Lexemes[i].Is("on") || c.Lexemes[i].Is("over")) && number + 1 < c.Lexemes.Count && c.Lexemes[number] is { IsNumber: true, Number: not { IsOrdinal: true } } named && c.Lexemes[number + 1].Is("st"))
            {
                return context.AmountOf(named);
            }
        }

        return null;
    }

    private static FirstWords<PhrasePattern> Index(params ReadOnlySpan<string> patterns)
    {
        var index = new FirstWords<PhrasePattern>();
        foreach (var words in patterns)
        {
            var pattern = new PhrasePattern(words);
            index.Add(pattern.FirstWords!, pattern);
        }

        return index;
    }
}
