using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Something is written in another form than the studio's style sheet settles. The example stands under a project file with `round: rnd`.</summary>
internal sealed class StyleOfHouse : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF420", "house-style", Area.Terms, Severity.Warning,
        "Something is written in another form than the style sheet of the project file has.",
        "A studio that writes the same thing in the same way in all its patterns is read with less effort, and makers who know one pattern know them all. `lint --fix` brings every place into the settled form at once; words that mean something else (\"in the round\") are left alone.")
    {
        Bad = """
            CO 12 sts. Join in the round.

            Round 1: Knit.
            ^^^^^

            Round 2: Purl.
            """,
        Good = """
            CO 12 sts. Join in the round.

            Rnd 1: Knit.

            Rnd 2: Purl.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        if (context.House.Style.Choices.IsEmpty)
        {
            return;
        }

        foreach (var matter in StyleUses.Divided(context).GroupBy(u => u.Matter))
        {
            if (context.House.Style.FormOf(matter.Key) is not { } right || matter.Where(u => u.Form != right).ToList() is not { Count: > 0 } wrong)
            {
                continue;
            }

            var times = wrong.Count == 1 ? "once" : $"{wrong.Count} times";
            var message = $"{matter.Key.About}: {StyleUses.Shown(matter.Key, wrong[0].Form)} stands {times} where the style sheet has {StyleUses.Shown(matter.Key, right)}";
            context.Bag.Add(StyleUses.Finding(Rule, context.Source, wrong, right, message, isExact: true));
        }
    }
}
