using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>A photo that the page cannot show. The example stands beside no file.</summary>
internal sealed class PhotoNotThere : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF905", "photo-not-there", Area.Assets, Severity.Warning,
        "A photo that the header names cannot be shown.",
        "Photos are files beside the pattern, in its folder or below it, as JPEG, PNG, WebP, AVIF, GIF or SVG. The page leaves out one that is not there, lies elsewhere, or is no picture, and shows its words alone.")
    {
        Bad = """
            ---
            title: Harbour hat
            photos:
              - file: missing.jpg
                ^^^^^^^^^^^^^^^^^
                alt: The hat from the front
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            photos:
              - file: front.jpg
                alt: The hat from the front
            ---
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        if (context.LookAtPhoto is not { } look || context.IsExcused("photos"))
        {
            return;
        }

        foreach (var photo in context.Facts.Photos)
        {
            if (photo.File.Length == 0)
            {
                context.Bag.Add(Rule, photo.Origin, "a photo without a file", "name the file: `file: front.jpg`");
                continue;
            }

            var facts = look(photo.File);
            var (message, help) = facts.State switch
            {
                PhotoState.Missing => ($"the photo `{photo.File}` is not there", "put it beside the pattern, or correct its name; capital letters count"),
                PhotoState.Outside => ($"the photo `{photo.File}` lies outside the pattern's folder", "put it beside the pattern: nothing else is read"),
                PhotoState.NoPicture => ($"the photo `{photo.File}` is no picture that pages show", "save it as JPEG, PNG, WebP, AVIF, GIF or SVG"),
                PhotoState.Unreadable => ($"the photo `{photo.File}` cannot be read: {facts.Reason}", null),
                _ => ("", (string?)null),
            };
            if (message.Length > 0)
            {
                context.Bag.Add(Rule, photo.Origin, message, help);
            }
        }
    }
}
