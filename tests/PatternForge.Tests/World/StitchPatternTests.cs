using System.Text.Json;

namespace PatternForge.Tests.World;

/// <summary>Traditional stitch patterns, checked against the counts that handbooks give row by row; the source of each stands in the data file.</summary>
public class StitchPatternTests
{
    private static readonly Lazy<JsonElement[]> Patterns = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "knit-stitch-patterns.json"))).RootElement.EnumerateArray()]);

    public static TheoryData<string, int> Worked()
    {
        var data = new TheoryData<string, int>();
        foreach (var pattern in Patterns.Value)
        {
            foreach (var worked in pattern.GetProperty("worked").EnumerateArray())
            {
                data.Add(pattern.GetProperty("name").GetString()!, worked.GetProperty("repeats").GetInt32());
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Worked))]
    public void A_traditional_pattern_gives_the_handbooks_counts(string name, int repeats)
    {
        var pattern = Patterns.Value.Single(p => p.GetProperty("name").GetString() == name);
        string[] rows = [.. pattern.GetProperty("rows").EnumerateArray().Select(r => r.GetString()!)];
        var start = (pattern.GetProperty("multiple").GetInt32() * repeats) + pattern.GetProperty("plus").GetInt32();
        int[] counts = [.. pattern.GetProperty("worked").EnumerateArray().Single(w => w.GetProperty("repeats").GetInt32() == repeats).GetProperty("counts").EnumerateArray().Select(c => c.GetInt32())];
        Assert.Equal(start, counts[0]);

        var outcomes = WorkedPiece.Work(name, start, rows);

        var expected = rows.Select((_, i) => $"checked {(counts.Length == 1 ? counts[0] : counts[i + 1])}");
        Assert.Equal(expected, outcomes.Select(WorkedPiece.Tell));
    }

    [Theory]
    [MemberData(nameof(Worked))]
    public void Two_stitches_more_than_a_pattern_asks_for_never_pass_as_sound_where_it_repeats(string name, int repeats)
    {
        var pattern = Patterns.Value.Single(p => p.GetProperty("name").GetString() == name);
        var multiple = pattern.GetProperty("multiple").GetInt32();
        string[] rows = [.. pattern.GetProperty("rows").EnumerateArray().Select(r => r.GetString()!)];
        if (multiple < 3 || !rows[0].Contains("rep from", StringComparison.Ordinal))
        {
            return;
        }

        var outcomes = WorkedPiece.Work(name, (multiple * repeats) + pattern.GetProperty("plus").GetInt32() + 2, rows);

        Assert.False(outcomes[0].IsChecked && !outcomes[0].HasErrors, WorkedPiece.Tell(outcomes[0]));
    }
}
