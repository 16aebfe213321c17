using System.Globalization;
using System.Text;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Cli.Reporting;

/// <summary>
/// Shows the source lines that a finding speaks of, with its place underlined (━) and other places named (─).
/// Marks stand under their characters also after tabs and wide characters; a long line is cut around its mark.
/// </summary>
internal static class SourceFrame
{
    private const int TabStop = 4;
    private const int MostLabels = 6;

    /// <summary>Appends the frame's lines, without the line that names the place.</summary>
    /// <param name="page">Where to write.</param>
    /// <param name="finding">The finding to show.</param>
    /// <param name="gutter">The width of line numbers.</param>
    /// <param name="columns">The columns that a source line may take.</param>
    /// <param name="paint">The colours.</param>
    public static void Append(StringBuilder page, Finding finding, int gutter, int columns, Paint paint)
    {
        var source = finding.Source;
        var last = 0;
        foreach (var group in MarksOf(finding).GroupBy(m => m.Line).OrderBy(g => g.Key))
        {
            if (last != 0 && group.Key > last + 1)
            {
                page.Append(' ', gutter).Append(' ').AppendLine(paint.Faint("⋮"));
            }

            last = group.Key;
            AppendLine(page, source, group.Key, [.. group.OrderBy(m => m.IsMain ? 0 : 1).ThenBy(m => m.Span.Start)], gutter, columns, finding.Severity, paint);
        }
    }

    /// <summary>The digits that the numbers of a finding's lines take.</summary>
    public static int GutterOf(Finding finding) =>
        MarksOf(finding).Max(m => m.Line).ToString(CultureInfo.InvariantCulture).Length;

    private static List<Mark> MarksOf(Finding finding)
    {
        var lines = finding.Source.Lines;
        var first = lines.PositionOf(finding.Span.Start).Line;
        var end = lines.PositionOf(LastPlace(finding.Span)).Line;
        var marks = new List<Mark> { new(first, finding.Span, end > first ? $"and on to line {end}" : "", IsMain: true) };
        foreach (var label in finding.Labels.Take(MostLabels))
        {
            marks.Add(new(lines.PositionOf(label.Span.Start).Line, label.Span, DisplayText.OneLine(label.Text), IsMain: false));
        }

        return marks;
    }

    private static int LastPlace(TextSpan span) => span.IsEmpty ? span.Start : span.End - 1;

    private static void AppendLine(
        StringBuilder page, SourceText source, int number, IReadOnlyList<Mark> marks, int gutter, int columns, Severity severity, Paint paint)
    {
        var line = source.Lines.SpanOf(number, source.Text);
        var view = Window.Around(source.Text, line, marks[0].Span, columns);
        page.Append(paint.Faint($"{number.ToString(CultureInfo.InvariantCulture).PadLeft(gutter)} │")).Append(' ').AppendLine(view.Shown);
        foreach (var mark in marks)
        {
            page.Append(' ', gutter).Append(paint.Faint(" │"));
            if (view.ColumnsOf(mark.Span) is not var (from, to))
            {
                // The place lies in the part that was cut away.
                var column = source.Lines.PositionOf(mark.Span.Start).Column;
                page.Append(' ').AppendLine(paint.Faint($"column {column}: {mark.Words}"));
                continue;
            }

            var stroke = new string(mark.IsMain ? '━' : '─', to - from);
            page.Append(' ', 1 + from).Append(mark.IsMain ? paint.Weight(severity, stroke) : stroke);
            page.AppendLine(mark.Words.Length == 0 ? "" : " " + mark.Words);
        }
    }

    /// <summary>A place on a line and the words that belong to it.</summary>
    private sealed record Mark(int Line, TextSpan Span, string Words, bool IsMain);

    /// <summary>The part of a line that is shown, and the column of every unit in it.</summary>
    private sealed class Window
    {
        private readonly int _start;
        private readonly int _end;
        private readonly int _lineEnd;
        private readonly int[] _columns;

        private Window(string text, int start, int end, TextSpan line)
        {
            (_start, _end, _lineEnd) = (start, end, line.End);
            _columns = new int[end - start + 1];
            var shown = new StringBuilder(end - start + 8);
            var column = 0;
            if (start > line.Start)
            {
                shown.Append('…');
                column = 1;
            }

            var at = start;
            foreach (var rune in text.AsSpan(start, end - start).EnumerateRunes())
            {
                // A unit that is half of nothing counts as one unit and shows as a replacement sign.
                var units = Math.Min(rune.Utf16SequenceLength, end - at);
                for (var i = 0; i < units; i++)
                {
                    _columns[at - start + i] = column;
                }

                if (rune.Value == '\t')
                {
                    var blanks = TabStop - (column % TabStop);
                    shown.Append(' ', blanks);
                    column += blanks;
                }
                else
                {
                    var seen = DisplayText.Shown(rune);
                    shown.Append(seen);
                    column += DisplayText.Width(seen);
                }

                at += units;
            }

            _columns[^1] = column;
            Shown = end < line.End ? shown.Append('…').ToString() : shown.ToString();
        }

        public string Shown { get; }

        /// <summary>The line, or as much of it around the mark as the columns hold.</summary>
        public static Window Around(string text, TextSpan line, TextSpan mark, int columns)
        {
            if (line.Length <= columns * 4)
            {
                var whole = new Window(text, line.Start, line.End, line);
                if (whole._columns[^1] <= columns)
                {
                    return whole;
                }
            }

            var focus = Math.Clamp(mark.Start, line.Start, line.End);
            var start = Walk(text, focus, line.Start, columns / 3, -1);
            var end = Walk(text, start, line.End, columns - 2, +1);
            if (end == line.End)
            {
                start = Walk(text, end, line.Start, columns - 2, -1);
            }

            return new Window(text, start, end, line);
        }

        /// <summary>First column and the column after the last of a span in the window, at least one column; null when it lies outside.</summary>
        public (int From, int To)? ColumnsOf(TextSpan span)
        {
            var from = Math.Min(span.Start, _lineEnd);
            if (from < _start || from > _end || (from == _end && _end < _lineEnd))
            {
                return null;
            }

            var first = _columns[from - _start];
            var to = Math.Clamp(span.End, from, _end);
            return (first, Math.Max(first + 1, _columns[to - _start]));
        }

        // Goes from a place towards a limit while there are columns left, never between the halves of a pair.
        private static int Walk(string text, int at, int limit, int columns, int step)
        {
            var units = columns * 4;
            while (at != limit && units > 0)
            {
                var next = at + step;
                var low = Math.Min(at, next);
                var pair = step > 0
                    ? next != limit && char.IsHighSurrogate(text[low]) && char.IsLowSurrogate(text[low + 1])
                    : next != limit && char.IsLowSurrogate(text[low]) && char.IsHighSurrogate(text[low - 1]);
                var first = pair && step < 0 ? low - 1 : low;
                var width = text[first] == '\t' ? TabStop
                    : Rune.TryGetRuneAt(text, first, out var rune) ? DisplayText.Width(DisplayText.Shown(rune)) : 1;
                if (width > columns)
                {
                    break;
                }

                columns -= width;
                units -= pair ? 2 : 1;
                at = pair ? next + step : next;
            }

            return at;
        }
    }
}
