using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads the gauges: keys with values, a list of them, or lines of the trade.</summary>
internal static class GaugeBinder
{
    private static readonly KeySet Keys = new(
        "gauge", "name", "stitch|in|pattern", "over|size|swatch", "stitches|sts|st", "rows|row", "rounds|rnds|rnd|round", "tool|needle|needles|hook|hooks|on|with", "state");

    private static readonly string[] Unimportant = ["not important", "not critical", "not crucial", "not essential", "not necessary", "not vital", "unimportant", "no gauge", "isn't important", "does not matter", "is not relevant", "not relevant"];

    /// <summary>Reads `gauge` and adds what it says to the facts.</summary>
    public static PatternFacts Bind(HeaderContext context, HeaderNode node, PatternFacts facts)
    {
        var gauges = ImmutableArray.CreateBuilder<Gauge>();
        foreach (var item in HeaderContext.Items(node))
        {
            switch (item)
            {
                case HeaderMap map:
                    gauges.Add(FromKeys(context, map));
                    break;
                case HeaderScalar scalar when Array.Exists(Unimportant, w => scalar.Text.Contains(w, StringComparison.OrdinalIgnoreCase)) && GaugeLine.Read(scalar.Text, scalar.Span) is null:
                    facts = facts with { GaugeRemark = scalar.Text.Trim() };
                    break;
                case HeaderScalar scalar:
                    var line = string.Join(' ', scalar.Text.Split('\n', StringSplitOptions.TrimEntries));
                    if (GaugeLine.Read(line, scalar.Span) is { } gauge)
                    {
                        gauges.Add(gauge);
                    }
                    else
                    {
                        context.GiveUp("gauge");
                        context.Report(
                            HeaderRules.UnreadableGauge,
                            context.FirstLine(scalar.Span),
                            $"no count of stitches or rows could be read in the gauge `{HeaderContext.Short(scalar.Text)}`",
                            "write it as `20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked`");
                    }

                    break;
                default:
                    context.WrongKind(item, "gauge", "a line or keys with values");
                    break;
            }
        }

        return facts with { Gauges = gauges.ToImmutable() };
    }

    private static Gauge FromKeys(HeaderContext context, HeaderMap map)
    {
        var gauge = new Gauge(context.FirstLine(map.Span));
        (Quantity Width, Quantity Height)? size = null;
        foreach (var (key, entry) in context.Known(map, Keys))
        {
            var path = Keys.PathOf(key);
            switch (key)
            {
                case "name":
                    gauge = gauge with { Name = context.Text(entry.Value, path) };
                    break;
                case "stitch":
                    gauge = gauge with { Stitch = context.Text(entry.Value, path) };
                    break;
                case "over":
                    size = Size(context, entry.Value, path);
                    break;
                case "stitches":
                    gauge = gauge with { Stitches = Count(context, entry.Value, path) };
                    break;
                case "rows" or "rounds":
                    gauge = gauge with { Rows = Count(context, entry.Value, path) ?? gauge.Rows, RowsAreRounds = key == "rounds" || SaysRounds(entry.Value) };
                    break;
                case "tool":
                    gauge = gauge with { Tool = context.Text(entry.Value, path) };
                    break;
                default:
                    gauge = gauge with { Blocked = State(context, entry.Value, path) };
                    break;
            }
        }

        return gauge with { Width = size?.Width, Height = size?.Height };
    }

    private static bool SaysRounds(HeaderNode node) => node is HeaderScalar scalar && (scalar.Text.Contains("rnd", StringComparison.OrdinalIgnoreCase) || scalar.Text.Contains("round", StringComparison.OrdinalIgnoreCase));

    private static (Quantity Width, Quantity Height)? Size(HeaderContext context, HeaderNode node, string path)
    {
        if (context.Scalar(node, path) is not { IsBlank: false } scalar)
        {
            return null;
        }

        var at = 0;
        if (GaugeLine.Measure(scalar.Text, ref at) is { } size)
        {
            return size;
        }

        context.GiveUp(path);
        context.Report(HeaderRules.UnknownUnit, scalar.Span, $"`{path}` wants the size of the swatch, but says `{HeaderContext.Short(scalar.Text)}`", "write it as `10 x 10 cm` or `4 in`");
        return null;
    }

    private static decimal? Count(HeaderContext context, HeaderNode node, string path)
    {
        if (context.Scalar(node, path, "a number") is not { IsBlank: false } scalar)
        {
            return null;
        }

        var at = QuantityBinder.SkipLeadingWords(scalar.Text);
        if (NumberReader.TryRead(scalar.Text, ref at, out var number) && scalar.Text[at..].All(c => char.IsLetter(c) || c is ' ' or '.'))
        {
            return number;
        }

        context.GiveUp(path);
        context.Report(HeaderRules.UnreadableNumber, scalar.Span, $"`{path}` wants a number, but says `{HeaderContext.Short(scalar.Text)}`", "write it as `20` or `20½`");
        return null;
    }

    private static bool? State(HeaderContext context, HeaderNode node, string path)
    {
        if (context.Scalar(node, path) is not { IsBlank: false } scalar)
        {
            return null;
        }

        if (GaugeLine.StateOf(scalar.Text) is { } state)
        {
            return state;
        }

        context.GiveUp(path);
        context.Report(HeaderRules.UnreadableGauge, scalar.Span, $"`{HeaderContext.Short(scalar.Text)}` does not say whether the swatch was blocked", "write `blocked` or `unblocked`");
        return null;
    }
}
