using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// Draws rows of Tunisian crochet: the forward pass as a mark for each stitch over the one that it is worked into, the return pass as a wave above each of them.
/// No row is turned, so that all are read from right to left, the lowest first.
/// </summary>
internal static class TunisianDrawing
{
    private const double Pitch = 22;
    private const double Margin = 34;
    private const double Return = 13;
    private const double KeyPicture = 34;
    private const double KeyLine = 34;

    // Legs that run over more stitches than this could not be read.
    private const double LongestLean = 2.6 * Pitch;

    /// <summary>A mark where it stands: the distances from the right edge of its feet and its head.</summary>
    private sealed record Placed(DiagramStitch Mark, double[] Feet, double At);

    private sealed record PlacedRow(DiagramRow Row, double Floor, double Height, ImmutableArray<Placed> Marks, bool HasReturn);

    /// <summary>The drawing; null where a row holds what has no mark, or lies so that nobody could read it.</summary>
    /// <param name="diagram">The rows.</param>
    /// <param name="id">Its identifier, not used by another drawing of the pattern.</param>
    /// <param name="title">Its title.</param>
    /// <param name="words">The rows as they are written.</param>
    /// <param name="nameOf">What the pattern calls a stitch.</param>
    /// <param name="inks">The yarns of the pattern.</param>
    public static Drawing? Of(CrochetDiagram diagram, string id, string title, string words, Func<Operation, string> nameOf, YarnInks inks)
    {
        if (diagram.IsRound || Rows(diagram) is not { IsEmpty: false } rows)
        {
            return null;
        }

        var span = rows.SelectMany(r => r.Marks).Max(m => Math.Max(m.At, m.Feet.DefaultIfEmpty(0).Max()));
        span = Math.Max(span, (diagram.StartCount - 1) * Pitch);
        var least = Math.Min(0, rows.SelectMany(r => r.Marks).Min(m => Math.Min(m.At, m.Feet.DefaultIfEmpty(0).Min())));
        var (width, height) = (span - least + (2 * Margin), rows[^1].Floor + rows[^1].Height + (rows[^1].HasReturn ? Return : 0) + 34);
        var right = width - Margin + least;
        var keys = Keys(diagram, rows, nameOf, inks);
        var inPage = new SvgPage(width, height, id, title, words);
        Body(inPage, diagram, rows, right, height - 22);
        var keyWidth = Math.Max(Math.Max(width, 24 + (8 * title.Length)), 24 + KeyPicture + 10 + keys.Max(k => 6.4 * (k.Name.Length + k.Meaning.Length + 4)));
        var alone = new SvgPage(keyWidth, height + 34 + (keys.Length * KeyLine), id, title, words, alone: true);
        alone.Words(12, 20, title, 14, "start", bold: true);
        Body(alone, diagram, rows, right + ((keyWidth - width) / 2), height + 2);
        var y = height + 28;
        foreach (var key in keys)
        {
            alone.Begin(12, y);
            key.Draw(alone);
            alone.End();
            alone.Words(12 + KeyPicture + 10, y + 19, $"{key.Name}: {key.Meaning}", 12, "start");
            y += KeyLine;
        }

        return new Drawing
        {
            Id = id,
            Title = title,
            Description = words,
            Sheets = [inPage.Finish()],
            Alone = alone.Finish() + "\n",
            Width = (int)Math.Ceiling(width),
            Key = [.. keys.Select(k => new KeyEntry(Picture(k), k.Name, k.Meaning))],
            Notes = ["Read every row from right to left, the lowest first: the marks are the forward pass, the waves above them the return pass, worked back from left to right without turning. The first mark of a row is the loop that is on the hook."],
        };
    }

    /// <summary>Each row's marks over the tops of the row below, no two nearer than a stitch; empty where one has no mark or no place.</summary>
    private static ImmutableArray<PlacedRow> Rows(CrochetDiagram diagram)
    {
        var below = Enumerable.Range(0, diagram.StartCount).Select(i => i * Pitch).ToArray();
        var floor = 0.0;
        var rows = ImmutableArray.CreateBuilder<PlacedRow>();
        foreach (var row in diagram.Rows)
        {
            if (!row.IsFront || row.Stitches.Any(s => s.Mark is not (DiagramMark.Stitch or DiagramMark.Chains) || s.Top < 0 || (s.Stitch is { } stitch && !TunisianMarks.Knows(stitch))))
            {
                return [];
            }

            var feet = row.Stitches.Select(s => s.Bases.Where(b => b.Kind == DiagramPlace.Below && b.Top >= 0 && b.Top < below.Length).Select(b => below[b.Top]).ToArray()).ToArray();
            double[] gaps = [.. row.Stitches.Select((s, i) => i == 0 ? 0 : (WidthOf(s) + WidthOf(row.Stitches[i - 1])) / 2)];
            var wanted = new double[feet.Length];
            for (var i = 0; i < feet.Length; i++)
            {
                // What goes into no stitch stands beside the one before; two in one place stand on both sides of it.
                wanted[i] = feet[i].Length > 0 ? feet[i].Average() : i > 0 ? wanted[i - 1] + (gaps[i] / 2) : 0;
            }

            // As many stitches as below stand in straight columns; others as near to their places as can be.
            var at = feet.Length == below.Length && gaps.All(g => g <= Pitch) ? [.. below.Order()] : DiagramMeasures.Spread(wanted, gaps);
            ImmutableArray<Placed> marks = [.. row.Stitches.Select((s, i) => new Placed(s, feet[i], at[i]))];
            if (marks.Any(m => m.Feet.Any(f => Math.Abs(f - m.At) > LongestLean)))
            {
                return [];
            }

            var height = marks.Max(m => m.Mark.Stitch is { } stitch ? TunisianMarks.HeightOf(stitch) : TunisianMarks.Plain);
            var hasReturn = marks.Any(m => m.Mark.Stitch?.Id is not ("sl st" or null));
            rows.Add(new PlacedRow(row, floor, height, marks, hasReturn));
            floor += height + (hasReturn ? Return : 0) + 5;
            below = [.. marks.OrderBy(m => m.Mark.Top).Select(m => m.At)];
        }

        return rows.ToImmutable();
    }

