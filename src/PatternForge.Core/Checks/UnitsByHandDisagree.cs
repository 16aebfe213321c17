using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>The same measurement, given by hand in two units, does not agree with itself.</summary>
internal sealed class UnitsByHandDisagree : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF440", "hand-units-disagree", Area.Terms, Severity.Warning,
        "A measurement in rows or prose is given in two units that do not agree.",
        "One inch is 2.54 cm, one yard 0.9144 m and one ounce 28.35 g. Each number is rounded by itself, and \"10 cm (4 in)\" is how the trade writes it; but where the two are further apart than any rounding, makers of the two systems work different pieces. How far apart they may be stands in the project file under `tolerances`, as `units`.")
    {
        Bad = """
            Knit every row until piece measures 20 cm (6 in).
                                                ^^^^^^^^^^^
            """,
        Good = """
            Knit every row until piece measures 20 cm (8 in).
            """,
        Sources = [Sources.InternationalYard],
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        foreach (var (stretch, place) in Measures.Of(context))
        {
            if (place is not { First: var first, Second: { } second } || first.Values.Length != second.Values.Length)
            {
                continue;
            }

            for (var i = 0; i < first.Values.Length; i++)
            {
                var (said, again) = (new Quantity(first.Values[i], first.Unit), new Quantity(second.Values[i], second.Unit));
                var rounding = (first.Rounding * first.Unit.InBase) + (second.Rounding * second.Unit.InBase);
                if (Math.Abs(said.InBase - again.InBase) > Math.Max(rounding, context.Tolerances.Units * said.InBase))
                {
                    context.Bag.Add(new Finding(Rule, context.Source, place.Span, string.Create(CultureInfo.InvariantCulture, $"{said} is {said.To(again.Unit).Value:0.#} {again.Unit.Symbol}, but {again} stands beside it"))
                    {
                        Help = "correct one of the two",
                        Sizes = !first.HasRanges && first.Values.Length == context.Facts.Sizes.Count && first.Values.Length > 1 ? [i] : [],
                    });
                    break;
                }
            }
        }
    }
}
