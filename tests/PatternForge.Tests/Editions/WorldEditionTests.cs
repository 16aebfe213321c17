using System.Globalization;
using System.Text.Json;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Editions;

/// <summary>The published and traditional crochet of tests/world (its sources stand in the data files) in the other terms: the counts are the handbooks', and the way back gives the same rows.</summary>
public class WorldEditionTests
{
    public static TheoryData<string, string> Patterns
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var pattern in Read("crochet-stitch-patterns.json"))
            {
                foreach (var worked in pattern.GetProperty("worked").EnumerateArray())
                {
                    List<string> rows = worked.TryGetProperty("foundation", out var chain)
                        ? [$"Ch {chain.GetInt32()}."]
                        : [string.Create(CultureInfo.InvariantCulture, $"Ch {worked.GetProperty("base").GetInt32() + 1}."), "Sc in 2nd ch from hook and in each ch across."];
                    rows.AddRange(pattern.GetProperty("rows").EnumerateArray().Select(r => r.GetString()!));
                    data.Add($"{pattern.GetProperty("name").GetString()}, {worked.GetProperty("repeats").GetInt32()} repeats", Source(rows.Select((text, i) => i == 0 ? text : $"Row {i}: {text}")));
                }
            }

            foreach (var motif in Read("crochet-rounds.json"))
            {
                var rounds = motif.GetProperty("rounds").EnumerateArray().Select((r, i) => $"Rnd {i + 1}: {r.GetString()}");
                data.Add(motif.GetProperty("name").GetString()!, Source(motif.GetProperty("start").GetString() is { Length: > 0 } start ? rounds.Prepend(start) : rounds));
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Patterns))]
    public void A_pattern_of_the_handbooks_has_the_same_counts_in_British_terms_and_the_same_rows_back_again(string name, string text)
    {
        var plain = EditionsOf.Compile(text);
        Assert.True(plain.Lines.All(l => l.Status == LineStatus.Checked), name);
        var british = EditionsOf.In(plain, "uk");
        Assert.Equal("", EditionsOf.Differences(plain, british));
        Assert.Equal(plain.Lines.SelectMany(l => l.After), british.Compilation!.Lines.SelectMany(l => l.After));
        Assert.DoesNotContain(british.Compilation.Findings, f => f.Rule.Code == "PF402");

        var back = EditionsOf.In(british.Compilation, "us");
        Assert.Equal("", EditionsOf.Differences(british.Compilation, back));
        Assert.Equal(Plainly(text), Plainly(back.Source.Text.Text));
    }

    [Fact]
    public void Every_stitch_that_both_sides_name_comes_back_as_itself()
    {
        var lost = new List<string>();
        foreach (var operation in OperationTable.All(Craft.Crochet))
        {
            foreach (var name in operation.Names.Where(n => n.Dialect == Dialect.Us).Select(n => n.Text))
            {
                if (OperationTable.Counterpart(operation, name, Dialect.Uk) is { } british && OperationTable.Find(Craft.Crochet, Dialect.Uk, british)?.Id != operation.Id)
                {
                    lost.Add($"{name} > {british}");
                }
            }
        }

        Assert.Empty(lost);
    }

    // One of two words for passing over a stitch, and blanks, may come back in another spelling.
    private static string Plainly(string text) =>
        string.Join(' ', text.ToLowerInvariant().Replace("half double crochet", "hdc", StringComparison.Ordinal).Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(w => w is "sk" ? "skip" : w));

    private static JsonElement[] Read(string file) => [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", file))).RootElement.EnumerateArray()];

    private static string Source(IEnumerable<string> lines) => $"---\ntitle: Piece\ncraft: crochet\nterms: us\n---\n\n## Piece\n\n{string.Join("\n\n", lines)}\n";
}
