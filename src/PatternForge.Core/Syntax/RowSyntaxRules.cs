using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Syntax;

/// <summary>What can be wrong with the signs of a row.</summary>
public static class RowSyntaxRules
{
    /// <summary>PF202.</summary>
    public static Rule BracketNotClosed { get; } = new(
        "PF202", "bracket-not-closed", Area.Notation, Severity.Error,
        "A bracket is opened and never closed.",
        "Without the closing bracket a maker cannot know where the repeat ends. The mark is on the bracket that stays open.")
    {
        Bad = """
            Row 1: (K2, p2, k to end.
                   ^
            """,
        Good = "Row 1: (K2, p2) twice, k to end.",
    };

    /// <summary>PF203.</summary>
    public static Rule BracketNotOpened { get; } = new(
        "PF203", "bracket-not-opened", Area.Notation, Severity.Error,
        "A bracket is closed that was never opened.",
        "A closing bracket without its partner leaves open where the repeat begins.")
    {
        Bad = """
            Row 1: K2, p2) twice, k4.
                         ^
            """,
        Good = "Row 1: (K2, p2) twice, k4.",
    };

    /// <summary>PF204.</summary>
    public static Rule BracketsDiffer { get; } = new(
        "PF204", "brackets-differ", Area.Notation, Severity.Error,
        "A bracket is closed with another kind than it was opened with.",
        "Different kinds of bracket set inner repeats apart from outer ones; mixed ones leave a maker guessing which repeat ends.")
    {
        Bad = """
            Row 1: [K2, p2) twice, k4.
                          ^
            """,
        Good = "Row 1: [K2, p2] twice, k4.",
    };

    /// <summary>PF205.</summary>
    public static Rule StarWithoutRepeat { get; } = new(
        "PF205", "star-without-repeat", Area.Notation, Severity.Error,
        "A star opens a repeat, but no \"rep from *\" follows.",
        "The star says where a repeat begins; \"rep from * ...\" or a second star must say where it ends and how far it goes.")
    {
        Bad = """
            Row 1: K2, *yo, k2tog; to last 2 sts, k2.
                       ^
            """,
        Good = "Row 1: K2, *yo, k2tog; rep from * to last 2 sts, k2.",
    };

    /// <summary>PF206.</summary>
    public static Rule RepeatWithoutStar { get; } = new(
        "PF206", "repeat-without-star", Area.Notation, Severity.Error,
        "\"rep from *\" has no star to go back to.",
        "Put the star where the repeat begins.")
    {
        Bad = """
            Row 1: K1, rep from * to end.
                       ^^^^^^^^^^
            """,
        Good = "Row 1: *K1, p1; rep from * to end.",
    };

    /// <summary>PF207.</summary>
    public static Rule TooDeep { get; } = new(
        "PF207", "brackets-too-deep", Area.Notation, Severity.Error,
        "Brackets stand inside brackets more deeply than anybody could follow.",
        "Rows are read to a depth of 32 brackets. Write the inner part as a special stitch or a row of its own.")
    {
        Bad = """
            Row 1: (((((((((((((((((((((((((((((((((k1))))))))))))))))))))))))))))))))).
                                                   ^
            """,
        Good = "Row 1: ((K1, p1) twice, k2) twice.",
    };

    /// <summary>All of them, by code.</summary>
    public static ImmutableArray<Rule> All { get; } = [BracketNotClosed, BracketNotOpened, BracketsDiffer, StarWithoutRepeat, RepeatWithoutStar, TooDeep];
}
