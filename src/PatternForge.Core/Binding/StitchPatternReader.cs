using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads a stitch pattern called by its name: "work Rows 1-8 of Lace panel twice", "work in Lace panel for 20 rows", "work Row 3 of Lace panel over next 38 sts".</summary>
internal static class StitchPatternReader
{
    /// <summary>A whole phrase that stands for rows of a stitch pattern, or null with the cursor unmoved.</summary>
    public static RowsStep? TryRows(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (context.StitchPatterns.IsEmpty)
        {
            return null;
        }

        // "Begin Lace panel: ...": what follows says over which stitches.
        if (c.Eat("beg") && Named(c, context) is not null && c.IsDone)
        {
            return new EvenRowsStep(c.SpanFrom(start), null);
        }

        c.At = start;
        var step = Rows(c, context);
        c.At = step is null ? start : c.At;
        return step;
    }

    /// <summary>A row of a stitch pattern over part of a row, or null with the cursor unmoved.</summary>
    public static PatternRowStep? TryPart(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var step = context.StitchPatterns.IsEmpty ? null : Part(c, context);
        c.At = step is null ? start : c.At;
        return step;
    }

    private static RepeatRowsStep? Rows(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var (pattern, rows) = Called(c, context);
        if (pattern is null)
        {
            return null;
        }

        c.Eat("as-set|even|straight");
        var step = new RepeatRowsStep(c.SpanFrom(start)) { Pattern = pattern, Numbers = rows, Reference = c.SpanFrom(start), Until = RowsUntil.Open, Value = RowContext.Constant(1, c.SpanFrom(start)) };
        var once = step with { Until = RowsUntil.Times };
        if (c.Is("over|across|on") && context.IsAlone && (c.IsNumber(1) || c.Is("the|this|all", 1)))
        {
            // "... over 44 sts", alone in its row: so many there must be.
            c.At++;
            c.Eat("all");
            c.Eat("the|this");
            if (c.EatNumber() is { } over && c.Eat("st"))
            {
                step = step with { Named = context.AmountOf(over) };
                once = once with { Named = step.Named };
            }
            else if (!c.Eat("st"))
            {
                return null;
            }
        }

        if (c.IsDone)
        {
            // "P10, work Rope, p10" is a part of a row.
            return !context.IsAlone && rows.Length < 2 ? null : (rows.IsEmpty ? step : once) with { Origin = c.SpanFrom(start) };
        }

        if (c.Eat("until"))
        {
            if (c.Lexemes.Skip(c.At).Any(l => l.Is("st")))
            {
                return null; // "until 44 sts rem": that is another matter
            }

            c.At = c.Lexemes.Count;
            return step with { Until = RowsUntil.Length, Origin = c.SpanFrom(start) };
        }

        var isFor = c.Eat("for");
        c.EatAll("a", "total", "of");
        if (TimesReader.TryRead(c, context) is { } times)
        {
            c.Eat("more");
            return c.IsDone ? once with { Value = times, Origin = c.SpanFrom(start) } : null;
        }

        if (isFor && c.EatNumber() is { } number)
        {
            c.Eat("more");
            if (c.Eat("row|rnd"))
            {
                return c.IsDone ? step with { Until = RowsUntil.Rows, Value = context.AmountOf(number), Origin = c.SpanFrom(start) } : null;
            }

            if (!c.Is("st"))
            {
                c.At = c.Lexemes.Count;
                return step with { Until = RowsUntil.Length, Origin = c.SpanFrom(start) };
            }
        }

        return null;
    }

    private static PatternRowStep? Part(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var (pattern, rows) = Called(c, context);
        if (pattern is null || rows.Length > 1)
        {
            return null;
        }

        c.Eat("as-set");
        int? row = rows.Length == 1 ? rows[0] : null;
        var at = c.At;
        if (c.Eat("over|across|on"))
        {
            c.Eat("the|this");
            c.Eat("next|foll|center|rem|last|first");
            if (c.EatNumber() is { } over && c.Eat("st"))
            {
                return new PatternRowStep(c.SpanFrom(start), pattern, row, context.AmountOf(over), null);
            }

            c.At = at;
        }

        if (TargetReader.TryRead(c, context) is { } target)
        {
            return new PatternRowStep(c.SpanFrom(start), pattern, row, null, target);
        }

        return pattern.Multiple == 0 ? new PatternRowStep(c.SpanFrom(start), pattern, row, null, null) : null;
    }

