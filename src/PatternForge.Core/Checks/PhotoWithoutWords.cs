using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>A photo without its text alternative.</summary>
internal sealed class PhotoWithoutWords : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF907", "photo-without-words", Area.Assets, Severity.Warning,
        "A photo or a picture of the text has no words for those who do not see it.",
        "Screen readers read the words in place of the picture, and they stand on the page where it cannot be shown. Say what a maker would look for: who wears which size, how it fits, what the stitch looks like.")
    {
        Bad = """
            ---
            title: Harbour hat
            photos:
              - file: front.jpg
                ^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            photos:
              - file: front.jpg
                alt: The hat from the front, its brim folded once
            ---
            """,
        Sources = [Sources.Wcag],
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        foreach (var picture in NamedPicture.Of(context))
        {
            if (string.IsNullOrWhiteSpace(picture.Words) && (picture.IsInText || !context.IsExcused("photos", "photos.alt")))
            {
                context.Bag.Add(
                    Rule, picture.Origin, $"this {picture.Name} has no words for those who do not see it",
                    picture.IsInText ? "say what it shows in the square brackets: `![The brim, folded once](brim.jpg)`" : "add what it shows: `alt: The hat from the front`");
            }
        }
    }
}
