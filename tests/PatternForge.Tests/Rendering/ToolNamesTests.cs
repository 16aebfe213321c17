using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

public class ToolNamesTests
{
    // Common practice: charts of needles and hooks.
    [Theory]
    [InlineData("4 mm", false, "4 mm (US 6, UK 8)")]
    [InlineData("4 mm circular needle, 40 cm long", false, "4 mm (US 6, UK 8) circular needle, 40 cm long")]
    [InlineData("4 mm and 4.5 mm needles", false, "4 mm (US 6, UK 8) and 4.5 mm (US 7, UK 7) needles")]
    [InlineData("US 7 (4.5 mm) needles", false, "US 7 (4.5 mm) needles")]
    [InlineData("US 7 needles", false, "US 7 (4.5 mm) needles")]
    [InlineData("US 1 needles", false, "US 1 needles")]
    [InlineData("4 mm hook", false, "4 mm (US G-6, UK 8) hook")]
    [InlineData("5 mm", true, "5 mm (US H-8, UK 6)")]
    [InlineData("size 8 needles", false, "size 8 needles")]
    [InlineData("8 mm safety eyes", true, "8 mm safety eyes")]
    [InlineData("a cable needle", false, "a cable needle")]
    public void A_size_that_is_typed_once_is_told_with_its_other_names(string typed, bool isCrochet, string printed) => Assert.Equal(printed, ToolNames.Add(typed, isCrochet));
}
