using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>Draws the outline of a piece to scale, its measurements as lettered lines with a key that tells every size.</summary>
public static class SchematicDrawing
{
    /// <summary>The drawing of a piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="id">Its identifier, not used by another drawing of the pattern.</param>
    /// <param name="sizes">The sizes of the pattern.</param>
    /// <param name="only">The one size that is drawn; null for all in one drawing.</param>
    /// <param name="drawn">The size whose outline is drawn where all are told.</param>
    /// <param name="words">Words a measurement in every size, in centimetres: "46 (51, 56) cm", with inches behind it.</param>
    /// <param name="over">Words what the gauge is measured over; as it was typed when null.</param>
    public static Drawing Of(PieceOutline piece, string id, SizeSet sizes, int? only, int drawn, Func<ImmutableArray<decimal>, string> words, Func<Quantity, string>? over = null)
    {
        var size = only ?? drawn;
        var layout = SchematicLayout.Of(piece, size);
        var title = $"Schematic: {piece.Name}{(only is { } one && sizes.Count > 1 ? $", size {sizes.Names[one]}" : "")}";
        var entries = piece.Measures.Select((m, i) => (Letter: SchematicLayout.LetterOf(i), m.Name, Value: words(only is { } i1 ? [m.Cm[i1]] : m.Cm))).ToArray();
        var description = $"{Seen(piece.View)}{string.Join("; ", entries.Select(e => $"{e.Letter}, {e.Name}, {e.Value}"))}.";
        var notes = Notes(piece, sizes, only, drawn, over ?? (q => q.ToString()));
        var inPage = new SvgPage(layout.Width, layout.Height, id, title, description);
        Piece(inPage, layout);

        var width = Math.Max(Math.Max(layout.Width, 24 + (8.2 * title.Length)), 40 + entries.Max(e => 6.9 * (e.Name.Length + e.Value.Length + 2)));
        var alone = new SvgPage(width, layout.Height + 34 + (20 * entries.Length), id, title, description, alone: true);
        alone.Words(12, 20, title, 14, "start", bold: true);
        alone.Begin((width - layout.Width) / 2, 26);
        Piece(alone, layout);
        alone.End();
        for (var i = 0; i < entries.Length; i++)
        {
            var y = layout.Height + 42 + (20 * i);
            alone.Words(18, y, entries[i].Letter, 12, bold: true);
            alone.Words(32, y, $"{entries[i].Name}: {entries[i].Value}", 12, "start");
        }

        return new Drawing
        {
            Id = id,
            Title = title,
            Description = description,
            Sheets = [inPage.Finish()],
            Alone = alone.Finish() + "\n",
            Width = (int)Math.Ceiling(layout.Width),
            Key = [.. entries.Select(e => new KeyEntry(Mark(e.Letter), e.Name, e.Value))],
            Notes = notes,
        };
    }

    private static string Seen(OutlineView view) => view switch
    {
        OutlineView.Tube => "A tube, laid flat. ",
        OutlineView.Yoke => "The front of the body and the yoke, laid flat; the sleeves join along the slanting edges. ",
        OutlineView.OpenYoke => "The back of the body and the yoke, laid flat; the sleeves join along the slanting edges, and the fronts go round from either side. ",
        OutlineView.Side => "Seen from the side. ",
        OutlineView.Circle => "A circle, lying flat. ",
        OutlineView.Sock => "A sock, lying flat on its side. ",
        _ => "",
    };

    private static void Piece(SvgPage page, SchematicLayout layout)
    {
        var path = Path(layout.Outline);
        page.Ink(path, 0.06);
        page.Line(path, 2);
        foreach (var seam in layout.Seams)
        {
            page.Dashes(string.Concat(seam.Select((p, i) => $"{(i == 0 ? 'M' : 'L')}{Number(p.X)} {Number(p.Y)}")));
        }

        foreach (var line in layout.Lines)
        {
            page.Line($"M{Number(line.X1)} {Number(line.Y1)}L{Number(line.X2)} {Number(line.Y2)}", 0.9, 0.75);
            var (dx, dy) = line.IsAcross ? (0.0, 3.5) : (3.5, 0.0);
            foreach (var (x, y) in new[] { (line.X1, line.Y1), (line.X2, line.Y2) })
            {
                page.Line($"M{Number(x - dx)} {Number(y - dy)}L{Number(x + dx)} {Number(y + dy)}", 0.9, 0.75);
            }

            page.Words(line.LetterX, line.LetterY, line.Letter, 13, bold: true);
        }
    }

    private static string Path(ImmutableArray<(double X, double Y)> corners)
    {
        var path = new StringBuilder();
        foreach (var (x, y) in corners)
        {
            path.Append(path.Length == 0 ? 'M' : 'L').Append(Number(x)).Append(' ').Append(Number(y));
        }

        return path.Append('Z').ToString();
    }

    private static string Mark(string letter)
    {
        var page = new SvgPage(20, 20);
        page.Words(10, 15, letter, 14, bold: true);
        return page.Finish();
    }

    private static ImmutableArray<string> Notes(PieceOutline piece, SizeSet sizes, int? only, int drawn, Func<Quantity, string> over)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        var scale = only is null && sizes.Count > 1 ? $"Drawn to scale for size {sizes.Names[drawn]}" : "Drawn to scale";
        notes.Add(piece.View switch
        {
            OutlineView.Tube => $"{scale}, laid flat: what is told around is twice the width that is drawn.",
            OutlineView.Yoke => $"{scale}: the front, laid flat, without the sleeves, which join along the slanting edges. What is told around the body is twice the width that is drawn.",
            OutlineView.OpenYoke => $"{scale}: the back, laid flat, without the sleeves, which join along the slanting edges, and without the fronts.",
            OutlineView.Side => $"{scale}, seen from the side and round all about; stuffing widens it a little.",
            OutlineView.Circle => $"{scale}, lying flat.",
            OutlineView.Sock => $"{scale}, lying flat on its side: what is told around is twice the width that is drawn. The dashed lines are {(piece.Sizes[0].Sock?.MiddleHalfCm is null ? "the heel flap, the gusset" : "the two halves of the heel, the slant where they meet,")} and the beginning of the toe.",
            _ => $"{scale}, as the right side shows it, before anything is sewn.",
        });
        if (piece.Gauge is { Stitches: { } stitches } gauge)
        {
            var rows = gauge.Rows is { } some ? string.Create(CultureInfo.InvariantCulture, $" and {some:0.##} {(gauge.RowsAreRounds ? "rounds" : "rows")}") : "";
            var measured = gauge.Width is { } width ? $" to {over(width)}" : "";
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"Reckoned with {stitches:0.##} stitches{rows}{measured}{(gauge.Stitch is { Length: > 0 } stitch ? $" in {stitch}" : "")}.{(piece.View is OutlineView.Flat or OutlineView.Tube or OutlineView.Yoke or OutlineView.OpenYoke or OutlineView.Sock ? " Ribbing draws in, and stitch patterns may." : "")}"));
        }

        return notes.ToImmutable();
    }

    private static string Number(double value) => SvgPage.Number(value);
}
