using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Drawings;

/// <summary>Draws a crochet diagram: every stitch at the place that it is worked into, rows from the bottom, rounds from the centre, a number where each begins.</summary>
public static class DiagramDrawing
{
    private const double Margin = 16;
    private const double KeyLine = 30;
    private const int LongestMeaning = 90;
    private const double KeyPicture = 34;

    // Contrast of 3 to 1 for what is no writing (WCAG 2.2, 1.4.11) needs little more than half of the ink.
    private const double Palest = 0.52;

    /// <summary>The drawing of a diagram; null where its stitches lie so that nobody could read it.</summary>
    /// <param name="diagram">The diagram.</param>
    /// <param name="id">Its identifier, not used by another drawing of the pattern.</param>
    /// <param name="terms">Whose names to use.</param>
    /// <param name="sizes">The sizes of the pattern.</param>
    /// <param name="words">The rows as they are written.</param>
    /// <param name="yarns">The yarns of the pattern.</param>
    public static Drawing? Of(CrochetDiagram diagram, string id, Dialect terms, SizeSet sizes, string words, ImmutableArray<Yarn> yarns = default)
    {
        var which = diagram.Size is { } size ? sizes.Describe([size]) : "";
        var title = $"Chart: {diagram.Name}{(which is { Length: > 0 } ? $", {which}" : "")}";
        if (diagram.IsTunisian)
        {
            return TunisianDrawing.Of(diagram, id, title, words, stitch => ChartWords.NameOf(stitch, terms), new YarnInks(yarns.IsDefault ? [] : yarns));
        }

        var layout = DiagramLayout.Of(diagram);
        if (!layout.IsClear)
        {
            return null;
        }

        var points = layout.Points.ToArray();
        var (left, right) = (points.Min(p => p.X) - Margin, points.Max(p => p.X) + Margin);
        var (low, high) = (points.Min(p => p.Y) - Margin, points.Max(p => p.Y) + Margin);
        var (width, height) = (right - left, high - low);
        var inks = new YarnInks(yarns.IsDefault ? [] : yarns);
        var marks = Marks(diagram, terms).AddRange(Yarns(diagram, inks));
        var inPage = new SvgPage(width, height, id, title, words);
        Body(inPage, layout, -left, high, diagram, inks);
        var keyWidth = Math.Max(width, 24 + KeyPicture + 10 + marks.Max(m => 6.4 * (m.Name.Length + m.Meaning.Length + 4)));
        keyWidth = Math.Max(keyWidth, 24 + (8 * title.Length));
        var alone = new SvgPage(keyWidth, height + 34 + (marks.Length * KeyLine), id, title, words, alone: true);
        alone.Words(12, 20, title, 14, "start", bold: true);
        Body(alone, layout, -left + ((keyWidth - width) / 2), high + 24, diagram, inks);
        var y = height + 26;
        foreach (var mark in marks)
        {
            alone.Begin(12, y);
            mark.Draw(alone);
            alone.End();
            alone.Words(12 + KeyPicture + 10, y + 17, $"{mark.Name}: {mark.Meaning}", 12, "start");
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
            Key = [.. marks.Select(m => new KeyEntry(Picture(m), m.Name, m.Meaning))],
            Notes = Notes(diagram),
        };
    }

    private static void Body(SvgPage page, DiagramLayout layout, double x, double y, CrochetDiagram diagram, YarnInks inks)
    {
        page.Begin(x, y);
        if (layout.Ring > 0)
        {
            CrochetMarks.Ring(page, layout.Ring);
        }

        foreach (var oval in layout.Start)
        {
            if (diagram.Start == DiagramStart.Edge)
            {
                page.Line($"M{SvgPage.Number(oval.Centre.X - (DiagramMeasures.Pitch / 2))} {SvgPage.Number(-oval.Centre.Y)}h{SvgPage.Number(DiagramMeasures.Pitch)}", 2.2, 0.55);
            }
            else if (diagram.Start == DiagramStart.EarlierRow)
            {
                page.Line($"M{SvgPage.Number(oval.Centre.X - 5)} {SvgPage.Number(-oval.Centre.Y)}h10", 1.1, 0.55);
            }
            else
            {
                CrochetMarks.Chain(page, oval, 5);
            }
        }

        if (diagram.Start == DiagramStart.ChainRing)
        {
            page.Words(0, 3.5, diagram.StartCount.ToString(CultureInfo.InvariantCulture), 10);
        }

        foreach (var row in layout.Marks.GroupBy(m => m.Row))
        {
            var yarn = diagram.Rows[row.Key].Yarn;
            page.BeginRow(diagram.Rows[row.Key].Number);
            if (yarn is not null)
            {
                page.BeginFaint(Strength(inks, yarn));
            }

            foreach (var mark in row)
            {
                CrochetMarks.Draw(page, mark);
            }

            if (yarn is not null)
            {
                page.End();
            }

            page.End();
        }

        foreach (var number in layout.Numbers)
        {
            page.BeginRow(diagram.Rows[number.Row].Number);
            var letters = diagram.Rows[number.Row].Yarn is { } label ? $" {label}" : "";
            page.Words(number.At.X, -number.At.Y + 3, number.Text + letters, diagram.IsRound ? 8.5 : 11, bold: true);
            page.End();
        }

        page.End();
    }

