using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// The marks of crochet diagrams, drawn by us after the conventions that magazines and handbooks share: an open oval for a chain, a dot for a slip stitch, an upright
/// cross for the shortest plain stitch, a T for the taller ones with as many strokes across its stem as there are yarn overs before the hook goes in; legs that
/// share a foot for increases and a head for decreases (common practice; the Craft Yarn Council's crochet chart symbols; JIS L 0201 draws the shortest stitch as an X).
/// </summary>
internal static class CrochetMarks
{
    private const double Ink = 1.3;

    // Legs that are too many for strokes of their own.
    private const int Many = 4;

    /// <summary>Draws a mark.</summary>
    public static void Draw(SvgPage page, PlacedMark mark)
    {
        foreach (var oval in mark.Ovals)
        {
            Chain(page, oval, mark.Stitch.Mark == DiagramMark.Picot ? 3.2 : 5);
        }

        switch (mark.Stitch.Mark)
        {
            case DiagramMark.SlipStitch or DiagramMark.Join:
                Dot(page, mark.Head, 2.4);
                break;
            case DiagramMark.Picot:
                Dot(page, mark.Head, 1.8);
                break;
            case DiagramMark.NewYarn:
                var way = Spot.At(mark.Feet[0].DistanceTo(mark.Head) < 0.1 ? Math.PI / 2 : (mark.Feet[0] - mark.Head).Angle, 1);
                var side = new Spot(-way.Y, way.X);
                page.Line($"{Move(mark.Head + (way * 4))}{To(mark.Head - (way * 3) + (side * 3.6))}{To(mark.Head - (way * 3) - (side * 3.6))}Z", 1.1);
                break;
            case DiagramMark.Stitch:
                Stitch(page, mark.Stitch.Stitch!, mark.Feet, mark.Head, mark.Stitch.IntoSpace, mark.Stitch.Loop);
                break;
        }
    }

    /// <summary>A chain.</summary>
    public static void Chain(SvgPage page, Oval oval, double half)
    {
        var end = Spot.At(oval.Angle, half);
        var turn = SvgPage.Number(-oval.Angle * 180 / Math.PI);
        var (rx, ry) = (SvgPage.Number(half), SvgPage.Number(half * 0.5));
        page.Line($"{Move(oval.Centre - end)}A{rx} {ry} {turn} 1 1 {Pair(oval.Centre + end)}A{rx} {ry} {turn} 1 1 {Pair(oval.Centre - end)}Z", 1.1);
    }

    /// <summary>A ring of no chains.</summary>
    public static void Ring(SvgPage page, double radius)
    {
        page.Line($"{Move(new Spot(-radius, 0))}A{SvgPage.Number(radius)} {SvgPage.Number(radius)} 0 1 1 {Pair(new Spot(radius, 0))}A{SvgPage.Number(radius)} {SvgPage.Number(radius)} 0 1 1 {Pair(new Spot(-radius, 0))}Z", 1.5);
    }

    /// <summary>A stitch from its feet to its head.</summary>
    public static void Stitch(SvgPage page, Operation stitch, List<Spot> feet, Spot head, bool intoSpace, StitchLoop loop = StitchLoop.Both)
    {
        if (stitch.Id == "sl st")
        {
            Dot(page, head, 2.4);
            return;
        }

        var kind = KindOf(stitch);
        var legs = feet.Count > 1 ? feet.Count : LegsOf(stitch);
        var middle = new Spot(feet.Average(f => f.X), feet.Average(f => f.Y));
        var up = Unit(head - middle);
        var side = new Spot(-up.Y, up.X);
        var short_ = ShortOf(stitch);
        foreach (var (foot, i) in feet.Select((f, i) => (f, i)))
        {
            var start = foot + (Unit(head - foot) * (intoSpace ? 2.5 : 1));
            if (feet.Count > 1 || legs == 1)
            {
                page.Line($"{Move(start)}{To(head)}", Ink);
                Strokes(page, StrokesOf(stitch), start + ((head - start) * 0.56), Unit(head - start));
                if (short_ && feet.Count == 1)
                {
                    Across(page, start + ((head - start) * 0.5), up, 4);
                }
            }
            else
            {
                for (var leg = 0; leg < legs; leg++)
                {
                    // Legs swell out between foot and head.
                    var swell = (leg - ((legs - 1) / 2.0)) * Math.Min(6.5, 15.0 / legs);
                    var belly = ((start + head) * 0.5) + (side * (swell * 1.7));
                    page.Line($"{Move(start)}Q{Pair(belly)} {Pair(head)}", Ink);
                    if (kind != "puff" && legs < Many)
                    {
                        Strokes(page, StrokesOf(stitch), ((start + head) * 0.5) + (side * (swell * 0.85)), up);
                    }
                }
            }

            if (feet.Count == 1 && legs >= Many && kind != "puff")
            {
                Strokes(page, StrokesOf(stitch), (start + head) * 0.5, up, 8); // one stroke for all legs: single ones would run into each other
            }

            if (loop != StitchLoop.Both)
            {
                Loop(page, foot, Unit(head - foot), loop);
            }

            if (kind is "post-front" or "post-back" && i == 0)
            {
                var hook = side * (kind == "post-front" ? -6 : 6);
                page.Line($"{Move(start)}C{Pair(start - (up * 4))} {Pair(start - (up * 4) + hook)} {Pair(start + hook)}", Ink);
            }

            if (kind is "extended" or "foundation")
            {
                Chain(page, new Oval(foot + (up * (kind == "extended" ? 4 : -2)), side.Angle), 3.2);
            }
        }

        if (kind == "popcorn")
        {
            Chain(page, new Oval(head, side.Angle), 5);
        }
        else if (short_ && feet.Count > 1)
        {
            Across(page, head - (up * 5), up, 4); // joined under one bar, like an A
            Across(page, head, up, 2);
        }
        else if (!short_)
        {
            Across(page, head, up, 4.5);
        }

        if (kind == "reversed")
        {
            var on = head + (up * 1);
            page.Line($"{Move(on - (side * 5))}Q{Pair(on - (side * 2.5) + (up * 4))} {Pair(on)}Q{Pair(on + (side * 2.5) - (up * 4))} {Pair(on + (side * 5))}", 1.1);
        }
        else if (kind == "own")
        {
            var at = (middle + head) * 0.5;
            page.Paper($"{Move(at + (up * 4))}{To(at + (side * 4))}{To(at - (up * 4))}{To(at - (side * 4))}Z", 1.1);
        }
    }

