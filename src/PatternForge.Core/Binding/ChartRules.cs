using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Binding;

/// <summary>What can be wrong with a chart that stands in the source.</summary>
public static class ChartRules
{
    /// <summary>PF240.</summary>
    public static Rule UnknownSquare { get; } = new(
        "PF240", "chart-square-unknown", Area.Notation, Severity.Error,
        "A square of a chart names a stitch that nobody knows.",
        "The names in the squares are abbreviations of the trade, special stitches of the header, or short names of the chart's own key. An underscore stands where there is no stitch.")
    {
        Bad = """
            ## Ladder

            CO 3 sts.

            ```chart
            key: . = k, - = p
              | . - . | 1
              | . x . | 3
                  ^
            ```
            """,
        Good = """
            ## Ladder

            CO 3 sts.

            ```chart
            key: . = k, - = p, x = yo
                  . - .     3
            2     . - .
                  . - .     1
            ```
            """,
    };

    /// <summary>PF241.</summary>
    public static Rule UnevenRows { get; } = new(
        "PF241", "chart-rows-uneven", Area.Notation, Severity.Error,
        "The rows of a chart do not have the same number of squares, or not the same repeat.",
        "A square that is missing shifts all those beside it. A row with fewer stitches has an underscore where there is no stitch, and where one row has the brackets of a repeat, all have them over the same columns, but for rows in which a stitch would reach over the edge: there both brackets step aside.")
    {
        Bad = """
            ## Ladder

            CO 3 sts.

            ```chart
            key: . = k, - = p
                . - .     2
                . .       1
                ^^^
            ```
            """,
        Good = """
            ## Ladder

            CO 3 sts.

            ```chart
            key: . = k, - = p
                . - .     2
                . . .     1
            ```
            """,
    };

    /// <summary>All of them, by code.</summary>
    public static ImmutableArray<Rule> All { get; } = [UnknownSquare, UnevenRows];
}
