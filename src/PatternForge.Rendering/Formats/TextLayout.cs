using System.Globalization;
using System.Text;

namespace PatternForge.Rendering.Formats;

/// <summary>
/// Sets plain text. A template tells what belongs together by tabs, which nothing that a designer writes can hold: one tab parts a label from words that hang under each other, two or
/// more are a table. A line of one <c>=</c> or <c>-</c> underlines the line before it, and a line that begins with a vertical tab stands as it is.
/// </summary>
internal static class TextLayout
{
    /// <summary>What begins a line that stands as it is.</summary>
    public const char AsItIs = '\v';

    /// <summary>How wide a line may be: mail and small screens show it whole.</summary>
    public const int Width = 72;

    private const int WidestLabel = 16;
    private const int Gap = 2;

    /// <summary>Sets a text.</summary>
    public static string Of(string text)
    {
        var lines = text.Split('\n');
        var set = new StringBuilder(text.Length + (text.Length / 8));
        var last = "";
        for (var i = 0; i < lines.Length;)
        {
            var tabs = TabsIn(lines[i]);
            var end = i + 1;
            while (tabs > 0 && end < lines.Length && (tabs > 1 ? TabsIn(lines[end]) > 1 : TabsIn(lines[end]) == 1))
            {
                end++;
            }

            var group = lines[i..end];
            if (tabs > 1)
            {
                Table(group, set);
            }
            else if (tabs == 1)
            {
                Hanging(group, set);
            }
            else if (lines[i].StartsWith(AsItIs))
            {
                set.Append(lines[i].AsSpan(1)).Append('\n');
            }
            else if (lines[i] is "=" or "-" && last.Length > 0)
            {
                set.Append(lines[i][0], Math.Min(WidthOf(last), Width)).Append('\n');
            }
            else
            {
                var margin = lines[i].Length - lines[i].TrimStart(' ').Length;
                Wrap(new string(' ', margin), lines[i].Trim(' '), margin, set);
            }

            last = group[^1];
            i = end;
        }

        return set.ToString().TrimEnd('\n') + "\n";
    }

    private static int TabsIn(string line) => line.StartsWith(AsItIs) ? 0 : line.AsSpan().Count('\t');

    private static int WidthOf(string text) => new StringInfo(text).LengthInTextElements;

    private static void Hanging(string[] group, StringBuilder set)
    {
        var parts = group.Select(l => l.Split('\t', 2)).ToArray();
        var indent = parts.Where(p => p[0].Trim() != "-").Select(p => WidthOf(p[0].TrimEnd())).Where(w => w <= WidestLabel).DefaultIfEmpty(Gap).Max() is var widest && widest <= 1 ? widest + 1 : widest + Gap;
        foreach (var part in parts)
        {
            var label = part[0].TrimEnd();
            if (label.TrimStart() == "-")
            {
                Wrap(label + " ", part[1].Trim(' '), label.Length + 1, set);
                continue;
            }

            var room = indent - WidthOf(label);
            Wrap(label.Length == 0 ? new string(' ', indent) : label + new string(' ', Math.Max(room, 1)), part[1].Trim(' '), indent, set);
        }
    }

    /// <summary>Words after what stands at the beginning of their first line, the other lines set in.</summary>
    private static void Wrap(string begin, string words, int indent, StringBuilder set)
    {
        var at = WidthOf(begin);
        set.Append(begin);
        var isFirst = true;
        foreach (var word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var width = WidthOf(word);
            if (!isFirst && at + 1 + width > Width)
            {
                set.Append('\n').Append(' ', indent);
                at = indent;
                isFirst = true;
            }

            set.Append(isFirst ? "" : " ").Append(word);
            at += width + (isFirst ? 0 : 1);
            isFirst = false;
        }

        while (set.Length > 0 && set[^1] == ' ')
        {
            set.Length--;
        }

        set.Append('\n');
    }

    /// <summary>A table in columns; where it is wider than a line, row by row with the heads before the values.</summary>
    private static void Table(string[] group, StringBuilder set)
    {
        var rows = group.Select(l => l.Split('\t').Select(c => c.Trim()).ToArray()).ToArray();
        var count = rows.Max(r => Array.FindLastIndex(r, c => c.Length > 0) + 1);
        var cells = rows.Select(r => Enumerable.Range(0, count).Select(i => i < r.Length ? r[i] : "").ToArray()).ToArray();
        var widths = Enumerable.Range(0, count).Select(i => cells.Max(r => WidthOf(r[i]))).ToArray();
        if (widths.Sum() + (Gap * (count - 1)) > Width)
        {
            BySize(cells, set);
            return;
        }

        var isNumber = Enumerable.Range(0, count).Select(i => i > 0 && cells.Skip(1).All(r => r[i].Length == 0 || !char.IsLetter(r[i][0]))).ToArray();
        for (var i = 0; i < cells.Length; i++)
        {
            set.Append(string.Join(new string(' ', Gap), cells[i].Select((cell, c) => Padded(cell, widths[c], isNumber[c]))).TrimEnd()).Append('\n');
            if (i == 0)
            {
                set.Append(string.Join(new string(' ', Gap), widths.Select(w => new string('-', w)))).Append('\n');
            }
        }
    }

    private static string Padded(string cell, int width, bool isNumber)
    {
        var room = new string(' ', width - WidthOf(cell));
        return isNumber ? room + cell : cell + room;
    }

    private static void BySize(string[][] cells, StringBuilder set)
    {
        foreach (var row in cells.Skip(1))
        {
            set.Append(CultureInfo.InvariantCulture, $"{cells[0][0]} {row[0]}\n");
            Hanging([.. row.Skip(1).Select((cell, i) => $"  {cells[0][i + 1]}:\t{cell}")], set);
            set.Append('\n');
        }
    }
}
