using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>A photo, or a picture of the text, that the page cannot show. The example stands beside no file.</summary>
internal sealed class PhotoNotThere : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF905", "photo-not-there", Area.Assets, Severity.Warning,
        "A photo or a picture of the text cannot be shown.",
        "Photos, and the pictures that the text shows with `![words](file.jpg)`, are files beside the pattern, in its folder or below it, as JPEG, PNG, WebP, GIF, BMP or SVG; other kinds cannot be made into a copy that says nothing of where it was taken. The page leaves out one that is not there, lies elsewhere, is damaged, too large or no picture, and shows its words alone.")
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
        if (context.LookAtPhoto is not { } look)
        {
            return;
        }

        foreach (var picture in NamedPicture.Of(context))
        {
            if (!picture.IsInText && context.IsExcused("photos"))
            {
                continue;
            }

            if (picture.File.Length == 0)
            {
                context.Bag.Add(Rule, picture.Origin, $"a {picture.Name} without a file", picture.IsInText ? "name the file in the round brackets: `![The brim](brim.jpg)`" : "name the file: `file: front.jpg`");
                continue;
            }

            var facts = look(picture.File);
            var named = $"the {picture.Name} `{picture.File}`";
            var (message, help) = facts.State switch
            {
                PhotoState.Missing => ($"{named} is not there", "put it beside the pattern, or correct its name; capital letters count"),
                PhotoState.Outside => ($"{named} lies outside the pattern's folder", "put it beside the pattern: nothing else is read"),
                PhotoState.NoPicture => ($"{named} is no picture, whatever its name says", "save it as JPEG, PNG, WebP, GIF or SVG"),
                PhotoState.OtherKind => ($"{named} is a picture of the kind {facts.Reason}, of which no cleaned copy can be made", "save it as JPEG"),
                PhotoState.Damaged => ($"{named} is cut off or damaged", "copy it anew from the camera, or save it again as JPEG or PNG"),
                PhotoState.TooLarge => ($"{named} is too large to be read: {facts.Reason}", "save it smaller; pages show at most 1600 pixels a side"),
                PhotoState.Unreadable => ($"{named} cannot be read: {facts.Reason}", null),
                _ => ("", (string?)null),
            };
            if (message.Length > 0)
            {
                context.Bag.Add(Rule, picture.Origin, message, help);
            }
        }
    }
}
