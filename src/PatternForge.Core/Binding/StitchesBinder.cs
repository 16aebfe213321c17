using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads what the rows refer to: special stitches, abbreviations, numbers and charts.</summary>
internal static class StitchesBinder
{
    private static readonly KeySet StitchKeys = new("stitches", "how|definition|work", "full-name|full|spoken", "takes|uses", "makes");
    private static readonly KeySet NamedStitchKeys = new("stitches", "name|abbreviation", "how|definition|work", "full-name|full|spoken", "takes|uses", "makes");
    private static readonly KeySet AbbreviationKeys = new("abbreviations", "name|abbreviation", "meaning|means");
    private static readonly KeySet ChartKeys = new("charts", "name", "width|stitches|sts");

    /// <summary>Special stitches: name and how, or name and keys, or a list of either.</summary>
    public static ImmutableArray<StitchDefinition> Stitches(HeaderContext context, HeaderNode node)
    {
        var stitches = ImmutableArray.CreateBuilder<StitchDefinition>();
        foreach (var item in HeaderContext.Items(node))
        {
            if (item is HeaderMap map && node is HeaderList && map.Entries.Any(e => NamedStitchKeys.Find(e.Name) is "name" or "how"))
            {
                var name = "";
                var stitch = FromKeys(context, map, NamedStitchKeys, said => name = said);
                stitches.Add(stitch with { Name = name });
            }
            else if (item is HeaderMap byName)
            {
                foreach (var entry in byName.Entries)
                {
                    stitches.Add(entry.Value switch
                    {
                        HeaderMap keys => FromKeys(context, keys, StitchKeys, _ => { }) with { Name = entry.Name.Trim(), Origin = entry.Key.Span },
                        _ => new StitchDefinition(entry.Name.Trim(), context.Text(entry.Value, entry.Name) ?? "", null, null, null, entry.Key.Span),
                    });
                }
            }
            else if (item is HeaderScalar scalar && NameAndMeaning(scalar) is { Meaning: { } how } pair)
            {
                stitches.Add(new StitchDefinition(pair.Name, how, null, null, null, scalar.Span));
            }
            else
            {
                context.WrongKind(item, "stitches", "names with how they are worked", "`LT: knit the second stitch behind, then the first`");
            }
        }

        return [.. stitches.Where(s => s.Name.Length > 0)];
    }

    private static StitchDefinition FromKeys(HeaderContext context, HeaderMap map, KeySet keys, Action<string> name)
    {
        var stitch = new StitchDefinition("", "", null, null, null, context.FirstLine(map.Span));
        foreach (var (key, entry) in context.Known(map, keys))
        {
            var path = keys.PathOf(key);
            switch (key)
            {
                case "name":
                    name(context.Text(entry.Value, path) ?? "");
                    stitch = stitch with { Origin = entry.Value.Span };
                    break;
                case "how":
                    stitch = stitch with { How = context.Text(entry.Value, path) ?? "" };
                    break;
                case "full-name":
                    stitch = stitch with { FullName = context.Text(entry.Value, path) };
                    break;
                case "takes":
                    stitch = stitch with { Takes = context.WholeNumber(entry.Value, path) };
                    break;
                default:
                    stitch = stitch with { Makes = context.WholeNumber(entry.Value, path) };
                    break;
            }
        }

        return stitch;
    }

    /// <summary>The pattern's own list of abbreviations: names, or names with meanings.</summary>
    public static ImmutableArray<Abbreviation> Abbreviations(HeaderContext context, HeaderNode node)
    {
        var abbreviations = ImmutableArray.CreateBuilder<Abbreviation>();
        if (node is HeaderScalar)
        {
            abbreviations.AddRange(context.Texts(node, "abbreviations", atCommas: true).Select(t => new Abbreviation(t.Value, null, t.Origin)));
            return abbreviations.ToImmutable();
        }

        foreach (var item in HeaderContext.Items(node))
        {
            if (item is HeaderScalar scalar)
            {
                abbreviations.Add(NameAndMeaning(scalar) is { } pair
                    ? new Abbreviation(pair.Name, pair.Meaning, scalar.Span)
                    : new Abbreviation(scalar.Text.Trim(), null, scalar.Span));
            }
            else if (item is HeaderMap map && node is HeaderList && map.Entries.Any(e => AbbreviationKeys.Find(e.Name) is not null))
            {
                string? name = null;
                string? meaning = null;
                foreach (var (key, entry) in context.Known(map, AbbreviationKeys))
                {
                    var said = context.Text(entry.Value, AbbreviationKeys.PathOf(key));
                    (name, meaning) = key == "name" ? (said, meaning) : (name, said);
                }

                if (name is not null)
                {
                    abbreviations.Add(new Abbreviation(name, meaning, context.FirstLine(map.Span)));
                }
            }
            else if (item is HeaderMap byName)
            {
                abbreviations.AddRange(byName.Entries.Select(e => new Abbreviation(e.Name.Trim(), context.Text(e.Value, e.Name), e.Key.Span)));
            }
            else
            {
                context.WrongKind(item, "abbreviations", "names, or names with meanings");
            }
        }

        return abbreviations.ToImmutable();
    }

