using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>A line of squares as it is written: its number and on which side it stands, its squares from left to right, and where the repeat stands.</summary>
/// <param name="Span">The line.</param>
/// <param name="Number">The row's number; null where it has none.</param>
/// <param name="IsLeft">True when the number stands on the left: a wrong-side row.</param>
/// <param name="Squares">The places of its squares.</param>
/// <param name="RepeatFrom">How many squares stand before the bracket that opens the repeat; null for none.</param>
/// <param name="RepeatTo">How many stand before the bracket that closes it; null for none.</param>
public sealed record ChartLine(TextSpan Span, int? Number, bool IsLeft, ImmutableArray<TextSpan> Squares, int? RepeatFrom, int? RepeatTo);

/// <summary>A chart as it is written in a block: rows of short names between blanks, the top row first, and a key for names that are not abbreviations.</summary>
/// <param name="Lines">Its rows, the top one first.</param>
/// <param name="Key">Short names and what they stand for, with the place of the latter.</param>
public sealed record ChartGrid(ImmutableArray<ChartLine> Lines, ImmutableArray<(string Name, TextSpan Meaning)> Key)
{
    /// <summary>The most squares of a row and the most rows.</summary>
    public const int Most = 400;

    private const string KeyWord = "key:";

    /// <summary>The square where there is no stitch.</summary>
    public const string NoStitch = "_";

    /// <summary>Reads a block; null where it holds no squares: words that ask for a chart, or a chart set in letters by hand.</summary>
    /// <param name="source">The file.</param>
    /// <param name="content">What stands between the fences.</param>
    public static ChartGrid? Read(SourceText source, TextSpan content)
    {
        var lines = ImmutableArray.CreateBuilder<ChartLine>();
        var key = ImmutableArray.CreateBuilder<(string, TextSpan)>();
        var hasKey = false;
        var at = content.Start;
        while (at < content.End)
        {
            var rest = source.Slice(TextSpan.FromBounds(at, content.End));
            var length = rest.IndexOf('\n') is >= 0 and var end ? end : rest.Length;
            var line = new TextSpan(at, length);
            at += length + 1;
            var words = source.Slice(line).Trim();
            if (words.StartsWith(KeyWord, StringComparison.OrdinalIgnoreCase))
            {
                hasKey = true;
                ReadKey(source, line, key);
            }
            else if (!words.IsEmpty && ReadLine(source, line) is { } row)
            {
                lines.Add(row);
            }
            else if (!words.IsEmpty)
            {
                return null;
            }
        }

        // Without a number or a key it may be anything that somebody drew.
        return lines.Count is > 0 and <= Most && (hasKey || lines.All(l => l.Number is not null)) ? new ChartGrid(lines.ToImmutable(), key.ToImmutable()) : null;
    }

    private static void ReadKey(SourceText source, TextSpan line, ImmutableArray<(string, TextSpan)>.Builder key)
    {
        var start = line.Start + source.Slice(line).IndexOf(KeyWord, StringComparison.OrdinalIgnoreCase) + KeyWord.Length;
        while (start < line.End && key.Count < Most)
        {
            var rest = source.Slice(TextSpan.FromBounds(start, line.End));
            var length = rest.IndexOf(", ", StringComparison.Ordinal) is >= 0 and var comma ? comma : rest.Length;
            var entry = rest[..length];
            var equals = entry.IndexOf(" = ", StringComparison.Ordinal);
            if (equals > 0)
            {
                var meaning = entry[(equals + 3)..];
                var trimmed = meaning.Trim();
                var from = start + equals + 3 + (meaning.Length - meaning.TrimStart().Length);
                key.Add((entry[..equals].Trim().ToString(), new TextSpan(from, trimmed.Length)));
            }

            start += length + 2;
        }
    }

    private static ChartLine? ReadLine(SourceText source, TextSpan line)
    {
        var words = new List<TextSpan>();
        for (var at = line.Start; at < line.End;)
        {
            var rest = source.Slice(TextSpan.FromBounds(at, line.End));
            var blank = rest.Length - rest.TrimStart().Length;
            rest = rest[blank..];
            if (rest.IsEmpty)
            {
                break;
            }

            var length = rest.IndexOfAny(' ', '\t', '\r') is >= 0 and var end ? end : rest.Length;
            words.Add(new TextSpan(at + blank, length));
            at += blank + length;
        }

        string Word(int i) => source.ToString(words[i]);
        int? NumberAt(int i) => int.TryParse(Word(i), NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n is > 0 and < 10_000 ? n : null;
        var left = words.Count > 1 ? NumberAt(0) : null;
        var right = words.Count > 1 ? NumberAt(words.Count - 1) : null;
        var squares = ImmutableArray.CreateBuilder<TextSpan>();
        int? from = null, to = null;
        for (var i = left is null ? 0 : 1; i < words.Count - (right is null ? 0 : 1); i++)
        {
            switch (Word(i))
            {
                case "|":
                    break;
                case "[":
                    from ??= squares.Count;
                    break;
                case "]":
                    to ??= squares.Count;
                    break;
                default:
                    squares.Add(words[i]);
                    break;
            }
        }

        return squares.Count is 0 or > Most || (from is null) != (to is null) || to < from ? null : new ChartLine(line, left ?? right, left is not null, squares.ToImmutable(), from, to);
    }
}
