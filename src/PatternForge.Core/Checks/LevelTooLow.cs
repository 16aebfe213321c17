using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Compares a declared level with what the rows show, where it is far below.</summary>
internal sealed class LevelTooLow : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF806", "level-too-low", Area.Completeness, Severity.Warning,
        "The level is far below what the rows show.",
        "The levels describe the project: basic stitches, simple, involved, or complex ones with several techniques at the same time. A maker who takes a basic project home and meets cables and short rows puts it aside. The words of the scale are wide, so only two steps apart are told.")
    {
        Bad = """
            ---
            title: Harbour cowl
            craft: knitting
            level: basic
                   ^^^^^
            level-reason: knitted in the round
            ---
            ## Cowl

            CO 24 sts.

            Row 1: *C6B, k6; rep from * to end.

            Row 2: Purl.
            """,
        Good = """
            ---
            title: Harbour cowl
            craft: knitting
            level: intermediate
            level-reason: cables
            ---
            ## Cowl

            CO 24 sts.

            Row 1: *C6B, k6; rep from * to end.

            Row 2: Purl.
            """,
        Sources = [Sources.ProjectLevels, Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        if (context.Facts.Level is not { } level)
        {
            return;
        }

        var shown = context.Techniques;
        var found = TechniquesShown.LevelOf(shown);
        if (found - level.Value < 2)
        {
            return;
        }

        var hard = shown.Where(t => t.Technique.Step >= 2).ToArray();
        context.Bag.Add(new Finding(Rule, context.Source, level.Origin, $"the level is {Name(level.Value)}, but the rows use {List(hard)}")
        {
            Labels = [.. hard.Take(3).Select(t => new Label(t.Line.Origin, t.Technique.Name))],
            Help = $"by the wording of the scale ({Sources.ProjectLevels}) that is {Name(found)}",
        });
    }

    internal static string Name(Level level) => level.ToString().ToLowerInvariant();

    internal static string List(IReadOnlyList<ShownTechnique> techniques) =>
        techniques.Count == 1 ? techniques[0].ToString() : $"{string.Join(", ", techniques.Take(techniques.Count - 1))} and {techniques[^1]}";
}
