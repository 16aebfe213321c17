using System.Globalization;
using System.Text.Json;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Tests.World;

/// <summary>Every traditional motif and stitch pattern of the data files as a diagram: which there are, and that no two stitches of them stand on each other.</summary>
public class CrochetDiagramWorldTests
{
    // Heads nearer than this run into each other; the symbols are nine units wide.
    private const double Apart = 8;

    public static TheoryData<string> All() => [.. Sources().Keys];

    [Fact]
    public void Every_motif_and_pattern_of_the_data_files_is_drawn()
    {
        string[] missing = [.. Sources().Where(s => Diagrams(s.Value) is not [var only] || Draw(only) is null).Select(s => s.Key)];
        Assert.Empty(missing);
        Assert.True(Sources().Count > 30);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void No_two_stitches_are_nearer_than_a_set_distance(string name)
    {
        var layout = DiagramLayout.Of(Assert.Single(Diagrams(Sources()[name])));
        var heads = layout.Marks.Where(m => m.Stitch is { Mark: DiagramMark.Stitch, Bases: not [{ Kind: DiagramPlace.OwnFirst }] } or { Mark: DiagramMark.TurningChain, Counts: true }).ToArray();
        for (var i = 0; i < heads.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                Assert.True(heads[i].Head.DistanceTo(heads[j].Head) >= Apart, $"row {heads[i].Row + 1} and row {heads[j].Row + 1} are {heads[i].Head.DistanceTo(heads[j].Head):0.0} apart");
            }
        }
    }

    private static SortedDictionary<string, string[]> Sources()
    {
        var sources = new SortedDictionary<string, string[]>(StringComparer.Ordinal);
        foreach (var motif in Read("crochet-rounds.json"))
        {
            var rounds = motif.GetProperty("rounds").EnumerateArray().Select((r, i) => string.Create(CultureInfo.InvariantCulture, $"Rnd {i + 1}: {r.GetString()}"));
            sources["motif: " + motif.GetProperty("name").GetString()] = [.. new[] { motif.GetProperty("start").GetString()! }.Where(s => s.Length > 0), .. rounds];
        }

        foreach (var pattern in Read("crochet-stitch-patterns.json"))
        {
            var worked = pattern.GetProperty("worked").EnumerateArray().First();
            string[] start = worked.TryGetProperty("foundation", out var chain)
                ? [$"Ch {chain.GetInt32()}."]
                : [$"Ch {worked.GetProperty("base").GetInt32() + 1}.", "Sc in 2nd ch from hook and in each ch across."];
            sources["pattern: " + pattern.GetProperty("name").GetString()] = [.. start.Concat(pattern.GetProperty("rows").EnumerateArray().Select(r => r.GetString()!)).Select((t, i) => i == 0 ? t : $"Row {i}: {t}")];
        }

        return sources;
    }

    private static JsonElement[] Read(string file) => [.. JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Path("tests", "world", file))).RootElement.EnumerateArray()];

    private static CrochetDiagram[] Diagrams(string[] lines) =>
        [.. Compiler.Compile(new SourceText("piece.pattern.md", $"---\ntitle: Piece\ncraft: crochet\nterms: us\n---\n\n## Piece\n\n{string.Join("\n\n", lines)}\n\n```chart\n```\n")).Diagrams];

    private static Drawing? Draw(CrochetDiagram diagram) => DiagramDrawing.Of(diagram, "chart", Dialect.Us, SizeSet.One, "The rows.");
}
