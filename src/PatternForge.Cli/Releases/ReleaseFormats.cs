using System.Collections.Immutable;
using PatternForge.Cli.Commands;
using PatternForge.Rendering.Formats;

namespace PatternForge.Cli.Releases;

/// <summary>The kinds of files that a release is to have.</summary>
/// <param name="Rendered">Those that one pattern is rendered in.</param>
internal sealed record ReleaseFormats(ImmutableArray<OutputFormat> Rendered)
{
    /// <summary>The name by which the source of an edition is asked for.</summary>
    public const string Source = "source";

    /// <summary>The name by which drawings are asked for as pictures of dots.</summary>
    public const string Png = "png";

    /// <summary>The name by which documents for print are asked for.</summary>
    public const string Pdf = "pdf";

    /// <summary>The end of a source's name.</summary>
    public const string SourceExtension = ".pattern.md";

    /// <summary>All names, in the order of the help.</summary>
    public static ImmutableArray<string> Names { get; } = [.. OutputFormat.All.Select(f => f.Name), Pdf, Png, Source, ShopFiles.Format];

    /// <summary>True to write the sources as well.</summary>
    public bool Sources { get; init; }

    /// <summary>True to write each drawing also as PNG beside its SVG.</summary>
    public bool Pngs { get; init; }

    /// <summary>True to have a browser print each page.</summary>
    public bool Pdfs { get; init; }

    /// <summary>True to write what a shop gets.</summary>
    public bool Listing { get; init; }

    /// <summary>The names of what is asked for.</summary>
    public IEnumerable<string> Words => Rendered.Select(f => f.Name).Concat(Sources ? [Source] : []).Concat(Pngs ? [Png] : []).Concat(Pdfs ? [Pdf] : []).Concat(Listing ? [ShopFiles.Format] : []);

    /// <summary>True where the drawings are to be files of their own: whatever refers to them or is made of them is wanted.</summary>
    public bool Drawings => !Rendered.IsEmpty || Pngs;

    /// <summary>The ends of the names of all files that a pattern may be given, whatever it says.</summary>
    public IEnumerable<string> Extensions => Rendered.Select(f => f.Extension)
        .Concat(Sources ? [SourceExtension] : [])
        .Concat(Listing ? ListingFormat.All.Select(f => f.Extension) : [])
        .Concat(Pdfs ? Sheets.SelectMany(s => (string[])[s + ".pdf", s + ".html"]) : []);

    private static string[] Sheets { get; } = [".a4", ".letter"];

    /// <summary>The formats of these names, parted by commas; the usual ones where none is said. Null after telling that there is none such.</summary>
    public static ReleaseFormats? Of(string[] names, Surroundings around)
    {
        var said = names.SelectMany(f => f.Split(',', StringSplitOptions.TrimEntries)).ToArray();
        if (said.Length == 0)
        {
            return new(OutputFormat.Usual);
        }

        var rendered = ImmutableArray.CreateBuilder<OutputFormat>();
        var formats = new ReleaseFormats([]);
        foreach (var name in said)
        {
            if (OutputFormat.Find(name) is { } format)
            {
                rendered.Add(format);
                continue;
            }

            switch (Arguments.Choice(name, "format", Names, around, "build"))
            {
                case Source:
                    formats = formats with { Sources = true };
                    break;
                case Png:
                    formats = formats with { Pngs = true };
                    break;
                case Pdf:
                    formats = formats with { Pdfs = true };
                    break;
                case ShopFiles.Format:
                    formats = formats with { Listing = true };
                    break;
                default:
                    return null;
            }
        }

        return formats with { Rendered = [.. rendered.Distinct()] };
    }
}
