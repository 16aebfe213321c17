using System.Globalization;
using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.World;

/// <summary>Every traditional knitted stitch pattern as a section of its own, worked by its name from a piece.</summary>
public class NamedStitchPatternTests
{
    private const int Repeats = 3;

    private static readonly Lazy<JsonElement[]> Patterns = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "knit-stitch-patterns.json"))).RootElement.EnumerateArray()]);

    public static TheoryData<string> All() => [.. Patterns.Value.Select(p => p.GetProperty("name").GetString()!)];

    [Theory]
    [MemberData(nameof(All))]
    public void A_traditional_pattern_is_worked_by_its_name_over_three_repeats(string name)
    {
        var (heading, called, multiple, plus, rows) = Find(name);
        var start = (multiple * Repeats) + plus;
        var after = WorkedPiece.Work(name, start, rows)[^1].After[0];

        var compiled = Compile(heading, rows, start, string.Create(CultureInfo.InvariantCulture, $"Work Rows 1-{rows.Length} of {called}."));

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.All(compiled.Lines, line => Assert.Equal(LineStatus.Checked, line.Status));
        Assert.Equal(after, compiled.Lines[^1].After[0]);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Between_edge_stitches_its_first_row_is_worked_by_name(string name)
    {
        var (heading, called, multiple, plus, rows) = Find(name);
        var width = (multiple * Repeats) + plus;
        var after = WorkedPiece.Work(name, width, rows)[0].After[0] + 6;

        var compiled = Compile(heading, rows, width + 6, string.Create(CultureInfo.InvariantCulture, $"Row 1: K3, work Row 1 of {called} over next {width} sts, k3."));

        Assert.DoesNotContain(compiled.Findings, f => f.Severity == Severity.Error);
        Assert.Equal(after, compiled.Lines[^1].After[0]);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Over_one_stitch_more_it_does_not_fit(string name)
    {
        var (heading, called, multiple, plus, rows) = Find(name);
        if (multiple == 1)
        {
            return;
        }

        var compiled = Compile(heading, rows, (multiple * Repeats) + plus + 1, string.Create(CultureInfo.InvariantCulture, $"Work Rows 1-{rows.Length} of {called}."));

        Assert.Equal("PF317", Assert.Single(compiled.Findings, f => f.Severity == Severity.Error).Rule.Code);
    }

    private static (string Heading, string Called, int Multiple, int Plus, string[] Rows) Find(string name)
    {
        var pattern = Patterns.Value.Single(p => p.GetProperty("name").GetString() == name);
        var called = name.Split(['(', ',', '='])[0].Trim();
        var (multiple, plus) = (pattern.GetProperty("multiple").GetInt32(), pattern.GetProperty("plus").GetInt32());
        var fits = multiple == 0 ? $"panel of {plus} sts" : $"multiple of {multiple}{(plus == 0 ? "" : $" + {plus}")}";
        return ($"## {called} ({fits})", called, multiple, plus, [.. pattern.GetProperty("rows").EnumerateArray().Select(r => r.GetString()!)]);
    }

    private static Compilation Compile(string heading, string[] rows, int stitches, string instruction)
    {
        var lines = rows.Select((text, i) => $"Row {i + 1}: {text}");
        return Compiler.Compile(new SourceText("piece.pattern.md", $"---\ntitle: Piece\ncraft: knitting\n---\n\n{heading}\n\n{string.Join("\n\n", lines)}\n\n## Scarf\n\nCast on {stitches} sts.\n\n{instruction}\n"));
    }
}
