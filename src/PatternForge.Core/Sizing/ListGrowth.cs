using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Sizing;

/// <summary>Writes one more value into a list, in the form that the list has.</summary>
internal static class ListGrowth
{
    private static readonly SearchValues<char> Brackets = SearchValues.Create("()[]{}");
    private static readonly SearchValues<char> Vulgar = SearchValues.Create("½¼¾⅛⅜⅝⅞");

    private static readonly (string Sign, decimal Value)[] Fractions = [("½", 0.5m), ("¼", 0.25m), ("¾", 0.75m), ("⅛", 0.125m), ("⅜", 0.375m), ("⅝", 0.625m), ("⅞", 0.875m)];

    /// <summary>The edits that put a value into a list before the one at a place, or behind the last.</summary>
    /// <param name="text">The text that the list stands in.</param>
    /// <param name="list">The list.</param>
    /// <param name="at">Its place among the list's values, from 0.</param>
    /// <param name="words">The value as it is written, with the unit that each value has.</param>
    /// <param name="name">The size's name, for maps.</param>
    public static IEnumerable<Edit> Insert(SourceText text, SizeList list, int at, string words, string name)
    {
        switch (list.Form)
        {
            case SizeListForm.Lines:
                return [Line(text, list, at, (start, near) => text.Text[start..near.Whole.Start] + words)];
            case SizeListForm.MapLines:
                return [Line(text, list, at, (start, near) => text.Text[start..near.Key!.Value.Start] + name + text.Text[near.Key.Value.End..near.Whole.Start] + words)];
            case SizeListForm.Map:
                var key = list.Values[0].Key!.Value;
                return InLine(text, [.. list.Values.Select(v => v.Key!.Value.Cover(v.Whole))], at, name + text.Text[key.End..list.Values[0].Whole.Start] + words);
            default:
                return InLine(text, [.. list.Values.Select(v => v.Whole)], at, words);
        }
    }

    /// <summary>A number in the way that a list writes its numbers, with the unit that stands at each of them.</summary>
    public static string Written(SourceText text, SizeList list, NewValue value)
    {
        if (value.Number is not { } number)
        {
            return list.Values.FirstOrDefault(v => v.Number is null) is { } none ? text.ToString(none.Span) : "–";
        }

        var model = list.Values.FirstOrDefault(v => v.UpTo is not null == value.UpTo is not null && v.Number is not null) ?? list.Values.First(v => v.Number is not null);
        var said = string.Concat(list.Values.Select(v => text.ToString(v.Span)));
        var words = Number(number, said, IsOrdinal(text.Slice(model.Span)));
        if (value.UpTo is { } upTo)
        {
            var range = text.ToString(model.Span);
            var sign = range.IndexOfAny(['-', '–', '—', '−']) is > 0 and var dash ? range[dash].ToString() : "–";
            words += sign + Number(upTo, said, isOrdinal: false);
        }

        return words + text.Text[model.Span.End..model.Whole.End];
    }

    /// <summary>A list with one value more, as it then stands.</summary>
    public static string Grown(SourceText text, TextSpan span, IEnumerable<Edit> edits)
    {
        var words = text.ToString(span);
        foreach (var edit in edits.Where(e => span.Start <= e.Span.Start && e.Span.End <= span.End).OrderByDescending(e => e.Span.Start))
        {
            words = words[..(edit.Span.Start - span.Start)] + edit.NewText + words[(edit.Span.End - span.Start)..];
        }

        return words;
    }

    private static IEnumerable<Edit> InLine(SourceText text, ImmutableArray<TextSpan> places, int at, string words)
    {
        var gaps = places.Skip(1).Zip(places, (next, before) => text.Text[before.End..next.Start]).ToArray();
        var hasBracket = gaps.Length > 0 && gaps[0].AsSpan().IndexOfAny('(', '[', '{') >= 0;
        var sign = gaps.FirstOrDefault(g => g.AsSpan().IndexOfAny(Brackets) < 0) ?? ", ";
        if (at == 0)
        {
            yield return new Edit(new TextSpan(places[0].Start, 0), words + (hasBracket ? gaps[0] : sign));
            if (hasBracket)
            {
                yield return new Edit(TextSpan.FromBounds(places[0].End, places[1].Start), sign);
            }
        }
        else if (at == 1 && at < places.Length)
        {
            yield return new Edit(new TextSpan(places[1].Start, 0), words + sign);
        }
        else
        {
            yield return new Edit(new TextSpan(places[at - 1].End, 0), sign + words);
        }
    }

    private static Edit Line(SourceText text, SizeList list, int at, Func<int, SizeListValue, string> written)
    {
        var near = list.Values[Math.Min(at, list.Values.Length - 1)];
        var position = text.Lines.PositionOf(near.Whole.Start).Line;
        var start = text.Lines.StartOf(position);
        var words = written(start, near);
        if (at < list.Values.Length)
        {
            return new Edit(new TextSpan(start, 0), words + NewLine(text));
        }

        var end = text.Text.AsSpan(near.Whole.End).IndexOfAny('\r', '\n') is >= 0 and var rest ? near.Whole.End + rest : text.Text.Length;
        return new Edit(new TextSpan(end, 0), NewLine(text) + words);
    }

    private static string NewLine(SourceText text) => text.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    private static bool IsOrdinal(ReadOnlySpan<char> said) => said.Length > 2 && char.IsAsciiDigit(said[0]) && (said.EndsWith("st") || said.EndsWith("nd") || said.EndsWith("rd") || said.EndsWith("th"));

    private static string Number(decimal value, string said, bool isOrdinal)
    {
        var whole = decimal.Truncate(value);
        if (value != whole && said.AsSpan().IndexOfAny(Vulgar) >= 0 && Array.Find(Fractions, f => f.Value == value - whole) is { Sign: { } sign })
        {
            return whole == 0 ? sign : string.Create(CultureInfo.InvariantCulture, $"{whole:0}{sign}");
        }

        if (value != whole && said.Contains('/', StringComparison.Ordinal) && (value - whole) * 8 is var eighths && eighths == decimal.Truncate(eighths))
        {
            var over = eighths % 4 == 0 ? (1, 2) : eighths % 2 == 0 ? ((int)eighths / 2, 4) : ((int)eighths, 8);
            return string.Create(CultureInfo.InvariantCulture, $"{(whole == 0 ? "" : $"{whole:0} ")}{over.Item1}/{over.Item2}");
        }

        var words = value.ToString("0.###", CultureInfo.InvariantCulture);
        return isOrdinal ? words + Ending((long)whole) : words;
    }

    /// <summary>"3rd", "11th".</summary>
    public static string Ordinal(long n) => n.ToString(CultureInfo.InvariantCulture) + Ending(n);

    private static string Ending(long n) => (n % 100) is >= 11 and <= 13 ? "th" : (n % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" };
}
