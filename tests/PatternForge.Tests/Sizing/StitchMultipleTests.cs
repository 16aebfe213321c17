using PatternForge.Core;
using PatternForge.Core.Sizing;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Sizing;

/// <summary>Counts that are proposed for a new size keep to the stitch pattern of their section, and to no other.</summary>
public class StitchMultipleTests
{
    private const string Pattern = """
        ---
        title: Harbour pullover
        sizes: S (M, L)
        numbers:
          hem: 82 (90, 94)
        ---

        ## Back

        CO {0} sts.

        Row 1 (RS): K2, *p2, k2; rep from * to end.

        Row 2 (WS): P2, *k2, p2; rep from * to end. (82 (90, 94) sts)

        ## Front

        CO 60 (70, 80) sts.

        Row 1 (RS): Knit. (60 (70, 80) sts)
        """;

    [Theory]
    [InlineData("82 (90, 94)")]
    [InlineData("{hem}")]
    public void A_count_of_ribbing_stays_a_multiple_with_its_edge_stitches(string castOn)
    {
        var plain = Compiler.Compile(new SourceText("x.pattern.md", Pattern.Replace("{0}", castOn, StringComparison.Ordinal)));
        var added = SizeAdder.Add(plain, new SizeWish("ML") { After = "M" });

        Assert.Null(added.Refusal);
        Assert.False(added.HasErrors, string.Join('\n', added.Findings.Select(f => f.Message)));
        Assert.All(added.Changes.Where(c => c.Before == "82 (90, 94)" && (castOn == "{hem}" || c.What != "numbers.hem")), c => Assert.True(c.Value is "90" or "94", c.Value));
        Assert.Equal(2, added.Changes.Count(c => c is { Kind: SizeChangeKind.Proposed, Value: "75" }));
    }
}
