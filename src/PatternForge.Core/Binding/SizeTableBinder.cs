using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads `from` under `sizes`: body measurements by size from the published tables, from a designer's own file, or told there one by one. Of several the first that has a measurement gives it.</summary>
internal static class SizeTableBinder
{
    private static readonly (string Words, BodyGroup Group)[] Groups =
    [
        ("babies|baby|infants", BodyGroup.Baby), ("children|child|youths|youth|kids", BodyGroup.Child), ("women|woman|ladies", BodyGroup.Woman), ("men|man", BodyGroup.Man),
    ];

    // Names of one size that tables and makers write in several ways (common practice).
    private static readonly string[][] SameSize = [["XL", "1X", "X-Large"], ["XXL", "2X", "2XL"], ["XXXL", "3X", "3XL"], ["4X", "4XL"], ["5X", "5XL"], ["S", "Small"], ["M", "Medium"], ["L", "Large"], ["XS", "X-Small"]];

    /// <summary>The tables that the header names, as one; null where none can be had, which is reported.</summary>
    public static SizeTable? Read(HeaderContext context, HeaderNode node)
    {
        var values = ImmutableDictionary.CreateBuilder<string, PerSize<Quantity?>>(StringComparer.Ordinal);
        if (node is HeaderMap map)
        {
            foreach (var (measure, perSize) in Rows(context, map.Entries))
            {
                values.TryAdd(measure, perSize);
            }
        }

        foreach (var said in node is HeaderMap ? [] : context.Texts(node, "sizes.from"))
        {
            foreach (var (measure, perSize) in One(context, said) ?? [])
            {
                values.TryAdd(measure, perSize);
            }
        }

        if (values.Count == 0)
        {
            context.GiveUp("sizes.from");
            return null;
        }

        return new(values.ToImmutable());
    }

    /// <summary>The girth that a piece goes by: head, hand, bust or chest; null where the table has none of these.</summary>
    public static Measurement? Main(SizeTable table, TextSpan origin) =>
        table.Find("head") is { } head ? new("head", head, origin) : table.Find("hand") is { } hand ? new("hand", hand, origin) : table.Find("bust") is { } bust ? new("bust", bust, origin) : table.Find("chest") is { } chest ? new("chest", chest, origin) : null;

