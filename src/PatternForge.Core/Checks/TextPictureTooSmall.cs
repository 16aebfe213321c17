using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>A picture of the text with too few pixels to be looked at closely.</summary>
internal sealed class TextPictureTooSmall : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF909", "text-picture-too-small", Area.Assets, Severity.Note,
        "A picture of the text is too small to be looked at closely.",
        "Pictures between the rows show how something is done, and makers enlarge them. A small detail may do with few pixels, so this is said and nothing more. The smallest side is that of photos: `photo-side` under `tolerances` in the project file.")
    {
        Bad = """
            ## Piece

            CO 12 sts.

            BO all sts.

            ## Notes

            ![The brim, folded once](small.jpg)
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            ## Piece

            CO 12 sts.

            BO all sts.

            ## Notes

            ![The brim, folded once](brim.jpg)
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        if (context.LookAtPhoto is not { } look)
        {
            return;
        }

        foreach (var picture in NamedPicture.Of(context).Where(p => p.IsInText && p.File.Length > 0))
        {
            if (look(picture.File) is { Width: { } width, Height: { } height } && Math.Min(width, height) < context.Tolerances.PhotoSide)
            {
                context.Bag.Add(Rule, picture.Origin, $"the picture `{picture.File}` has {width} x {height} pixels; its shorter side should have {context.Tolerances.PhotoSide} where a maker is to see stitches", "take it from the camera's own file");
            }
        }
    }
}
