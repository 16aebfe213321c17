using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Sizing;

/// <summary>Reads lists of numbers where they stand, each value with its place.</summary>
internal static class ListReader
{
    private const int LongestUnit = 12;

    /// <summary>The lists of a stretch of words that have one value for each of some sizes.</summary>
    /// <param name="text">The text.</param>
    /// <param name="tokens">The tokens of the stretch.</param>
    /// <param name="sizesAt">The sizes that a list of so many values at a place has; null where they are not one each.</param>
    /// <param name="kind">What the values are.</param>
    /// <param name="path">The key that they stand under; empty in the body.</param>
    public static IEnumerable<SizeList> InWords(SourceText text, List<Token> tokens, Func<TextSpan, int, ImmutableArray<int>?> sizesAt, SizeListKind kind, string path)
    {
        var folder = NumberFolder.Fold(text, tokens);
        var numbers = folder.Atoms.Where(a => a.Number is { IsList: true }).Select(a => a.Number!).ToArray();
        folder.Release();
        foreach (var number in numbers)
        {
            if (sizesAt(number.Span, number.Values.Length) is { } sizes && Values(text, number, sizes) is { } values)
            {
                // "k2 (3, 4)" has its letters before the first number.
                var start = text.Text[number.Span.Start] is '(' or '[' or '{' ? number.Span.Start : values[0].Span.Start;
                yield return new SizeList(kind, SizeListForm.Trade, TextSpan.FromBounds(start, number.Span.End), values, path, UnitBehind(text.Text, number.Span.End));
            }
        }
    }

    /// <summary>The lists of a header's value, with their units; empty where it does not begin with one.</summary>
    public static IEnumerable<SizeList> InHeader(SourceText text, HeaderScalar scalar, int sizes, string path)
    {
        var at = QuantityBinder.SkipLeadingWords(scalar.Text);
        for (var lists = 0; lists < 8 && at < scalar.Text.Length; lists++)
        {
            if (ValueListReader.Read(scalar.Text, at, sizes) is not { } list)
            {
                yield break;
            }

            if (list.Values.Length == sizes && Place(text, scalar, list, path) is { } found)
            {
                yield return found;
            }
            else if (list.Values.Length != 1)
            {
                yield break;
            }

            at = list.End;
            while (at < scalar.Text.Length && !char.IsAsciiDigit(scalar.Text[at]))
            {
                at++;
            }
        }
    }

    /// <summary>The value of one size in the header: a number with its unit; null where it is something else.</summary>
    public static SizeListValue? One(SourceText text, HeaderScalar scalar, int size)
    {
        if (scalar.IsBlank || scalar.Text.Trim() is "-" or "–" or "—")
        {
            return new SizeListValue(size, scalar.Span, scalar.Span, null, null);
        }

        return ValueListReader.Read(scalar.Text, QuantityBinder.SkipLeadingWords(scalar.Text), 1) is { Values: [var value] } ? Value(text, scalar, value, size) : null;
    }

    private static SizeList? Place(SourceText text, HeaderScalar scalar, ValueList list, string path)
    {
        var values = ImmutableArray.CreateBuilder<SizeListValue>();
        foreach (var value in list.Values)
        {
            if (Value(text, scalar, value, values.Count) is not { } placed)
            {
                return null;
            }

            values.Add(placed);
        }

        var unit = list.Values.LastOrDefault(v => v.UnitPlace is not null)?.UnitPlace is { } place ? scalar.Text.Substring(place.Start, place.Length) : "";
        ImmutableArray<SizeListValue> all = values.Any(v => v.Whole == v.Span) ? [.. values.Select(v => v with { Whole = v.Span })] : values.ToImmutable();

        var end = list.Values.Length > 0 && scalar.Text.AsSpan(list.Values[^1].Start, list.End - list.Values[^1].Start).LastIndexOfAny(')', ']', '}') is >= 0 and var close
            ? scalar.SpanOf(list.Values[^1].Start + close, 1).End
            : all[^1].Whole.End;
        return new SizeList(SizeListKind.Header, SizeListForm.Trade, TextSpan.FromBounds(scalar.SpanOf(list.Start, 1).Start, end), all, path, unit);
    }

    private static SizeListValue? Value(SourceText text, HeaderScalar scalar, ListedValue value, int size)
    {
        var hasOwn = value.UnitPlace is { } place && place.Start >= value.Start && place.Start < value.End;
        var end = hasOwn ? value.UnitPlace!.Value.Start : value.End;
        var length = scalar.Text[value.Start..end].TrimEnd().Length;
        if (length == 0)
        {
            return null;
        }

        var span = scalar.SpanOf(value.Start, length);
        var whole = hasOwn ? scalar.SpanOf(value.Start, value.UnitPlace!.Value.Start + value.UnitPlace!.Value.Length - value.Start) : span;
        return text.Slice(span).SequenceEqual(scalar.Text.AsSpan(value.Start, length)) ? new SizeListValue(size, span, whole, value.Number, value.UpTo) : null;
    }

    /// <summary>The places of a list's values: digits with their fraction or ordinal ending, words for numbers, the dash of a size that has none.</summary>
    private static ImmutableArray<SizeListValue>? Values(SourceText text, SizedNumber number, ImmutableArray<int> sizes)
    {
        var tokens = Lexer.Lex(text, number.Span);
        var places = new List<TextSpan>();
        var expects = true;
        for (var i = 0; i < tokens.Count; i++)
        {
            var (kind, span) = (tokens[i].Kind, tokens[i].Span);
            switch (kind)
            {
                case TokenKind.Number:
                    if (i + 3 < tokens.Count && tokens[i + 1].Kind == TokenKind.Number && tokens[i + 1].SpaceBefore && tokens[i + 2].Kind == TokenKind.Slash && tokens[i + 3].Kind == TokenKind.Number)
                    {
                        span = span.Cover(tokens[i + 3].Span);
                        i += 3;
                    }

                    if (i + 1 < tokens.Count && tokens[i + 1] is { Kind: TokenKind.Word, SpaceBefore: false } && NumberFolder.IsOrdinalEnd(text.Slice(tokens[i + 1].Span)))
                    {
                        i++;
                        span = span.Cover(tokens[i].Span);
                    }

                    places.Add(span);
                    expects = false;
                    break;
                case TokenKind.Word when expects:
                    var word = text.Slice(span);
                    var digits = word.Length - word.TrimEnd("0123456789").Length;
                    places.Add(digits > 0 ? new TextSpan(span.End - digits, digits) : span);
                    expects = false;
                    break;
                case TokenKind.Dash when expects:
                    places.Add(span);
                    expects = false;
                    break;
                default:
                    expects = true;
                    break;
            }
        }

        if (places.Count != number.Values.Length || places.Exists(p => text.Slice(p) is ['0', >= '0' and <= '9', ..]))
        {
            return null; // the month of a date is no value
        }

        return [.. places.Select((p, i) => new SizeListValue(sizes[i], p, p, number.Values[i], null))];
    }

    private static string UnitBehind(string text, int at)
    {
        while (at < text.Length && text[at] is ' ' or '\u00A0' or '-')
        {
            at++;
        }

        var word = ValueListReader.WordAt(text, at);
        var behind = text.AsSpan(Math.Min(text.Length, at + word.Length)).TrimStart(' ');
        var isWord = word == "in" && behind is [var next, ..] && char.IsLetter(next); // "in all"
        return word.Length is > 0 and <= LongestUnit && !isWord && Model.Unit.Find(word) is { } ? word : "";
    }
}