    private static IEnumerable<(string Measure, PerSize<Quantity?> Values)>? One(HeaderContext context, Located<string> said)
    {
        var text = said.Value.Trim();
        var end = text.IndexOf(' ');
        var (name, rest) = end < 0 ? (text, "") : (text[..end], text[end..].Trim());
        if (name.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || name.EndsWith(".yml", StringComparison.OrdinalIgnoreCase))
        {
            return Own(context, said, name, rest);
        }

        if (PartSizes.Find(name) is { } part)
        {
            return Places(context, said, rest, part.Sizes, name) is not { } found ? null
                : part.Measures.Select(m => (m.Measure, PerSize.Each<Quantity?>([.. found.Select(p => m.Spans[p] is { } span ? new Quantity(span.Least, part.InCentimetres ? Unit.Centimetre : Unit.Inch) { UpTo = span.Most > span.Least ? span.Most : null } : null)])));
        }

        if (Array.Find(Groups, g => g.Words.Split('|').Contains(name, StringComparer.OrdinalIgnoreCase)) is not { Words: not null } group)
        {
            string[] names = [.. Groups.Select(g => g.Words.Split('|')[0]), .. PartSizes.All.Select(t => t.Name)];
            var near = Suggest.Nearest(name, names, 1);
            context.Report(NumberRules.TableNotFound, said.Origin, $"there is no size table `{HeaderContext.Short(name)}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"there are {HeaderContext.Listed(names)}, or a file of your own such as `our-sizes.yaml`");
            return null;
        }

        if (Places(context, said, rest, BodySizes.Names(group.Group), name) is not { } places)
        {
            return null;
        }

        return BodySizes.All.Where(t => t.Group == group.Group)
            .Select(t => (KeySet.Plain(t.Measure), PerSize.Each<Quantity?>([.. places.Select(p => InCm(t.Sizes[p]))])));
    }

    private static Quantity? InCm(BodyRange range) => new(range.LeastCm, Unit.Centimetre) { UpTo = range.MostCm > range.LeastCm ? range.MostCm : null };

    private static IEnumerable<(string Measure, PerSize<Quantity?> Values)>? Own(HeaderContext context, Located<string> said, string name, string rest)
    {
        if (context.ReadFile?.Invoke(name) is not { } content)
        {
            context.Report(NumberRules.TableNotFound, said.Origin, $"the size table `{HeaderContext.Short(name)}` cannot be read", "it should lie beside the pattern, or in a folder below it");
            return null;
        }

        var source = new SourceText(name, content);
        var bag = new FindingBag(source);
        var inner = new HeaderContext(source, bag);
        if (HeaderReader.Read(source, new TextSpan(0, content.Length), CompileOptions.Default, bag) is not HeaderMap map || map.Entries.FirstOrDefault(e => KeySet.Plain(e.Name) == "sizes") is not { } sizes)
        {
            context.Report(NumberRules.TableNotFound, said.Origin, $"the size table `{name}` has no `sizes`", "begin it with a line such as `sizes: S (M, L)`, then a line for each measurement: `bust: 86 (94, 102) cm`");
            return null;
        }

        SizesBinder.Bind(inner, sizes, new PatternFacts(), CompileOptions.Default.MaxSizes);
        var rows = Rows(inner, map.Entries.Where(e => e != sizes));
        if (bag.ToSorted().FirstOrDefault(f => f.Severity == Severity.Error) is { } wrong)
        {
            context.Report(NumberRules.TableNotFound, said.Origin, $"the size table `{name}` has a mistake in line {source.Lines.PositionOf(wrong.Span.Start).Line}: {wrong.Message}", wrong.Help);
            return null;
        }

        return Places(context, said, rest, inner.Sizes.Names, name) is not { } places ? null
            : rows.Select(r => (r.Measure, PerSize.Each<Quantity?>([.. places.Select(p => r.Values[p])])));
    }

    /// <summary>Measurements told one by one.</summary>
    private static List<(string Measure, PerSize<Quantity?> Values)> Rows(HeaderContext context, IEnumerable<HeaderEntry> entries)
    {
        var rows = new List<(string, PerSize<Quantity?>)>();
        foreach (var entry in entries)
        {
            if (QuantityBinder.Read(context, entry.Value, entry.Name.Trim(), Dimension.Length) is { } values)
            {
                rows.Add((KeySet.Plain(entry.Name), values));
            }
        }

        return rows;
    }

    /// <summary>Which size of the table each size of the pattern is; null where one is not there, which is reported.</summary>
    private static int[]? Places(HeaderContext context, Located<string> said, string rest, ImmutableArray<string> names, string table)
    {
        if (!context.SizesKnown)
        {
            return null;
        }

        var wanted = rest.Length == 0 ? context.Sizes.Names : [.. rest.Split([' ', ',', '(', ')', '[', ']'], StringSplitOptions.RemoveEmptyEntries)];
        if (wanted.Length != context.Sizes.Count)
        {
            context.Report(NumberRules.SizeNotInTable, said.Origin, $"`from` names {wanted.Length} sizes, but the pattern has {context.Sizes.Count}", "name one size of the table for each of the pattern's");
            return null;
        }

        var places = new int[wanted.Length];
        for (var i = 0; i < wanted.Length; i++)
        {
            if ((places[i] = PlaceOf(wanted[i], names)) < 0)
            {
                context.Report(NumberRules.SizeNotInTable, said.Origin, $"the size table `{table}` has no size `{HeaderContext.Short(wanted[i])}`", $"it has {string.Join(", ", names)}; say behind its name which of them are meant: `from: {table} {names[0]}{(wanted.Length > 1 ? $" ({string.Join(", ", names.Skip(1).Take(wanted.Length - 1))})" : "")}`");
                return null;
            }
        }

        return places;
    }

    private static int PlaceOf(string size, ImmutableArray<string> names)
    {
        var word = size.Trim();
        var months = word.IndexOf(' ');
        word = months > 0 ? word[..months] : word;
        for (var i = 0; i < names.Length; i++)
        {
            if (string.Equals(names[i], word, StringComparison.OrdinalIgnoreCase) || Array.Exists(SameSize, s => s.Contains(names[i], StringComparer.OrdinalIgnoreCase) && s.Contains(word, StringComparer.OrdinalIgnoreCase)))
            {
                return i;
            }
        }

        return -1;
    }
}
