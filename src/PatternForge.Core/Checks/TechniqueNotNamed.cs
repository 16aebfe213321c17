using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>A technique that the rows use and the list of techniques does not name.</summary>
internal sealed class TechniqueNotNamed : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF808", "technique-not-named", Area.Completeness, Severity.Note,
        "The rows use a technique that the pattern's list of techniques does not name.",
        "The list tells a maker what to know or to look up beforehand. Cables, lace, short rows, brioche, several colours in a row, steeks and grafting are looked for; they may be named under `techniques`, in the reason of the level, or in a section on techniques.")
    {
        Bad = """
            ---
            title: Harbour cowl
            craft: knitting
            techniques: [knitting in the round]
                         ^^^^^^^^^^^^^^^^^^^^^
            ---
            ## Cowl

            CO 24 sts.

            Row 1: *C6B, k6; rep from * to end.
            """,
        Good = """
            ---
            title: Harbour cowl
            craft: knitting
            techniques: [knitting in the round, cables]
            ---
            ## Cowl

            CO 24 sts.

            Row 1: *C6B, k6; rep from * to end.
            """,
        Sources = [Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        var section = context.Pattern.Sections.FirstOrDefault(s => s.Role == "techniques");
        if ((facts.Techniques.IsEmpty && section is null) || context.IsExcused("techniques"))
        {
            return;
        }

        string?[] said = [.. facts.Techniques.Select(t => t.Value), facts.LevelReason, facts.Summary, .. Sections.Prose(context, "techniques", "notes", "construction")];
        ShownTechnique[] missing = [.. context.Techniques.Where(t => t.Technique.Step >= 2 || t.Technique == TechniqueLevels.Grafting).Where(t => !Sections.Says(said, [.. t.Technique.Words]))];
        if (missing.Length > 0)
        {
            var place = section?.Origin ?? facts.Techniques[0].Origin;
            context.Bag.Add(Rule, place, $"the rows use {LevelTooLow.List(missing)}, which the techniques do not name", "name it there, so that a maker can look it up first");
        }
    }
}