    /// <summary>How strong the ink of a yarn is: the first one black, the others paler, and none so pale that it could not be seen.</summary>
    private static double Strength(YarnInks inks, string label) => Math.Max(Palest, 1 - (0.24 * inks.Order(label)));

    private static IEnumerable<KeyMark> Yarns(CrochetDiagram diagram, YarnInks inks) =>
        diagram.Rows.Select(r => r.Yarn).OfType<string>().Distinct(StringComparer.Ordinal).OrderBy(inks.Order).Select(label => new KeyMark(label, inks.Name(label), page =>
        {
            page.BeginFaint(Strength(inks, label));
            page.Line($"M6 14H{SvgPage.Number(KeyPicture - 16)}", 3);
            page.End();
            page.Words(KeyPicture - 7, 18, label, 11, bold: true);
        }));

    /// <summary>One line of the key.</summary>
    private sealed record KeyMark(string Name, string Meaning, Action<SvgPage> Draw);

    /// <summary>The marks that are used, each once: chains and slip stitches first, then the stitches from the shortest to the tallest.</summary>
    private static ImmutableArray<KeyMark> Marks(CrochetDiagram diagram, Dialect terms)
    {
        var all = diagram.Rows.SelectMany(r => r.Stitches).ToArray();
        var keys = ImmutableArray.CreateBuilder<KeyMark>();
        var middle = new Spot(KeyPicture / 2, -14);
        if (diagram.Start == DiagramStart.Ring)
        {
            keys.Add(new KeyMark("ring", "adjustable ring: work the first round into it and draw it tight", page =>
            {
                page.Begin(KeyPicture / 2, 14);
                CrochetMarks.Ring(page, 8);
                page.End();
            }));
        }
        else if (diagram.Start == DiagramStart.ChainRing)
        {
            keys.Add(new KeyMark($"ring of {diagram.StartCount} ch", "chains closed into a ring: the number in the middle says how many", page => Ovals(page, Enumerable.Range(0, 6).Select(i => new Oval(middle + Spot.At(i * Math.PI / 3, 8), (i * Math.PI / 3) + (Math.PI / 2))), 4)));
        }

        if (diagram.Start is DiagramStart.Chain or DiagramStart.OneChain or DiagramStart.BothSides || all.Any(s => s.Chains > 0))
        {
            keys.Add(new KeyMark("ch", "chain", page => Ovals(page, [new Oval(middle, 0)], 5)));
        }

        Add(DiagramMark.Picot, "picot", "chains closed into a small ring with a slip stitch", null);
        if (all.Any(s => s.Mark is DiagramMark.SlipStitch or DiagramMark.Join || s.Stitch?.Id == "sl st"))
        {
            var slip = OperationTable.Find(Craft.Crochet, Dialect.Any, "sl st")!;
            keys.Add(new KeyMark(OperationTable.NameIn(slip, terms) ?? slip.Id, "slip stitch", page => CrochetMarks.Draw(page, new PlacedMark { Stitch = new DiagramStitch(DiagramMark.SlipStitch, null, 0, [], -1), Row = 0, Head = middle })));
        }

        Add(DiagramMark.NewYarn, "join", "join the yarn here", null);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var stitches = all.Where(s => s is { Mark: DiagramMark.Stitch, Stitch.Id: not "sl st" }).Select(s => (Stitch: Shown(s), Together: s.Bases.Length > 1 || s.Stitch!.Takes > 1, Feet: s.Bases.Length, s.Loop))
            .Where(s => seen.Add(CrochetMarks.LookOf(s.Stitch) + (s.Together ? $" {s.Feet}" : "") + s.Loop));
        foreach (var (stitch, _, feet, loop) in stitches.OrderBy(s => DiagramMeasures.ChainsOf(s.Stitch)).ThenBy(s => s.Together).ThenBy(s => s.Loop))
        {
            var where = loop switch { StitchLoop.Back => (" blo", ", in the back loop only"), StitchLoop.Front => (" flo", ", in the front loop only"), _ => ("", "") };
            keys.Add(new KeyMark((OperationTable.NameIn(stitch, terms) ?? stitch.Id) + where.Item1, MeaningOf(stitch, terms) + where.Item2, page =>
            {
                var tall = Math.Min(24, DiagramMeasures.HeightOf(stitch));
                var (foot, head) = (new Spot(KeyPicture / 2, -14 - (tall / 2)), new Spot(KeyPicture / 2, -14 + (tall / 2)));
                var several = Enumerable.Range(0, feet).Select(i => foot + new Spot((i - ((feet - 1) / 2.0)) * Math.Min(8, 24.0 / feet), 0)).ToList();
                CrochetMarks.Stitch(page, stitch, several, head, intoSpace: false, loop);
            }));
        }

        return keys.ToImmutable();

        void Add(DiagramMark mark, string name, string meaning, Operation? stitch)
        {
            if (all.FirstOrDefault(s => s.Mark == mark) is { } first)
            {
                keys.Add(new KeyMark(name, meaning, page =>
                {
                    var placed = new PlacedMark { Stitch = first with { Stitch = stitch }, Row = 0, Head = middle };
                    if (mark == DiagramMark.Picot)
                    {
                        DiagramLayout.Picot(placed, middle - new Spot(0, 8), Math.PI / 2);
                    }
                    else
                    {
                        placed.Feet.Add(middle + new Spot(9, 0));
                    }

                    CrochetMarks.Draw(page, placed);
                }));
            }
        }
    }

