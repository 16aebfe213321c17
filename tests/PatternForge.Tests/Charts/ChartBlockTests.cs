using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Charts;

/// <summary>Chart from rows and rows from chart are inverse: every traditional stitch pattern of <c>tests/world</c>, drawn, typed as a block and read again, is the same operations in each row.</summary>
public class ChartBlockTests
{
    private static readonly Lazy<JsonElement[]> Patterns = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "knit-stitch-patterns.json"))).RootElement.EnumerateArray()]);

    /// <summary>Those whose squares cannot be typed, and why.</summary>
    private static readonly Dictionary<string, string> NotTyped = new(StringComparer.Ordinal)
    {
        ["trinity stitch"] = "(k1, p1, k1) in next st is several stitches in words",
        ["chevron (knit ripple)"] = "(k1, yo, k1) in next st is several stitches in words",
    };

    public static TheoryData<string> All() => [.. Patterns.Value.Select(p => p.GetProperty("name").GetString()!)];

    [Theory]
    [MemberData(nameof(All))]
    public void A_chart_typed_as_a_block_is_the_same_operations_in_every_row(string name)
    {
        var pattern = Patterns.Value.Single(p => p.GetProperty("name").GetString() == name);
        var (multiple, plus) = (pattern.GetProperty("multiple").GetInt32(), pattern.GetProperty("plus").GetInt32());
        var called = name.Split(['(', ',', '='])[0].Trim();
        var heading = $"## {called} ({(multiple == 0 ? $"panel of {plus} sts" : $"multiple of {multiple}{(plus > 0 ? $" + {plus}" : "")}")})";
        var rows = string.Join("\n\n", pattern.GetProperty("rows").EnumerateArray().Select((r, i) => $"Row {i + 1}: {r.GetString()}"));
        var chart = Assert.Single(Compile($"{heading}\n\n{rows}").Charts);
        var (block, reason) = ChartBlock.Of(chart);
        if (block is null)
        {
            Assert.Equal(NotTyped.GetValueOrDefault(name), reason);
            return;
        }

        Assert.DoesNotContain(name, NotTyped.Keys);
        if (chart.Repeat is null && multiple > 0)
        {
            heading = $"## {called} (panel of {chart.Rows[0].Cells.Sum(c => c.Operation?.Takes ?? 0)} sts)"; // drawn in several repeats that reach into one another
        }

        var again = Compile($"{heading}\n\n{block}");

        Assert.DoesNotContain(again.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(Operations(chart), Operations(Assert.Single(again.Charts)));
    }

    [Fact]
    public void Where_the_yarn_lies_at_a_slipped_stitch_is_told_apart_and_turned_round_on_the_wrong_side()
    {
        var chart = Assert.Single(Compile("## Linen (multiple of 2 + 1)\n\nRow 1 (RS): K1, *sl 1 wyif, k1; rep from * to end.\n\nRow 2: P2, *sl 1 wyib, p1; rep from * to last st, p1.\n\nRow 3: K1, *ytf, sl 1, yb, k1; rep from * to end.\n\nRow 4: P1, *wyif sl 1, p1; rep from * to end.\n").Charts);

        Assert.Equal(
            ["sl wyif", "sl wyib", "sl wyif", "sl wyif"],
            chart.Rows.Select(r => r.Cells.First(c => c.Operation?.Family == Core.Stitches.Family.Slip).Operation!.Id));
        Assert.Equal(["slip-front", "slip-front", "slip-front", "slip"], chart.Rows.Select(r => StitchLook.Of(r.Cells.First(c => c.Operation?.Family == Core.Stitches.Family.Slip).Operation!, r.Side)));
        Assert.Contains("sl 1 wyif, k1", ChartWords.Row(chart.Rows[0], chart, Core.Stitches.Dialect.Us), StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_nobody_knows_is_told_once_however_often_it_stands_in_the_squares()
    {
        var compiled = Compile("## Ladder\n\nCO 4 sts.\n\n```chart\nkey: . = k, x = yoo\n  . x x .   2\n  . x . .   1\n```\n");

        Assert.Equal(["nobody knows a stitch called `yoo`"], compiled.Findings.Where(f => f.Severity >= Severity.Warning && f.Rule.Code is "PF240" or "PF241" or "PF242").Select(f => f.Message));
    }

    private static string Operations(Chart chart) => string.Join('\n', chart.Rows.Select(r => $"{r.Number} {r.Side} {string.Join(' ', r.InWorkingOrder().Select(c => c.Operation!.Id.Replace("sl1p", "sl", StringComparison.Ordinal)))}"));

    private static Compilation Compile(string body) => Compiler.Compile(new SourceText("chart.pattern.md", $"---\ntitle: Harbour sampler\ncraft: knitting\n---\n\n{body}\n"));
}
