using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// Draws a knitting chart: the bottom row first, row numbers at the side where the row begins, stitch numbers under it, the repeat in a heavy frame, grey squares
/// where there is no stitch.
/// </summary>
public static class ChartDrawing
{
    private const double Margin = 34;
    private const double KeyLine = 30;

    // As many rows as stand on a sheet of A4 or Letter in squares of the usual size, with their key beside them.
    private const int MostRowsOfSheet = 36;

    /// <summary>The drawing of a chart.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="id">Its identifier, not used by another drawing of the pattern.</param>
    /// <param name="terms">Whose names to use.</param>
    /// <param name="sizes">The sizes of the pattern.</param>
    /// <param name="yarns">The yarns of the pattern.</param>
    /// <param name="nameOf">What the pattern calls a stitch; the usual name in its terms when null.</param>
    public static Drawing Of(Chart chart, string id, Dialect terms, SizeSet sizes, ImmutableArray<Yarn> yarns, Func<Operation, string>? nameOf = null)
    {
        var name = nameOf ?? (operation => ChartWords.NameOf(operation, terms));
        var inks = new YarnInks(yarns);
        var words = string.Join(" ", chart.Rows.Select(r => ChartWords.Row(r, chart, terms)));
        var title = $"Chart: {chart.Name}{(sizes.Describe(chart.Sizes) is { Length: > 0 } which ? $", {which}" : "")}";
        var marks = Marks(chart, name).AddRange(Yarns(chart, inks));
        var (width, height) = SizeOf(chart);
        var keyWidth = Math.Max(Math.Max(width, 24 + (8.4 * title.Length)), 24 + marks.Max(m => (m.Span * KnitMarks.Square) + 16 + (6.4 * (m.Name.Length + m.Meaning.Length + 4))));
        var alone = new SvgPage(keyWidth, height + 30 + (marks.Length * KeyLine), id, title, words, alone: true);
        alone.Words(12, 20, title, 14, "start", bold: true);
        alone.Begin((keyWidth - width) / 2, 24);
        Grid(alone, chart, inks);
        alone.End();
        var y = height + 26;
        foreach (var mark in marks)
        {
            alone.Begin(12, y);
            Mark(alone, mark, inks);
            alone.End();
            alone.Words(12 + (mark.Span * KnitMarks.Square) + 10, y + 16, $"{mark.Name}: {mark.Meaning}", 12, "start");
            y += KeyLine;
        }

        return new Drawing
        {
            Id = id,
            Title = title,
            Description = words,
            Sheets = Sheets(chart, id, title, words, terms, inks),
            Bands = [.. Parts(chart).Select(part => Bands(part.Chart, part.From > 0)).Reverse()],
            Alone = alone.Finish() + "\n",
            Width = (int)Math.Ceiling(width),
            Key = [.. marks.Select(m => new KeyEntry(OwnPicture(m, inks), m.Name, m.Meaning))],
            Notes = Notes(chart, sizes),
        };
    }

    /// <summary>The chart in sheets, the top one first; each but the lowest shows the last row of the one below it once more.</summary>
    private static ImmutableArray<string> Sheets(Chart chart, string id, string title, string words, Dialect terms, YarnInks inks)
    {
        if (chart.Rows.Length <= MostRowsOfSheet)
        {
            return [Sheet(chart, id, title, words, inks, again: false)];
        }

        var sheets = ImmutableArray.CreateBuilder<string>();
        foreach (var (part, from) in Parts(chart))
        {
            var own = part.Rows.Skip(from > 0 ? 1 : 0).ToArray();
            var name = string.Create(CultureInfo.InvariantCulture, $"{title}, {(chart.IsRound ? "rounds" : "rows")} {own[0].Number} to {own[^1].Number}");
            sheets.Insert(0, Sheet(part, string.Create(CultureInfo.InvariantCulture, $"{id}-{from}"), name, string.Join(" ", own.Select(r => ChartWords.Row(r, chart, terms))), inks, again: from > 0));
        }

        return sheets.ToImmutable();
    }

