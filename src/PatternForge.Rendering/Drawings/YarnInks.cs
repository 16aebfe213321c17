using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>How the squares of several yarns are told apart: by their letters and by an even tint, so that a chart reads in black and white; in the yarn's own shade where the header gives one.</summary>
internal sealed class YarnInks
{
    private const double DarkestTint = 0.42;

    private readonly ImmutableArray<Yarn> _yarns;

    /// <summary>Tells apart the yarns of a pattern.</summary>
    public YarnInks(ImmutableArray<Yarn> yarns) => _yarns = [.. yarns.Where(y => y.Label is { Length: > 0 })];

    /// <summary>The place of a yarn in the header.</summary>
    public int Order(string label)
    {
        for (var i = 0; i < _yarns.Length; i++)
        {
            if (string.Equals(_yarns[i].Label, label, StringComparison.Ordinal))
            {
                return i;
            }
        }

        return _yarns.Length;
    }

    /// <summary>What a yarn is called: its name and its colour.</summary>
    public string Name(string label)
    {
        if (Order(label) is var at && at == _yarns.Length)
        {
            return label;
        }

        var yarn = _yarns[at];
        var colours = string.Join(", ", yarn.Colours);
        return string.Join(", ", new[] { yarn.Name, colours.Length > 0 ? colours : null }.OfType<string>()) is { Length: > 0 } words ? words : label;
    }

    /// <summary>Fills so many squares.</summary>
    public void Draw(SvgPage page, string label, int span, bool withLetters)
    {
        var shade = Fill(page, label, $"M0 0H{SvgPage.Number(span * KnitMarks.Square)}V{SvgPage.Number(KnitMarks.Square)}H0Z");
        if (withLetters)
        {
            Letters(page, label, span * KnitMarks.Square / 2, 16, 10.5, shade);
        }
    }

    /// <summary>Fills a band, with the letters in the middle.</summary>
    public void Band(SvgPage page, string label, double x, double y, double width, double height)
    {
        var shade = Fill(page, label, $"M{SvgPage.Number(x)} {SvgPage.Number(y)}h{SvgPage.Number(width)}v{SvgPage.Number(height)}h{SvgPage.Number(-width)}Z");
        Letters(page, label, x + (width / 2), y + (height / 2) + 4.4, 12.5, shade);
    }

    private string? Fill(SvgPage page, string label, string square)
    {
        var at = Order(label);
        var shade = at < _yarns.Length ? _yarns[at].Shade : null;
        if (shade is { } colour)
        {
            page.Shade(square, colour);
        }
        else if (at > 0)
        {
            page.Ink(square, DarkestTint * at / Math.Max(1, _yarns.Length - 1));
        }

        return shade;
    }

    private static void Letters(SvgPage page, string label, double x, double y, double size, string? shade)
    {
        var letters = label.Length > 3 ? label[..3] : label;
        page.Words(x, y, letters, letters.Length > 2 ? size - 2 : size, ink: shade is { } under ? IsDark(under) ? "#fff" : "#000" : null);
    }

    /// <summary>True for a shade on which white letters read better than black ones (relative luminance of WCAG 2.2 below the point where both contrasts are equal).</summary>
    private static bool IsDark(string shade)
    {
        double Channel(int at)
        {
            var value = Convert.ToInt32(shade.Substring(at, 2), 16) / 255.0;
            return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Channel(1)) + (0.7152 * Channel(3)) + (0.0722 * Channel(5)) < 0.179;
    }
}
