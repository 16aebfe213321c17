using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds corrections of a version, or a date, that is later than the pattern's own.</summary>
internal sealed class CorrectionNewerThanPattern : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF510", "correction-newer-than-pattern", Area.Abbreviations, Severity.Warning,
        "The list of corrections names a version or date later than the pattern's own.",
        "A maker sees the version at the top of the page and takes it that later corrections are not in it. When something is corrected, the pattern's `version` and `date` go up with it.")
    {
        Bad = """
            ---
            title: Harbour hat
            version: 1.1
            corrections:
              - {version: 1.2, text: Decrease 6 stitches in Rnd 14}
                          ^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            version: 1.2
            corrections:
              - {version: 1.2, text: Decrease 6 stitches in Rnd 14}
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        if (context.IsExcused("corrections", "version"))
        {
            return;
        }

        foreach (var entry in facts.Corrections)
        {
            if (entry.Version is { } version && ReleasedCorrection.CompareVersions(version.Value, facts.Version) > 0)
            {
                context.Bag.Add(Rule, version.Origin, $"this correction is of version {version.Value}, but the pattern says that it is version {facts.Version}", "raise the `version` of the pattern, and its `date`");
            }
            else if (entry.Date is { } date && ReleasedCorrection.DayOf(date.Value) is { } day && ReleasedCorrection.DayOf(facts.Date) is { } own && day > own)
            {
                context.Bag.Add(Rule, date.Origin, $"this correction is of {date.Value}, but the pattern is dated {facts.Date}", "set the `date` of the pattern to the day of its last correction");
            }
        }
    }
}
