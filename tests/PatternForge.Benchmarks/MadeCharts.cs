using System.Globalization;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;

namespace PatternForge.Benchmarks;

/// <summary>Stitch patterns made for measuring: so many panels of so many stitches and rows, each of which is drawn as a chart. Invented and sound.</summary>
public static class MadeCharts
{
    /// <summary>The goal: 100 charts of 60 by 60 in a few seconds.</summary>
    public const int ManyCharts = 100;

    /// <summary>Stitches and rows of each.</summary>
    public const int Side = 60;

    /// <summary>The pattern.</summary>
    public static SourceText Source(int charts = ManyCharts, int side = Side)
    {
        var text = new StringBuilder("---\ntitle: Measured sampler\ncraft: knitting\nsizes: one size\n---\n\n");
        for (var chart = 1; chart <= charts; chart++)
        {
            text.Append(CultureInfo.InvariantCulture, $"## Panel {chart} (panel of {side} sts)\n\n");
            for (var row = 1; row <= side; row++)
            {
                text.Append(CultureInfo.InvariantCulture, $"Row {row}: ");
                for (var at = 0; at < side; at += 4)
                {
                    text.Append(at > 0 ? ", " : "").Append((((chart * 7) + (row * 3) + at) % 5) switch { 0 => "k2tog, yo, k2", 1 => "p4", 2 => "k1, yo, ssk, p1", 3 => "2/2 RC", _ => "k2, p2" });
                }

                text.Append(".\n\n");
            }
        }

        return new SourceText("charts.pattern.md", text.ToString());
    }

    /// <summary>Rows to charts to drawings.</summary>
    public static int Draw(SourceText source) => Renderer.Drawings(ViewBuilder.Build(Compiler.Compile(new SourceText(source.Path, source.Text)))).Sum(f => f.Text.Length);
}
