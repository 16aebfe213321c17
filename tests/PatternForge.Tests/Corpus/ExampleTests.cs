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
        Assert.True(compilation.Coverage.Instructions > 10);
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

    private static int?[] After(IEnumerable<WorkedLine> lines, string label) => Ends(lines.Single(l => l.Label == label));

    private static int?[] Ends(WorkedLine line) => [.. line.After];
}
