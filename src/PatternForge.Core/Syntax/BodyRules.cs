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

    /// <summary>All of them, by code.</summary>
    public static ImmutableArray<Rule> All { get; } = [RemarkNotClosed, BlockNotClosed];
}
