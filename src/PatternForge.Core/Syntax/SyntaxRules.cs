using PatternForge.Core.Findings;

namespace PatternForge.Core.Syntax;

/// <summary>What can be wrong with the file's outer form and its header's writing.</summary>
public static class SyntaxRules
{
    private const string Plain = """
        ---
        title: Harbour hat
        sizes: S (M, L)
        ---

        ## Brim

        CO 12 sts.
        """;

    /// <summary>No header at the top.</summary>
    public static Rule MissingHeader { get; } = new(
        "PF101", "missing-header", Area.Source, Severity.Error,
        "The file does not begin with a header.",
        "The header between two `---` lines says what cannot be told from the rows: the title, the sizes, the gauge, the yarn, the craft and its terms. Without it a count such as 80 (88, 96) cannot be laid against the sizes.")
    {
        Bad = """
            ## Brim
            ^^^^^^^

            CO 12 sts.
            """,
        Good = Plain,
    };

    /// <summary>The header's closing line is missing.</summary>
    public static Rule UnclosedHeader { get; } = new(
        "PF102", "unclosed-header", Area.Source, Severity.Error,
        "The header has no closing `---` line.",
        "The header ends at a second `---` line. Where it is missing, the header is read up to the first heading.")
    {
        Bad = """
            ---
            ^^^
            title: Harbour hat
            sizes: S (M, L)

            ## Brim

            CO 12 sts.
            """,
        Good = Plain,
    };

    /// <summary>A line that cannot be read.</summary>
    public static Rule UnreadableHeader { get; } = new(
        "PF103", "unreadable-header-line", Area.Source, Severity.Error,
        "A line of the header could not be read.",
        "The header is YAML: `key: value` lines, lists with a dash, and lines set in under the key they belong to. The key in which the line stands may be read in part; all other keys are read.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: [S, M
                   ^^^^^
            craft: knitting
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: [S, M]
            craft: knitting
            ---
            """,
    };

    /// <summary>A key that stands twice.</summary>
    public static Rule DuplicateKey { get; } = new(
        "PF104", "duplicate-key", Area.Source, Severity.Error,
        "A key of the header stands twice in the same place.",
        "Of two values only one can be meant, and nobody can tell which. The first one was read. Several yarns or gauges go into one list under one key.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: S (M, L)
            title: Harbour cap
            ^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: S (M, L)
            ---
            """,
    };

    /// <summary>Tabs at the start of a line.</summary>
    public static Rule TabInHeader { get; } = new(
        "PF105", "tab-in-header", Area.Source, Severity.Warning,
        "Lines of the header are set in with tabs.",
        "YAML sets lines in with blanks only: how wide a tab is differs from one editor to the next. The lines were read as if each tab were a step.")
    {
        Bad = "---\ntitle: Harbour hat\nsizes:\n\tnames: S (M, L)\n^\n---\n",
        Good = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
            ---
            """,
    };

    /// <summary>Anchors, aliases and tags of YAML.</summary>
    public static Rule YamlReference { get; } = new(
        "PF106", "yaml-reference", Area.Source, Severity.Error,
        "A text begins with `*`, `&` or `!`, which YAML keeps for itself.",
        "In YAML these signs name a value, call it again, or give it a type. The header uses none of the three: a reader should find each value where it belongs. A text that happens to begin so, as a row does with its star, goes into quotes.")
    {
        Bad = """
            ---
            title: Harbour hat
            notes:
              - *Always slip the first stitch
                ^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            notes:
              - "*Always slip the first stitch"
            ---
            """,
    };

    /// <summary>Nesting beyond the limit.</summary>
    public static Rule HeaderTooDeep { get; } = new(
        "PF107", "header-too-deep", Area.Source, Severity.Error,
        "The header is nested deeper than any key needs.",
        "No key of the header needs more than four steps. Beyond the limit the part is not read on, so that a broken or hostile file cannot keep a build busy.")
    {
        Bad = """
            ---
            title: Harbour hat
            notes: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]
                                                   ^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            notes: [Slip the first stitch]
            ---
            """,
    };

    /// <summary>A header beyond the limit.</summary>
    public static Rule HeaderTooLong { get; } = new(
        "PF108", "header-too-long", Area.Source, Severity.Error,
        "The header is longer than the limit.",
        "A header of a quarter of a million characters is no header. What stands beyond the limit is not read. (The example is for a limit of 200 characters.)")
    {
        Bad = """
            ---
            title: Harbour hat
            summary: A hat with a deep folded brim for cold mornings on the quay, knitted from the brim up in one piece.
            notes:
              - Slip the first stitch of every row purlwise with the yarn in front, and knit the last one.
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            summary: A hat with a deep folded brim.
            ---
            """,
    };

    /// <summary>A text that YAML takes for something else.</summary>
    public static Rule TextNeedsQuotes { get; } = new(
        "PF109", "text-needs-quotes", Area.Source, Severity.Warning,
        "A text needs quotes around it.",
        "A colon followed by a blank ends a key in YAML, and a few signs may not begin a text. The text was read as it was plainly meant, but another program that reads the header may refuse it.")
    {
        Bad = """
            ---
            title: Harbour: a hat
                          ^
            sizes: S (M, L)
            ---
            """,
        Good = """
            ---
            title: "Harbour: a hat"
            sizes: S (M, L)
            ---
            """,
    };

    /// <summary>A quote without its partner.</summary>
    public static Rule UnclosedQuote { get; } = new(
        "PF110", "unclosed-quote", Area.Source, Severity.Error,
        "A quote that opens a text is never closed.",
        "Everything after an open quote belongs to the text, so the keys below it would be lost. The text was read up to the next key.")
    {
        Bad = """
            ---
            title: "Harbour hat
                   ^^^^^^^^^^^^
            sizes: S (M, L)
            ---
            """,
        Good = Plain,
    };

    /// <summary>A number sign that begins a remark in the middle of a text.</summary>
    public static Rule NumberSignInText { get; } = new(
        "PF111", "number-sign-in-text", Area.Source, Severity.Warning,
        "A number after `#` would be read as a remark.",
        "In the header a blank and `#` begin a remark that never prints, so a needle called `US #7` would lose its size in any other program. The number was kept here.")
    {
        Bad = """
            ---
            title: Harbour hat
            tools: US #7 needles
                      ^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            tools: "US #7 needles"
            ---
            """,
    };

    /// <summary>A line or key of another form.</summary>
    public static Rule NotKeyAndValue { get; } = new(
        "PF112", "not-key-and-value", Area.Source, Severity.Error,
        "Something in the header is no `key: value` line.",
        "The header is made of keys and what they say. Plain text and lists stand under a key; text for the reader belongs into the body.")
    {
        Bad = """
            ---
            A hat with a deep brim
            ^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            summary: A hat with a deep brim
            ---
            """,
    };

    /// <summary>Every rule of this file, by code.</summary>
    public static IReadOnlyList<Rule> All { get; } =
    [
        MissingHeader, UnclosedHeader, UnreadableHeader, DuplicateKey, TabInHeader, YamlReference, HeaderTooDeep, HeaderTooLong,
        TextNeedsQuotes, UnclosedQuote, NumberSignInText, NotKeyAndValue,
    ];
}
