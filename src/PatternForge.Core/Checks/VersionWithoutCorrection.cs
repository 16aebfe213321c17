using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds a pattern of a later version than the last one of its list of corrections.</summary>
internal sealed class VersionWithoutCorrection : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF512", "version-without-correction", Area.Abbreviations, Severity.Note,
        "The pattern is of a later version than the last one of its list of corrections.",
        "Where makers can read what each version corrected, they expect the newest one there as well. `patternforge diff OLD NEW --format yaml` prints what to add; where nothing changed that concerns a maker, the note may stand, or say just that.")
    {
        Bad = """
            ---
            title: Harbour hat
            version: 1.3
            corrections:
              - {version: 1.2, text: Decrease 6 stitches in Rnd 14}
                          ^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            version: 1.3
            corrections:
              - {version: 1.2, text: Decrease 6 stitches in Rnd 14}
              - {version: 1.3, text: Sizes and measurements are told in inches as well}
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        var own = context.Facts.Version;
        Located<string>? last = null;
        foreach (var version in context.Facts.Corrections.Select(c => c.Version).OfType<Located<string>>())
        {
            last = last is null || ReleasedCorrection.CompareVersions(version.Value, last.Value) > 0 ? version : last;
        }

        if (last is not null && !context.IsExcused("corrections", "version") && ReleasedCorrection.CompareVersions(own, last.Value) > 0)
        {
            context.Bag.Add(Rule, last.Origin, $"the pattern is version {own}, and the list of corrections ends with version {last.Value}", "add what the newest version corrected");
        }
    }
}
