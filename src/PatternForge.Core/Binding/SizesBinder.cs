using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads the sizes: their names, the body they fit, and the finished measurements.</summary>
internal static class SizesBinder
{
    private static readonly KeySet Keys = new("sizes", "names|name|size", "from|size-table", "fits|to-fit|fit|body", "finished|finished-measurements|measurements", "ease");

    /// <summary>The key of `sizes` that a word means; null when there is none.</summary>
    public static string? PartOf(string word) => Keys.Find(word);

    /// <summary>Reads `sizes` and adds what it says to the facts.</summary>
    public static PatternFacts Bind(HeaderContext context, HeaderEntry entry, PatternFacts facts, int mostSizes)
    {
        facts = facts with { SizesOrigin = context.FirstLine(entry.Span) };
        if (entry.Value is not HeaderMap map)
        {
            return BindNames(context, entry.Value, facts, mostSizes);
        }

        // The names come first, wherever they stand: all values are counted by them.
        var entries = context.Known(map, Keys).ToArray();
        var names = Array.Find(entries, e => e.Key == "names").Entry;
        if (names is not null)
        {
            facts = BindNames(context, names.Value, facts, mostSizes) with { SizesOrigin = context.FirstLine(names.Span) };
        }
        else
        {
            context.SizesKnown = false;
            context.GiveUp("sizes");
            if (!context.HasGivenUp("sizes.names"))
            {
                context.Report(HeaderRules.SizesWithoutNames, entry.Key.Span, "`sizes` has no `names`", "add a line such as `names: S (M, L)`, or `names: one size`");
            }
        }

        if (Array.Find(entries, e => e.Key == "from").Entry is { } from && SizeTableBinder.Read(context, from.Value) is { } table)
        {
            context.Numbers?.Body = table;
            facts = entries.All(e => e.Key != "fits") && SizeTableBinder.Main(table, context.FirstLine(from.Span)) is { } main ? facts with { Fits = [main] } : facts;
        }

        foreach (var (key, part) in entries)
        {
            facts = key switch
            {
                "fits" => facts with { Fits = Measurements(context, part.Value, "fits") },
                "finished" => facts with { Finished = Measurements(context, part.Value, "finished") },
                "ease" => Ease(context, part.Value, facts),
                _ => facts,
            };
        }

        return facts;
    }

    /// <summary>The ease in the designer's words, and the length that they tell.</summary>
    public static PatternFacts Ease(HeaderContext context, HeaderNode node, PatternFacts facts)
    {
        if (node is HeaderMap areas)
        {
            var values = Measurements(context, areas, "ease");
            return facts with { Ease = values.IsEmpty ? null : string.Join(", ", values.Select(v => $"{PrintedText.TradeForm(v.Values)} at the {v.Name.Replace('-', ' ')}")), EaseBy = values.IsEmpty ? null : values[0].Values };
        }

        var said = context.Text(node, "ease");
        return facts with { Ease = said, EaseBy = MeasuredBinder.EaseBy(context, said) };
    }

    /// <summary>Lengths that may be below zero: "-2 cm", "-2 (-2, -3) cm". Before a digit a dash is a sign here; alone it is a size without a value, as everywhere.</summary>
    private static PerSize<Quantity?>? Signed(HeaderContext context, HeaderNode node, string name)
    {
        if (node is not HeaderScalar scalar || scalar.Text.Trim() is not [var first, var digit, ..] || first is not ('-' or '−' or '–' or '+') || !char.IsAsciiDigit(digit))
        {
            return QuantityBinder.Read(context, node, name, Dimension.Length);
        }

        var text = scalar.Text.ToCharArray();
        var isBelow = new List<bool>();
        for (var i = 0; i < text.Length; i++)
        {
            var begins = i == 0 || char.IsWhiteSpace(text[i - 1]) || text[i - 1] is '(' or '[' or ',' or ';' or '/';
            if (begins && text[i] is '-' or '−' or '–' or '+' && i + 1 < text.Length && char.IsAsciiDigit(text[i + 1]))
            {
                isBelow.Add(text[i] != '+');
                text[i++] = ' ';
            }
            else if (begins && char.IsAsciiDigit(text[i]))
            {
                isBelow.Add(false);
            }
        }

        return QuantityBinder.Read(context, new HeaderScalar(context.Source, scalar.Span, new string(text)), name, Dimension.Length) is not { } values ? null
            : values.IsShared ? values.Map(q => Under(q, isBelow[0]))
            : PerSize.Each([.. values.Values.Select((q, i) => Under(q, isBelow.Count == values.Values.Length ? isBelow[i] : isBelow[0]))]);
    }

    private static Quantity? Under(Quantity? length, bool isBelow) => isBelow && length is not null ? length with { Value = -length.Value, UpTo = -length.UpTo } : length;

    /// <summary>Named measurements: keys with values, or one text of the trade such as "20 cm wide, 160 cm long".</summary>
    public static ImmutableArray<Measurement> Measurements(HeaderContext context, HeaderNode node, string path)
    {
        var measurements = ImmutableArray.CreateBuilder<Measurement>();
        switch (node)
        {
            case HeaderMap map:
                foreach (var entry in map.Entries)
                {
                    if (entry.Value is HeaderScalar { IsBlank: true })
                    {
                        continue;
                    }

                    if ((path == "ease" ? Signed(context, entry.Value, entry.Name.Trim()) : QuantityBinder.Read(context, entry.Value, entry.Name.Trim(), Dimension.Length)) is { } values)
                    {
                        measurements.Add(new Measurement(entry.Name.Trim(), values, context.FirstLine(entry.Value.Span)) { WorkedFrom = context.Numbers?.OriginOf(entry.Value) });
                    }
                    else
                    {
                        context.GiveUp(path);
                    }
                }

                break;
            case HeaderScalar { IsBlank: false } scalar:
                Loose(context, scalar, path, measurements);
                break;
            case HeaderList:
                context.WrongKind(node, path, "keys with values", "`bust: 91 (102, 112) cm` under it");
                break;
            default:
                break;
        }

        return measurements.ToImmutable();
    }

