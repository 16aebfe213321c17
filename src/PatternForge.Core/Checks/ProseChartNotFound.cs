using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Prose sends the maker to a chart that the pattern does not have.</summary>
internal sealed class ProseChartNotFound : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF222", "prose-chart-not-found", Area.Notation, Severity.Warning,
        "Prose speaks of a chart that the pattern does not have.",
        "Charts are listed in the header under `charts`; a letter that none of them has is a slip, or a chart that was left out. A pattern that lists no charts is not asked.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: one size
            charts: {A: 12}
            ---

            ## Notes

            The anchor stands in Chart C.
                                 ^^^^^^^
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: one size
            charts: {A: 12}
            ---

            ## Notes

            The anchor stands in Chart A.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        var charts = context.Facts.Charts;
        if (charts.IsEmpty || PlainText.HasChart(context))
        {
            return;
        }

        foreach (var stretch in PlainText.Prose(context))
        {
            for (var at = 0; stretch.Text[at..].IndexOf("Chart ") is >= 0 and var step;)
            {
                var text = stretch.Text;
                var start = at + step;
                var end = start + 6;
                while (end < text.Length && char.IsLetterOrDigit(text[end]))
                {
                    end++;
                }

                at = start + 6;
                var name = text[at..end].ToString();
                if (name.Length is 1 or 2 && name.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c)) && !charts.Any(c => Same(c.Name, name) || Same(c.Name, "Chart " + name)))
                {
                    context.Bag.Add(Rule, stretch.At(start, end - start), $"there is no Chart {name} in this pattern", $"the header has {string.Join(", ", charts.Select(c => c.Name))}");
                }
            }
        }

        static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
    }
}
