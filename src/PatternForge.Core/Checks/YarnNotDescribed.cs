using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Notes what a yarn is not told by: weight, fibre, put-up.</summary>
internal sealed class YarnNotDescribed : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF716", "yarn-not-described", Area.Yarn, Severity.Note,
        "A yarn lacks its weight class, its fibre or its put-up.",
        "A yarn may be sold out, or not sold where the maker lives. The weight class, the fibre and the metres per gram are what another one is found by. Any of them may be left out on purpose: name it under `omit` (`weight`, `fibre`, `put-up`).")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                ^^^^^^^^^^^^^^^^^^^
                put-up: 100 g = 200 m
                needs: 180 m
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                fibre: 100% wool
                weight: worsted
                put-up: 100 g = 200 m
                needs: 180 m
            ---
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        foreach (var yarn in context.Facts.Yarns)
        {
            // What PF703 and PF704 say of a yarn is not said again.
            var reported = yarn is { PutUpMass: null, PutUpLength: null } && (yarn.Needs is not null || yarn.Name is null || Reference.YarnWeight.IsNothingElse(yarn.Name));
            string[] missing =
            [
                .. Missing(yarn.Weight is null && !Weighs(yarn.Name), "weight"),
                .. Missing(yarn.Fibre is null, "fibre"),
                .. Missing(yarn is { PutUpMass: null, PutUpLength: null }, "put-up"),
            ];
            if (missing.Length > 0 && !reported && !context.IsExcused("yarn"))
            {
                context.Bag.Add(Rule, yarn.Origin, $"{YarnWords.Of(yarn)} is not told by its {string.Join(", ", missing)}", "add it, so that a maker can find another yarn");
            }
        }

        string[] Missing(bool lacks, string part) => lacks && !context.IsExcused(part, "yarn." + part) ? [part] : [];
    }

    private static bool Weighs(string? name) => name is not null && Reference.YarnWeight.Find(name) is not null;
}
