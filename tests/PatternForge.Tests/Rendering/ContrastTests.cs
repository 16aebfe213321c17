using System.Globalization;

namespace PatternForge.Tests.Rendering;

/// <summary>Contrast of the page's colours, reckoned as WCAG 2.2 defines it (success criterion 1.4.3, "relative luminance" and "contrast ratio").</summary>
public class ContrastTests
{
    private static readonly string[] OnPaper = ["ink", "soft", "accent", "size-1", "size-2", "size-3", "size-4", "size-5", "size-6", "size-7", "size-8", "size-9"];

    private static List<Dictionary<string, string>> Schemes { get; } = [.. Read(), .. Read("print.css")];

    [Fact]
    public void There_are_colours_for_light_for_dark_and_for_print() => Assert.Equal(3, Schemes.Count);

    [Fact]
    public void A_chosen_light_has_the_colours_of_the_devices_own()
    {
        var chosen = Read("reader.css", ":root[data-light=");
        Assert.Equal(2, chosen.Count);
        Assert.Equal(Schemes[0].OrderBy(c => c.Key, StringComparer.Ordinal), chosen[0].OrderBy(c => c.Key, StringComparer.Ordinal));
        Assert.Equal(Schemes[1].OrderBy(c => c.Key, StringComparer.Ordinal), chosen[1].OrderBy(c => c.Key, StringComparer.Ordinal));
    }

    [Fact]
    public void Every_size_can_be_read_on_paper_and_on_a_wash()
    {
        foreach (var scheme in Schemes)
        {
            foreach (var colour in OnPaper)
            {
                Assert.True(Ratio(scheme[colour], scheme["paper"]) >= 4.5, $"{colour} {scheme[colour]} on {scheme["paper"]}: {Ratio(scheme[colour], scheme["paper"]):0.00}");
                Assert.True(Ratio(scheme[colour], scheme["wash"]) >= 4.5, $"{colour} {scheme[colour]} on {scheme["wash"]}: {Ratio(scheme[colour], scheme["wash"]):0.00}");
            }

            Assert.True(Ratio(scheme["ink"], scheme["mark"]) >= 7, "the size that stands out");
        }
    }

    [Fact]
    public void No_two_sizes_have_the_same_colour() =>
        Assert.All(Schemes, scheme => Assert.Equal(9, Enumerable.Range(1, 9).Select(i => scheme[$"size-{i}"]).Distinct(StringComparer.OrdinalIgnoreCase).Count()));

    private static double Ratio(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        var digits = colour.TrimStart('#');
        digits = digits.Length == 3 ? string.Concat(digits.Select(c => new string(c, 2))) : digits;
        var parts = Enumerable.Range(0, 3).Select(i => int.Parse(digits.AsSpan(i * 2, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)
            .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4)).ToArray();
        return (0.2126 * parts[0]) + (0.7152 * parts[1]) + (0.0722 * parts[2]);
    }

    /// <summary>The custom properties of each <c>:root</c> of the style sheet.</summary>
    private static List<Dictionary<string, string>> Read(string file = "style.css", string opening = ":root {")
    {
        var css = File.ReadAllText(RepositoryRoot.Path("templates", "html", file));
        var schemes = new List<Dictionary<string, string>>();
        for (var at = css.IndexOf(opening, StringComparison.Ordinal); at >= 0; at = css.IndexOf(opening, at + 1, StringComparison.Ordinal))
        {
            var block = css[(css.IndexOf('{', at) + 1)..css.IndexOf('}', at)];
            schemes.Add(block.Split(';', StringSplitOptions.TrimEntries).Where(d => d.StartsWith("--", StringComparison.Ordinal) && d.Contains('#', StringComparison.Ordinal))
                .ToDictionary(d => d[2..d.IndexOf(':', StringComparison.Ordinal)], d => d[d.IndexOf('#', StringComparison.Ordinal)..]));
        }

        return schemes;
    }
}
