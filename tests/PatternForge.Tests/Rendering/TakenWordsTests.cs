using PatternForge.Benchmarks;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Model;
using PatternForge.Rendering.Documents;
using PatternForge.Tests.Corpus;

namespace PatternForge.Tests.Rendering;

/// <summary>What a page takes over from the pattern as it is written is what the compiler makes of each edition by itself.</summary>
public class TakenWordsTests
{
    private static readonly CompileOptions RowsAlone = CompileOptions.Default with { Checking = Checking.RowsAlone };

    public static TheoryData<string> Files => [.. PatternFiles.In("examples").Select(n => "examples/" + n), .. PatternFiles.In("tests", "PatternForge.Tests", "Rendering", "Sources").Select(n => "tests/PatternForge.Tests/Rendering/Sources/" + n)];

    private static string[] Forms(Compilation plain) => [plain.Pattern.Facts.TermsInForce == Core.Stitches.Dialect.Uk ? "us" : "uk", "metric", "inches"];

    [Theory]
    [MemberData(nameof(Files))]
    public void What_each_size_says_in_another_form_is_what_its_edition_says(string file)
    {
        var plain = PatternFiles.Compile(file.Split('/'));
        var written = new OwnSizes(plain, null);
        if (plain.HasErrors || !written.AreKnown)
        {
            return; // one size, or a pattern that no page offers sizes of
        }

        foreach (var form in Forms(plain))
        {
            AreTheSame(EditionCompiler.Compile(plain, Edition.Find(form)!, RowsAlone).Compilation!, written, form);
        }
    }

    [Fact]
    public void So_it_is_in_made_patterns_and_where_form_and_size_change_the_same_words()
    {
        const string Hat = "---\ntitle: Hat\nterms: us\nsizes: {names: S (M, L), finished: {around: 46 (50, 54) cm}}\ngauge: 20 sts and 28 rows = 10 cm\n---\n\n## Hat\n\nCO 92 (100, 108) sts and join to work in the round.\n\nRnd 1: Knit. 92 (100, 108) sts.\n\nSizes M and L only: bind off 4 sts, k to end. – (96, 104) sts.\n\nWork even until piece measures 1 (2, 3) cm.\n\nBind off 1 (2, 3) sts 1 (2, 3) times, then bind off all sts. 0 sts.\n\n## Finishing\n\nSew a seam of 1 (2, 3) cm at each end of 2 (2½, 3) cm, then bind off 1 (2, 3) times.\n";
        foreach (var source in new[] { MadePattern.Source(1), MadePattern.Source(7), MadeGarment.Source(40), new Core.Text.SourceText("hat.pattern.md", Hat) })
        {
            var plain = Compiler.Compile(source);
            var written = new OwnSizes(plain, null);
            Assert.True(written.AreKnown, source.Path + ": " + string.Join('\n', plain.Findings.Where(f => f.Severity == Core.Findings.Severity.Error).Select(f => f.Message)));
            foreach (var form in Forms(plain))
            {
                AreTheSame(EditionCompiler.Compile(plain, Edition.Find(form)!, RowsAlone).Compilation!, written, form);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_pattern_in_other_units_is_what_the_compiler_makes_of_its_words(string file)
    {
        var plain = PatternFiles.Compile(file.Split('/'));
        foreach (var units in plain.HasErrors ? [] : new[] { "metric", "inches" })
        {
            var edition = Edition.Find(units)!;
            var (taken, asked) = (EditionCompiler.Compile(plain, edition, RowsAlone).Compilation!, EditionCompiler.Compile(plain, edition).Compilation!);
            Assert.Equal(asked.Lines.Select(l => (l.Origin, l.Label, l.Text, l.Piece, string.Join(',', l.After))), taken.Lines.Select(l => (l.Origin, l.Label, l.Text, l.Piece, string.Join(',', l.After))));
            Assert.Equal(Body(asked), Body(taken));
            Assert.Equal(asked.Abbreviations.Select(a => (a.Name, a.Meaning, a.IsSpecial)), taken.Abbreviations.Select(a => (a.Name, a.Meaning, a.IsSpecial)));
            Assert.Equal(asked.Charts.Select(c => (c.Name, c.Section, c.Block)), taken.Charts.Select(c => (c.Name, c.Section, c.Block)));
            Assert.Equal(asked.Diagrams.Select(d => (d.Name, d.Section, d.Block)), taken.Diagrams.Select(d => (d.Name, d.Section, d.Block)));
            Assert.Equal(asked.Pattern.Facts.Yarns.Select(y => Needs(y.Needs)), taken.Pattern.Facts.Yarns.Select(y => Needs(y.Needs)));
            Assert.Equal((asked.Pattern.Facts.Summary, asked.Pattern.Facts.TermsInForce), (taken.Pattern.Facts.Summary, taken.Pattern.Facts.TermsInForce));
        }

        static string Needs(PerSize<Quantity?>? needs) => needs is null ? "" : string.Join(", ", needs.Values);
        static IEnumerable<string> Body(Compilation made) => made.Pattern.Sections.SelectMany(s => s.Blocks.Select(b => $"{s.Heading} {b.GetType().Name} {b.Origin} {(b as ProseBlock)?.Markdown}"));
    }

    [Theory]
    [InlineData("Bind off 4 (5, 6) sts.", "Cast off 4 (5, 6) sts.", "Bind off 5 sts.", 2, "Cast off 5 sts.")]
    [InlineData("Rep 1 (2, 3) times, bind off.", "Rep 1 (2, 3) times, cast off.", "Rep 1 time, bind off.", 1, "Rep 1 time, cast off.")]
    [InlineData("K2, work 10 (11, 12) cm.", "K2, work 4 (4¼, 4¾) in.", "K2, work 11 cm.", 2, "K2, work 4¼ in.")]
    [InlineData("Bind off 4 (5, –) sts, k2.", "Cast off 4 (5, –) sts, k2.", "K2.", 3, null)]
    [InlineData("K2, bind off 4 (5, –) sts.", "K2, bind off 4 (5, –) sts.", "K2.", 3, "K2.")]
    [InlineData("Work 1 (2, 3) cm more.", "Work ½ (¾, 1¼) in more.", "Work 1 centimetre more.", 1, null)]
    public void Words_that_form_and_size_change_apart_are_told_and_others_are_asked_for(string written, string other, string own, int size, string? told) =>
        Assert.Equal(told, OneSizeWords.Of(new SizedText(written, 3), other, own, size));

    private static void AreTheSame(Compilation made, OwnSizes written, string form)
    {
        var (taken, asked) = (new OwnSizes(made, null, written), new OwnSizes(made, null));
        Assert.True(asked.AreKnown, form);
        var sizes = made.Pattern.Facts.Sizes.Count;
        foreach (var line in made.Lines)
        {
            Assert.Equal(asked.Without(line), taken.Without(line));
            for (var size = 0; size < sizes; size++)
            {
                Assert.Equal(asked.Row(line, size), taken.Row(line, size));
            }
        }

        foreach (var block in made.Pattern.Sections.SelectMany(s => s.Blocks).OfType<ProseBlock>())
        {
            for (var size = 0; size < sizes; size++)
            {
                Assert.Equal(asked.Prose(block, size), taken.Prose(block, size));
            }
        }
    }
}
