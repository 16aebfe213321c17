using PatternForge.Core.Work;

namespace PatternForge.Tests.Corpus;

public class ExampleTests
{
    public static TheoryData<string> Examples => [.. PatternFiles.In("examples")];

    public static TheoryData<string> Faulty => [.. PatternFiles.In("examples", "faulty")];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Nothing_is_found_in_an_example(string name)
    {
        Assert.Equal("", PatternFiles.Tell(PatternFiles.Compile("examples", name)));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_instruction_line_of_an_example_is_checked(string name)
    {
        var compilation = PatternFiles.Compile("examples", name);

        Assert.Equal("", PatternFiles.NotChecked(compilation));
        Assert.True(compilation.Coverage.Instructions >= 10);
    }

    [Theory]
    [MemberData(nameof(Faulty))]
    public void A_copy_with_a_planted_mistake_gets_the_finding_that_stands_beside_it(string name)
    {
        var told = PatternFiles.Tell(PatternFiles.Compile("examples", "faulty", name));

        Assert.NotEqual("", told);
        Golden.MatchBeside(told, RepositoryRoot.Path("examples", "faulty", name.Replace(".pattern.md", ".expected.txt", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_planted_mistake_is_told_once()
    {
        var many = PatternFiles.In("examples", "faulty")
            .Select(name => (name, PatternFiles.Compile("examples", "faulty", name).Findings.Length))
            .Where(f => f.Length != 1)
            .Select(f => f.name);

        // A tab makes its line unreadable as well.
        Assert.Equal(["scarf-tab-in-header.pattern.md"], many);
    }

    [Fact]
    public void The_mistakes_are_of_many_kinds()
    {
        var codes = PatternFiles.In("examples", "faulty").SelectMany(name => PatternFiles.Compile("examples", "faulty", name).Findings.Select(f => f.Rule.Code)).Distinct(StringComparer.Ordinal);

        Assert.True(codes.Count() >= 30, string.Join(", ", codes));
    }

    [Fact]
    public void Every_expectation_has_its_pattern()
    {
        foreach (var folder in (string[][])[["examples", "faulty"], ["tests", "corpus", "faulty"]])
        {
            var expectations = Directory.EnumerateFiles(RepositoryRoot.Path(folder), "*.expected.txt").Select(f => Path.GetFileName(f).Replace(".expected.txt", ".pattern.md", StringComparison.Ordinal));
            Assert.Empty(expectations.Except(PatternFiles.In(folder), StringComparer.Ordinal));
        }
    }

    // The arithmetic of the designs, done by hand beside the file: eight wedges lose a stitch each, 88 - 8 = 80, then 5 times 8 more, then 4 rounds of 8.
    [Fact]
    public void The_hat_comes_down_to_forty_stitches_and_then_to_eight_in_every_size()
    {
        var lines = PatternFiles.Compile("examples", "ostrey-light-hat.pattern.md").Lines;

        Assert.Equal([88, 96, 104, 112, 120], After(lines, "Set-up rnd"));
        Assert.Equal([80, 88, 96, 104, 112], After(lines, "Dec rnd"));
        Assert.Equal([40, 40, 40, 40, 40], Ends(lines.Single(l => l.Text.StartsWith("Rep last 2 rnds", StringComparison.Ordinal))));
        Assert.Equal([8, 8, 8, 8, 8], Ends(lines.Single(l => l.Text.StartsWith("Rep Dec rnd", StringComparison.Ordinal))));
    }

    // Three edge stitches on either side, 5 (9) repeats of 8, and 1: 47 (79).
    [Fact]
    public void The_scarf_keeps_its_stitches_in_every_row_of_the_lace()
    {
        var rows = PatternFiles.Compile("examples", "tidewrack-scarf.pattern.md").Lines.Where(l => l.Piece == "Lace").ToArray();

        Assert.Equal(9, rows.Length);
        Assert.All(rows, row => Assert.Equal([47, 79], Ends(row)));
    }

    // Six wedges: 6 stitches in the ring, 6 more a round up to 30 and, behind the neck, to 36; then 6 fewer a round down to 6.
    [Fact]
    public void The_seal_grows_to_thirty_six_stitches_and_comes_down_to_six()
    {
        var body = PatternFiles.Compile("examples", "skerry-seal-pup.pattern.md").Lines.Where(l => l.Piece == "Body" && l.Label is { Length: > 0 });

        Assert.Equal([6, 12, 18, 24, 30, 30, 24, 30, 36, 36, 30, 30, 24, 24, 18, 18, 12, 6], body.SelectMany(Ends));
    }

    // 8 (12, 18) repeats of 6 stitches and 1: 49 (73, 109). Of meshes there are three a repeat, and one post more: 25 (37, 55); of shells one a repeat, with
    // four stitches and a post each, and one post more: 41 (61, 91).
    [Fact]
    public void The_net_loft_scarf_has_three_meshes_or_one_shell_to_a_repeat()
    {
        var lines = PatternFiles.Compile("examples", "net-loft-scarf.pattern.md").Lines.Where(l => l.Piece == "Mesh and shells").ToArray();

        Assert.Equal([25, 37, 55], After(lines, "Row 3"));
        Assert.Equal([41, 61, 91], After(lines, "Row 5"));
        Assert.Equal([25, 37, 55], After(lines, "Row 6"));
        Assert.Equal([25, 37, 55], Ends(lines[^1]));
    }

    // A side of a motif has 19 stitches: 6 of each corner group, 9 between them, and 2 more at either end. Along c by r motifs there are 19 stitches to each
    // and 2 corner spaces to each join, 21c - 2 and 21r - 2, and 2 more in each corner: 42 times c + r in all, which is 14 (18, 26).
    [Fact]
    public void The_border_of_the_blanket_has_forty_two_stitches_for_every_motif_along_two_sides()
    {
        var lines = PatternFiles.Compile("examples", "porthole-blanket.pattern.md").Lines;
        var border = lines.Where(l => l.Piece == "Border").ToArray();

        Assert.Equal([4 * 19, 4 * 19, 4 * 19], After(lines, "Rnd 5"));
        Assert.Equal([42 * 14, 42 * 18, 42 * 26], After(border, "Rnd 1"));
        Assert.Equal([588 + 16, 756 + 16, 1092 + 16], After(border, "Rnd 2"));
        Assert.Equal([604 + 12, 772 + 12, 1108 + 12], After(border, "Rnd 3"));
    }

    private static int?[] After(IEnumerable<WorkedLine> lines, string label) => Ends(lines.Single(l => l.Label == label));

    private static int?[] Ends(WorkedLine line) => [.. line.After];
}