    /// <summary>The parts of a chart that are sheets, from the bottom, with the row that each begins with.</summary>
    private static IEnumerable<(Chart Chart, int From)> Parts(Chart chart)
    {
        var rows = chart.Rows;
        var count = (rows.Length + MostRowsOfSheet - 1) / MostRowsOfSheet;
        if (count <= 1)
        {
            return [(chart, 0)];
        }

        // Sheets that end where the rows begin again; else of about the same length, beginning with a right-side row where there are both.
        var each = (rows.Length + count - 1) / count;
        each = RowsOfRepeat(rows) is { } repeat and <= MostRowsOfSheet ? Math.Min((each + repeat - 1) / repeat, MostRowsOfSheet / repeat) * repeat : each + (each % 2);
        return Enumerable.Range(0, (rows.Length + each - 1) / each).Select(n => n * each)
            .Select(from => (chart with { Rows = [.. rows.Skip(Math.Max(0, from - 1)).Take(each + (from > 0 ? 1 : 0))] }, from));
    }

    /// <summary>Where the rows of a sheet stand; not the one that it shows once more.</summary>
    private static string Bands(Chart chart, bool again) => string.Join(' ', chart.Rows.Select((row, i) => (row.Number, i)).Skip(again ? 1 : 0)
        .Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Number}:{SvgPage.Number(10 + ((chart.Rows.Length - 1 - r.i) * KnitMarks.Square))}:{SvgPage.Number(KnitMarks.Square)}")));

    /// <summary>After how many rows a chart begins again; null where it does not.</summary>
    private static int? RowsOfRepeat(ImmutableArray<ChartRow> rows)
    {
        static bool AreSame(ChartRow one, ChartRow other) => one.Side == other.Side && one.RepeatShift == other.RepeatShift && one.Cells.SequenceEqual(other.Cells);
        for (var repeat = 2; repeat <= rows.Length / 2; repeat++)
        {
            if (Enumerable.Range(0, rows.Length - repeat).All(i => AreSame(rows[i], rows[i + repeat])))
            {
                return repeat;
            }
        }

        return null;
    }

    private static string Sheet(Chart chart, string id, string title, string words, YarnInks inks, bool again)
    {
        var (width, height) = SizeOf(chart);
        var page = new SvgPage(width, height, id, title, words);
        Grid(page, chart, inks);
        if (again)
        {
            // The lowest row stands on the sheet below too.
            var y = 10 + ((chart.Rows.Length - 1) * KnitMarks.Square);
            page.Dashes($"M4 {SvgPage.Number(y)}H{SvgPage.Number(width - 4)}");
        }

        return page.Finish();
    }

    /// <summary>One mark of the key.</summary>
    private sealed record KeyMark(Operation? Operation, FabricSide Side, int Span, string Name, string Meaning)
    {
        public string? Colour { get; init; }
    }

    /// <summary>The yarns that a chart is worked with, as marks of its key.</summary>
    private static IEnumerable<KeyMark> Yarns(Chart chart, YarnInks inks) =>
        chart.Rows.SelectMany(r => r.Cells).Select(c => c.Colour).OfType<string>().Distinct(StringComparer.Ordinal).OrderBy(inks.Order)
            .Select(c => new KeyMark(null, FabricSide.Right, 1, c, inks.Name(c)) { Colour = c });

    private static (double Width, double Height) SizeOf(Chart chart) =>
        ((2 * Margin) + (chart.Columns * KnitMarks.Square), 10 + (chart.Rows.Length * KnitMarks.Square) + 24 + (chart.Repeat is null ? 0 : 22));

