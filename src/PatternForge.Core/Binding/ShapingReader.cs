using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>
/// Reads shaping over several rows: "dec 1 st each end of every RS row 6 times", "BO 4 sts at beg of next 2 rows", and, behind it,
/// "then every 4th row 3 times" or "3 sts at beg of foll 2 rows", which go on with the same verb.
/// </summary>
internal sealed class ShapingReader
{
    private int _sign;
    private Amount? _perRow;
    private int _edges = 1;
    private bool _neckFirst;
    private bool _mayCountTimes;
    private Amount? _every;

    /// <summary>The shaping that the words from the cursor to the end of the phrase say, or null with the cursor unmoved.</summary>
    public RowsStep? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var (sign, perRow, edges, times) = (_sign, _perRow, _edges, _mayCountTimes);
        c.Eat("and");
        c.Eat("then");
        if (c.At == 0 && c.Is("at|on") && c.Lexemes.FindIndex(l => l.Is("bo") || l.Is("dec") || l.Is("inc") || l.Is("co")) is > 2 and var verb && c.Lexemes[verb - 1].Is("row"))
        {
            // "At beg of next 2 rows bind off 5 sts": the other way round.
            var turned = new PhraseCursor([.. c.Lexemes[verb..], .. c.Lexemes[..verb]]);
            var step = TryRead(turned, context);
            c.At = step is null ? start : c.Lexemes.Count;
            return step is ShapingStep read ? read with { Origin = c.Lexemes[0].Span.Cover(c.Lexemes[^1].Span) } : null;
        }

        if (c.Is("cont") && ((c.Is("to", 1) && c.Is("dec|inc", 2)) || c.Is("dec|inc", 1)))
        {
            c.At += c.Is("to", 1) ? 2 : 1; // "continue to decrease 1 st each end ..."
        }

        if (EdgePlace(c) is { } first && c.IsDone)
        {
            _edges = first;
            _neckFirst = true;
            return new ShapingStep(c.SpanFrom(start), []);
        }

        if (Verb(c, context) && ImmutableArray.CreateBuilder<ShapingStretch>() is var stretches && Schedule(c, context, stretches))
        {
            while (!c.IsDone && (c.Eat("then") || c.Eat("and")))
            {
                c.Eat("then");
                Verb(c, context);
                if (!Schedule(c, context, stretches))
                {
                    break;
                }
            }

            if (c.IsDone)
            {
                return new ShapingStep(c.SpanFrom(start), stretches.ToImmutable());
            }
        }

