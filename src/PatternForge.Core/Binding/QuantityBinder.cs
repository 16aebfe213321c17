using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads measured values: one for all sizes or one a size, each with its unit.</summary>
internal static class QuantityBinder
{
    private static readonly string[] LeadingWords = ["approximately", "approx.", "approx", "about", "circa", "ca.", "ca", "c.", "roughly", "~", "≈", "to fit"];

    /// <summary>
    /// The values of a node: trade form, a list, or a map from size to value. Null where they could not be made out, which is reported.
    /// </summary>
    /// <param name="context">The header.</param>
    /// <param name="node">The node.</param>
    /// <param name="path">The key, for messages.</param>
    /// <param name="wanted">What the values may measure, the likeliest first.</param>
    public static PerSize<Quantity?>? Read(HeaderContext context, HeaderNode node, string path, params ReadOnlySpan<Dimension> wanted)
    {
        switch (node)
        {
            case HeaderScalar scalar:
                return ReadText(context, scalar, path, wanted);
            case HeaderList list:
                return ReadList(context, list, path, wanted);
            case HeaderMap map:
                return ReadMap(context, map, path, wanted);
            default:
                return null;
        }
    }

    /// <summary>The values that a list holds, one for all sizes or one a size; null where their number is wrong, which is reported.</summary>
    public static PerSize<T>? PerSizeOf<T>(HeaderContext context, ImmutableArray<T> values, string path, TextSpan place)
    {
        if (values.Length == 1)
        {
            return PerSize.Shared(values[0]);
        }

        if (!context.SizesKnown)
        {
            return null;
        }

        if (values.Length == context.Sizes.Count)
        {
            return PerSize.Each(values);
        }

        context.GiveUp(path);
        context.Bag.Add(
            HeaderRules.ValueCount,
            place,
            context.Sizes.Count == 1
                ? $"`{path}` has {values.Length} values, but the pattern has one size"
                : $"`{path}` has {values.Length} values, but the pattern has {context.Sizes.Count} sizes: {Names(context.Sizes)}",
            context.Sizes.Count == 1
                ? "name the sizes under `sizes`, for instance `sizes: S (M, L)`"
                : "give one value for each size, or one for all; write – for a size that has none");
        return null;
    }

    /// <summary>"S, M and L".</summary>
    public static string Names(SizeSet sizes) => sizes.Count == 1 ? sizes.Names[0] : $"{string.Join(", ", sizes.Names[..^1])} and {sizes.Names[^1]}";

    /// <summary>Where the values begin in a text: after "about", "to fit" and the like.</summary>
    public static int SkipLeadingWords(string text)
    {
        var at = 0;
        while (true)
        {
            while (at < text.Length && char.IsWhiteSpace(text[at]))
            {
                at++;
            }

            if (Array.Find(LeadingWords, w => text.AsSpan(at).StartsWith(w, StringComparison.OrdinalIgnoreCase)) is not { } word)
            {
                return at;
            }

            at += word.Length;
        }
    }

    private static PerSize<Quantity?>? ReadText(HeaderContext context, HeaderScalar scalar, string path, ReadOnlySpan<Dimension> wanted)
    {
        if (scalar.IsBlank)
        {
            return null;
        }

        if (NumberBook.IsFormula(scalar.Text) && context.Numbers is { } numbers)
        {
            return numbers.Read(scalar, path, wanted);
        }

        var start = SkipLeadingWords(scalar.Text);
        var list = ValueListReader.Read(scalar.Text, start, context.SizesKnown ? context.Sizes.Count : 0);
        if (list is null)
        {
            Unreadable(context, scalar, path, wanted);
            return null;
        }

        var quantities = Quantities(context, scalar, list, path, wanted);
        if (quantities is null)
        {
            return null;
        }

        CheckRest(context, scalar, list, list.End, path);
        return PerSizeOf(context, quantities.Value, path, scalar.SpanOf(list.Start, list.End - list.Start));
    }

    private static void Unreadable(HeaderContext context, HeaderScalar scalar, string path, ReadOnlySpan<Dimension> wanted)
    {
        context.GiveUp(path);
        context.Report(HeaderRules.UnreadableNumber, scalar.Span, $"`{path}` wants {Kind(wanted)}, but says `{HeaderContext.Short(scalar.Text)}`", $"write it as {Example(wanted)}");
    }