    private static void Grid(SvgPage page, Chart chart, YarnInks inks)
    {
        var (square, rows) = (KnitMarks.Square, chart.Rows.Length);
        double Right(int column) => Margin + ((chart.Columns - column) * square);
        var (left, top, right, bottom) = (Margin, 10.0, Margin + (chart.Columns * square), 10 + (rows * square));

        // Whatever there is very much of is one path: a large chart has thousands of squares.
        var (free, lines, dots) = (new StringBuilder(), new StringBuilder(), new StringBuilder());
        for (var r = 0; r < rows; r++)
        {
            var (row, y) = (chart.Rows[r], bottom - ((r + 1) * square));
            foreach (var cell in row.Cells)
            {
                var x = Right(cell.Column + cell.Span);
                if (cell.Operation is null)
                {
                    free.Append(Frame(x, y, 1));
                    continue;
                }

                if (cell.Colour is { } colour)
                {
                    page.Begin(x, y);
                    inks.Draw(page, colour, cell.Span, withLetters: StitchLook.Of(cell.Operation, row.Side) == "knit");
                    page.End();
                }

                lines.Append(Frame(x, y, cell.Span));
                switch (StitchLook.Of(cell.Operation, row.Side))
                {
                    case "knit":
                        break;
                    case "purl":
                        dots.Append(KnitMarks.Dot(x + (square / 2), y + (square / 2), 3));
                        break;
                    default:
                        page.Begin(x, y);
                        KnitMarks.Draw(page, cell.Operation, row.Side, cell.Span);
                        page.End();
                        break;
                }
            }

            var number = row.Number.ToString(CultureInfo.InvariantCulture);
            if (row.Side == FabricSide.Right)
            {
                page.Words(right + 7, y + 16.5, number, 12, "start");
            }
            else
            {
                page.Words(left - 7, y + 16.5, number, 12, "end");
            }
        }

        if (free.Length > 0)
        {
            page.Ink(free.ToString(), 0.28);
        }

        page.Line(lines.ToString(), 0.7, 0.55);
        if (dots.Length > 0)
        {
            page.Ink(dots.ToString());
        }

        page.Box(left, top, right - left, bottom - top, "none", 1.3);
        for (var column = 1; column <= chart.Columns; column++)
        {
            if (chart.Columns <= 20 || column % 5 == 0 || column == 1 || (column == chart.Columns && column % 5 > 1))
            {
                page.Words(Right(column) + (square / 2), bottom + 14, column.ToString(CultureInfo.InvariantCulture), 9.5);
            }
        }

        if (chart.Repeat is { } repeat)
        {
            var first = repeat.From + chart.Rows[0].RepeatShift;
            var (from, to) = (Right(first + repeat.Columns), Right(first));
            if (IsStepped(chart))
            {
                page.Line(SteppedFrame(chart, repeat, Right, bottom), 2.8);
            }
            else
            {
                page.Box(from, top, to - from, bottom - top, "none", 2.8);
            }

            var under = bottom + 22;
            page.Line($"M{SvgPage.Number(from + 1)} {SvgPage.Number(under - 3)}V{SvgPage.Number(under)}H{SvgPage.Number(to - 1)}V{SvgPage.Number(under - 3)}", 1.1);
            page.Words((from + to) / 2, under + 13, "repeat", 11);
        }
    }

    /// <summary>True where the repeat begins further to one side in some rows than in others.</summary>
    private static bool IsStepped(Chart chart) => chart.Repeat is not null && chart.Rows.Any(r => r.RepeatShift != chart.Rows[0].RepeatShift);

    /// <summary>The frame of a repeat that steps aside where a stitch would reach over its edge: up along its right side and down along its left one.</summary>
    private static string SteppedFrame(Chart chart, ChartRepeat repeat, Func<int, double> right, double bottom)
    {
        var path = new StringBuilder();
        for (var r = 0; r < chart.Rows.Length; r++)
        {
            path.Append(r == 0 ? "M" : "H").Append(SvgPage.Number(right(repeat.From + chart.Rows[r].RepeatShift)));
            path.Append(r == 0 ? $" {SvgPage.Number(bottom)}" : "").Append('V').Append(SvgPage.Number(bottom - ((r + 1) * KnitMarks.Square)));
        }

        for (var r = chart.Rows.Length - 1; r >= 0; r--)
        {
            path.Append('H').Append(SvgPage.Number(right(repeat.From + chart.Rows[r].RepeatShift + repeat.Columns))).Append('V').Append(SvgPage.Number(bottom - (r * KnitMarks.Square)));
        }

        return path.Append('Z').ToString();
    }

    /// <summary>The outline of a stitch over so many squares.</summary>
    private static string Frame(double x, double y, int span) =>
        $"M{SvgPage.Number(x)} {SvgPage.Number(y)}h{SvgPage.Number(KnitMarks.Square * span)}v{SvgPage.Number(KnitMarks.Square)}h{SvgPage.Number(-KnitMarks.Square * span)}Z";

