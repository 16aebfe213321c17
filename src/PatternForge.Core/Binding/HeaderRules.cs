using PatternForge.Core.Findings;

namespace PatternForge.Core.Binding;

/// <summary>What can be wrong with the header's keys and values.</summary>
public static class HeaderRules
{
    /// <summary>A key that the header does not have.</summary>
    public static Rule UnknownKey { get; } = new(
        "PF120", "unknown-key", Area.Source, Severity.Warning,
        "A key is none of those that the header has.",
        "What stands under an unknown key is not read, so a slip of the finger would drop the gauge or the yarn without a word. The nearest known key is named.")
    {
        Bad = """
            ---
            title: Harbour hat
            desinger: Ida Example
            ^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            designer: Ida Example
            ---
            """,
    };

    /// <summary>A list where a text belongs, and the like.</summary>
    public static Rule WrongKind { get; } = new(
        "PF121", "wrong-kind-of-value", Area.Source, Severity.Error,
        "A key wants another kind of value.",
        "Some keys take one text, some a list, some keys of their own. Where something else stands, it cannot be known what is meant.")
    {
        Bad = """
            ---
            title: [Harbour, hat]
                   ^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            ---
            """,
    };

    /// <summary>A craft or terms that nobody knows.</summary>
    public static Rule UnknownChoice { get; } = new(
        "PF122", "unknown-craft-or-terms", Area.Source, Severity.Error,
        "The craft or the terms are none of those known.",
        "The craft decides how a row is read, and US and UK crochet give the same short names to different stitches. `craft` is knitting, crochet or tunisian; `terms` is us or uk.")
    {
        Bad = """
            ---
            title: Harbour hat
            craft: weaving
                   ^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            craft: knitting
            ---
            """,
    };

    /// <summary>A level outside the scale.</summary>
    public static Rule UnknownLevel { get; } = new(
        "PF123", "unknown-level", Area.Source, Severity.Warning,
        "The level is none of the four project levels.",
        "The trade's scale of project levels is basic, easy, intermediate and complex. It describes the project, not the maker; `level-reason` says why.")
    {
        Bad = """
            ---
            title: Harbour hat
            level: tricky
                   ^^^^^^
            level-reason: cables on every round
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            level: intermediate
            level-reason: cables on every round
            ---
            """,
    };

    /// <summary>A value that is no number.</summary>
    public static Rule UnreadableNumber { get; } = new(
        "PF124", "unreadable-number", Area.Source, Severity.Error,
        "A key wants a number, and none could be read.",
        "Numbers are written as in the rows: 12, 6.5, 6½ or 6 1/2, one for all sizes or one for each, as in 91 (102, 112) cm.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished:
                bust: roomy
                      ^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished:
                bust: 91 (102, 112) cm
            ---
            """,
    };

    /// <summary>A unit that is missing, unknown or of another kind.</summary>
    public static Rule UnknownUnit { get; } = new(
        "PF125", "unknown-unit", Area.Source, Severity.Error,
        "A measured value has no unit, or one that does not measure it.",
        "40 may be centimetres or inches, and a maker will not always notice. Lengths are in mm, cm or in; yarn in m or yd; masses in g, kg or oz. The unit stands after the list or after each value.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished:
                bust: 91 (102, 112) cn
                                    ^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished:
                bust: 91 (102, 112) cm
            ---
            """,
    };

    /// <summary>A part that cannot be left out because there is none of that name.</summary>
    public static Rule UnknownPart { get; } = new(
        "PF126", "unknown-part", Area.Source, Severity.Warning,
        "`omit` names a part that no pattern has.",
        "`omit` lists the parts that are left out on purpose, so that nobody asks for them again. A name that is misspelt leaves the question standing.")
    {
        Bad = """
            ---
            title: Harbour hat
            omit: [vidoes]
                   ^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            omit: [videos]
            ---
            """,
    };

    /// <summary>Words after a value that no page would show.</summary>
    public static Rule WordsAfterValue { get; } = new(
        "PF127", "words-after-value", Area.Source, Severity.Warning,
        "Words after a measured value are not kept.",
        "The page prints measured values in both systems of units, from the numbers alone. A remark on the measurement would get lost on the way, so it belongs into the text.")
    {
        Bad = """
            ---
            title: Harbour scarf
            sizes:
              names: one size
              finished:
                length: 160 cm before the fringe
                               ^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour scarf
            sizes:
              names: one size
              finished:
                length: 160 cm
            ---
            """,
    };

    /// <summary>Too few or too many values for the sizes.</summary>
    public static Rule ValueCount { get; } = new(
        "PF601", "value-count-differs", Area.Gauge, Severity.Error,
        "A list of values has neither one value nor one for each size.",
        "A missing number is the commonest slip in graded patterns, and from the place of the gap on every size gets its neighbour's value.")
    {
        Bad = """
            ---
            title: Harbour pullover
            sizes:
              names: S (M, L)
              finished:
                bust: 91 (102) cm
                      ^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour pullover
            sizes:
              names: S (M, L)
              finished:
                bust: 91 (102, 112) cm
            ---
            """,
    };

