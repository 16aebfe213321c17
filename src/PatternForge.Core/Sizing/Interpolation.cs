using System.Globalization;

namespace PatternForge.Core.Sizing;

/// <summary>Works out what a list would say for a size that is not in it: on the line through its neighbours, and keeping what all its values have in common.</summary>
internal static class Interpolation
{
    private static readonly decimal[] Steps = [5m, 1m, 0.5m, 0.25m, 0.125m, 0.1m, 0.05m, 0.01m];

    private const decimal MostSteps = 5_000m;

    private static readonly string[] YarnUnits = ["m", "g", "yd", "kg", "oz"];

    /// <summary>The value of a list.</summary>
    /// <param name="values">The list's values in order.</param>
    /// <param name="place">Where the new one stands among them.</param>
    /// <param name="measure">The unit that stands with them; empty for bare numbers.</param>
    /// <param name="isYarn">True for an amount of yarn, which is better too much than too little.</param>
    /// <param name="multiple">The stitch multiple that all values keep to; 1 for none.</param>
    /// <param name="keepsAll">True to keep all that the values have in common, even where no number between the neighbours does.</param>
    public static NewValue Of(IReadOnlyList<SizeListValue> values, NewPlace place, string measure, bool isYarn, bool keepsAll, int multiple = 1)
    {
        var (from, to) = (values[place.From], values[place.To]);
        var near = place.Share > 0.5m ? to : from;
        if (from.Number is not { } a || to.Number is not { } b)
        {
            var other = from.Number is null ? to : from;
            return place.IsBetween && other.Number is { } one
                ? new(one, other.UpTo, "only one neighbour works this", IsOpen: true)
                : near.Number is null
                    ? new(null, null, other.Number is null ? "neither neighbour works this" : "the neighbour works none of this", IsOpen: other.Number is not null)
                    : new(near.Number, near.UpTo, "as its neighbour", IsOpen: true);
        }

        var known = values.Where(v => v.Number is not null).Select(v => v.Number!.Value).ToArray();
        decimal? upTo = from.UpTo is { } fromTop && to.UpTo is { } toTop ? Measured(fromTop + ((toTop - fromTop) * place.Share), known, isYarn) : null;
        if (known.All(k => k == known[0]) && (upTo is null || from.UpTo == to.UpTo))
        {
            return new(a, from.UpTo, "the same in all sizes");
        }

        // "0 (2, 0, 2)": what goes to and fro from size to size goes on so at either end.
        if (!place.IsBetween && known.Length == values.Count && known.Length > 3 && upTo is null && known.Zip(known.Skip(2)).All(p => p.First == p.Second))
        {
            return new(place.Index == 0 ? known[1] : known[^2], null, "in turn, as from size to size", IsOpen: true);
        }

        var exact = a + ((b - a) * place.Share);
        var way = place.IsBetween ? place.Share == 0.5m ? "halfway" : "by the main measurement" : Math.Abs(b - a) == 0 ? "as its neighbour" : place.Share is 2m or -1m ? "one step on" : "by the main measurement";
        if (measure.Length > 0 || upTo is not null || known.Any(k => k != decimal.Truncate(k)))
        {
            return new(Math.Max(0, Measured(exact, known, isYarn || YarnUnits.Contains(measure, StringComparer.OrdinalIgnoreCase))), upTo, way);
        }

        return Whole(exact, known, a, b, place, way, keepsAll, multiple);
    }

    private static NewValue Whole(decimal exact, decimal[] known, decimal a, decimal b, NewPlace place, string way, bool keepsAll, int multiple)
    {
        var step = known.Skip(1).Aggregate(0m, (g, k) => Divisor(g, Math.Abs(k - known[0])));
        var least = known.Min() > 0 ? 1 : 0;
        if (place.IsBetween && !keepsAll && Math.Abs(b - a) > 1)
        {
            // The largest step that leaves room between the neighbours.
            for (var smaller = Math.Min(step, MostSteps); smaller >= 1; smaller--)
            {
                if (step % smaller == 0 && smaller % multiple == 0 && Nearest(exact, known[0], smaller) is var inside && inside > Math.Min(a, b) && inside < Math.Max(a, b))
                {
                    return new(Math.Max(inside, least), null, smaller == step ? $"{way}{Common(known[0], step)}" : $"{way}{Common(known[0], smaller)}{(multiple > 1 ? ", as the stitch pattern asks" : "")}; all values so far are{Form(known[0], step)}", IsOpen: smaller < step && smaller < 2);
                }
            }
        }

        var value = Nearest(exact, known[0], Math.Max(1, step));
        while (value < least)
        {
            value += Math.Max(1, step);
        }

        var isNeighbour = place.IsBetween && a != b && (value == a || value == b);
        return new(value, null, isNeighbour ? $"as its neighbour: no number between the two is{Form(known[0], step)}" : way + Common(known[0], step), IsOpen: isNeighbour);
    }

    private static decimal Nearest(decimal exact, decimal first, decimal step)
    {
        var rest = ((first % step) + step) % step;
        return (Math.Floor(((exact - rest) / step) + 0.5m) * step) + rest;
    }

    private static string Common(decimal first, decimal step) => step <= 1 ? "" : "," + Form(first, step);

    private static string Form(decimal first, decimal step) =>
        step <= 1 ? " a whole number"
        : step == 2 ? first % 2 == 0 ? " even" : " odd"
        : first % step == 0 ? string.Create(CultureInfo.InvariantCulture, $" a multiple of {step:0}")
        : string.Create(CultureInfo.InvariantCulture, $" a multiple of {step:0} plus {first % step:0}");

    /// <summary>A measured value in the steps that the list is told in.</summary>
    public static decimal Measured(decimal exact, decimal[] known, bool isYarn)
    {
        var step = Steps.FirstOrDefault(s => (s < 5 || isYarn) && known.All(k => k % s == 0), 0.01m);
        var steps = exact / step;
        return (isYarn ? Math.Ceiling(steps) : Math.Floor(steps + 0.5m)) * step;
    }

    private static decimal Divisor(decimal a, decimal b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }
}
