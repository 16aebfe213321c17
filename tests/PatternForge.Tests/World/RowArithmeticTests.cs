using System.Text.Json;

namespace PatternForge.Tests.World;

/// <summary>Worked examples of the trade's arithmetic as far as they are rows: common practice, each recomputed.</summary>
public class RowArithmeticTests
{
    private static readonly Lazy<JsonElement[]> Examples = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "row-arithmetic.json"))).RootElement.EnumerateArray()]);

    public static TheoryData<string, string> All()
    {
        var data = new TheoryData<string, string>();
        foreach (var example in Examples.Value)
        {
            data.Add(example.GetProperty("id").GetString()!, example.GetProperty("about").GetString()!);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_worked_example_comes_out_as_it_should(string id, string about)
    {
        var example = Examples.Value.Single(e => e.GetProperty("id").GetString() == id);
        string[] rows = [.. example.GetProperty("rows").EnumerateArray().Select(r => r.GetString()!)];
        var expected = example.GetProperty("counts").EnumerateArray().Select(c => $"checked {c.GetInt32()}");

        var outcomes = WorkedPiece.Work(about, example.GetProperty("start").GetInt32(), rows, example.GetProperty("round").GetBoolean());

        Assert.Equal(expected, outcomes.Select(WorkedPiece.Tell));
    }

    // 151 to 132 is 19, an odd number: no paired decrease gets there. Common practice.
    [Fact]
    public void Paired_decreases_never_reach_a_count_of_the_other_parity()
    {
        var outcome = WorkedPiece.Work("a taper", 151, ["Knit.", "Dec 1 st at each end of next and every foll alt row until 132 sts rem."])[1];
        Assert.Contains(outcome.Findings, f => f.Severity == Core.Findings.Severity.Error && f.Area == Core.Findings.Area.Counts);
    }

    // Four decreases spread evenly over a round need 88 or 92 stitches, not 90. Common practice.
    [Fact]
    public void Ninety_stitches_do_not_divide_by_twenty_two()
    {
        var outcome = WorkedPiece.Work("a round", 90, ["*K20, k2tog; rep from * around."], inTheRound: true)[0];
        var error = Assert.Single(outcome.Findings, f => f.Severity == Core.Findings.Severity.Error);
        Assert.Equal(Core.Findings.Area.Counts, error.Area);
        Assert.Contains("90", error.Message, StringComparison.Ordinal);
        Assert.Contains("22", error.Message, StringComparison.Ordinal);
    }
}
