using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// The marks of knitting charts, drawn by us in squares of 24 by 24. Each shows the stitch as it looks on the right side of the fabric, after the conventions
/// that stitch dictionaries share: an empty square for knit, a dot for purl, a ring for a yarn over, a stroke that leans as the decrease leans (common practice;
/// Vogue Knitting, reading charts; JIS L 0201, a symbol shows the structure as seen from the right side).
/// </summary>
internal static class KnitMarks
{
    /// <summary>The side of a square.</summary>
    public const double Square = 24;

    private const string BaseLine = "M5 21.5H19";

    // Marks that are one or more lines in a square.
    private static readonly Dictionary<string, string> Lines = new(StringComparer.Ordinal)
    {
        ["knit-twisted"] = "M7 19.5L15 9.5C18 5.5 15 3.5 12 3.5C9 3.5 6 5.5 9 9.5L17 19.5",
        ["knit-below"] = "M7 20V11A5 5 0 0 1 17 11V20",
        ["brioche-knit"] = "M6 20V11A6 6 0 0 1 18 11V20M12 10V20",
        ["brioche-slip"] = "M6 5L12 20L18 5M6 8A6 3.4 0 0 1 18 8",
        ["lean-right-2"] = "M6 19L18 5",
        ["lean-left-2"] = "M18 19L6 5",
        ["centre-3"] = "M12 20V4M5.5 20L12 4L18.5 20",
        ["decrease"] = "M6 19L12 6L18 19",
        ["make-1"] = "M5 19V6L12 14L19 6V19",
        ["make-1-left"] = "M14 20V4M14 14L6 6",
        ["make-1-right"] = "M10 20V4M10 14L18 6",
        ["lifted-left"] = "M14 20V4M14 19L6 13V8",
        ["lifted-right"] = "M10 20V4M10 19L18 13V8",
        ["slip"] = "M6 5L12 19L18 5",
        ["slip-front"] = "M6 5L12 19L18 5M4.5 10.5H19.5",
        ["slip-knitwise"] = "M6 5L12 19L18 5M12 5V11",
        ["double-stitch"] = "M9 20V8A3 3 0 0 1 15 8V20",
        ["bind-off"] = "M4 16Q12 5 20 16",
    };

    /// <summary>Draws a mark over so many squares; letters where there is no mark for it.</summary>
    public static void Draw(SvgPage page, Operation operation, FabricSide side, int span)
    {
        var mark = StitchLook.Of(operation, side);
        var width = Square * span;
        if (operation.Family == Family.Cable && CableNames.Read(operation.Id) is { } crossing)
        {
            CableMark.Draw(page, crossing, isBack: side == FabricSide.Wrong);
            return;
        }

        var isPurl = mark.StartsWith("purl-", StringComparison.Ordinal) || mark.Contains("-purl", StringComparison.Ordinal);
        var plain = mark.Replace("purl-", "", StringComparison.Ordinal).Replace("-purl", "", StringComparison.Ordinal);
        plain = plain is "twisted" or "below" ? "knit-" + plain : plain;
        switch (plain)
        {
            case "knit":
                return;
            case "purl":
                page.Ink(Dot(12, 12, 3));
                return;
            case "brioche" when isPurl:
                page.Line("M6 20V11A6 6 0 0 1 18 11V20");
                page.Ink(Dot(12, 14, 2.4));
                return;
            case "over":
                page.Line(Ring(width / 2, 12, 6));
                return;
            case "over-double":
                page.Line(Ring(12, 12, 6) + Ring(width - 12, 12, 6));
                return;
            case "over-backward":
                page.Line(Ring(12, 12, 6) + "M12 2.5V6");
                return;
            case "increase-bar" or "increase":
                Fan(page, span, 2, plain == "increase-bar");
                break;
            case "make-2":
                page.Words(width / 2, 16.5, "M2", 11);
                return;
            case "increase-1-3-over":
                Fan(page, span, 3, false);
                page.Line(Ring(width / 2, 5.5, 3));
                return;
            case var fan when fan.StartsWith("increase-1-", StringComparison.Ordinal):
                Fan(page, span, Math.Max(2, span), false);
                break;
            case var lean when lean.StartsWith("lean-", StringComparison.Ordinal) && lean[^1] > '2':
                Wedge(page, lean[^1] - '0', lean.Contains("left", StringComparison.Ordinal));
                break;
            case var line when Lines.TryGetValue(line, out var path):
                page.Line(path);
                break;
            default:
                Letters(page, operation, width);
                return;
        }

        if (isPurl)
        {
            Purled(page, plain, width);
        }
    }

    /// <summary>A filled dot.</summary>
    public static string Dot(double x, double y, double radius) => Ring(x, y, radius);

    private static string Ring(double x, double y, double radius)
    {
        var (left, r) = (SvgPage.Number(x - radius), SvgPage.Number(radius));
        return $"M{left} {SvgPage.Number(y)}a{r} {r} 0 1 0 {SvgPage.Number(2 * radius)} 0a{r} {r} 0 1 0 {SvgPage.Number(-2 * radius)} 0Z";
    }

    /// <summary>Strokes from one foot to the middle of each square.</summary>
    private static void Fan(SvgPage page, int span, int strokes, bool barred)
    {
        var middle = SvgPage.Number(Square * span / 2);
        var path = "";
        for (var i = 0; i < strokes; i++)
        {
            var x = Square * span * ((2 * i) + 1) / (2 * strokes);
            path += $"M{middle} 20L{SvgPage.Number(x)} 5";
        }

        page.Line(barred ? path + $"M{SvgPage.Number((Square * span / 2) - 5)} 20H{SvgPage.Number((Square * span / 2) + 5)}" : path);
    }

    /// <summary>So many stitches in one: strokes from several feet to the top that lies on top.</summary>
    private static void Wedge(SvgPage page, int stitches, bool left)
    {
        var path = "";
        var strokes = Math.Min(stitches - 1, 4);
        for (var i = 0; i < strokes; i++)
        {
            var x = 4.5 + (i * 9.5 / (strokes - 1));
            path += left ? $"M{SvgPage.Number(24 - x)} 20L7 4" : $"M{SvgPage.Number(x)} 20L17 4";
        }

        page.Line(path);
        if (stitches > 3)
        {
            page.Words(left ? 18.5 : 5.5, 10, stitches.ToString(CultureInfo.InvariantCulture), 9);
        }
    }

    /// <summary>The purl form: a dot beside the stroke, or a line under the mark.</summary>
    private static void Purled(SvgPage page, string plain, double width)
    {
        switch (plain)
        {
            case "lean-right-2":
                page.Ink(Dot(17.5, 17, 2.2));
                break;
            case "lean-left-2":
                page.Ink(Dot(6.5, 17, 2.2));
                break;
            default:
                page.Line(width > Square ? $"M{SvgPage.Number((width / 2) - 7)} 22H{SvgPage.Number((width / 2) + 7)}" : BaseLine);
                break;
        }
    }

    /// <summary>Its abbreviation, made to fit.</summary>
    private static void Letters(SvgPage page, Operation operation, double width)
    {
        var name = operation.Names.Length > 0 ? operation.Names[0].Text : operation.Id;
        name = name.Length > 8 ? name[..8] : name;
        var size = Math.Clamp((width - 3) / (0.58 * name.Length), 5.5, 12);
        page.Words(width / 2, 12 + (size * 0.35), name, size);
    }
}