    /// <summary>The stitch that a mark shows: of an increase the plain stitch that it is made of.</summary>
    private static Operation Shown(DiagramStitch mark) => mark.Stitch is { Makes: > 1, IsSpecial: false, CountsAs: not null } increase ? CrochetNames.Plain(increase) : mark.Stitch!;

    /// <summary>A stitch in words, in the pattern's terms.</summary>
    private static string MeaningOf(Operation stitch, Dialect terms)
    {
        var own = stitch.Names.Where(n => n.Dialect == terms).MaxBy(n => n.Text.Length)?.Text;
        return !stitch.IsSpecial ? own ?? stitch.Spoken
            : stitch.Spoken != stitch.Id ? stitch.Spoken
            : stitch.Definition.Length is > 0 and <= LongestMeaning ? stitch.Definition.TrimEnd('.')
            : "see the special stitches";
    }

    private static void Ovals(SvgPage page, IEnumerable<Oval> ovals, double half)
    {
        foreach (var oval in ovals)
        {
            CrochetMarks.Chain(page, oval, half);
        }
    }

    private static string Picture(KeyMark mark)
    {
        var page = new SvgPage(KeyPicture, 28);
        mark.Draw(page);
        return page.Finish();
    }

    private static ImmutableArray<string> Notes(CrochetDiagram diagram)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        if (diagram.IsRound)
        {
            notes.Add(diagram.Rows.All(r => r.IsFront)
                ? "Read the rounds from the centre outwards, each from its number anticlockwise; left-handed makers go clockwise."
                : "Read the rounds from the centre outwards, each from its number: rounds of the right side anticlockwise, those of the wrong side clockwise.");
        }
        else
        {
            notes.Add("Read the rows from the bottom, each from its number: odd ones and even ones go in opposite directions.");
        }

        if (diagram.Start == DiagramStart.EarlierRow)
        {
            notes.Add("The line at the bottom stands for the stitches of the row before.");
        }
        else if (diagram.Start == DiagramStart.Edge)
        {
            notes.Add("The heavy line at the bottom is the edge of the piece, with the stitches spread evenly along it.");
        }

        if (diagram.Repeats is { } repeats)
        {
            notes.Add($"The chart shows {(repeats == 2 ? "two repeats" : $"{repeats.ToString(CultureInfo.InvariantCulture)} repeats")} of the pattern.");
        }

        return notes.ToImmutable();
    }
}
