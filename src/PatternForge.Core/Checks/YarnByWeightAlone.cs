using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Finds a yarn of which only the weight class is said.</summary>
internal sealed class YarnByWeightAlone : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF704", "yarn-by-weight-alone", Area.Yarn, Severity.Warning,
        "A yarn is named by its weight class alone.",
        "Two worsted yarns can differ by a third in metres per gram, and a wool hat drapes like nothing in cotton. Name the yarn of the sample, or at least its fibre and its put-up.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn: worsted weight yarn
                  ^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Wool
              weight: worsted
              put-up: 100 g = 200 m
              needs: 180 m
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        foreach (var yarn in context.Facts.Yarns)
        {
            var nameless = yarn.Name is null ? yarn.Weight is not null : YarnWeight.IsNothingElse(yarn.Name);
            if (nameless && yarn is { Fibre: null, PutUpMass: null, PutUpLength: null } && !context.IsExcused("yarn", "yarn.name", "yarn.fibre", "yarn.put-up"))
            {
                context.Bag.Add(Rule, yarn.Origin, "the yarn is named by its weight alone", "name the yarn of the sample, or give its fibre and put-up");
            }
        }
    }
}