    /// <summary>A gauge that is no gauge.</summary>
    public static Rule UnreadableGauge { get; } = new(
        "PF602", "unreadable-gauge", Area.Gauge, Severity.Warning,
        "The gauge could not be read.",
        "A gauge counts stitches and rows over a measured piece: `20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked`. Unread, it serves neither the sizes nor the lengths in the rows.")
    {
        Bad = """
            ---
            title: Harbour hat
            gauge: rather tight
                   ^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked
            ---
            """,
    };

    /// <summary>Two sizes of one name.</summary>
    public static Rule SizeNamedTwice { get; } = new(
        "PF610", "size-named-twice", Area.Gauge, Severity.Error,
        "Two sizes have the same name.",
        "A line such as \"Size M only\" would speak of both, and a maker could not tell which numbers are hers.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: S (M, M)
                         ^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: S (M, L)
            ---
            """,
    };

    /// <summary>Nobody that a piece could be for.</summary>
    public static Rule UnknownAudience { get; } = new(
        "PF128", "unknown-audience", Area.Source, Severity.Warning,
        "The header names no audience that is known here.",
        "`audience` says whom the piece is for: babies, children, youths, women, men, adults or anyone. The sizes are looked at beside the bodies of those, and the page carries the cautions that they need.")
    {
        Bad = """
            ---
            title: Harbour hat
            audience: wemen
                      ^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            audience: women
            ---
            """,
    };

    /// <summary>More sizes than the limit.</summary>
    public static Rule TooManySizes { get; } = new(
        "PF612", "too-many-sizes", Area.Gauge, Severity.Error,
        "The pattern has more sizes than can be worked.",
        "Every row is worked in every size; beyond 64 sizes a pattern is a table and not something that a maker could follow.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: 1 (2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63, 64, 65)
                                                                                                                                                                                                                                                                          ^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: 1 (2, 3, 4, 5, 6, 7, 8)
            ---
            """,
    };

    /// <summary>A size that the pattern does not have.</summary>
    public static Rule SizeNotListed { get; } = new(
        "PF613", "size-not-listed", Area.Gauge, Severity.Warning,
        "The header speaks of a size that the pattern does not have.",
        "The sizes are named once, under `sizes`; everything else refers to them by those names.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: S (M, L)
            sample:
              size: XL
                    ^^
              used: 85 g
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: S (M, L)
            sample:
              size: M
              used: 85 g
            ---
            """,
    };

    /// <summary>One value in two systems that do not agree.</summary>
    public static Rule UnitsDisagree { get; } = new(
        "PF614", "units-disagree", Area.Gauge, Severity.Warning,
        "The same value in two units does not agree with itself.",
        "One inch is 2.54 cm and one yard 0.9144 m. Rounding is fine; a slip of a whole size is not. The page computes the second unit by itself, so one of the two is enough.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished:
                bust: 91 (102, 112) cm / 36 (42, 44) in
                                         ^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished:
                bust: 91 (102, 112) cm / 36 (40, 44) in
            ---
            """,
    };

    /// <summary>Measurements without names of sizes.</summary>
    public static Rule SizesWithoutNames { get; } = new(
        "PF615", "sizes-without-names", Area.Gauge, Severity.Error,
        "`sizes` has no names.",
        "The names say how many sizes there are and which number belongs to which. A pattern of one size has one name.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes:
            ^^^^^
              finished:
                circumference: 48 (52, 56) cm
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished:
                circumference: 48 (52, 56) cm
            ---
            """,
    };

    /// <summary>A yarn weight outside the trade's classes.</summary>
    public static Rule UnknownYarnWeight { get; } = new(
        "PF701", "unknown-yarn-weight", Area.Yarn, Severity.Warning,
        "The yarn's weight is none of the trade's classes.",
        "Yarn is sorted into classes from 0 (lace) to 7 (jumbo), and shops on both sides of the ocean have names for them: fingering, sport, DK, worsted, aran, chunky. A class lets a maker find another yarn.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Wool
              weight: thickish
                      ^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Wool
              weight: DK (3)
            ---
            """,
    };

    /// <summary>A put-up that is no put-up.</summary>
    public static Rule UnreadablePutUp { get; } = new(
        "PF707", "unreadable-put-up", Area.Yarn, Severity.Warning,
        "The put-up does not give a mass and a length.",
        "Metres per gram tell a maker which other yarns will do and how many balls to buy. The put-up says what one ball weighs and how long it is: `100 g = 200 m`.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Wool
              put-up: 100 g
                      ^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Wool
              put-up: 100 g = 200 m
            ---
            """,
    };

    /// <summary>Every rule of this file, by code.</summary>
    public static IReadOnlyList<Rule> All { get; } =
    [
        UnknownKey, WrongKind, UnknownChoice, UnknownLevel, UnreadableNumber, UnknownUnit, UnknownPart, WordsAfterValue, UnknownAudience,
        ValueCount, UnreadableGauge, SizeNamedTwice, TooManySizes, SizeNotListed, UnitsDisagree, SizesWithoutNames,
        UnknownYarnWeight, UnreadablePutUp,
    ];
}