    /// <summary>The pattern that the words name, and the rows of it; the cursor stands behind them.</summary>
    private static (StitchPattern? Pattern, ImmutableArray<int> Rows) Called(PhraseCursor c, RowContext context)
    {
        c.Eat("and|then");
        c.Eat("cont");
        c.Eat("to");
        c.Eat("work|working|beg|rep");
        c.Eat("even|straight");
        c.Eat("with|from|in|across");
        c.Eat("the");
        ImmutableArray<int> rows = [];
        if (c.EatAll("next", "row|rnd", "of"))
        {
            c.Eat("the");
        }
        else if (c.Is("row|rnd") && c.IsNumber(1))
        {
            if ((rows = Numbers(c)).IsEmpty || !c.Eat("of|in"))
            {
                return default;
            }

            c.Eat("the");
        }
        else if (c.EatAll("all", "row|rnd", "of"))
        {
            c.Eat("the");
        }

        if (Named(c, context) is not { } pattern)
        {
            return default;
        }

        c.Eat("patt|pattern|panel|st");
        if (rows.IsEmpty && c.Is("row|rnd") && c.IsNumber(1))
        {
            rows = Numbers(c);
        }

        return (pattern, rows);
    }

    private static ImmutableArray<int> Numbers(PhraseCursor c)
    {
        c.At++;
        return RowsReader.Numbers(c) ?? [];
    }

    /// <summary>The pattern whose name stands at the cursor, word for word; the longest where several do.</summary>
    private static StitchPattern? Named(PhraseCursor c, RowContext context)
    {
        StitchPattern? found = null;
        var end = c.At;
        foreach (var pattern in context.StitchPatterns)
        {
            if (c.Peek() is { } first && EndOf(pattern.Name, first.Span.Start, context) is { } textEnd)
            {
                var at = c.At;
                while (at < c.Lexemes.Count && c.Lexemes[at].Span.Start < textEnd)
                {
                    at++;
                }

                if (at > end && c.Lexemes[at - 1].Span.End <= textEnd + 1)
                {
                    (found, end) = (pattern, at);
                }
            }
        }

        c.At = end;
        return found;
    }

    /// <summary>Where a name ends that begins at a place of the source, whatever its case and blanks ("stitch" and "st" are the same); null where it does not stand there.</summary>
    private static int? EndOf(string name, int start, RowContext context)
    {
        var text = context.Source.Text;
        var at = start;
        foreach (var word in name.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            while (at < text.Length && char.IsWhiteSpace(text[at]))
            {
                at++;
            }

            var from = at;
            while (at < text.Length && (char.IsLetterOrDigit(text[at]) || text[at] is '-' or '\'' or '’'))
            {
                at++;
            }

            if (from == at || !Same(text.AsSpan(from, at - from), word))
            {
                return null;
            }
        }

        return at > start ? at : null;
    }

    private static bool Same(ReadOnlySpan<char> said, string word) =>
        said.Equals(word, StringComparison.OrdinalIgnoreCase) || (IsStitch(said) && IsStitch(word)) || (IsPattern(said) && IsPattern(word));

    private static bool IsStitch(ReadOnlySpan<char> word) => word.Equals("st", StringComparison.OrdinalIgnoreCase) || word.Equals("stitch", StringComparison.OrdinalIgnoreCase);

    private static bool IsPattern(ReadOnlySpan<char> word) => word.Equals("patt", StringComparison.OrdinalIgnoreCase) || word.Equals("pattern", StringComparison.OrdinalIgnoreCase) || word.Equals("pat", StringComparison.OrdinalIgnoreCase);
}
