using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>
/// Looks for a value that breaks the run of the sizes: in totals always, in a stitch's number only where the other values step so evenly that the
/// odd one must be a slip. Repeat counts and remainders do not run (common practice).
/// </summary>
internal static class NumbersInRun
{
    /// <summary>Reports the lists of a line's rows that turn back.</summary>
    public static void Check(ImmutableArray<BoundRow> rows, RowContext context)
    {
        if (context.SizeCount < 3)
        {
            return;
        }

        foreach (var row in rows)
        {
            foreach (var claim in row.Claims.Where(c => c.Kind == ClaimKind.Total))
            {
                Total(new Amount(claim.Values, claim.Origin), context);
            }

            Steps(row.Steps, context, 0);
        }
    }

    private static void Steps(ImmutableArray<Step> steps, RowContext context, int depth)
    {
        foreach (var step in steps)
        {
            switch (step)
            {
                case CastOnStep cast:
                    Total(cast.Stitches, context);
                    break;
                case StartStep start:
                    Total(start.Stitches, context);
                    break;
                case OperationStep { Times: { } times }:
                    Slip(times, context);
                    break;
                case GroupStep group when depth < 8:
                    Steps(group.Body, context, depth + 1);
                    break;
                case RepeatStep repeat when depth < 8:
                    Steps(repeat.Body, context, depth + 1);
                    break;
            }
        }
    }

    private static void Total(Amount amount, RowContext context)
    {
        var values = Known(amount);
        if (values.Count < 3 || values.All(v => v.Value < 8))
        {
            return;
        }

        var (rising, falling) = (true, true);
        for (var i = 1; i < values.Count; i++)
        {
            rising &= values[i].Value >= values[i - 1].Value;
            falling &= values[i].Value <= values[i - 1].Value;
        }

        if (rising || falling)
        {
            return;
        }

        // One turn back of a stitch or two happens where a repeat must fit; a real slip is larger.
        var largest = Enumerable.Range(1, values.Count - 1).Max(i => values[i - 1].Value - values[i].Value);
        if (values[^1].Value > values[0].Value && largest * 20 <= values[0].Value)
        {
            return;
        }

        Report(amount, Odd(values), context);
    }

    /// <summary>All values but one in even steps, and that one against the direction.</summary>
    private static void Slip(Amount amount, RowContext context)
    {
        var values = Known(amount);
        if (values.Count < 4 || values.Any(v => v.Value < 5))
        {
            return;
        }

        for (var i = 0; i < values.Count; i++)
        {
            var rest = values.Where((_, at) => at != i).ToList();
            var step = rest[1].Value - rest[0].Value;
            if (step == 0 || !EvenWithout(values, i, out var expected) || expected == values[i].Value)
            {
                continue;
            }

            var against = (i > 0 && (values[i].Value - values[i - 1].Value) * Math.Sign(step) < 0) || (i + 1 < values.Count && (values[i + 1].Value - values[i].Value) * Math.Sign(step) < 0);
            if (against)
            {
                Report(amount, i, context);
                return;
            }
        }
    }

    private static bool EvenWithout(List<(int Size, int Value)> values, int odd, out int expected)
    {
        // The line through two neighbours that are not the odd one must hold for all others.
        var (a, b) = odd switch
        {
            0 => (1, 2),
            1 => (2, 3),
            _ => (0, 1),
        };
        var step = values[b].Value - values[a].Value;
        expected = values[a].Value + ((odd - a) * step);
        for (var i = 0; i < values.Count; i++)
        {
            if (i != odd && values[i].Value != values[a].Value + ((i - a) * step))
            {
                return false;
            }
        }

        return true;
    }

    private static List<(int Size, int Value)> Known(Amount amount)
    {
        var known = new List<(int, int)>();
        if (!amount.Values.IsShared)
        {
            for (var i = 0; i < amount.Values.Values.Length; i++)
            {
                if (amount[i] is { } value)
                {
                    known.Add((i, value));
                }
            }
        }

        return known;
    }

    /// <summary>The value without which the others run best.</summary>
    private static int Odd(List<(int Size, int Value)> values)
    {
        for (var i = values.Count - 1; i >= 0; i--)
        {
            var rest = values.Where((_, at) => at != i).Select(v => v.Value).ToList();
            if (rest.SequenceEqual(rest.Order()) || rest.SequenceEqual(rest.OrderDescending()))
            {
                return i;
            }
        }

        return values.Count - 1;
    }

    private static void Report(Amount amount, int at, RowContext context)
    {
        var values = Known(amount);
        var (size, value) = values[at];
        var list = string.Join(", ", values.Select(v => v.Value.ToString(CultureInfo.InvariantCulture)));
        context.Bag.Add(new Finding(RowRules.ValuesOutOfRun, context.Source, amount.Origin, $"{value} for {context.Facts.Sizes.Describe([size])} does not run with the other sizes ({list})")
        {
            Sizes = [size],
            Help = EvenWithout(values, at, out var expected) && values.Count > 3 ? $"the other sizes step evenly; {expected} would run with them" : "check this value against your notes",
        });
    }
}
