using PatternForge.Core.Findings;
using PatternForge.Core.Reference;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>A thing that holds what is hot, of a yarn that melts.</summary>
internal sealed class MeltsNearHeat : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF852", "melts-near-heat", Area.Completeness, Severity.Warning,
        "A thing that holds what is hot is made of a yarn that melts.",
        "Acrylic, nylon and polyester soften and melt on a hot pan, and stick to the skin. Potholders and trivets are made of wool or cotton.")
    {
        Bad = """
            ---
            title: Harbour potholder
            yarn: {name: Quayside Soft, fibre: 100% acrylic, put-up: 100 g = 200 m, needs: 50 m}
                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour potholder
            yarn: {name: Quayside Cotton, fibre: 100% cotton, put-up: 100 g = 200 m, needs: 50 m}
            ---
            """,
        Sources = [Sources.CommonPractice, Sources.FibreCare],
    };

    public override void Run(CheckContext context)
    {
        if (Hazards.Of(context.Facts, context.Lines).HoldsHotThings && FibresUsed.In(context.Facts).FirstOrDefault(f => f.Family.Melts) is { Family: { } family, Yarn: { } yarn })
        {
            context.Bag.Add(Rule, yarn.Origin, $"{FibresUsed.Named(family, yarn)} melts on what is hot, by {FibreCare.Source}", "take cotton or wool for what holds hot things");
        }
    }
}
