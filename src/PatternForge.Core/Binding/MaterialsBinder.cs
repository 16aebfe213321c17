using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads tools, notions, photos, videos and links.</summary>
internal static class MaterialsBinder
{
    private static readonly KeySet ItemKeys = new("notions", "text|name|what|item", "link|url|address");
    private static readonly KeySet LinkKeys = new("links", "title|text|name|what", "link|url|address|to");
    private static readonly KeySet PhotoKeys = new("photos", "file|path|image|src", "alt|text-alternative", "caption|title");

    /// <summary>Tools or notions: texts, or a text with a link.</summary>
    public static ImmutableArray<Item> Items(HeaderContext context, HeaderNode node, string path)
    {
        var items = ImmutableArray.CreateBuilder<Item>();
        foreach (var item in HeaderContext.Items(node))
        {
            if (context.PlainText(item, ItemKeys) is { } text)
            {
                items.Add(new Item(text, null, context.FirstLine(item.Span)));
            }
            else if (item is HeaderMap map)
            {
                string? what = null;
                string? link = null;
                foreach (var (key, entry) in context.Known(map, ItemKeys))
                {
                    var said = context.Text(entry.Value, $"{path}.{key}");
                    (what, link) = key == "text" ? (said, link) : (what, said);
                }

                if (what is not null || link is not null)
                {
                    items.Add(new Item(what ?? link!, link, context.FirstLine(map.Span)));
                }
            }
            else
            {
                context.WrongKind(item, path, "texts, or a `text` with a `link`");
            }
        }

        return items.ToImmutable();
    }

    /// <summary>Titled addresses: "title: address" pairs, texts, or keys.</summary>
    public static ImmutableArray<Link> Links(HeaderContext context, HeaderNode node, string path)
    {
        var links = ImmutableArray.CreateBuilder<Link>();
        foreach (var item in HeaderContext.Items(node))
        {
            switch (item)
            {
                case HeaderScalar scalar:
                    links.Add(FromText(scalar));
                    break;
                case HeaderMap map when map.Entries.Any(e => LinkKeys.Find(e.Name) is not null):
                    string? title = null;
                    string? address = null;
                    foreach (var (key, entry) in context.Known(map, LinkKeys))
                    {
                        var said = context.Text(entry.Value, $"{path}.{key}");
                        (title, address) = key == "title" ? (said, address) : (title, said);
                    }

                    links.Add(new Link(title ?? address ?? "", address ?? "", context.FirstLine(map.Span)));
                    break;
                case HeaderMap map:
                    foreach (var entry in map.Entries)
                    {
                        if (context.Text(entry.Value, path) is { } said)
                        {
                            links.Add(new Link(entry.Name.Trim(), said, context.FirstLine(entry.Span)));
                        }
                    }

                    break;
                default:
                    context.WrongKind(item, path, "addresses with titles", "`- How to block: https://example.com/blocking`");
                    break;
            }
        }

        return links.ToImmutable();
    }

    // "How to block https://example.com/blocking", "https://example.com/blocking (blocking)", or an address alone.
    private static Link FromText(HeaderScalar scalar)
    {
        var words = scalar.Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var address = Array.Find(words, w => w.Contains("://", StringComparison.Ordinal) || w.StartsWith("www.", StringComparison.OrdinalIgnoreCase));
        if (address is null)
        {
            return new Link(scalar.Text.Trim(), scalar.Text.Trim(), scalar.Span);
        }

        var clean = address.Trim('<', '>', '(', ')', ',');
        var title = string.Join(' ', words.Where(w => w != address)).Trim(' ', ':', '-', '–', '(', ')', ',');
        return new Link(title.Length > 0 ? title : clean, clean, scalar.Span);
    }

    /// <summary>Photos: a file name, or file, text alternative and caption.</summary>
    public static ImmutableArray<Photo> Photos(HeaderContext context, HeaderNode node)
    {
        var photos = ImmutableArray.CreateBuilder<Photo>();
        foreach (var item in HeaderContext.Items(node))
        {
            if (item is HeaderScalar scalar)
            {
                photos.Add(new Photo(scalar.Text.Trim(), null, null, scalar.Span));
            }
            else if (item is HeaderMap map)
            {
                var photo = new Photo("", null, null, context.FirstLine(map.Span));
                foreach (var (key, entry) in context.Known(map, PhotoKeys))
                {
                    var said = context.Text(entry.Value, PhotoKeys.PathOf(key));
                    photo = key switch
                    {
                        "file" => photo with { File = said ?? "" },
                        "alt" => photo with { Alt = said },
                        _ => photo with { Caption = said },
                    };
                }

                photos.Add(photo);
            }
            else
            {
                context.WrongKind(item, "photos", "files with text alternatives", "`- file: front.jpg` with `alt: ...` under it");
            }
        }

        return photos.ToImmutable();
    }
}
