using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Prose speaks of a size that the pattern does not have.</summary>
internal sealed class ProseSizeNotFound : PatternCheck
{
    // The letters of sizes, each group meaning the same (common practice).
    private static readonly string[][] Letters =
        [["XXS", "2XS"], ["XS"], ["S"], ["M"], ["L"], ["XL", "1X", "1XL"], ["XXL", "2X", "2XL"], ["XXXL", "3X", "3XL"], ["4X", "4XL"], ["5X", "5XL"], ["6X", "6XL"]];

    // Hooks have letters of their own, and needles, buttons and shoes have sizes.
    private static readonly string[] OtherThings = ["hook", "needle", "button", "bead", "shoe", "foot"];

    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF224", "prose-size-not-found", Area.Notation, Severity.Warning,
        "Prose speaks of a size that the pattern does not have.",
        "The sizes are named once, in the header, and everything else calls them by those names. A size that is not among them was dropped from the pattern, or is another pattern's.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: S (M, L)
            ---

            ## Notes

            For size XXL begin with a spare ball.
                     ^^^
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: S (M, L)
            ---

            ## Notes

            For size L begin with a spare ball.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        var sizes = context.Facts.Sizes;

        // Only where sizes go by letters, perhaps beside other words ("child", "adult S"), can another letter be nothing but a size.
        var letters = sizes.Names.Select(n => n.Split(' ', '/', '-').Select(word => GroupOf(word, StringComparison.OrdinalIgnoreCase)).Where(group => group >= 0).ToArray()).ToArray();
        if (sizes.Count < 2 || letters.Count(l => l.Length > 0) < 2 || sizes.Names.Where((n, i) => letters[i].Length == 0).Any(n => n.Any(char.IsAsciiDigit)))
        {
            return;
        }

        var known = letters.SelectMany(l => l).ToHashSet();
        foreach (var stretch in PlainText.Prose(context))
        {
            for (var from = 0; stretch.Text[from..].IndexOf("size", StringComparison.OrdinalIgnoreCase) is >= 0 and var step;)
            {
                var text = stretch.Text;
                var at = from + step;
                from = at + 4;
                var word = PlainText.WordAt(text, at);
                if (!word.Is("size", "sizes") || (at > 0 && char.IsLetterOrDigit(text[at - 1])))
                {
                    continue;
                }

                var start = PlainText.SkipBlanks(text, at + word.Length);
                var end = start;
                while (end < text.Length && char.IsAsciiLetterOrDigit(text[end]))
                {
                    end++;
                }

                var name = text[start..end].ToString();
                if (GroupOf(name, StringComparison.Ordinal) is >= 0 and var group && !known.Contains(group) && !SpeaksOfOther(text, at, end))
                {
                    context.Bag.Add(Rule, stretch.At(start, name.Length), $"there is no size {name}", $"the sizes are {string.Join(", ", sizes.Names)}");
                }
            }
        }
    }

    private static int GroupOf(string name, StringComparison comparison) => Array.FindIndex(Letters, group => Array.Exists(group, letter => string.Equals(letter, name, comparison)));

    private static bool SpeaksOfOther(ReadOnlySpan<char> text, int start, int end)
    {
        // Right before ("hook size L") or right behind ("size L hook").
        var from = Math.Max(0, start - 16);
        var behind = text.Slice(end, Math.Min(12, text.Length - end));
        behind = behind.IndexOfAny(".;") is >= 0 and var cut ? behind[..cut] : behind;
        foreach (var thing in OtherThings)
        {
            if (text[from..start].Contains(thing, StringComparison.OrdinalIgnoreCase) || behind.Contains(thing, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}