    private static ImmutableArray<Quantity?>? Quantities(HeaderContext context, HeaderScalar scalar, ValueList list, string path, ReadOnlySpan<Dimension> wanted)
    {
        var bareAllowed = wanted[0] == Dimension.Count;
        if (!bareAllowed && list.Values.FirstOrDefault(v => v.Number is not null && v.Unit is null) is { } bare)
        {
            context.GiveUp(path);
            var (word, wordStart) = NextWord(scalar.Text, list.End);
            if (word.Length > 0 && word.Length <= 12)
            {
                var near = Suggest.Nearest(word, Unit.All.Select(u => u.Symbol).Concat(Unit.All.SelectMany(u => u.Spellings)).Where(s => s.Length > 1), 1);
                context.Report(HeaderRules.UnknownUnit, scalar.SpanOf(wordStart, word.Length), $"`{word}` is no unit for `{path}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"the units here are {Units(wanted)}");
            }
            else
            {
                context.Report(HeaderRules.UnknownUnit, scalar.SpanOf(bare.Start, bare.End - bare.Start), $"`{path}` has no unit", $"write it as {Example(wanted)}");
            }

            return null;
        }

        foreach (var value in list.Values)
        {
            if (value.Unit is { } unit && value.UnitPlace is { } place && !Suits(unit, wanted))
            {
                context.GiveUp(path);
                context.Report(HeaderRules.UnknownUnit, scalar.SpanOf(place.Start, place.Length), $"`{path}` wants {Kind(wanted)}; `{unit.Symbol}` does not measure that", $"the units here are {Units(wanted)}");
                return null;
            }
        }

        var isFabric = wanted.Contains(Dimension.Length);
        return [.. list.Values.Select(v => v.Number is { } number ? Fit(new Quantity(number, v.Unit ?? Unit.None) { UpTo = v.UpTo }, isFabric) : null)];
    }

    // Metres and yards of fabric are told in the units of fabric.
    private static Quantity Fit(Quantity said, bool isFabric) => said.Unit switch
    {
        var unit when isFabric && unit == Unit.Metre => new Quantity(said.Value * 100, Unit.Centimetre) { UpTo = said.UpTo * 100 },
        var unit when isFabric && unit == Unit.Yard => new Quantity(said.Value * 36, Unit.Inch) { UpTo = said.UpTo * 36 },
        _ => said,
    };

    private static bool Suits(Unit unit, ReadOnlySpan<Dimension> wanted) =>
        wanted.Contains(unit.Dimension) || (unit == Unit.Metre && wanted.Contains(Dimension.Length)) || (unit == Unit.Yard && wanted.Contains(Dimension.Length));

    private static void CheckRest(HeaderContext context, HeaderScalar scalar, ValueList first, int end, string path)
    {
        var rest = end;
        while (rest < scalar.Text.Length && (char.IsWhiteSpace(scalar.Text[rest]) || scalar.Text[rest] is '.' or '/' or '=' or ',' or ';' or '(' or ')' or '[' or ']'))
        {
            rest++;
        }

        if (rest == scalar.Text.Length)
        {
            return;
        }

        // The same values in other units: "38 (40) cm / 15 (15¾) in".
        if (ValueListReader.Read(scalar.Text, SkipLeadingWords(scalar.Text[rest..]) + rest, context.Sizes.Count) is { HasUnit: true } second)
        {
            Compare(context, scalar, first, second, path);
            CheckRest(context, scalar, first, second.End, path);
            return;
        }

        var words = scalar.Text[rest..].TrimEnd();
        context.Report(HeaderRules.WordsAfterValue, scalar.SpanOf(rest, words.Length), $"`{HeaderContext.Short(words)}` after the value of `{path}` is not kept", "say it in the text of the pattern, or as a remark after `#`");
    }

    // Values are rounded in each system by itself: a difference of 4 % or of 0.75 base units (cm, m, g) is rounding (common practice).
    private static void Compare(HeaderContext context, HeaderScalar scalar, ValueList first, ValueList second, string path)
    {
        if (first.Values.Length != second.Values.Length)
        {
            return;
        }

        for (var i = 0; i < first.Values.Length; i++)
        {
            if (first.Values[i] is { Number: { } a, Unit: { } one } && second.Values[i] is { Number: { } b, Unit: { } other } && one.Dimension == other.Dimension && one != other)
            {
                var (said, again) = (new Quantity(a, one), new Quantity(b, other));
                if (Math.Abs(said.InBase - again.InBase) > Math.Max(0.75m, 0.04m * said.InBase))
                {
                    context.Report(HeaderRules.UnitsDisagree, scalar.SpanOf(second.Start, second.End - second.Start), $"`{path}` is {said}, but {again} is {again.To(one).Value:0.#} {one.Symbol}", "correct one of the two, or leave one out: the page gives both");
                    return;
                }
            }
        }
    }

    private static PerSize<Quantity?>? ReadList(HeaderContext context, HeaderList list, string path, ReadOnlySpan<Dimension> wanted)
    {
        var values = ImmutableArray.CreateBuilder<Quantity?>();
        foreach (var item in list.Items)
        {
            if (item is not HeaderScalar scalar)
            {
                context.WrongKind(item, path, "values");
                return null;
            }

            if (scalar.IsBlank || scalar.Text.Trim() is "-" or "–" or "—")
            {
                values.Add(null);
                continue;
            }

            if (ValueListReader.Read(scalar.Text, SkipLeadingWords(scalar.Text), 1) is not { } one)
            {
                Unreadable(context, scalar, path, wanted);
                return null;
            }

            if (Quantities(context, scalar, one, path, wanted) is not { } quantities)
            {
                return null;
            }

            values.AddRange(quantities);
        }

        return values.Count == 0 ? null : PerSizeOf(context, values.ToImmutable(), path, context.FirstLine(list.Span));
    }

    private static PerSize<Quantity?>? ReadMap(HeaderContext context, HeaderMap map, string path, ReadOnlySpan<Dimension> wanted)
    {
        var values = new Quantity?[context.Sizes.Count];
        foreach (var entry in map.Entries)
        {
            var size = context.Sizes.IndexOf(entry.Name.Trim());
            if (size < 0)
            {
                context.GiveUp(path);
                context.Report(
                    HeaderRules.SizeNotListed,
                    entry.Key.Span,
                    $"`{HeaderContext.Short(entry.Name)}` under `{path}` is none of the pattern's sizes",
                    context.Sizes.Count > 1 ? $"the sizes are {Names(context.Sizes)}" : $"write the values as {Example(wanted)}");
                return null;
            }

            if (entry.Value is not HeaderScalar { IsBlank: false } scalar)
            {
                continue;
            }

            if (ValueListReader.Read(scalar.Text, SkipLeadingWords(scalar.Text), 1) is not { } one)
            {
                Unreadable(context, scalar, path, wanted);
                return null;
            }

            if (Quantities(context, scalar, one, path, wanted) is not { } quantities)
            {
                return null;
            }

            values[size] = quantities[0];
        }

        return PerSize.Each<Quantity?>([.. values]);
    }

    private static (string Word, int Start) NextWord(string text, int at)
    {
        while (at < text.Length && (char.IsWhiteSpace(text[at]) || text[at] is ')' or ']'))
        {
            at++;
        }

        return (ValueListReader.WordAt(text, at), at);
    }

    /// <summary>What is wanted, in words for messages.</summary>
    public static string Kind(ReadOnlySpan<Dimension> wanted) => wanted[0] switch
    {
        Dimension.Length => "a length",
        Dimension.YarnLength when wanted.Length > 1 => "a yarn length, a mass or a number of balls",
        Dimension.YarnLength => "a yarn length",
        Dimension.Mass => "a mass",
        _ => "a number",
    };

    private static string Example(ReadOnlySpan<Dimension> wanted) => wanted[0] switch
    {
        Dimension.Length => "`91 (102, 112) cm` or `36 (40, 44) in`",
        Dimension.YarnLength => "`350 (400, 450) m` or `4 (4, 5) balls`",
        Dimension.Mass => "`180 g`",
        _ => "`80 (88, 96)`",
    };

    private static string Units(ReadOnlySpan<Dimension> wanted)
    {
        var dimensions = wanted.ToArray();
        string[] words = [.. Unit.All.Where(u => dimensions.Contains(u.Dimension)).Select(u => u.Symbol), .. dimensions.Contains(Dimension.Count) ? ["balls", "skeins"] : Array.Empty<string>()];
        return HeaderContext.Listed(words);
    }
}
