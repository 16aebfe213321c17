using PatternForge.Core.Findings;

namespace PatternForge.Core.Planning;

/// <summary>What can be wrong with the plans that a pattern asks for.</summary>
public static class PlanRules
{
    /// <summary>A plan that cannot be read.</summary>
    public static Rule NotUnderstood { get; } = new(
        "PF228", "plan-not-understood", Area.Notation, Severity.Error,
        "A block asks for a plan in a way that cannot be read.",
        "A fenced block `plan` says what is to be planned (`work: shaping`) and with which numbers, as lines of keys like the header's: counts, rows or lengths, names of the header's numbers, or formulas. It is replaced by the rows of the plan, which are worked and checked like any others. The guide lists the kinds and their keys.")
    {
        Bad = """
            CO 80 sts.

            ```plan
            work: shapping
                  ^^^^^^^^
            from: 80
            to: 60
            over: 60 rows
            ```
            """,
        Good = """
            CO 80 sts.

            ```plan
            work: shaping
            from: 80
            to: 60
            over: 60 rows
            ```
            """,
    };

    /// <summary>A plan that cannot be kept.</summary>
    public static Rule NotPossible { get; } = new(
        "PF229", "plan-not-possible", Area.Notation, Severity.Error,
        "A plan cannot be made with the numbers that it is given.",
        "Sixty stitches cannot become fifty-one by two at a time, and thirty decreases do not fit into forty rows on right-side rows alone. The message says what stands in the way and which numbers would do.")
    {
        Bad = """
            CO 80 sts.

            ```plan
            ^^^^^^^
            work: shaping
            from: 80
            to: 61
            over: 60 rows
            ```
            """,
        Good = """
            CO 80 sts.

            ```plan
            work: shaping
            from: 80
            to: 62
            over: 60 rows
            ```
            """,
    };

    /// <summary>All of them.</summary>
    public static IEnumerable<Rule> All { get; } = [NotUnderstood, NotPossible];
}
