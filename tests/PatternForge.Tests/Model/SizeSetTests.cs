using PatternForge.Core.Model;

namespace PatternForge.Tests.Model;

public class SizeSetTests
{
    private static readonly SizeSet Sizes = new(["S", "M", "L"]);

    [Theory]
    [InlineData(new[] { 1 }, "size M")]
    [InlineData(new[] { 2, 0 }, "sizes S and L")]
    [InlineData(new[] { 0, 1, 2 }, "")]
    [InlineData(new int[0], "")]
    public void Sizes_are_described_in_words(int[] which, string words) => Assert.Equal(words, Sizes.Describe(which));

    [Fact]
    public void A_size_is_found_by_its_name_whatever_the_letters_case() => Assert.Equal((1, -1), (Sizes.IndexOf("m"), Sizes.IndexOf("XL")));

    [Fact]
    public void One_shared_value_stands_for_every_size()
    {
        var shared = PerSize.Shared(80);
        var each = PerSize.Each([80, 88, 96]);
        Assert.Equal((80, 80, true), (shared[0], shared[2], shared.IsShared));
        Assert.Equal((80, 96, false), (each[0], each[2], each.IsShared));
        Assert.Equal("160 176 192", string.Join(' ', each.Map(v => v * 2).Values));
        Assert.Throws<ArgumentException>(() => PerSize.Each<int>([]));
    }
}
