using System.Globalization;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Prose sends the maker to a row that the pattern does not have.</summary>
internal sealed class ProseRowNotFound : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF221", "prose-row-not-found", Area.Notation, Severity.Warning,
        "Prose sends the maker to a row that the pattern does not have.",
        "Rows are renumbered while a pattern grows, and the words around them stay behind. Only numbers beyond the last row of the whole pattern are told: a row that other words stand for is not missed.")
    {
        Bad = """
            ## Piece

            CO 12 sts.

            Row 1: Knit.

            ## Notes

            The edge curls at first: see Row 99.
                                         ^^^^^^
            """,
        Good = """
            ## Piece

            CO 12 sts.

            Row 1: Knit.

            ## Notes

            The edge curls at first: see Row 1.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        var last = context.Lines.SelectMany(l => l.Numbers).DefaultIfEmpty(0).Max();

        // Rows of a chart are not told in words.
        if (last == 0 || !context.Facts.Charts.IsEmpty || PlainText.HasChart(context) || context.Facts.Unread.Contains("charts", StringComparer.Ordinal))
        {
            return;
        }

        foreach (var place in ProseReference.Of(context))
        {
            if (place.Named("row", "rows", "rnd", "rnds", "round", "rounds") is { } named && int.TryParse(named.Name, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > last)
            {
                context.Bag.Add(Rule, named.Span, $"there is no {context.Source.ToString(named.Span)}: the last one is {last}");
            }
        }
    }
}
