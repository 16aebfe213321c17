using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads the running list of corrections.</summary>
internal static class CorrectionsBinder
{
    private const int Most = 1_000;

    private static readonly KeySet Keys = new("corrections", "version", "date", "text|correction|what|change", "sizes|size", "rows|row|round|rounds|where|place");

    /// <summary>The entries in the order of the header: maps with a version, a date and a text, or texts alone.</summary>
    public static ImmutableArray<ReleasedCorrection> Corrections(HeaderContext context, HeaderNode node)
    {
        var entries = ImmutableArray.CreateBuilder<ReleasedCorrection>();
        foreach (var item in HeaderContext.Items(node).Take(Most))
        {
            if (context.PlainText(item, Keys) is { } text)
            {
                entries.Add(new ReleasedCorrection(context.FirstLine(item.Span)) { Text = text });
            }
            else if (item is HeaderMap map)
            {
                entries.Add(One(context, map));
            }
            else
            {
                context.WrongKind(item, "corrections", "a list of corrections", "`- {version: 1.1, date: 2025-03-01, rows: Row 14, sizes: [L], text: decrease 6 stitches}`");
            }
        }

        return entries.ToImmutable();
    }

    private static ReleasedCorrection One(HeaderContext context, HeaderMap map)
    {
        var made = new ReleasedCorrection(context.FirstLine(map.Span));
        foreach (var (key, entry) in context.Known(map, Keys))
        {
            var path = Keys.PathOf(key);
            made = key switch
            {
                "version" => made with { Version = Said(context, entry.Value, path) },
                "date" => made with { Date = Said(context, entry.Value, path) },
                "text" => made with { Text = context.Text(entry.Value, path) },
                "sizes" => made with { Sizes = [.. context.Texts(entry.Value, path, atCommas: true).Where(s => s.Value.Length > 0)] },
                _ => made with { Rows = entry.Value is HeaderList ? string.Join(", ", context.Texts(entry.Value, path).Select(t => t.Value)) : context.Text(entry.Value, path) },
            };
        }

        return made;
    }

    private static Located<string>? Said(HeaderContext context, HeaderNode node, string path) => context.Text(node, path) is { } text ? new Located<string>(text, node.Span) : null;
}
