using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Syntax;

/// <summary>What can be wrong with the body's blocks.</summary>
public static class BodyRules
{
    /// <summary>PF140.</summary>
    public static Rule RemarkNotClosed { get; } = new(
        "PF140", "remark-not-closed", Area.Source, Severity.Error,
        "A remark is opened and never closed.",
        "Remarks stand between <!-- and --> and never print. Without the end, the rest of the pattern would not print either.")
    {
        Bad = """
            Row 1: Knit.

            <!-- check this again
            ^^^^
            """,
        Good = """
            Row 1: Knit.

            <!-- check this again -->
            """,
    };

    /// <summary>PF141.</summary>
    public static Rule BlockNotClosed { get; } = new(
        "PF141", "block-not-closed", Area.Source, Severity.Error,
        "A fenced block is opened and never closed.",
        "A block for a chart or a table begins and ends with three backticks on a line of their own. Without the end, the rest of the pattern is taken for the block.")
    {
        Bad = """
            Row 1: Knit.

            ```notes
            ^^^
            Row 2: Purl.
            """,
        Good = """
            Row 1: Knit.

            ```notes
            My own table.
            ```
            """,
    };

    /// <summary>PF142.</summary>
    public static Rule AcceptanceUnused { get; } = new(
        "PF142", "acceptance-not-needed", Area.Source, Severity.Warning,
        "A remark accepts a finding that is not there.",
        "What was accepted has been mended, has moved to another line, or has another code. Take the remark out, or put it where the finding is.")
    {
        Bad = """
            Row 1: Knit. <!-- accept PF304: the edge curls on purpose -->
                         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Row 1: K8. <!-- accept PF304: the edge is left on purpose -->",
    };

    /// <summary>PF143.</summary>
    public static Rule AcceptanceWithoutReason { get; } = new(
        "PF143", "acceptance-without-reason", Area.Source, Severity.Error,
        "A finding is accepted without a reason.",
        "A finding is accepted for a reason that the next reader must know. Write it behind the code: accept PF304: why.")
    {
        Bad = """
            Row 1: K2, p1. <!-- accept PF306 -->
                           ^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = "Row 1: K2, p1. <!-- accept PF306: the notes say so -->",
    };

    /// <summary>All of them, by code.</summary>
    public static ImmutableArray<Rule> All { get; } = [RemarkNotClosed, BlockNotClosed, AcceptanceUnused, AcceptanceWithoutReason];
}
