using System.Collections.Immutable;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>
/// The listing of a pattern in a shop: a text of bounded length in three forms, for fields that take plain text, Markdown or a fragment of HTML. Where the whole is too long, less and less of it is
/// told until it fits.
/// </summary>
public sealed class ListingFormat
{
    /// <summary>The name it is asked for by.</summary>
    public const string Name = "listing";

    /// <summary>The signs that a listing may have where nothing else is said, tags and marks counted in.</summary>
    public const int UsualLength = 4000;

    /// <summary>The shortest bound that may be asked for: a title, a level and the sizes fit.</summary>
    public const int LeastLength = 1000;

    private const int LongestTitle = 100;

    private readonly string _template;
    private readonly Landing _landing;

    private ListingFormat(string extension, string template, Landing landing) => (Extension, _template, _landing) = (extension, template, landing);

    /// <summary>Its three forms.</summary>
    public static ImmutableArray<ListingFormat> All { get; } =
    [
        new(".listing.txt", "text/listing.txt", new(Escaping.Line, p => Prose.ToText(p.Markdown), s => Escaping.Line(s.Text), _ => "")),
        new(".listing.md", "markdown/listing.md", new(Escaping.Markdown, p => Prose.ToMarkdown(p.Markdown), SizeMarks.ToMarkdown, _ => "")),
        new(".listing.html", "html/listing.html", new(Escaping.Html, p => Prose.ToHtml(p with { Sizes = 1 }), s => Escaping.Html(s.Text), _ => "")),
    ];

    /// <summary>The end of its file's name.</summary>
    public string Extension { get; }

    /// <summary>Writes the listing.</summary>
    /// <param name="view">The pattern.</param>
    /// <param name="release">What its release holds.</param>
    /// <param name="templates">The templates.</param>
    /// <param name="most">The signs it may have, at least <see cref="LeastLength"/>.</param>
    /// <returns>The text, and what it goes without to stay within the bound; the text is null where a template has an error, or even the least of it is too long (then all is given up).</returns>
    internal (TemplateResult Result, ImmutableArray<string> GivenUp) Write(PatternView view, ReleaseContents release, TemplateSet templates, int most)
    {
        for (var degree = 0; degree <= ListingBuilder.GivenUp.Length; degree++)
        {
            // The least listing of the longest title must still fit.
            var isLeast = degree == ListingBuilder.GivenUp.Length;
            var shown = view with { Listing = ListingBuilder.Build(view, release, degree), Title = ListingBuilder.Cut(view.Title, LongestTitle) };
            var result = templates.Render(_template, isLeast ? shown with { Designer = null, Edition = null } : shown, _landing);
            if (result.Text is not { } text)
            {
                return (result, []);
            }

            var tidy = BlankLines.Single(text);
            if (tidy.Length <= most)
            {
                return (result with { Text = tidy }, ListingBuilder.GivenUp[..degree]);
            }
        }

        return (new(null, []), ListingBuilder.GivenUp);
    }
}
