using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Sizing;
using PatternForge.Core.Text;
using PatternForge.Tests.Corpus;

namespace PatternForge.Tests.Sizing;

public class SizeAdderTests
{
    private const string Vest = """
        ---
        title: Quay Vest
        sizes:
          names: S (M, L)
          finished: {bust: 80 (90, 100) cm}
        gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm
        numbers:
          front: = round(sts(bust / 2), even)
          hem: [6, 6, 8]
          pocket:
            S: 20
            M: 22
            L: 24
          tabs:
            - 3
            - 4
            - 5
        ---

        ## Back

        CO {front} sts.

        Row 1: K2 (3, 4), p to end. 80 (90, 100) sts.

        Sizes S and M only: Next row: K2tog, k to end. 79 (89) sts.

        2nd and 3rd sizes only: Next row: Knit.
        """;

    [Fact]
    public void Every_list_has_a_value_for_the_new_size()
    {
        var text = Text(Add(Vest, new("XL")));
        foreach (var part in (string[])["names: S (M, L, XL)", "bust: 80 (90, 100, 110) cm", "[6, 6, 8, 10]", "    L: 24\n    XL: 26\n", "    - 5\n    - 6\n", "K2 (3, 4, 5), p to end. 80 (90, 100, 110) sts."])
        {
            Assert.Contains(part, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_size_before_the_first_opens_the_list_anew()
    {
        var text = Text(Add(Vest, new("XS")));
        foreach (var part in (string[])["names: XS (S, M, L)", "bust: 70 (80, 90, 100) cm", "    XS: 18\n    S: 20\n", "    - 2\n    - 3\n", "K1 (2, 3, 4), p to end. 70 (80, 90, 100) sts.", "3rd and 4th sizes only"])
        {
            Assert.Contains(part, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_follows_what_is_given_what_is_proposed_and_what_is_to_decide_are_told_apart()
    {
        var added = Add(Vest, new("XL") { Given = [("bust", "110 cm")] });
        Assert.Equal(["front", "{front}"], added.Changes.Where(c => c.Kind == SizeChangeKind.Follows).Select(c => c.What));
        Assert.All(added.Changes.Where(c => c.Kind == SizeChangeKind.Follows), c => Assert.Equal("110", c.Value));
        Assert.Equal(["sizes.names", "finished.bust"], added.Changes.Where(c => c.Kind == SizeChangeKind.Given).Select(c => c.What));
        Assert.Equal(["Sizes S and M only", "2nd and 3rd sizes only"], added.Changes.Where(c => c.Kind == SizeChangeKind.Decide).Select(c => c.What));
        Assert.Contains(added.Changes, c => c is { Kind: SizeChangeKind.Proposed, Line: 24, Before: "2 (3, 4)", After: "2 (3, 4, 5)" });
    }

    [Fact]
    public void The_first_measurement_tells_how_far_the_new_size_is()
    {
        var text = Text(Add(Vest, new("XL") { Given = [("finished.bust", "118 cm")] }));
        Assert.Contains("S (M, L, XL)", text, StringComparison.Ordinal);
        Assert.Contains("80 (90, 100, 118) cm", text, StringComparison.Ordinal);
        Assert.Contains("    L: 24\n    XL: 28\n", text, StringComparison.Ordinal); // one step on would be 26
        Assert.Contains("p to end. 80 (90, 100, 118) sts", text, StringComparison.Ordinal); // what {front} casts on
    }

    [Fact]
    public void A_measurement_puts_a_size_in_its_place_and_inches_become_what_the_list_has()
    {
        Assert.Contains("names: S (ML, M, L)", Text(Add(Vest, new("ML") { Given = [("bust", "34 in")] })), StringComparison.Ordinal);
        Assert.Contains("bust: 80 (86.5, 90, 100) cm", Text(Add(Vest, new("ML") { Given = [("bust", "34 in")] })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_span_of_sizes_takes_in_the_one_between()
    {
        var added = Add(Vest.Replace("Sizes S and M only", "Sizes S to M only", StringComparison.Ordinal), new("SM") { After = "S" });
        Assert.Contains("79 (84, 89) sts.", Text(added), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_in_the_new_size_alone_is_found()
    {
        const string Hat = "---\ntitle: Hat\nsizes: S (M, L)\nomit: [ease]\n---\n\n## Hat\n\nCO 12 (36, 120) sts.\n\nRow 1: [K2tog, k2 (4, 8)] 3 (6, 12) times.\n";
        Assert.DoesNotContain(Compiler.Compile(new SourceText("x.pattern.md", Hat)).Findings, f => f.Severity == Severity.Error);
        var finding = Assert.Single(Add(Hat, new("XL")).Findings, f => f.Severity == Severity.Error);
        Assert.Equal("3", string.Join(' ', finding.Sizes));
    }

    [Fact]
    public void A_number_with_which_the_row_comes_out_is_looked_for_and_told_as_such()
    {
        const string Hat = "---\ntitle: Hat\nsizes: S (M, L)\nomit: [ease]\n---\n\n## Hat\n\nCO 20 (24, 30) sts.\n\nRow 1: K2tog 5 (6, 7) times, k to end. 15 (18, 23) sts.\n";
        var added = Add(Hat, new("SM") { After = "S" });
        Assert.DoesNotContain(added.Findings, f => f.Severity == Severity.Error);
        Assert.Contains("K2tog 5 (5, 6, 7) times, k to end. 15 (17, 18, 23) sts.", Text(added), StringComparison.Ordinal);
        Assert.Equal("so that the row comes out; else it would be 6 (as its neighbour: no number between the two is a whole number)", Assert.Single(added.Changes, c => c is { Kind: SizeChangeKind.Decide, Value: "5" }).Why);
    }

    [Fact]
    public void The_shoulders_of_a_sweater_come_out_in_a_larger_size()
    {
        var added = Example("breakwater-pullover", new("XXL"));
        Assert.Empty(added.Findings);
        Assert.Contains("BO 6 (7, 6, 7, 6, 5) sts at beg of next 2 rows. 32 (34, 36, 38, 40, 42) sts.", Text(added), StringComparison.Ordinal);
    }

    // 141 m by what the sample took; the rounds above the birds rise faster than the sizes, so that one step on, 125 m, would leave the maker without yarn.
    [Fact]
    public void The_yarn_of_the_new_size_is_what_its_stitches_take_and_not_one_step_on()
    {
        var added = Example("guillemot-hat", new("XL"));
        Assert.Empty(added.Findings);
        Assert.Contains("needs: 80 (95, 110, 145) m", Text(added), StringComparison.Ordinal);
        Assert.StartsWith("its stitches take 141 m by what the sample took", added.Changes.First(c => c.What == "yarn.needs").Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_margin_that_the_neighbour_has_is_kept()
    {
        const string Scarf = "---\ntitle: Scarf\nsizes: S (M, L)\nyarn: {name: Ledge DK, put-up: 50 g = 100 m, needs: \"110 (220, 330) m\"}\nsample: {size: S, used: 100 m}\n---\n\n## Scarf\n\nCO 20 sts.\n\nRow 1: Knit.\n\nRep Row 1 99 (199, 299) more times.\n";
        var change = Assert.Single(Add(Scarf, new("XL")).Changes, c => c.What == "yarn.needs");
        Assert.Equal(("440", "its stitches take 397 m by what the sample took, and 11 % more as its neighbour has"), (change.Value, change.Why));
    }

    [Fact]
    public void A_table_that_ends_before_the_new_size_is_written_out_and_its_figures_are_to_decide()
    {
        var added = Example("fairwater-jumper", new("6X"));
        Assert.Empty(added.Findings);
        var text = Text(added);
        Assert.Contains("  from:\n    arm length to underarm: 42 (43, 43, 44.5, 44.5, 45.5, 45.5, 47, 47, 47) cm\n", text, StringComparison.Ordinal);
        Assert.Contains("    bust: 71–76 (81–86, 91.5–96.5, 101.5–106.5, 111.5–117, 122–127, 132–137, 142–147, 152–158, 162–169) cm\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("waist:", text, StringComparison.Ordinal); // nothing asks for it
        Assert.All(added.Changes.Where(c => c.What.StartsWith("body.", StringComparison.Ordinal)), c => Assert.Equal((SizeChangeKind.Decide, true), (c.Kind, c.Why.StartsWith("the size table `women` has no 6X", StringComparison.Ordinal))));
        Assert.Contains(added.Changes, c => c is { What: "body", Kind: SizeChangeKind.Follows, Value: "352" });

        // The sizes that were there have the numbers that they had by the table.
        var (plain, made) = (PatternFiles.Compile("examples", "fairwater-jumper.pattern.md"), Compiler.Compile(added.Source!));
        Assert.Equal(plain.Pattern.Facts.Numbers.Select(n => string.Join(' ', n.Values.Values)), made.Pattern.Facts.Numbers.Select(n => string.Join(' ', n.Values.Values.Take(n.Values.IsShared ? 1 : 9))));
    }

    [Fact]
    public void A_body_measurement_beyond_the_table_can_be_given()
    {
        var added = Example("fairwater-jumper", new("6X") { Given = [("bust", "165 cm")] });
        Assert.Contains("152–158, 165) cm", Text(added), StringComparison.Ordinal);
        Assert.Equal(SizeChangeKind.Given, Assert.Single(added.Changes, c => c.What == "body.bust").Kind);
    }

    [Theory]
    [InlineData("porthole-blanket", "King", 3, SizeChangeKind.Given)] // by the beds that they name
    [InlineData("porthole-blanket", "Throw", 2, SizeChangeKind.Given)]
    [InlineData("tidewrack-scarf", "Stole", 2, SizeChangeKind.Given)]
    [InlineData("ostrey-light-hat", "Grand", 5, SizeChangeKind.Decide)]
    [InlineData("hawser-cowl", "Huge", 2, SizeChangeKind.Decide)]
    public void A_name_that_tells_no_place_is_put_behind_the_last_and_that_is_told(string name, string size, int index, SizeChangeKind kind)
    {
        var added = Example(name, new(size));
        Assert.Equal(index, added.Index);
        Assert.Equal(kind, Assert.Single(added.Changes, c => c.What == "sizes.names").Kind);
    }

    private static AddedSize Example(string name, SizeWish wish) => SizeAdder.Add(PatternFiles.Compile("examples", name + ".pattern.md"), wish);

    [Theory]
    [InlineData("M", null, null, "the pattern has a size `M` already")]
    [InlineData("Wide", "XX", null, "the pattern has no size `XX`")]
    [InlineData("Wide", "S", "M", "not both")]
    [InlineData("W, X", null, null, "cannot be the name of a size")]
    public void A_wish_that_cannot_be_met_is_refused_with_the_reason(string name, string? before, string? after, string words)
    {
        Assert.Contains(words, Add(Vest, new(name) { Before = before, After = after }).Refusal, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bst", "90 cm", "did you mean `bust`?")]
    [InlineData("bust", "wide", "`wide` is no value for `bust`: write it as in 80 cm")]
    [InlineData("bust", "95 g", "is told in cm, not in g")]
    [InlineData("front", "90", "follows by its formula")]
    [InlineData("bust", "95 cm", "does not belong behind the last size")]
    public void A_measurement_that_does_not_fit_is_refused_with_the_reason(string name, string value, string words)
    {
        Assert.Contains(words, Add(Vest, new("XL") { After = "L", Given = [(name, value)] }).Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pattern_of_one_size_has_no_lists_to_add_to() => Assert.NotNull(Add("---\ntitle: Hat\nsizes: One size\n---\n\nCO 20 sts.\n", new("L")).Refusal);

    [Theory]
    [InlineData("ostrey-light-hat", "2XL")]
    [InlineData("porthole-blanket", "Huge")]
    [InlineData("net-loft-scarf", "Huge")]
    [InlineData("guillemot-hat", "XL")]
    public void An_example_can_be_made_one_step_larger(string name, string size)
    {
        var source = new SourceText(name, File.ReadAllText(RepositoryRoot.Path("examples", name + ".pattern.md")));
        var plain = Compiler.Compile(source);
        var added = SizeAdder.Add(plain, new(size) { After = plain.Pattern.Facts.Sizes.Names[^1] });
        Assert.Empty(added.Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message));
        var made = Compiler.Compile(added.Source!);
        Assert.Equal(plain.Lines.Select(l => l.Status), made.Lines.Select(l => l.Status));
        foreach (var (old, now) in plain.Lines.Zip(made.Lines))
        {
            Assert.Equal(old.After, now.After.Take(old.After.Length)); // the sizes that were there work the same
        }
    }

    [Fact]
    public void Taking_the_last_size_out_and_adding_it_again_gives_the_same_where_sizes_rise_evenly()
    {
        const string Even = "---\ntitle: Hat\nsizes: S (M, L)\nnumbers: {wedge: 10 (11, 12)}\n---\n\n## Hat\n\nCO 80 (88, 96) sts.\n\nRow 1: *K8 (8, 8), p0 (0, 0); rep from * to end.\n";
        var text = Text(Add(Even, new("XL")));
        Assert.Contains("10 (11, 12, 13)", text, StringComparison.Ordinal);
        Assert.Contains("CO 80 (88, 96, 104) sts.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_is_grown_where_it_is_asked_for_and_not_where_it_is_written_out()
    {
        const string Sleeve = "---\ntitle: Sleeve\nsizes: S (M, L)\ngauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm\n---\n\n## Sleeve\n\nCO 40 (42, 44) sts.\n\n```plan\nwork: shaping\nfrom: 40 (42, 44)\nto: 60 (64, 68)\nover: 30 cm\n```\n";
        var text = Text(Add(Sleeve, new("XL")));
        Assert.Contains("from: 40 (42, 44, 46)\nto: 60 (64, 68, 72)\n", text, StringComparison.Ordinal);
        Assert.Contains("```plan", text, StringComparison.Ordinal);
    }

    public static TheoryData<string> Files
    {
        get
        {
            var data = new TheoryData<string>();
            foreach (var folder in (string[])["examples", "tests/corpus/clean", "tests/PatternForge.Tests/Rendering/Sources"])
            {
                foreach (var name in PatternFiles.In(folder.Split('/')))
                {
                    data.Add(folder + "/" + name);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void The_sizes_that_are_there_work_the_same_wherever_a_new_one_is_put(string file)
    {
        var plain = PatternFiles.Compile(file.Split('/'));
        var sizes = plain.Pattern.Facts.Sizes;
        for (var index = 0; index <= sizes.Count && sizes.Count > 1; index++)
        {
            var added = SizeAdder.Add(plain, new("New") { Before = index < sizes.Count ? sizes.Names[index] : null, After = index < sizes.Count ? null : sizes.Names[^1] });
            Assert.Null(added.Refusal);
            Assert.DoesNotContain(added.Findings, f => f.Rule.Code is "PF188" or "PF620" or "PF601"); // lists of the wrong length
            var made = Compiler.Compile(added.Source!);
            Assert.Equal(sizes.Names.Insert(index, "New").AsEnumerable(), made.Pattern.Facts.Sizes.Names);
            var (were, are) = (Ends(plain), Ends(made));
            Assert.Equal(were.Length, are.Length);
            foreach (var (old, now) in were.Zip(are))
            {
                Assert.Equal(old, now.Length > index ? now.Where((_, size) => size != index) : now);
            }
        }
    }

    // A plan may be told in more rows where there are more sizes: what counts is how its block ends.
    private static int?[][] Ends(Compilation compilation) =>
        [.. compilation.Lines.GroupBy(l => compilation.LineOf(l.Origin)).Select(g => g.First().After.Select((_, size) => g.Select(l => l.After[size]).LastOrDefault(a => a is not null)).ToArray())];

    private static AddedSize Add(string text, SizeWish wish) => SizeAdder.Add(Compiler.Compile(new SourceText("x.pattern.md", text.ReplaceLineEndings("\n"))), wish);

    private static string Text(AddedSize added)
    {
        Assert.Null(added.Refusal);
        Assert.True(added.CanBeWritten);
        return added.Source!.Text;
    }
}