    /// <summary>The marks that are used, each once, in the order in which a maker meets them.</summary>
    private static ImmutableArray<KeyMark> Marks(Chart chart, Func<Operation, string> name)
    {
        var groups = new List<(string Key, int Span, List<(Operation Operation, FabricSide Side)> Uses)>();
        foreach (var row in chart.Rows)
        {
            foreach (var cell in row.Cells.Where(c => c.Operation is not null))
            {
                var operation = cell.Operation!;
                var mark = operation.Family == Family.Cable ? $"{operation.Id} {row.Side}" : StitchLook.Of(operation, row.Side);
                var key = mark.Length == 0 ? operation.Id : mark;
                var at = groups.FindIndex(g => g.Key == key && g.Span == cell.Span);
                if (at < 0)
                {
                    groups.Add((key, cell.Span, [(operation, row.Side)]));
                }
                else if (!groups[at].Uses.Exists(u => u.Operation.Id == operation.Id && u.Side == row.Side))
                {
                    groups[at].Uses.Add((operation, row.Side));
                }
            }
        }

        var marks = groups.Select(g => Entry(g.Span, g.Uses, name)).ToImmutableArray();
        return chart.Rows.Any(r => r.Cells.Any(c => c.Operation is null))
            ? marks.Add(new KeyMark(null, FabricSide.Right, 1, "no stitch", "nothing is worked here; go on to the next square"))
            : marks;
    }

    private static KeyMark Entry(int span, List<(Operation Operation, FabricSide Side)> uses, Func<Operation, string> name)
    {
        var (first, side) = uses[0];
        string Names(FabricSide on) => string.Join(" or ", uses.Where(u => u.Side == on).Select(u => name(u.Operation)));
        string Meanings(FabricSide on) => string.Join(" or ", uses.Where(u => u.Side == on).Select(u => u.Operation.Spoken));
        var (rs, ws) = (Names(FabricSide.Right), Names(FabricSide.Wrong));
        return rs.Length > 0 && ws.Length > 0
            ? rs == ws ? new KeyMark(first, side, span, rs, $"{Meanings(FabricSide.Right)} on both sides")
                : new KeyMark(first, side, span, $"{rs} on RS, {ws} on WS", $"{Meanings(FabricSide.Right)} on right-side rows, {Meanings(FabricSide.Wrong)} on wrong-side rows")
            : rs.Length > 0 ? new KeyMark(first, side, span, rs, Meanings(FabricSide.Right))
            : new KeyMark(first, side, span, $"{ws} on WS", $"{Meanings(FabricSide.Wrong)} on wrong-side rows");
    }

    private static string OwnPicture(KeyMark mark, YarnInks inks)
    {
        var page = new SvgPage((mark.Span * KnitMarks.Square) + 2, KnitMarks.Square + 2);
        page.Begin(1, 1);
        Mark(page, mark, inks);
        page.End();
        return page.Finish();
    }

    private static void Mark(SvgPage page, KeyMark mark, YarnInks inks)
    {
        var width = SvgPage.Number(mark.Span * KnitMarks.Square);
        if (mark.Colour is { } colour)
        {
            inks.Draw(page, colour, 1, withLetters: true);
            page.Box(0, 0, KnitMarks.Square, KnitMarks.Square, "none", 0.8);
            return;
        }

        if (mark.Operation is null)
        {
            page.Ink($"M0 0H{width}V24H0Z", 0.28);
            return;
        }

        KnitMarks.Draw(page, mark.Operation, mark.Side, mark.Span);
        page.Box(0, 0, mark.Span * KnitMarks.Square, KnitMarks.Square, "none", 0.8);
    }

    private static ImmutableArray<string> Notes(Chart chart, SizeSet sizes)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        notes.Add(chart.IsRound
            ? "Read every round from right to left, the lowest first."
            : chart.Rows.All(r => r.Side == chart.Rows[0].Side)
                ? $"Read every row from {(chart.Rows[0].Side == FabricSide.Right ? "right to left" : "left to right")}."
                : "Read right-side rows from right to left and wrong-side rows from left to right, the lowest first. The chart shows the right side.");
        if (chart.Repeat is { } repeat)
        {
            var times = repeat.Times is { } each ? [.. Enumerable.Range(0, sizes.Count).Select(s => each[s])] : Array.Empty<int?>();
            notes.Add(times.Any(t => t is not null)
                ? $"Work the stitches in the heavy frame {(times.Distinct().Count() == 1 ? times[0]!.Value.ToString(CultureInfo.InvariantCulture) : InSizes(times))} times."
                : "Work the stitches in the heavy frame again and again, as often as they fit.");
            if (IsStepped(chart))
            {
                notes.Add("The frame steps aside where a stitch reaches from one repeat into the next: in each row the stitches that stand in it are the ones to repeat.");
            }
        }

        return notes.ToImmutable();
    }

    private static string InSizes(int?[] times)
    {
        string One(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "–";
        return times.Length == 1 ? One(times[0]) : $"{One(times[0])} ({string.Join(", ", times.Skip(1).Select(One))})";
    }
}
