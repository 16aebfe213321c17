using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Prose sends the maker to a numbered figure or photo, and the pattern has fewer.</summary>
internal sealed class ProsePictureNotFound : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF225", "prose-picture-not-found", Area.Notation, Severity.Warning,
        "Prose sends the maker to a figure that the pattern does not have.",
        "A figure is referred to by its number, and pictures get lost between drafts. The photos of the header and the pictures of the text are counted; a number beyond them leads nowhere.")
    {
        Bad = """
            ## Piece

            CO 12 sts.

            BO all sts.

            ## Notes

            Fold the brim once (see Figure 2).
                                    ^^^^^^^^
            """,
        Good = """
            ## Piece

            CO 12 sts.

            BO all sts.

            ## Notes

            Fold the brim once (see Figure 1).

            ![The brim, folded once](brim.jpg)
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        var pictures = -1;
        foreach (var place in ProseReference.Of(context))
        {
            if (place.Named("figure", "figures", "fig", "figs", "photo", "photos", "picture", "illustration") is not { } named || !int.TryParse(named.Name, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            {
                continue;
            }

            pictures = pictures < 0 ? Count(context) : pictures;
            if (number > pictures)
            {
                context.Bag.Add(
                    Rule, named.Span,
                    $"there is no {context.Source.ToString(named.Span)}: the pattern has {(pictures == 0 ? "no picture" : pictures == 1 ? "one picture" : $"{pictures} pictures")}",
                    "add the picture, or take the reference out");
            }
        }
    }

    private static int Count(CheckContext context) =>
        context.Facts.Photos.Length
        + context.Pattern.Sections.SelectMany(s => s.Blocks).Sum(b => b switch
        {
            ProseBlock prose => prose.Markdown.Split("![").Length - 1,
            FencedBlock { Info.Length: > 0 } => 1,
            _ => 0,
        });
}
