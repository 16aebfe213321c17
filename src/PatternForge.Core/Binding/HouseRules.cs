using PatternForge.Core.Findings;

namespace PatternForge.Core.Binding;

/// <summary>What can be wrong with a studio's project file (160 to 179). The examples are project files where nothing else is said.</summary>
public static class HouseRules
{
    /// <summary>A key that no project file has.</summary>
    public static Rule UnknownSetting { get; } = new(
        "PF160", "unknown-setting", Area.Source, Severity.Warning,
        "A key of the project file is none of those that it has.",
        "A misspelt key settles nothing, and every pattern of the studio would go on without it. The project file has `defaults`, `tolerances`, `style` and `never-accept`; each has keys of its own.")
    {
        Bad = """
            tolerances:
              mesurement: 4%
              ^^^^^^^^^^
            """,
        Good = """
            tolerances:
              measurement: 4%
            """,
    };

    /// <summary>A value that settles nothing.</summary>
    public static Rule UnreadableSetting { get; } = new(
        "PF161", "unreadable-setting", Area.Source, Severity.Error,
        "A value of the project file cannot be what its key wants.",
        "The usual value would hold instead, in every pattern of the studio, and nobody would notice. Shares are written as 5% or 0.05; a matter of style names one of its forms; codes are those that `explain` knows.")
    {
        Bad = """
            style:
              round: circle
                     ^^^^^^
            """,
        Good = """
            style:
              round: rnd
            """,
    };

    /// <summary>A header key that cannot be settled for all.</summary>
    public static Rule NoDefault { get; } = new(
        "PF162", "no-default", Area.Source, Severity.Warning,
        "The project file gives a default for something that is each pattern's own.",
        "Sizes, gauge and yarn differ from pattern to pattern: one that forgot its own would silently get another's. Only what a studio says in the same words everywhere may stand under `defaults`.")
    {
        Bad = """
            defaults:
              gauge: 22 sts and 30 rows = 10 cm in stockinette on 4 mm, blocked
              ^^^^^
            """,
        Good = """
            defaults:
              designer: Ilsa Merrowby
            """,
    };

    /// <summary>A finding is accepted that the studio lets nobody accept. The example is a pattern under a project file with `never-accept: [PF210]`.</summary>
    public static Rule AcceptanceNotAllowed { get; } = new(
        "PF163", "acceptance-not-allowed", Area.Source, Severity.Error,
        "A finding is accepted that the project file lets nobody accept.",
        "A studio may hold that some findings are put right in every pattern, whatever the reason. `never-accept` in its project file names them, and a remark that accepts one has no effect.")
    {
        Bad = """
            Row 1: Knit. (12 sts)

            Row 3: Knit. (12 sts) <!-- accept PF210: so it is -->
                                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            Row 1: Knit. (12 sts)

            Row 2: Knit. (12 sts)
            """,
    };

    /// <summary>Every rule of this file, by code.</summary>
    public static IReadOnlyList<Rule> All { get; } = [UnknownSetting, UnreadableSetting, NoDefault, AcceptanceNotAllowed];
}