    // "20 cm wide, 160 cm long": values, each followed by the word that names it.
    private static void Loose(HeaderContext context, HeaderScalar scalar, string path, ImmutableArray<Measurement>.Builder measurements)
    {
        var text = scalar.Text;
        var at = QuantityBinder.SkipLeadingWords(text);
        while (at < text.Length)
        {
            if (ValueListReader.Read(text, at, context.Sizes.Count) is not { HasUnit: true } list)
            {
                break;
            }

            var end = list.End;
            var depth = 0;
            while (end < text.Length && (depth > 0 || text[end] is not (',' or ';' or '×')) && !(depth == 0 && text[end] == 'x' && text[end - 1] == ' '))
            {
                depth += text[end] switch { '(' or '[' => 1, ')' or ']' => -1, _ => 0 };
                end++;
            }

            var name = text[list.End..end].Trim().Trim('(', ')', '[', ']', '.').Trim();
            ImmutableArray<Quantity?> values = [.. list.Values.Select(v => v is { Number: { } n, Unit.Dimension: Dimension.Length } ? new Quantity(n, v.Unit) { UpTo = v.UpTo } : null)];
            var place = scalar.SpanOf(list.Start, list.End - list.Start);
            if (QuantityBinder.PerSizeOf(context, values, path, place) is { } perSize)
            {
                measurements.Add(new Measurement(name.Length > 0 ? name : measurements.Count == 0 ? path : $"{path} {measurements.Count + 1}", perSize, place));
            }

            at = Math.Min(end + 1, text.Length);
        }

        if (measurements.Count == 0 && !context.HasGivenUp(path))
        {
            context.WrongKind(scalar, path, "measurements with names and units", "`bust: 91 (102, 112) cm` under it");
        }
    }

    private static PatternFacts BindNames(HeaderContext context, HeaderNode node, PatternFacts facts, int mostSizes)
    {
        var (names, word) = node switch
        {
            HeaderList list => (context.Texts(list, "sizes"), null),
            HeaderScalar { IsBlank: false } scalar => InTradeForm(scalar),
            HeaderScalar => ([], null),
            _ => (context.Texts(node, "sizes"), (string?)null),
        };
        names = [.. names.Where(n => n.Value.Length > 0)];
        if (names.Length == 0)
        {
            context.SizesKnown = false;
            context.GiveUp("sizes");
            return facts with { SizesOrigin = null };
        }

        if (names.Length > mostSizes)
        {
            context.Report(HeaderRules.TooManySizes, names[mostSizes].Origin, $"the pattern has {names.Length} sizes; the first {mostSizes} of them were read");
            names = names[..mostSizes];
            context.SizesKnown = false;
        }

        var firsts = new Dictionary<string, TextSpan>(StringComparer.OrdinalIgnoreCase);
        foreach (var name in names)
        {
            if (!firsts.TryAdd(name.Value, name.Origin))
            {
                context.Bag.Add(new Finding(HeaderRules.SizeNamedTwice, context.Source, name.Origin, $"two sizes are called `{HeaderContext.Short(name.Value)}`")
                {
                    Labels = [new Label(firsts[name.Value], "the first one")],
                });
            }
        }

        context.Sizes = new SizeSet([.. names.Select(n => n.Value)]) { Word = word };
        return facts with { Sizes = context.Sizes };
    }

    // "XS (S, M) (L, XL)", "S, M, L", "S/M/L", "2 (4, 6) years", "one size". Two names with a stroke or hyphen between are one name: S/M, 0-3.
    internal static (ImmutableArray<Located<string>> Names, string? Word) InTradeForm(HeaderScalar scalar)
    {
        var text = scalar.Text;
        if (text.TrimStart().StartsWith("one size", StringComparison.OrdinalIgnoreCase))
        {
            return ([new Located<string>(text.Trim(), scalar.Span)], null);
        }

        var open = text.AsSpan().IndexOfAny('(', '[', '{');
        var hasList = open >= 0 || text.AsSpan().IndexOfAny(',', ';') >= 0;
        var marks = hasList ? ",;:()[]{}" : text.Split('/').Length > 2 ? "/" : text.Contains(": ", StringComparison.Ordinal) ? ":" : text.Split('-').Length > 2 ? "-" : "";
        var names = ImmutableArray.CreateBuilder<Located<string>>();
        var start = 0;
        for (var i = 0; i <= text.Length; i++)
        {
            if (i == text.Length || marks.Contains(text[i], StringComparison.Ordinal))
            {
                var lead = start;
                while (lead < i && char.IsWhiteSpace(text[lead]))
                {
                    lead++;
                }

                var name = text[lead..i].TrimEnd();
                if (name.Length > 0)
                {
                    names.Add(new Located<string>(name, scalar.SpanOf(lead, name.Length)));
                }

                start = i + 1;
            }
        }

        // In "2 (4, 6) years" and "2 (4, 6, 8-10) months" the word after the last bracket belongs to all of them.
        var word = open > 0 && names.Count > 2 && text.TrimEnd()[^1] is not (')' or ']' or '}') && names[^1].Value is var last && last.All(c => char.IsLetter(c) || c == ' ') ? last : null;
        if (word is not null)
        {
            names.RemoveAt(names.Count - 1);
        }

        return (names.ToImmutable(), word);
    }
}
