using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>Finds a measurement or amount that breaks the run of the sizes.</summary>
internal sealed class MeasurementOutOfRun : PatternCheck
{
    // Lengths of the largest sizes often stand still or fall a little; a peak is told only where it stands out by more than a tenth.
    private const decimal Peak = 0.1m;

    public override Rule Rule { get; } = new(
        "PF611", "measurement-out-of-run", Area.Gauge, Severity.Warning,
        "A measurement breaks the run of the sizes.",
        "From size to size a measurement rises, stays or falls steadily, though seldom in equal steps. One that goes up and comes down again is mostly a slip of the keys, or two numbers exchanged.")
    {
        Bad = """
            ---
            title: Harbour pullover
            sizes:
              names: S (M, L, XL)
              finished:
                bust: 91 (102, 98, 122) cm
                      ^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour pullover
            sizes:
              names: S (M, L, XL)
              finished:
                bust: 91 (98, 102, 122) cm
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        foreach (var measurement in facts.Fits.AddRange(facts.Finished))
        {
            Check(context, measurement.Name, measurement.Values, measurement.Origin);
        }

        foreach (var yarn in facts.Yarns)
        {
            if (yarn.Needs is { } needs)
            {
                Check(context, yarn.Name is { } name ? $"needs of {name}" : "needs", needs, yarn.NeedsOrigin ?? yarn.Origin);
            }
        }

        foreach (var number in facts.Numbers)
        {
            if (number.Values.Values.All(v => v is null || v.Unit.Dimension != Dimension.Count))
            {
                Check(context, number.Name, number.Values, number.Origin);
            }
        }
    }

    private void Check(CheckContext context, string name, PerSize<Quantity?> values, TextSpan place)
    {
        if (values.IsShared)
        {
            return;
        }

        var said = Enumerable.Range(0, values.Values.Length)
            .Where(size => values[size] is not null)
            .Select(size => (size, value: values[size]!))
            .ToArray();
        if (said.Length < 3 || said.Any(v => v.value.Unit.Dimension != said[0].value.Unit.Dimension))
        {
            return;
        }

        if (BreakOf([.. said.Select(v => v.value.InBase)]) is not { } at)
        {
            return;
        }

        var (before, after) = (said[at - 1], said[at]);
        var sizes = context.Facts.Sizes.Names;
        var word = after.value.InBase < before.value.InBase ? "less" : "more";
        var run = string.Join(", ", said.Select(v => v.value.Value.ToString("0.####", CultureInfo.InvariantCulture)));
        context.Bag.Add(new Finding(Rule, context.Source, place, $"`{name}` runs {run}: {after.value} in size {sizes[after.size]} is {word} than {before.value} in size {sizes[before.size]}")
        {
            Sizes = [before.size, after.size],
            Help = "check both values; if they are meant, accept this with a reason",
        });
    }

    /// <summary>True when the values of a measurement break their run, which is told by this check.</summary>
    internal static bool Breaks(PerSize<Quantity?> values)
    {
        decimal[] said = [.. values.Values.Where(v => v is not null).Select(v => v!.InBase)];
        return !values.IsShared && said.Length >= 3 && BreakOf(said) is not null;
    }

    /// <summary>The index of the value that turns against the run, where the run is clear and taking one value out mends it; null otherwise.</summary>
    internal static int? BreakOf(decimal[] values)
    {
        var (rises, falls) = (0, 0);
        var turns = 0;
        var last = 0;
        for (var i = 1; i < values.Length; i++)
        {
            var step = Math.Sign(values[i] - values[i - 1]);
            rises += step > 0 ? 1 : 0;
            falls += step < 0 ? 1 : 0;
            turns += step != 0 && last != 0 && step != last ? 1 : 0;
            last = step == 0 ? last : step;
        }

        if (rises == 0 || falls == 0)
        {
            return null;
        }

        var direction = rises != falls ? Math.Sign(rises - falls) : values[^1] >= values[0] ? 1 : -1;
        var at = Enumerable.Range(1, values.Length - 1).First(i => Math.Sign(values[i] - values[i - 1]) == -direction);
        if (turns == 1 && Math.Abs(values[at] - values[at - 1]) <= Peak * Math.Max(Math.Abs(values[at]), Math.Abs(values[at - 1])))
        {
            return null;
        }

        return Enumerable.Range(0, values.Length).Any(skip => Runs(values, skip, direction)) ? at : null;
    }

    private static bool Runs(decimal[] values, int skip, int direction)
    {
        decimal? last = null;
        for (var i = 0; i < values.Length; i++)
        {
            if (i == skip)
            {
                continue;
            }

            if (last is { } before && Math.Sign(values[i] - before) == -direction)
            {
                return false;
            }

            last = values[i];
        }

        return true;
    }
}
