using PatternForge.Core.Findings;
using PatternForge.Core.Reference;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>Cautions that were left out on purpose where something can hurt.</summary>
internal sealed class CautionLeftOut : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF851", "caution-left-out", Area.Completeness, Severity.Warning,
        "A thing for children has small parts or cords, and the cautions are left out.",
        "The page carries the usual cautions by itself where a thing for babies or children, or a toy, has buttons, beads, cords or ties. `omit: [cautions]` takes them away: then a section `Safety` should say in your own words what a maker must know.")
    {
        Bad = """
            ---
            title: Harbour bonnet
            audience: babies
            notions: [two buttons]
                      ^^^^^^^^^^^
            omit: [cautions]
            ---
            """,
        Good = """
            ---
            title: Harbour bonnet
            audience: babies
            notions: [two buttons]
            ---
            """,
        Sources = [Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        if (!context.IsExcused("cautions") || Sections.Has(context, "safety", "cautions"))
        {
            return;
        }

        var hazards = Hazards.Of(context.Facts, context.Lines);
        if ((hazards.ForChildren || hazards.IsToy) && hazards.Small.Concat(hazards.Cords).FirstOrDefault() is { } hazard)
        {
            var whom = hazards.ForBabies ? "a thing for babies" : hazards.ForChildren ? "a thing for children" : "a toy";
            context.Bag.Add(Rule, hazard.Origin, $"`{hazard.Word}` on {whom}, but the cautions are left out", "take `cautions` out of `omit`, or write a section `Safety`");
        }
    }
}
