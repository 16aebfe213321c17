using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// The marks of Tunisian stitches, drawn by us: an upright bar for the simple stitch, and upon it what makes the others different (a stroke before it for the purl stitch, two bars for
/// the knit stitch, strokes of a post for taller ones); a wave for the return pass. Common practice, from memory: the Tunisian class of JIS L 0201 was not at hand. The key of every drawing names each mark.
/// </summary>
internal static class TunisianMarks
{
    /// <summary>How tall a plain stitch is drawn.</summary>
    public const double Plain = 20;

    private const double Ink = 1.4;

    /// <summary>True for a stitch that has a mark.</summary>
    public static bool Knows(Operation stitch) => stitch.Id is "sl st" or "tss" or "loop" or "tks" or "tps" or "tfs" or "trs" or "ttw" or "etss" or "tsc" or "thdc" or "tdc" or "ttr" or "tsl st" or "end st"
        or "tss2tog" or "tss3tog" or "tks2tog" or "m1" or "yo" or "inc" or "dec";

    /// <summary>How tall a stitch is drawn.</summary>
    public static double HeightOf(Operation stitch) => stitch.Id switch
    {
        "sl st" => 10,
        "thdc" => Plain + 4,
        "tdc" => Plain + 10,
        "ttr" => Plain + 18,
        _ => Plain,
    };

    /// <summary>The return pass over one stitch.</summary>
    /// <param name="page">Where to draw.</param>
    /// <param name="middle">Its middle.</param>
    /// <param name="width">How wide it is.</param>
    public static void Wave(SvgPage page, Spot middle, double width)
    {
        var part = width / 4;
        page.Line($"M{SvgPage.Number(middle.X - (2 * part))} {SvgPage.Number(-middle.Y)}q{SvgPage.Number(part)} -7 {SvgPage.Number(2 * part)} 0t{SvgPage.Number(2 * part)} 0", 1.2);
    }

    /// <summary>A stitch from its feet to its head.</summary>
    public static void Draw(SvgPage page, Operation stitch, Spot[] feet, Spot head)
    {
        var middle = feet.Length == 0 ? new Spot(head.X, head.Y - HeightOf(stitch)) : new Spot(feet.Average(f => f.X), feet.Average(f => f.Y));
        switch (stitch.Id)
        {
            case "sl st":
                page.Ink(KnitMarks.Dot(head.X, -((head.Y + middle.Y) / 2), 3));
                return;
            case "yo":
                page.Line(KnitMarks.Dot(head.X, -((head.Y + middle.Y) / 2), 5.5), Ink);
                return;
            case "m1":
                Stroke(page, new Spot(head.X, middle.Y + 3), new Spot(head.X, head.Y));
                Stroke(page, new Spot(head.X - 6, middle.Y + 3), new Spot(head.X + 6, middle.Y + 3));
                return;
            case "tsl st":
                page.Line($"M{SvgPage.Number(head.X - 6)} {SvgPage.Number(-head.Y + 3)}v5a6 6 0 0 0 12 0v-5", Ink);
                return;
            case "tks" or "tks2tog":
                foreach (var foot in feet)
                {
                    Stroke(page, foot + new Spot(0, 1), head + new Spot(-5, 0));
                    Stroke(page, foot + new Spot(0, 1), head + new Spot(5, 0));
                }

                return;
            case "end st":
                Stroke(page, middle + new Spot(-2.2, 1), head + new Spot(-2.2, 0));
                Stroke(page, middle + new Spot(2.2, 1), head + new Spot(2.2, 0));
                return;
            case "tfs":
                // From the space before the stitch.
                Stroke(page, middle + new Spot(9, 1), head);
                return;
            case "ttw":
                page.Line($"M{Pair(middle + new Spot(-4.5, 1))}C{Pair(middle + new Spot(-4.5, 8))} {Pair(middle + new Spot(9, 12))} {Pair(head)}", Ink);
                page.Line($"M{Pair(middle + new Spot(4.5, 1))}C{Pair(middle + new Spot(4.5, 8))} {Pair(middle + new Spot(-9, 12))} {Pair(head)}", Ink);
                return;
        }

        foreach (var foot in feet.DefaultIfEmpty(middle))
        {
            Stroke(page, foot + new Spot(0, 1), head);
        }

        var half = (middle + head) * 0.5;
        switch (stitch.Id)
        {
            case "tps":
                Stroke(page, half + new Spot(-6.5, -3), half + new Spot(6.5, -3));
                break;
            case "trs":
                page.Line($"M{Pair(middle + new Spot(0, 1))}c0 5 7 5 7 -2", Ink);
                break;
            case "etss" or "tsc":
                CrochetMarks.Chain(page, new Oval(head + new Spot(0, stitch.Id == "tsc" ? -4 : -13), 0), 4.5);
                break;
            case "thdc" or "tdc" or "ttr":
                Stroke(page, head + new Spot(-5.5, 0), head + new Spot(5.5, 0));
                for (var i = 0; i < (stitch.Id == "ttr" ? 2 : stitch.Id == "tdc" ? 1 : 0); i++)
                {
                    Stroke(page, half + new Spot(-4, (i * 5) - 2), half + new Spot(4, (i * 5) + 2));
                }

                break;
        }
    }

    private static void Stroke(SvgPage page, Spot from, Spot to) => page.Line($"M{Pair(from)}L{Pair(to)}", Ink);

    private static string Pair(Spot spot) => $"{SvgPage.Number(spot.X)} {SvgPage.Number(-spot.Y)}";
}
