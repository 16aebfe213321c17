using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>Compares a declared level with what the rows show, where it is a little low or much too high.</summary>
internal sealed class LevelBesideRows : PatternCheck
{
    /// <summary>With fewer rows a pattern shows too little to call its level too high.</summary>
    private const int RowsThatShowEnough = 12;

    public override Rule Rule { get; } = new(
        "PF807", "level-beside-rows", Area.Completeness, Severity.Note,
        "The level may be another one than the rows show.",
        "The words of the scale are wide, and what the rows do not show (fine yarn, many parts, charts) counts as well. This is only a hint to look once more.")
    {
        Bad = """
            ---
            title: Harbour cowl
            craft: knitting
            level: easy
                   ^^^^
            level-reason: cables and a few short rows
            ---
            ## Cowl

            CO 24 sts.

            Row 1: *C6B, k6; rep from * to end.

            Row 2: P12, w&t, p12.
            """,
        Good = """
            ---
            title: Harbour cowl
            craft: knitting
            level: intermediate
            level-reason: cables and a few short rows
            ---
            ## Cowl

            CO 24 sts.

            Row 1: *C6B, k6; rep from * to end.

            Row 2: P12, w&t, p12.
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
        var (said, hard) = (LevelTooLow.Name(level.Value), shown.Where(t => t.Technique.Step >= (int)Level.Intermediate).ToArray());
        if (found - level.Value == 1 && hard.Length > 1)
        {
            context.Bag.Add(Rule, level.Origin, $"the level is {said}; the rows use {LevelTooLow.List(hard)}", $"by the wording of the scale ({Sources.ProjectLevels}) it may be {LevelTooLow.Name(found)}");
        }
        else if (level.Value is Level.Complex && shown.All(t => t.Technique.Step < 2) && context.Facts.Charts.IsEmpty && context.Lines.Length >= RowsThatShowEnough && context.Lines.All(l => l.Status == LineStatus.Checked)
            && !context.Pattern.Sections.SelectMany(s => s.Blocks).OfType<FencedBlock>().Any())
        {
            context.Bag.Add(Rule, level.Origin, $"the level is {said}; the rows show {(shown.IsEmpty ? "none of the involved techniques" : $"only {LevelTooLow.List(shown)}")}", "let the reason say what makes it so, or lower the level");
        }
    }
}
