using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.World;

public class CrochetStitchPatternTests
{
    private static readonly Lazy<JsonElement[]> Patterns = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "crochet-stitch-patterns.json"))).RootElement.EnumerateArray()]);

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
    public void A_traditional_pattern_gives_the_handbooks_stitches_and_chains(string name, int repeats)
    {
        var (pattern, worked) = Find(name, repeats);

        var compiled = Compile(pattern, worked, more: 0);

        var rows = pattern.GetProperty("rows").GetArrayLength();
        var expected = worked.GetProperty("counts").EnumerateArray().Select(c => $"checked {c[0].GetInt32()} sts, {c[1].GetInt32()} chs");
        Assert.Equal(expected, compiled.Lines.TakeLast(rows).Select(line => Tell(compiled, line)));
    }

    [Theory]
    [MemberData(nameof(Worked))]
    public void One_stitch_more_than_a_pattern_asks_for_never_passes_as_sound_where_it_repeats(string name, int repeats)
    {
        var (pattern, worked) = Find(name, repeats);
        if (pattern.GetProperty("multiple").GetInt32() < 2)
        {
            return;
        }

        var compiled = Compile(pattern, worked, more: 1);

        Assert.True(compiled.Findings.Any(f => f.Severity == Severity.Error) || compiled.Lines.Any(line => line.Status != LineStatus.Checked), name);
    }

    private static (JsonElement Pattern, JsonElement Worked) Find(string name, int repeats)
    {
        var pattern = Patterns.Value.Single(p => p.GetProperty("name").GetString() == name);
        return (pattern, pattern.GetProperty("worked").EnumerateArray().Single(w => w.GetProperty("repeats").GetInt32() == repeats));
    }

    private static Compilation Compile(JsonElement pattern, JsonElement worked, int more)
    {
        var rows = pattern.GetProperty("rows").EnumerateArray().Select(r => r.GetString()!);
        List<string> body = worked.TryGetProperty("foundation", out var chain)
            ? [$"Ch {chain.GetInt32() + more}."]
            : [$"Ch {worked.GetProperty("base").GetInt32() + 1 + more}.", "Sc in 2nd ch from hook and in each ch across."];
        body.AddRange(rows);
        var lines = body.Select((text, i) => i == 0 ? text : $"Row {i}: {text}");
        return Compiler.Compile(new SourceText("piece.pattern.md", $"---\ntitle: Piece\ncraft: crochet\nterms: us\n---\n\n## Piece\n\n{string.Join("\n\n", lines)}\n"));
    }

    private static string Tell(Compilation compiled, WorkedLine line)
    {
        var chains = line.Kinds.IsDefaultOrEmpty ? 0 : line.Kinds[0].Where(k => k.Key.EndsWith(" sp", StringComparison.Ordinal)).Sum(k => int.Parse(k.Key[3..^3], System.Globalization.CultureInfo.InvariantCulture) * k.Value);
        var errors = compiled.Findings.Where(f => f.Severity == Severity.Error && line.Origin.Contains(f.Span)).Select(f => $"; {f.Rule.Code} {f.Message}");
        return $"{line.Status.ToString().ToLowerInvariant()} {line.After[0]} sts, {chains} chs{string.Concat(errors)}";
    }
}
