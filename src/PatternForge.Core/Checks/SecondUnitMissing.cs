using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>A pattern gives its lengths in both units, but not all of them.</summary>
internal sealed class SecondUnitMissing : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF441", "second-unit-missing", Area.Terms, Severity.Note,
        "Some lengths in rows and prose are given in two units, others in one.",
        "Who measures in inches relies on finding them beside the centimetres, and the other way round. Where a pattern gives both by hand, it should do so everywhere. A pattern that keeps to one unit throughout is not asked.")
    {
        Bad = """
            Knit every row until piece measures 10 cm (4 in).

            Purl every row until piece measures 20 cm.
                                                ^^^^^
            """,
        Good = """
            Knit every row until piece measures 10 cm (4 in).

            Purl every row until piece measures 20 cm (8 in).
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        var (both, single) = (0, new List<(TextSpan Span, Measure Measure)>());
        foreach (var (_, place) in Measures.Of(context).Where(m => m.Place.First.IsLength))
        {
            if (place.Second is null)
            {
                single.Add((place.Span, place.First));
            }
            else
            {
                both++;
            }
        }

        if (both == 0 || single.Count == 0)
        {
            return;
        }

        var more = single.Count == 1 ? "" : $" and {single.Count - 1} more";
        context.Bag.Add(
            Rule, single[0].Span,
            $"{both} {(both == 1 ? "length is" : "lengths are")} given in both units, this one{more} in {single[0].Measure.Unit.Symbol} alone",
            $"add {(single[0].Measure.IsImperial ? "centimetres" : "inches")} behind it");
    }
}
