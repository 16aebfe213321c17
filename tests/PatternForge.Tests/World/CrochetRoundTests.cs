using System.Globalization;
using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.World;

/// <summary>Traditional motifs in the round, checked round by round against the counts of their rule; the source of each stands in the data file.</summary>
public class CrochetRoundTests
{
    private static readonly Lazy<JsonElement[]> Motifs = new(() =>
        [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", "crochet-rounds.json"))).RootElement.EnumerateArray()]);

    public static TheoryData<string> All() => [.. Motifs.Value.Select(m => m.GetProperty("name").GetString()!)];

    [Theory]
    [MemberData(nameof(All))]
    public void A_traditional_motif_gives_the_counts_of_its_rule(string name)
    {
        var motif = Motifs.Value.Single(m => m.GetProperty("name").GetString() == name);
        string[] rounds = [.. motif.GetProperty("rounds").EnumerateArray().Select(r => r.GetString()!)];

        var compiled = Compile(motif, rounds);

        Assert.Equal(motif.GetProperty("counts").EnumerateArray().Select(c => $"Checked {Tell(c)}"), compiled.Lines.TakeLast(rounds.Length).Select(line => Tell(compiled, line)));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_round_left_out_never_passes_as_sound(string name)
    {
        var motif = Motifs.Value.Single(m => m.GetProperty("name").GetString() == name);
        string[] rounds = [.. motif.GetProperty("rounds").EnumerateArray().Zip(motif.GetProperty("counts").EnumerateArray(), (round, count) => $"{round.GetString()} ({Tell(count)})")];

        var compiled = Compile(motif, [.. rounds.Where((_, i) => i != 1)]);

        Assert.True(compiled.Findings.Any(f => f.Severity == Severity.Error) || compiled.Lines.Any(line => line.Status != LineStatus.Checked), name);
    }

    private static Compilation Compile(JsonElement motif, string[] rounds)
    {
        var start = motif.GetProperty("start").GetString()!;
        var lines = rounds.Select((text, i) => string.Create(CultureInfo.InvariantCulture, $"Rnd {i + 1}: {text}"));
        return Compiler.Compile(new SourceText("piece.pattern.md", $"---\ntitle: Piece\ncraft: crochet\nterms: us\n---\n\n## Piece\n\n{string.Join("\n\n", start.Length > 0 ? lines.Prepend(start) : lines)}\n"));
    }

    private static string Tell(JsonElement counts) =>
        string.Join(", ", counts.EnumerateObject().OrderBy(c => c.Name, StringComparer.Ordinal).Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Value.GetInt32()} {c.Name}{(c.Name.EndsWith("sp", StringComparison.Ordinal) ? "s" : "")}")));

    private static string Tell(Compilation compiled, WorkedLine line)
    {
        var kinds = line.Kinds.IsDefaultOrEmpty ? $"{line.After[0]} {line.Kind}" : string.Join(", ", line.Kinds[0].OrderBy(k => k.Key, StringComparer.Ordinal).Select(k => $"{k.Value} {k.Key}{(k.Key.EndsWith("sp", StringComparison.Ordinal) ? "s" : "")}"));
        return $"{line.Status} {kinds}{string.Concat(compiled.Findings.Where(f => f.Severity == Severity.Error && line.Origin.Contains(f.Span)).Select(f => $"; {f.Rule.Code} {f.Message}"))}";
    }
}