    /// <summary>One loop alone: an arc across the foot, open downwards for the back one and upwards for the front one (common practice of magazines).</summary>
    private static void Loop(SvgPage page, Spot foot, Spot up, StitchLoop loop)
    {
        var side = new Spot(-up.Y, up.X) * 4.6;
        var (ends, middle) = loop == StitchLoop.Back ? (foot - (up * 0.6), foot + (up * 5)) : (foot + (up * 3.6), foot - (up * 2));
        page.Line($"{Move(ends - side)}Q{Pair(middle)} {Pair(ends + side)}", 1.2);
    }

    /// <summary>What a mark shows, so that stitches that look the same share a line of the key.</summary>
    public static string LookOf(Operation stitch) => $"{KindOf(stitch)} {stitch.CountsAs ?? stitch.Id} {LegsOf(stitch)}{(stitch.IsSpecial ? stitch.Id : "")}";

    /// <summary>How many legs a stitch has that is worked into one place.</summary>
    public static int LegsOf(Operation stitch)
    {
        if (stitch.Takes > 1)
        {
            return Math.Min(6, stitch.Takes);
        }

        if (KindOf(stitch) is not ("cluster" or "puff" or "popcorn"))
        {
            return 1;
        }

        // "(Yo, draw up a loop) 4 times in next st": the first number of the words from two to six.
        var words = stitch.IsSpecial ? stitch.Definition : stitch.Id; // "5-dc popcorn"
        var number = words.Concat(" ").Zip(words.Skip(1).Concat("  ")).Where(p => p.First is >= '2' and <= '6' && !char.IsDigit(p.Second)).Select(p => p.First - '0').FirstOrDefault();
        return number == 0 ? 3 : number;
    }

    private static bool ShortOf(Operation stitch) => !DiagramMeasures.IsOwn(stitch) && DiagramMeasures.ChainsOf(stitch) <= 1.5 && stitch.Id != "ehdc";

    /// <summary>Strokes across the stem: yarn overs before the hook goes in.</summary>
    private static int StrokesOf(Operation stitch) => Math.Max(0, (int)DiagramMeasures.ChainsOf(stitch) - 2);

    private static string KindOf(Operation stitch)
    {
        var name = DiagramMeasures.IsOwn(stitch) ? $"{stitch.Id} {stitch.Spoken}".ToLowerInvariant() : stitch.Symbol ?? "";
        return name.Contains("puff", StringComparison.Ordinal) ? "puff"
            : name.Contains("popcorn", StringComparison.Ordinal) || (stitch.IsSpecial && stitch.Id is "pc" or "PC") ? "popcorn"
            : DiagramMeasures.IsOwn(stitch) && (name.Contains("cluster", StringComparison.Ordinal) || name.Contains("bobble", StringComparison.Ordinal) || name.Split(' ', '-').Contains("cl")) ? "cluster"
            : name.StartsWith("post-front", StringComparison.Ordinal) ? "post-front"
            : name.StartsWith("post-back", StringComparison.Ordinal) ? "post-back"
            : name.StartsWith("extended", StringComparison.Ordinal) ? "extended"
            : name == "reversed" ? "reversed"
            : stitch.Takes == 0 ? "foundation"
            : stitch.IsSpecial && stitch.Height is null ? "own" : "";
    }

    private static void Strokes(SvgPage page, int count, Spot middle, Spot up, double half = 4)
    {
        for (var i = 0; i < count; i++)
        {
            var at = middle + (up * (((count - 1) / 2.0 - i) * 4.5));
            var slant = up.Turned(-Math.PI / 3) * half;
            page.Line($"{Move(at - slant)}{To(at + slant)}", 1.1);
        }
    }

    private static void Across(SvgPage page, Spot at, Spot up, double half)
    {
        var side = new Spot(-up.Y, up.X) * half;
        page.Line($"{Move(at - side)}{To(at + side)}", Ink);
    }

    private static void Dot(SvgPage page, Spot at, double radius)
    {
        var r = SvgPage.Number(radius);
        page.Ink($"{Move(at - new Spot(radius, 0))}A{r} {r} 0 1 1 {Pair(at + new Spot(radius, 0))}A{r} {r} 0 1 1 {Pair(at - new Spot(radius, 0))}Z");
    }

    private static Spot Unit(Spot way) => way.Length < 1e-6 ? new Spot(0, 1) : way * (1 / way.Length);

    private static string Pair(Spot spot) => $"{SvgPage.Number(spot.X)} {SvgPage.Number(-spot.Y)}";

    private static string Move(Spot spot) => "M" + Pair(spot);

    private static string To(Spot spot) => "L" + Pair(spot);
}
