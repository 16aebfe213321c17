using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>A photo's file says where it was taken.</summary>
internal sealed class PhotoWithLocation : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF908", "photo-with-location", Area.Assets, Severity.Warning,
        "A photo's file says where on earth it was taken.",
        "Phones write the place into every photo, often to within a few metres: a designer's home, a sitter's garden. `build` makes new copies for the release, which hold pixels and nothing else. The file itself keeps it, so take care where else it goes.")
    {
        Bad = """
            ---
            title: Harbour hat
            photos:
              - file: located.jpg
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

        foreach (var picture in NamedPicture.Of(context).Where(p => p.File.Length > 0))
        {
            if (look(picture.File).HasLocation)
            {
                context.Bag.Add(Rule, picture.Origin, $"the {picture.Name} `{picture.File}` says where it was taken", "the release will not; take it out of the file before you share that");
            }
        }
    }
}
