using PatternForge.Core.Findings;
using PatternForge.Core.Reference;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>Tells which cautions the release will carry for what it has found.</summary>
internal sealed class CautionAdded : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF850", "caution-added", Area.Completeness, Severity.Note,
        "The page will carry cautions for small parts or cords.",
        "A thing for babies or children, or a toy, that has buttons, beads, cords or ties gets the usual cautions on its page, in plain words that defer to local rules and to the label of the yarn. A section `Safety` may say it in your own words.")
    {
        Bad = """
            ---
            title: Harbour bonnet
            audience: babies
            notions: [two buttons]
                      ^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour bonnet
            audience: babies
            notions: [tapestry needle]
            ---
            """,
        Sources = [Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        if (context.IsExcused("cautions") || Sections.Has(context, "safety", "cautions"))
        {
            return;
        }

        var hazards = Hazards.Of(context.Facts, context.Lines);
        Hazard[] found = hazards.ForChildren || hazards.IsToy ? [.. hazards.Small, .. hazards.Cords] : hazards.ForYouths ? [.. hazards.Cords] : [];
        if (found.Length > 0)
        {
            var whom = hazards.ForBabies ? "a thing for babies" : hazards.ForChildren ? "a thing for children" : hazards.IsToy ? "a toy" : "a thing for youths";
            context.Bag.Add(Rule, found[0].Origin, $"{string.Join(", ", found.Select(h => $"`{h.Word}`").Distinct(StringComparer.Ordinal))} on {whom}: the page will carry the usual cautions", "add a section `Safety` to say it in your own words");
        }
    }
}
