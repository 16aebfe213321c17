using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads what amounts of yarn are worked out from: the sample, a weighed swatch, and the margin.</summary>
internal static class SampleBinder
{
    private static readonly KeySet SampleKeys = new("sample", "size", "used|weighs|weight|grams|yarn-used");
    private static readonly KeySet SwatchKeys = new("swatch", "size|over|measures", "stitches|sts", "rows|rounds", "weighs|weight|used|grams");

    /// <summary>The sample: its size and what it weighed, as one amount or yarn by yarn.</summary>
    public static Sample? Sample(HeaderContext context, HeaderNode node)
    {
        if (context.Map(node, "sample", "`size: M` and `used: 180 g` under it") is not { } map)
        {
            return null;
        }

        var sample = new Sample(null, null, context.FirstLine(map.Span));
        foreach (var (key, entry) in context.Known(map, SampleKeys))
        {
            if (key == "used")
            {
                var (used, by) = Used(context, entry.Value, "sample.used");
                sample = sample with { Used = used, UsedBy = by };
            }
            else if (context.Scalar(entry.Value, "sample.size") is { } size)
            {
                sample = sample with { Size = size.Text.Trim() };
                if (context.SizesKnown && context.Sizes.Count > 1 && context.Sizes.IndexOf(size.Text.Trim()) < 0)
                {
                    context.Report(
                        HeaderRules.SizeNotListed,
                        size.Span,
                        $"the sample's size `{HeaderContext.Short(size.Text)}` is none of the pattern's sizes",
                        $"the sizes are {QuantityBinder.Names(context.Sizes)}");
                }
            }
        }

        return sample;
    }

    /// <summary>A weighed swatch: what it measures, or its stitches and rows, and what it weighs.</summary>
    public static Swatch? Swatch(HeaderContext context, HeaderNode node)
    {
        const string Example = "`size: 15 x 15 cm` and `weighs: 12 g` under it";
        if (context.Map(node, "swatch", Example) is not { } map)
        {
            return null;
        }

        var swatch = new Swatch(context.FirstLine(map.Span));
        foreach (var (key, entry) in context.Known(map, SwatchKeys))
        {
            switch (key)
            {
                case "size":
                    if (context.Scalar(entry.Value, "swatch.size") is { } size)
                    {
                        var at = 0;
                        if (GaugeLine.Measure(size.Text, ref at) is { Width: { Unit.Dimension: Dimension.Length, InBase: > 0 } width, Height: { Unit.Dimension: Dimension.Length, InBase: > 0 } height })
                        {
                            swatch = swatch with { Width = width, Height = height };
                        }
                        else
                        {
                            context.WrongKind(size, "swatch.size", "how wide and how high the swatch is", "`15 x 15 cm`");
                        }
                    }

                    break;
                case "stitches":
                    swatch = swatch with { Stitches = context.WholeNumber(entry.Value, "swatch.stitches") };
                    break;
                case "rows":
                    swatch = swatch with { Rows = context.WholeNumber(entry.Value, "swatch.rows") };
                    break;
                default:
                    var (weighs, by) = Used(context, entry.Value, "swatch.weighs");
                    swatch = swatch with { Weighs = weighs, WeighsBy = by };
                    break;
            }
        }

        return swatch;
    }

    /// <summary>What is added to an amount: "10%", "10 %" or "0.1".</summary>
    public static decimal? Margin(HeaderContext context, HeaderNode node, string path)
    {
        if (context.Scalar(node, path) is not { IsBlank: false } scalar)
        {
            return null;
        }

        var said = scalar.Text.AsSpan().Trim();
        var isPercent = said.EndsWith("%");
        said = isPercent ? said[..^1].TrimEnd() : said;
        if (decimal.TryParse(said, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && (value = isPercent ? value / 100 : value) is >= 0 and <= 1)
        {
            return value;
        }

        context.WrongKind(scalar, path, "how much is added to an amount, in per cent", "`10%`");
        return null;
    }

    /// <summary>True for words that ask for an amount to be worked out.</summary>
    public static bool AsksForEstimate(string text) => text.Trim().TrimStart('=').Trim() is var said && (said.Equals("estimated", StringComparison.OrdinalIgnoreCase) || said.Equals("estimate", StringComparison.OrdinalIgnoreCase));

    /// <summary>One amount, or one a yarn with their sum where they are all weighed or all measured.</summary>
    private static (Quantity? All, ImmutableArray<YarnUsed> By) Used(HeaderContext context, HeaderNode node, string path)
    {
        if (node is not HeaderMap map)
        {
            return (One(context, node, path), []);
        }

        var by = ImmutableArray.CreateBuilder<YarnUsed>();
        foreach (var entry in map.Entries)
        {
            if (One(context, entry.Value, path) is { } amount)
            {
                by.Add(new YarnUsed(entry.Name.Trim(), amount, context.FirstLine(entry.Span)));
            }
        }

        if (by.Count == 0 || by.Count < map.Entries.Length)
        {
            return (null, by.ToImmutable());
        }

        var unit = by[0].Amount.Unit;
        return (by.All(u => u.Amount.Unit.Dimension == unit.Dimension) ? new Quantity(by.Sum(u => u.Amount.InBase) / unit.InBase, unit) : null, by.ToImmutable());
    }

    // What one sample used is one value, in however many sizes the pattern comes.
    private static Quantity? One(HeaderContext context, HeaderNode node, string path)
    {
        var (sizes, known) = (context.Sizes, context.SizesKnown);
        (context.Sizes, context.SizesKnown) = (SizeSet.One, true);
        var used = QuantityBinder.Read(context, node, path, Dimension.Mass, Dimension.YarnLength, Dimension.Count);
        (context.Sizes, context.SizesKnown) = (sizes, known);
        return used?[0];
    }
}