    // "k2tog = knit 2 together", "k2tog - knit 2 together".
    private static (string Name, string? Meaning)? NameAndMeaning(HeaderScalar scalar)
    {
        foreach (var sign in (ReadOnlySpan<string>)[" = ", "=", " – ", " — ", " - ", ": "])
        {
            var at = scalar.Text.IndexOf(sign, StringComparison.Ordinal);
            if (at > 0 && at + sign.Length < scalar.Text.Length)
            {
                return (scalar.Text[..at].Trim(), scalar.Text[(at + sign.Length)..].Trim());
            }
        }

        return null;
    }

    /// <summary>Named numbers, one for all sizes or one a size, with or without a unit.</summary>
    public static ImmutableArray<NamedNumber> Numbers(HeaderContext context, HeaderNode node)
    {
        if (context.Map(node, "numbers", "`cast-on: 80 (88, 96)` under it") is not { } map)
        {
            return [];
        }

        var numbers = ImmutableArray.CreateBuilder<NamedNumber>();
        foreach (var entry in map.Entries)
        {
            var name = entry.Name.Trim();
            if (QuantityBinder.Read(context, entry.Value, name, Dimension.Count, Dimension.Length, Dimension.YarnLength, Dimension.Mass) is { } values)
            {
                numbers.Add(new NamedNumber(name, values, context.FirstLine(entry.Value.Span)) { WorkedFrom = context.Numbers?.OriginOf(entry.Value) });
                context.Numbers?.CheckWhole(entry.Value, name);
            }
        }

        return numbers.ToImmutable();
    }

    /// <summary>Charts that stand elsewhere, with their width in stitches where it is told.</summary>
    public static ImmutableArray<NamedNumber> Charts(HeaderContext context, HeaderNode node)
    {
        var charts = ImmutableArray.CreateBuilder<NamedNumber>();
        foreach (var item in HeaderContext.Items(node))
        {
            if (item is HeaderMap map && node is HeaderList && map.Entries.Any(e => ChartKeys.Find(e.Name) == "name"))
            {
                var name = "";
                var width = PerSize.Shared<Quantity?>(null);
                foreach (var (key, entry) in context.Known(map, ChartKeys))
                {
                    if (key == "name")
                    {
                        name = context.Text(entry.Value, ChartKeys.PathOf(key)) ?? "";
                    }
                    else
                    {
                        width = QuantityBinder.Read(context, entry.Value, ChartKeys.PathOf(key), Dimension.Count) ?? width;
                    }
                }

                charts.Add(new NamedNumber(name, width, context.FirstLine(map.Span)));
            }
            else if (item is HeaderMap byName)
            {
                foreach (var entry in byName.Entries)
                {
                    var name = entry.Name.Trim();
                    var width = entry.Value is HeaderScalar { IsBlank: true } ? null : QuantityBinder.Read(context, entry.Value, name, Dimension.Count);
                    charts.Add(new NamedNumber(name, width ?? PerSize.Shared<Quantity?>(null), entry.Key.Span));
                }
            }
            else if (item is HeaderScalar scalar)
            {
                charts.Add(new NamedNumber(scalar.Text.Trim(), PerSize.Shared<Quantity?>(null), scalar.Span));
            }
            else
            {
                context.WrongKind(item, "charts", "names with widths", "`Chart A: 12` under it");
            }
        }

        return charts.ToImmutable();
    }
}
