using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Checks;

/// <summary>Prose sends the maker to a section that the pattern does not have.</summary>
internal sealed class ProseSectionNotFound : PatternCheck
{
    // Headings that pieces are made up under (common practice): behind "see" and written large they are nothing but a section.
    private static readonly string[] Sections = ["Finishing", "Blocking", "Assembly", "Seaming", "Edging", "Border", "Schematic", "Construction", "Care", "Techniques", "Notes"];

    // What the page has of its own accord, whatever the body says.
    private static readonly string[] OfThePage =
        ["sizes", "sizing", "measurements", "yarn", "gauge", "tension", "tools", "materials", "notions", "abbreviations", "special-stitches", "stitches", "notes", "charts", "chart", "photos", "videos", "links", "contact"];

    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF223", "prose-section-not-found", Area.Notation, Severity.Warning,
        "Prose sends the maker to a section that the pattern does not have.",
        "\"See Finishing\" is of no help where no heading says Finishing. Only words that can be nothing but a heading are told: the usual ones behind \"see\", and what is called a section.")
    {
        Bad = """
            ## Piece

            CO 12 sts.

            BO all sts.

            ## Notes

            The ends are woven in last, see Finishing.
                                            ^^^^^^^^^
            """,
        Good = """
            ## Piece

            CO 12 sts.

            BO all sts.

            ## Notes

            The ends are woven in last, see Finishing.

            ## Finishing

            Weave in all ends.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        foreach (var place in ProseReference.Of(context))
        {
            var text = place.Stretch.Text;
            var end = place.At;
            for (var next = end; next < text.Length && char.IsAsciiLetterUpper(text[next]);)
            {
                end = next + PlainText.WordAt(text, next).Length;
                next = end < text.Length && text[end] == ' ' ? end + 1 : text.Length;
            }

            if (end == place.At)
            {
                continue;
            }

            var name = text[place.At..end].ToString();
            var isSection = PlainText.WordAt(text, PlainText.SkipBlanks(text, end)).Is("section");
            var isUsual = Sections.Contains(name, StringComparer.Ordinal) && (end == text.Length || text[end] is '.' or ',' or ';' or ')' or '\n' or '\r');
            if ((isSection || isUsual) && !IsThere(context, name))
            {
                context.Bag.Add(Rule, place.Stretch.At(place.At, name.Length), $"no section is called {name}", "name a heading of the pattern, or add the section");
            }
        }
    }

    private static bool IsThere(CheckContext context, string name)
    {
        var slug = SectionRoles.Slug(name);
        return OfThePage.Contains(slug, StringComparer.Ordinal)
            || context.Pattern.Sections.Any(s => s.Role == slug || s.Heading.Contains(name, StringComparison.OrdinalIgnoreCase));
    }
}
