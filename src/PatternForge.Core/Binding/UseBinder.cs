using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads what is said of the finished piece: its care, and what the photos show.</summary>
internal static class UseBinder
{
    private static readonly KeySet CareKeys = new(
        "care", "washing|wash", "bleaching|bleach", "drying|dry|tumble-drying", "ironing|iron|pressing",
        "professional-care|professional|dry-cleaning|wet-cleaning|cleaning", "notes|note|other");

    private static readonly KeySet ShownKeys = new("shown", "size", "ease|worn-with");

    /// <summary>The care: keys by treatment, a list of texts, or one text.</summary>
    public static ImmutableArray<CareEntry> Care(HeaderContext context, HeaderNode node)
    {
        if (node is not HeaderMap map)
        {
            return [.. context.Texts(node, "care").Where(t => t.Value.Length > 0).Select(t => new CareEntry(null, t.Value, t.Origin))];
        }

        var entries = ImmutableArray.CreateBuilder<CareEntry>();
        foreach (var (key, entry) in context.Known(map, CareKeys))
        {
            CareKind? kind = key switch
            {
                "washing" => CareKind.Washing,
                "bleaching" => CareKind.Bleaching,
                "drying" => CareKind.Drying,
                "ironing" => CareKind.Ironing,
                "professional-care" => CareKind.ProfessionalCare,
                _ => null,
            };
            foreach (var said in context.Texts(entry.Value, CareKeys.PathOf(key)))
            {
                if (said.Value.Length > 0)
                {
                    entries.Add(new CareEntry(kind, said.Value, said.Origin));
                }
            }
        }

        return [.. entries.OrderBy(e => e.Kind ?? (CareKind)int.MaxValue)];
    }

    /// <summary>What the photos show: `size` and `ease`, or the size alone.</summary>
    public static Shown? Shown(HeaderContext context, HeaderNode node)
    {
        if (node is HeaderScalar { IsBlank: false } scalar)
        {
            return new Shown(SizeOf(context, scalar.Text.Trim(), scalar.Span), null, scalar.Span);
        }

        if (context.Map(node, "shown", "`size: M` and `ease: 5 cm` under it") is not { } map)
        {
            return null;
        }

        var shown = new Shown(null, null, context.FirstLine(map.Span));
        foreach (var (key, entry) in context.Known(map, ShownKeys))
        {
            var said = context.Text(entry.Value, ShownKeys.PathOf(key));
            shown = key == "size" ? shown with { Size = said is null ? null : SizeOf(context, said, entry.Value.Span) } : shown with { Ease = said };
        }

        return shown;
    }

    // "M", "size M", "the second size": only a name that stands alone can be looked up.
    private static string SizeOf(HeaderContext context, string said, TextSpan place)
    {
        var name = said.StartsWith("size ", StringComparison.OrdinalIgnoreCase) ? said[5..].Trim() : said;
        if (context.SizesKnown && context.Sizes.Count > 1 && !name.Contains(' ', StringComparison.Ordinal) && !context.Sizes.Names.Any(n => string.Equals(n, name, StringComparison.OrdinalIgnoreCase)))
        {
            context.Report(HeaderRules.SizeNotListed, place, $"the photos show size `{HeaderContext.Short(name)}`, which is none of the sizes", $"the sizes are {HeaderContext.Listed(context.Sizes.Names)}");
        }

        return name;
    }
}
