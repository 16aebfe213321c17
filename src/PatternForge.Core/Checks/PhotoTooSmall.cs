using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>A photo with too few pixels to be looked at closely.</summary>
internal sealed class PhotoTooSmall : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF906", "photo-too-small", Area.Assets, Severity.Warning,
        "A photo is too small to show the stitches.",
        "A maker enlarges the photo to see how an edge or a decrease should look; printed at 10 cm, 600 pixels are what most printers can use (common practice). The smallest side allowed stands in the project file under `tolerances`, as `photo-side`.")
    {
        Bad = """
            ---
            title: Harbour hat
            photos:
              - file: small.jpg
                ^^^^^^^^^^^^^^^
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

        foreach (var photo in context.Facts.Photos.Where(p => p.File.Length > 0))
        {
            if (look(photo.File) is { Width: { } width, Height: { } height } && Math.Min(width, height) < context.Tolerances.PhotoSide)
            {
                context.Bag.Add(Rule, photo.Origin, $"the photo `{photo.File}` has {width} x {height} pixels; its shorter side should have {context.Tolerances.PhotoSide}", "take it from the camera's own file");
            }
        }
    }
}
