using PatternForge.Core.Reference;

namespace PatternForge.Tests.Reference;

public class ToolSizesTests
{
    // Common practice: charts of makers and shops.
    [Theory]
    [InlineData("4 mm", false, "US 6, UK 8")]
    [InlineData("4.5 mm", false, "US 7, UK 7")]
    [InlineData("6.5 mm", false, "US 10½, UK 3")]
    [InlineData("7 mm", false, "UK 2")]
    [InlineData("2.5 mm", false, "US 1½")]
    [InlineData("2,75 mm", false, "US 2, UK 12")]
    [InlineData("5 mm", true, "US H-8, UK 6")]
    [InlineData("9 mm", true, "US M/N-13, UK 00")]
    [InlineData("4.3 mm", false, "")]
    public void Millimetres_have_their_names(string said, bool isHook, string names) => Assert.Equal(names, ToolSizes.Names(ToolText.Read(said).Single().Mm!.Value, isHook));

    [Fact]
    public void Needles_and_hooks_grow_and_their_numbers_with_them()
    {
        Assert.All(NeedleSizes.All.Zip(NeedleSizes.All.Skip(1)), p => Assert.True(p.First.Mm < p.Second.Mm));
        Assert.All(HookSizes.All.Zip(HookSizes.All.Skip(1)), p => Assert.True(p.First.Mm < p.Second.Mm));
        decimal[] us = [.. NeedleSizes.All.Where(n => n.Us is not null && n.Us.Trim('0').Length > 0).Select(n => decimal.Parse(n.Us!, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(us.Order(), us);
        decimal[] uk = [.. NeedleSizes.All.Where(n => n.Uk is not null && n.Uk.Trim('0').Length > 0).Select(n => decimal.Parse(n.Uk!, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(uk.OrderDescending(), uk);
        Assert.All(HookSizes.Steel.Zip(HookSizes.Steel.Skip(1)), p => Assert.True(p.First.Mm.Max() > p.Second.Mm.Max()));
    }

    [Fact]
    public void Every_needle_and_hook_of_the_tables_is_made() =>
        Assert.All(NeedleSizes.All.Select(n => (n.Mm, false)).Concat(HookSizes.All.Select(h => (h.Mm, true))).Concat(HookSizes.Steel.SelectMany(s => s.Mm).Select(mm => (mm, true))), t => Assert.True(ToolSizes.IsMade(t.Item1, t.Item2)));

    // Common practice in Japan: 2.1 mm and 0.3 mm a number.
    [Theory]
    [InlineData(0, 2.1)]
    [InlineData(8, 4.5)]
    [InlineData(15, 6.6)]
    [InlineData(16, null)]
    public void Japanese_needles_go_by_a_rule(int number, double? mm) => Assert.Equal((decimal?)mm, NeedleSizes.JapaneseMm(number));

    [Theory]
    [InlineData("US 7 (4.5 mm) circular needle, 60 cm long", "Us 7, Millimetres 4.5")]
    [InlineData("4.5 mm (US 7, UK 7) needles", "Millimetres 4.5, Us 7, Uk 7")]
    [InlineData("U.S. size 10½ needles", "Us 10.5")]
    [InlineData("size 8 needles", "Bare 8")]
    [InlineData("size H-8 hook", "Letter H")]
    [InlineData("H/8 (5.00 mm) hook", "Letter H, Millimetres 5")]
    [InlineData("G hook", "Letter G")]
    [InlineData("US 6, 7 and 8 (4, 4.5 and 5 mm) needles", "Us 6 | Millimetres 5")]
    [InlineData("4 mm needles and 4.5 mm needles", "Millimetres 4 | Millimetres 4.5")]
    [InlineData("steel 7 hook", "Steel 7")]
    [InlineData("steel hook size 7", "Steel 7")]
    [InlineData("a pair of scissors", "")]
    [InlineData("5 mm circular needle for size S", "Millimetres 5 | Letter S")]
    public void Sizes_are_found_in_what_designers_write(string text, string found) =>
        Assert.Equal(found, string.Join(" | ", ToolText.Read(text).Select(t => string.Join(", ", t.Marks.Select(m => $"{m.Scale} {m.Said}")))));

    [Theory]
    [InlineData("4 mm needles", true)]
    [InlineData("4.5 mm", true)]
    [InlineData("4 mm hook, or the size that gives you the gauge", true)]
    [InlineData("8 mm safety eyes", false)]
    [InlineData("65 mm pompom maker", false)]
    [InlineData("cable needle, 3 mm", false)]
    public void Only_needles_and_hooks_have_sizes_of_the_tables(string text, bool isTool) => Assert.Equal(isTool, ToolText.IsTool(text));
}
