using System.Globalization;
using System.Xml.Linq;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

/// <summary>All drawings of all examples: charts, diagrams, stripes and schematics.</summary>
public class AllDrawingsTests
{
    private static readonly string[] Elements = ["svg", "title", "desc", "g", "path", "rect", "text", "line", "circle", "ellipse", "polyline", "polygon"];

    private static readonly string[] Attributes =
    [
        "xmlns", "viewBox", "width", "height", "role", "aria-hidden", "aria-labelledby", "id", "transform", "d", "fill", "fill-opacity", "opacity", "fill-rule", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin", "stroke-opacity",
        "stroke-dasharray", "style", "x", "y", "x1", "x2", "y1", "y2", "cx", "cy", "r", "rx", "ry", "points", "font-size", "font-family", "font-weight", "font-style", "text-anchor", "data-row",
    ];

    public static TheoryData<string> Examples() => [.. Directory.EnumerateFiles(RepositoryRoot.Path("examples"), "*.pattern.md").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Examples))]
    public void A_drawing_is_well_formed_harmless_and_the_same_every_time(string file)
    {
        var drawings = Drawings(file);
        foreach (var svg in drawings)
        {
            var elements = XElement.Parse(svg).DescendantsAndSelf().ToArray();
            Assert.All(elements, e => Assert.Contains(e.Name.LocalName, Elements));
            Assert.All(elements, e => Assert.Equal("http://www.w3.org/2000/svg", e.Name.NamespaceName));
            Assert.All(elements.Attributes(), a => Assert.Contains(a.Name.LocalName, Attributes));
            Assert.DoesNotContain(elements.Attributes(), a => a.Value.Contains("url(", StringComparison.OrdinalIgnoreCase) || a.Value.Contains("javascript", StringComparison.OrdinalIgnoreCase) || (!a.IsNamespaceDeclaration && a.Value.Contains("//", StringComparison.Ordinal)));
            if (elements[0].Attribute("role") is not null)
            {
                var names = elements[0].Attribute("aria-labelledby")!.Value.Split(' ');
                Assert.Equal(names, elements[0].Elements().Where(e => e.Name.LocalName is "title" or "desc").Select(e => e.Attribute("id")!.Value));
                Assert.All(elements[0].Elements().Where(e => e.Name.LocalName is "title" or "desc"), e => Assert.NotEqual("", e.Value));
            }
        }

        Assert.Equal(drawings, Drawings(file));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Words_of_a_drawing_stand_inside_it(string file)
    {
        foreach (var svg in Drawings(file).Select(XElement.Parse))
        {
            double[] box = [.. svg.Attribute("viewBox")!.Value.Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
            foreach (var text in svg.Descendants().Where(e => e.Name.LocalName == "text" && !e.Ancestors().Any(a => a.Attribute("transform")?.Value.Contains("rotate", StringComparison.Ordinal) == true) && e.Attribute("transform") is null))
            {
                var (dx, dy) = Moved(text);
                var size = Number(text, "font-size");
                var width = text.Value.Length * size * 0.5; // letters are half as wide as high, or a little more
                var x = Number(text, "x") + dx - (text.Attribute("text-anchor")?.Value switch { "end" => width, "middle" => width / 2, _ => 0 });
                var y = Number(text, "y") + dy;
                Assert.True(x >= box[0] - 1 && x + width <= box[0] + box[2] + 1 && y - (size * 0.7) >= box[1] - 1 && y <= box[1] + box[3] + 1, $"{text.Value} stands outside the drawing {svg.Elements().FirstOrDefault()?.Value}");
            }
        }
    }

    private static (double X, double Y) Moved(XElement text)
    {
        var (x, y) = (0.0, 0.0);
        foreach (var group in text.Ancestors())
        {
            if (group.Attribute("transform")?.Value is { } moved && moved.StartsWith("translate(", StringComparison.Ordinal))
            {
                var parts = moved["translate(".Length..].Split(')')[0].Split(' ', ',');
                (x, y) = (x + double.Parse(parts[0], CultureInfo.InvariantCulture), y + double.Parse(parts[^1], CultureInfo.InvariantCulture));
            }
        }

        return (x, y);
    }

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    private static string[] Drawings(string file)
    {
        var path = RepositoryRoot.Path("examples", file);
        return [.. ViewBuilder.Build(Compiler.Compile(new SourceText(file, File.ReadAllText(path)))).Drawings.SelectMany(d => d.Pictures.Select(p => p.Svg).Append(d.Alone).Concat(d.Key.Select(k => k.Picture.Svg)))];
    }
}
