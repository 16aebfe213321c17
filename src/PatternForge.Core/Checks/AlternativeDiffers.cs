using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds alternatives that are thicker or thinner than the yarn they stand for.</summary>
internal sealed class AlternativeDiffers : PatternCheck
{
    // A note that speaks of the difference has warned the maker.
    private static readonly string[] Warnings = ["thin", "thick", "fine", "light", "heav", "bulk", "dens", "airy", "more yarn", "less yarn", "gauge", "tension", "swatch", "drap", "loft"];

    public override Rule Rule { get; } = new(
        "PF713", "alternative-differs", Area.Yarn, Severity.Warning,
        "An alternative has other metres per gram than the yarn, and its note does not say so.",
        "A yarn with more metres to the gram is thinner, or loftier, at the same gauge; one with fewer is thicker or denser. Up to a tenth makes no difference. Beyond it the maker should know: the fabric will be another, and the amount must be bought by its length. Say it in the alternative's note (thinner, thicker, lighter, heavier), and nobody asks again.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                put-up: 100 g = 200 m
                needs: 180 m
                alternatives:
                  - name: Brackwater Plain
                    ^^^^^^^^^^^^^^^^^^^^^^
                    put-up: 100 g = 320 m
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                put-up: 100 g = 200 m
                needs: 180 m
                alternatives:
                  - name: Brackwater Plain
                    put-up: 100 g = 210 m
            ---
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        foreach (var yarn in context.Facts.Yarns)
        {
            if (yarn.MetresPerGram is not > 0 || yarn.MetresPerGram is not { } main || Grist.IsDoubtful(yarn))
            {
                continue;
            }

            foreach (var other in yarn.Alternatives)
            {
                if (other is not { PutUpMass.InBase: > 0 and var grams, PutUpLength.InBase: > 0 and var metres } || (other.Note is { } note && Array.Exists(Warnings, w => note.Contains(w, StringComparison.OrdinalIgnoreCase))))
                {
                    continue;
                }

                var grist = metres / grams;
                var off = (grist - main) / main;
                if (Math.Abs(off) > context.Tolerances.Grist)
                {
                    context.Bag.Add(Rule, other.Origin,
                        string.Create(CultureInfo.InvariantCulture, $"`{other.Name}` has {grist:0.0#} m to the gram, {Math.Abs(off) * 100:0} % {(off > 0 ? "more" : "fewer")} than {YarnWords.Of(yarn)} with {main:0.0#}, where {context.Tolerances.Grist * 100:0.#} % are allowed"),
                        Expect(context, yarn, off, metres));
                }
            }
        }
    }

    private static string Expect(CheckContext context, Yarn yarn, decimal off, decimal ballMetres)
    {
        var fabric = off > 0 ? "a thinner or loftier fabric" : "a thicker or denser fabric";
        var (metres, size) = Amounts.Most(context.Facts, yarn);
        var buy = metres is { } needed ? string.Create(CultureInfo.InvariantCulture, $"; {needed:0} m{size} are {Math.Ceiling(Math.Round(needed / ballMetres, 6)):0} balls of it") : "; buy it by its length, not by its weight";
        return $"expect {fabric} at the same gauge{buy}: say so in its `note`, or name another yarn";
    }
}
