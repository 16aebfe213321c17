using System.Text;
using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Charts;

/// <summary>Charts of the traditional stitch patterns in <c>tests/world</c>, each drawn from its rows.</summary>
public class TraditionalChartTests
{
    private static readonly Lazy<JsonElement[]> Patterns = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "knit-stitch-patterns.json"))).RootElement.EnumerateArray()]);

    [Fact]
    public void Every_traditional_pattern_has_the_chart_that_was_read_and_approved()
    {
        var text = new StringBuilder();
        foreach (var pattern in Patterns.Value)
        {
            var name = pattern.GetProperty("name").GetString()!;
            var (multiple, plus) = (pattern.GetProperty("multiple").GetInt32(), pattern.GetProperty("plus").GetInt32());
            var rows = string.Join("\n\n", pattern.GetProperty("rows").EnumerateArray().Select((r, i) => $"Row {i + 1}: {r.GetString()}"));
            var called = name.Split(['(', ',', '='])[0].Trim();
            var fits = multiple == 0 ? $"panel of {plus} sts" : $"multiple of {multiple}{(plus > 0 ? $" + {plus}" : "")}";
            var compiled = Compiler.Compile(new SourceText("chart.pattern.md", $"---\ntitle: Harbour sampler\n---\n\n## {called} ({fits})\n\n{rows}\n"));
            text.Append($"{name}, multiple of {multiple} + {plus}\n\n{(compiled.Charts is [var chart] ? ChartText.Of(chart) : "not drawn\n")}\n");
        }

        Golden.Match(text.ToString(), "charts/traditional.txt");
    }
}
