using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>An abbreviation that the rows use and the pattern's own list leaves out.</summary>
internal sealed class AbbreviationNotListed : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF501", "abbreviation-not-listed", Area.Abbreviations, Severity.Warning,
        "The rows use an abbreviation that the pattern's own list does not have.",
        "A pattern with a list of abbreviations promises that all of them are in it. The generated table adds the missing one; add it to the list, or take the list out so that the table is made from the rows.")
    {
        Bad = """
            ---
            title: Short list
            craft: knitting
            abbreviations: [CO, k, st]
            ---
            ## Piece

            CO 12 sts.

            Row 1: K10, k2tog.
                        ^^^^^
            """,
        Good = """
            ---
            title: Short list
            craft: knitting
            abbreviations: [CO, k, k2tog, st]
            ---
            ## Piece

            CO 12 sts.

            Row 1: K10, k2tog.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        if (context.Facts.Abbreviations is not { } own)
        {
            return;
        }

        var listed = own.Select(a => AbbreviationUse.KeyOf(a.Name)).Concat(context.Facts.Stitches.Select(s => AbbreviationUse.KeyOf(s.Name))).ToHashSet(StringComparer.Ordinal);
        foreach (var use in context.Abbreviations.Where(u => !listed.Contains(u.Key) && !context.Bag.HasAt("PF402", u.Origin)))
        {
            context.Bag.Add(new Finding(Rule, context.Source, use.Origin, $"`{use.Name}` is used here, but it is not in the pattern's list of abbreviations")
            {
                Help = $"add `{use.Name}: {use.Meaning}` to `abbreviations` in the header",
            });
        }
    }
}