    private static double WidthOf(DiagramStitch stitch) => Math.Max(Pitch, stitch.Chains * (DiagramMeasures.Chain + 1));

    private static void Body(SvgPage page, CrochetDiagram diagram, ImmutableArray<PlacedRow> rows, double right, double bottom)
    {
        page.Begin(right, bottom);
        for (var i = 0; i < diagram.StartCount; i++)
        {
            if (diagram.Start == DiagramStart.Chain)
            {
                CrochetMarks.Chain(page, new Oval(new Spot(-i * Pitch, -8), 0), 7);
            }
            else
            {
                page.Line($"M{SvgPage.Number((-i * Pitch) - 6)} 8h12", 1.1, 0.55);
            }
        }

        foreach (var row in rows)
        {
            var foot = row.Floor;
            page.BeginRow(row.Row.Number);
            foreach (var mark in row.Marks)
            {
                var head = new Spot(-mark.At, foot + row.Height);
                if (mark.Mark.Stitch is { } stitch)
                {
                    TunisianMarks.Draw(page, stitch, [.. mark.Feet.Select(f => new Spot(-f, foot))], head);
                }
                else
                {
                    for (var i = 0; i < mark.Mark.Chains; i++)
                    {
                        CrochetMarks.Chain(page, new Oval(new Spot(head.X + ((i - ((mark.Mark.Chains - 1) / 2.0)) * (DiagramMeasures.Chain + 1)), foot + (row.Height / 2)), 0), 5);
                    }
                }

                if (row.HasReturn)
                {
                    TunisianMarks.Wave(page, new Spot(head.X, head.Y + (Return / 2) + 1), WidthOf(mark.Mark) - 6);
                }
            }

            if (row.Row.Number is { } number)
            {
                var first = row.Marks.Min(m => Math.Min(m.At, m.Feet.DefaultIfEmpty(m.At).Min()));
                page.Words(-first + 14, -(foot + (row.Height / 2)) + 4, number.ToString(CultureInfo.InvariantCulture) + (row.Row.Yarn is { } yarn ? $" {yarn}" : ""), 11, "start", bold: true);
            }

            page.End();
        }

        page.End();
    }

    private sealed record KeyMark(string Name, string Meaning, Action<SvgPage> Draw);

    private static ImmutableArray<KeyMark> Keys(CrochetDiagram diagram, ImmutableArray<PlacedRow> rows, Func<Operation, string> nameOf, YarnInks inks)
    {
        var keys = ImmutableArray.CreateBuilder<KeyMark>();
        if (diagram.Start == DiagramStart.Chain || rows.Any(r => r.Marks.Any(m => m.Mark.Chains > 0)))
        {
            keys.Add(new KeyMark("ch", "chain", page => CrochetMarks.Chain(page, new Oval(new Spot(KeyPicture / 2, -15), 0), 7)));
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var mark in rows.SelectMany(r => r.Marks).Where(m => m.Mark.Stitch is not null))
        {
            var (stitch, feet) = (mark.Mark.Stitch!, mark.Feet.Length);
            if (seen.Add($"{stitch.Id} {feet}"))
            {
                keys.Add(new KeyMark(nameOf(stitch), stitch.Spoken, page =>
                {
                    Spot[] at = [.. Enumerable.Range(0, feet).Select(i => new Spot((KeyPicture / 2) + ((i - ((feet - 1) / 2.0)) * 14), -26))];
                    TunisianMarks.Draw(page, stitch, at, new Spot(KeyPicture / 2, -5));
                }));
            }
        }

        if (rows.Any(r => r.HasReturn))
        {
            keys.Add(new KeyMark("return pass", "work the loops off, back from left to right", page => TunisianMarks.Wave(page, new Spot(KeyPicture / 2, -15), Pitch - 6)));
        }

        foreach (var label in diagram.Rows.Select(r => r.Yarn).OfType<string>().Distinct(StringComparer.Ordinal).OrderBy(inks.Order))
        {
            keys.Add(new KeyMark(label, inks.Name(label), page => page.Words(KeyPicture / 2, 19, label, 11, bold: true)));
        }

        return keys.ToImmutable();
    }

    private static string Picture(KeyMark key)
    {
        var page = new SvgPage(KeyPicture, 30);
        key.Draw(page);
        return page.Finish();
    }
}
