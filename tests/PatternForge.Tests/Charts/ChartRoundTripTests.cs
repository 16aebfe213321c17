using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Charts;

/// <summary>The words made of a chart give the same chart again: for every traditional stitch pattern in <c>tests/world</c>.</summary>
public class ChartRoundTripTests
{
    private static readonly Lazy<JsonElement[]> Patterns = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "knit-stitch-patterns.json"))).RootElement.EnumerateArray()]);

    public static TheoryData<string> All() => [.. Patterns.Value.Select(p => p.GetProperty("name").GetString()!)];

    [Theory]
    [MemberData(nameof(All))]
    public void Words_made_of_a_chart_give_the_same_chart_and_no_finding(string name)
    {
        var pattern = Patterns.Value.Single(p => p.GetProperty("name").GetString() == name);
        var (multiple, plus) = (pattern.GetProperty("multiple").GetInt32(), pattern.GetProperty("plus").GetInt32());
        var called = name.Split(['(', ',', '='])[0].Trim();
        var heading = $"## {called} ({(multiple == 0 ? $"panel of {plus} sts" : $"multiple of {multiple}{(plus > 0 ? $" + {plus}" : "")}")})";
        var chart = Assert.Single(Compile(heading, pattern.GetProperty("rows").EnumerateArray().Select((r, i) => $"Row {i + 1}: {r.GetString()}")).Charts);

        // What is drawn in several repeats, because they reach into one another, has no words for just one.
        if (chart.Repeat is null && multiple > 0)
        {
            heading = $"## {called} (panel of {chart.Rows[0].Cells.Sum(c => c.Operation?.Takes ?? 0)} sts)";
        }

        var again = Compile(heading, chart.Rows.Select(r => ChartWords.Row(r, chart, Dialect.Us)));

        Assert.DoesNotContain(again.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(Squares(chart), Squares(Assert.Single(again.Charts)));
    }

    private static string Squares(Chart chart) => string.Join('\n', chart.Rows.Select(r => $"{r.Number} {r.Side} " + string.Join(' ', r.Cells.Select(c => $"{c.Operation?.Id ?? "."}@{c.Column}"))));

    private static Compilation Compile(string heading, IEnumerable<string> rows) =>
        Compiler.Compile(new SourceText("chart.pattern.md", $"---\ntitle: Harbour sampler\n---\n\n{heading}\n\n{string.Join("\n\n", rows)}\n"));
}
