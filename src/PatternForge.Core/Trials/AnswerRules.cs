using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Trials;

/// <summary>What can be wrong with answers that come back from a test (920 to 929). The examples are answers to the test of "Harbour hat", version 1.1, sizes S (M, L), with a yarn MC and a circumference.</summary>
public static class AnswerRules
{
    /// <summary>A key that no answers have.</summary>
    public static Rule UnknownKey { get; } = new(
        "PF920", "answer-key-unknown", Area.Assets, Severity.Warning,
        "A key of the answers is none of those that the form has.",
        "What stands under it was not read. Answers have the keys of the form; those who write them by hand find them in the blank that lies beside it.")
    {
        Bad = """
            pattern: Harbour hat
            size: M
            yern: {MC: 80}
            ^^^^
            """,
        Good = """
            pattern: Harbour hat
            size: M
            yarn: {MC: 80}
            """,
    };

    /// <summary>A number that cannot be read.</summary>
    public static Rule NotANumber { get; } = new(
        "PF921", "answer-not-a-number", Area.Assets, Severity.Warning,
        "An answer should be a number and cannot be read as one.",
        "Grams, stitches, hours and measurements are told as numbers, a measurement perhaps with its unit. One that cannot be read is left out of the comparison.")
    {
        Bad = """
            pattern: Harbour hat
            size: M
            yarn: {MC: about a ball}
                       ^^^^^^^^^^^^
            """,
        Good = """
            pattern: Harbour hat
            size: M
            yarn: {MC: 80 g}
            """,
    };

    /// <summary>Answers of another pattern.</summary>
    public static Rule OtherPattern { get; } = new(
        "PF922", "answers-of-another-pattern", Area.Assets, Severity.Error,
        "The answers are those of another pattern.",
        "They are left out: held against this pattern they would say nothing.")
    {
        Bad = """
            pattern: Harbour cowl
                     ^^^^^^^^^^^^
            size: M
            """,
        Good = """
            pattern: Harbour hat
            size: M
            """,
    };

    /// <summary>Answers of another version.</summary>
    public static Rule OtherVersion { get; } = new(
        "PF923", "answers-of-another-version", Area.Assets, Severity.Warning,
        "The answers are those of another version of the pattern.",
        "They are held against this version all the same. What was found may have been put right since, and numbers may have changed: `diff` tells which.")
    {
        Bad = """
            pattern: Harbour hat
            version: 1.0
                     ^^^
            size: M
            """,
        Good = """
            pattern: Harbour hat
            version: 1.1
            size: M
            """,
    };

    /// <summary>Answers of a size that the pattern does not have.</summary>
    public static Rule UnknownSize { get; } = new(
        "PF924", "answers-of-unknown-size", Area.Assets, Severity.Error,
        "The answers are of a size that the pattern does not have.",
        "Without the size nobody can say what the numbers should be, so the answers are left out.")
    {
        Bad = """
            pattern: Harbour hat
            size: XL
                  ^^
            """,
        Good = """
            pattern: Harbour hat
            size: L
            """,
    };

    /// <summary>An answer about something that the pattern does not have.</summary>
    public static Rule AboutNothing { get; } = new(
        "PF925", "answer-about-nothing", Area.Assets, Severity.Warning,
        "An answer is about a yarn, gauge or measurement that the pattern does not have.",
        "It cannot be held against anything and is left out. It may come from another version.")
    {
        Bad = """
            pattern: Harbour hat
            size: M
            measurements: {circumfrence: 50 cm}
                           ^^^^^^^^^^^^
            """,
        Good = """
            pattern: Harbour hat
            size: M
            measurements: {circumference: 50 cm}
            """,
    };

    /// <summary>All of them.</summary>
    public static ImmutableArray<Rule> All { get; } = [UnknownKey, NotANumber, OtherPattern, OtherVersion, UnknownSize, AboutNothing];
}
