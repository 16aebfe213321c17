using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads a yarn that stands in one line: <c>Quayside Wool, DK, 100% wool, 100 g = 220 m, 3 (4, 4) balls</c>.</summary>
internal static class YarnLine
{
    /// <summary>Reads the line's parts by what they look like; what looks like none of them stays with the name.</summary>
    public static Yarn Read(HeaderContext context, HeaderNode item, string text)
    {
        var yarn = new Yarn(context.FirstLine(item.Span));
        var name = new List<string>();
        foreach (var (start, part) in Parts(text))
        {
            TextSpan Place(int from, int length) => item is HeaderScalar scalar && scalar.Text.IndexOf(part, StringComparison.Ordinal) is >= 0 and var at
                ? scalar.SpanOf(at + from, length)
                : yarn.Origin;
            yarn = name.Count == 0 && start == 0 && !char.IsAsciiDigit(part[0]) ? Name(yarn, name, part) : Part(context, yarn, name, part, Place);
        }

        return yarn with { Name = name.Count == 0 ? null : string.Join(", ", name) };
    }

    private static Yarn Name(Yarn yarn, List<string> name, string part)
    {
        name.Add(part);
        return yarn;
    }

    private static Yarn Part(HeaderContext context, Yarn yarn, List<string> name, string part, Func<int, int, TextSpan> placeOf)
    {
        var (mass, length) = PutUp.In(part);
        if (mass is not null && length is not null && yarn.PutUpMass is null)
        {
            return yarn with { PutUpMass = mass, PutUpLength = length };
        }

        if (yarn.Needs is null && SampleBinder.AsksForEstimate(part))
        {
            return yarn with { NeedsAreEstimated = true, NeedsOrigin = placeOf(0, part.Length) };
        }

        if (yarn.Needs is null && ValueListReader.Read(part, QuantityBinder.SkipLeadingWords(part), context.Sizes.Count) is { HasUnit: true } list
            && list.Values.All(v => v.Unit is not { Dimension: Dimension.Length }))
        {
            var place = placeOf(list.Start, list.End - list.Start);
            if (part[list.End..].Trim() is { Length: > 0 } words)
            {
                context.Report(HeaderRules.WordsAfterValue, placeOf(part.Length - words.Length, words.Length), $"`{HeaderContext.Short(words)}` after the amount of yarn is not kept", "part it with a comma, or say it in the text of the pattern");
            }

            var values = list.Values.Select(v => v.Number is { } n ? new Quantity(n, v.Unit ?? Unit.None) { UpTo = v.UpTo } : null);
            return QuantityBinder.PerSizeOf<Quantity?>(context, [.. values], "yarn.needs", place) is { } needs ? yarn with { Needs = needs, NeedsOrigin = place } : yarn;
        }

        if (yarn.Weight is null && YarnWeight.IsNothingElse(part))
        {
            return yarn with { Weight = part, WeightClass = YarnWeight.Find(part)?.Class };
        }

        if (part.Contains('%', StringComparison.Ordinal))
        {
            return yarn with { Fibre = yarn.Fibre is null ? part : $"{yarn.Fibre}, {part}" };
        }

        name.Add(part);
        return yarn;
    }

    private static IEnumerable<(int Start, string Part)> Parts(string text)
    {
        var (start, depth) = (0, 0);
        for (var i = 0; i <= text.Length; i++)
        {
            var c = i < text.Length ? text[i] : ',';
            depth += c switch { '(' or '[' => 1, ')' or ']' when depth > 0 => -1, _ => 0 };
            if (i == text.Length || (depth == 0 && c is ',' or ';'))
            {
                var part = text[start..i].Trim();
                if (part.Length > 0)
                {
                    yield return (start, part);
                }

                start = i + 1;
            }
        }
    }
}