        (_sign, _perRow, _edges, _mayCountTimes) = (sign, perRow, edges, times);
        c.At = start;
        return null;
    }

    /// <summary>"dec 1 st at each end of", "BO 4 sts at beg of"; without a verb the last one goes on ("3 sts at beg of ...", "every 4th row ...").</summary>
    private bool Verb(PhraseCursor c, RowContext context)
    {
        var verb = c.Is("inc|co") ? 1 : c.Is("dec|bo") ? -1 : 0;
        if (verb != 0)
        {
            _mayCountTimes = _neckFirst || c.Is("bo");
            c.At++;
            _sign = verb;
            _perRow = null;
            if (!_neckFirst)
            {
                _edges = 1;
            }
        }

        if (_sign == 0)
        {
            return false;
        }

        if (c.IsNumber() && (c.Is("st", 1) || verb != 0))
        {
            _perRow = context.AmountOf(c.EatNumber()!);
            if (!c.Eat("st") && context.IsCrochet)
            {
                CrochetReader.OperationAt(c, context); // "dec 1 sc at each end"
            }
        }
        else if (verb != 0)
        {
            return false;
        }

        if (EdgePlace(c) is { } edges)
        {
            _edges = edges;
            _mayCountTimes = true;
        }

        return _perRow is not null;
    }

    private static int? EdgePlace(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("at|on");
        c.Eat("the");
        if (c.Is("each|both") && c.Is("armhole|neck|side|front|sleeve|shoulder", 1) && c.Is("edge", 2))
        {
            c.At += 3;
            c.Eat("of");
            return 2;
        }

        if (c.Eat("each|both") && c.Eat("end|side|edge"))
        {
            c.Eat("of");
            return 2;
        }

        if (c.EatAll("beg", "and", "end") || c.EatAll("beg", "and", "at", "end"))
        {
            c.Eat("of");
            return 2;
        }

        if (c.Eat("beg|end|neck|armhole|side|front|shoulder|center|sleeve|raglan"))
        {
            c.Eat("edge");
            c.Eat("of|on");
            return 1;
        }

        c.At = start;
        return null;
    }

    private bool Schedule(PhraseCursor c, RowContext context, ImmutableArray<ShapingStretch>.Builder stretches)
    {
        var change = RowContext.Times(_perRow!, _sign * _edges);
        c.Eat("of|on|in|at");
        c.Eat("the");

        _every = null;

        // "BO 3 sts at neck edge once, then 2 sts twice": each time is a row.
        if (_mayCountTimes && TimesReader.TryRead(c, context) is { } plain)
        {
            stretches.Add(new ShapingStretch(change, plain, null));
            return true;
        }

        var start = c.At;
        var next = c.Eat("next|first");
        var ordinalStart = !next && c.Peek()?.Number is { IsOrdinal: true } && c.Is("and", 1);
        if (ordinalStart)
        {
            c.At++;
        }

        if ((next || ordinalStart) && c.Is("row|rnd") && c.Is("and", 1))
        {
            c.At++;
        }

        if ((next || ordinalStart) && c.Eat("and"))
        {
            c.Eat("then");
            if (c.Eat("every|each"))
            {
                c.Eat("foll");
                Interval(c, context);
                return c.Eat("row|rnd") && Until(c, context, change, stretches, beginsNow: next);
            }

            c.Eat("foll");
            if (c.IsNumber())
            {
                var more = context.AmountOf(c.EatNumber()!);
                c.Eat("foll");
                Interval(c, context);
                c.Eat("foll");
                if (!c.Eat("row|rnd"))
                {
                    return false;
                }

                stretches.Add(new ShapingStretch(change, more with { Values = more.Values.Map(v => v + 1) }, null) { Every = Pace(c, start), BeginsNow = next });
                c.EatAll("all", "sizes");
                return true;
            }

            // "next and foll alt row": two rows.
            Interval(c, context);
            if (c.Eat("row|rnd"))
            {
                stretches.Add(new ShapingStretch(change, RowContext.Constant(2, c.SpanFrom(start)), null) { Every = Pace(c, start), BeginsNow = next });
                return true;
            }

            return false;
        }

        c.At = start;
        if (c.Peek()?.Number is { IsOrdinal: true, IsList: false } && c.Is("row|rnd", 1))
        {
            // "inc 1 st at each end of 5th row"
            c.At += 2;
            stretches.Add(new ShapingStretch(change, RowContext.Constant(1, c.SpanFrom(start)), null) { Every = Pace(c, start) });
            return true;
        }

        if (c.Eat("next|foll|last|this"))
        {
            c.Eat("foll|next");
            var rows = c.EatNumber();
            Interval(c, context);
            c.Eat("foll");
            if (!c.Eat("row|rnd"))
            {
                return false;
            }

            stretches.Add(new ShapingStretch(change, rows is null ? RowContext.Constant(1, c.SpanFrom(start)) : context.AmountOf(rows), null) { Every = Pace(c, start), BeginsNow = _every is null });
            c.EatAll("all", "sizes");
            return true;
        }

        if (c.Eat("every|each"))
        {
            c.Eat("foll");
            Interval(c, context);
            c.Eat("foll");
            if (!c.Eat("row|rnd"))
            {
                return false;
            }

            return Until(c, context, change, stretches);
        }

        if (_edges == 1 && c.Is("row|rnd") && c.At == c.Lexemes.Count - 1)
        {
            // "inc 1 st at end of row"
            c.At++;
            stretches.Add(new ShapingStretch(change, RowContext.Constant(1, c.SpanFrom(start)), null) { Every = Pace(c, start), BeginsNow = true });
            return true;
        }

        // "rows 3, 5 and 7" is cut at commas by the parser; "row 3" alone is one row.
        if (c.Eat("row|rnd") && c.EatNumber() is not null)
        {
            var count = 1;
            while (c.Eat("and|&") && c.EatNumber() is not null)
            {
                count++;
            }

            stretches.Add(new ShapingStretch(change, RowContext.Constant(count, c.SpanFrom(start)), null));
            return true;
        }

        return false;
    }

    /// <summary>"4th", "foll alt", "RS": every how many rows.</summary>
    private void Interval(PhraseCursor c, RowContext context)
    {
        while (true)
        {
            if (c.Peek() is { IsNumber: true } number && c.Is("row|rnd|foll", 1))
            {
                c.At++;
                _every = context.AmountOf(number);
            }
            else if (c.Is("alt|other|rs|ws|even|odd"))
            {
                c.At++;
                _every ??= RowContext.Constant(2, c.Peek(-1)!.Span);
            }
            else if (!c.Eat("foll"))
            {
                return;
            }
        }
    }

    private Amount Pace(PhraseCursor c, int start) => _every ?? RowContext.Constant(1, c.SpanFrom(start));

    private bool Until(PhraseCursor c, RowContext context, Amount change, ImmutableArray<ShapingStretch>.Builder stretches, bool beginsNow = false)
    {
        var pace = Pace(c, Math.Max(0, c.At - 1));
        c.EatAll("a", "total", "of");
        if (TimesReader.TryRead(c, context) is { } times)
        {
            c.Eat("more");
            TimesReader.EatInAll(c);
            stretches.Add(new ShapingStretch(change, times, null) { Every = pace, BeginsNow = beginsNow });
            return true;
        }

        if (c.Eat("to|until"))
        {
            c.Eat("there|you");
            c.Eat("are|have");
            if (c.EatNumber() is { } count && (c.Eat("st") || c.Eat("rem")))
            {
                c.Eat("rem|left");
                stretches.Add(new ShapingStretch(change, null, context.AmountOf(count)) { Every = pace, BeginsNow = beginsNow });
                return true;
            }
        }

        return false;
    }
}
