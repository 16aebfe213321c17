using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;
using PatternForge.Exam;
using PatternForge.Tests.Corpus;
using PatternForge.Tests.Work;

namespace PatternForge.Tests.Editions;

/// <summary>An edition says the same pattern in other words: every row comes to the same counts in every size.</summary>
public class SameCountsTests
{
    private static readonly CaseSet Cases = CaseReader.ReadFiles([RepositoryRoot.Path("tests", "exam", "rows.jsonl"), RepositoryRoot.Path("tests", "exam", "patterns.jsonl")]);

    public static TheoryData<string, string> Files
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var folder in (string[])["examples", "tests/corpus/clean", "tests/PatternForge.Tests/Rendering/Sources"])
            {
                foreach (var name in PatternFiles.In(folder.Split('/')))
                {
                    foreach (var edition in (string[])["us", "uk", "spelled-out", "metric", "inches", "both-units", "left-handed"])
                    {
                        data.Add(folder + "/" + name, edition);
                    }
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_source_of_the_repository_comes_to_the_same_in_every_edition(string file, string edition)
    {
        var plain = PatternFiles.Compile(file.Split('/'));

        Assert.Equal("", EditionsOf.Differences(plain, EditionsOf.In(plain, edition)));
    }

    [Theory]
    [InlineData("uk", "us")]
    [InlineData("us", "uk")]
    public void Crochet_of_the_exam_comes_to_the_same_in_the_other_terms_and_back_again(string terms, string other)
    {
        var wrong = new List<string>();
        var sources = Cases.Rows.Where(c => c.Question.Craft == "crochet" && c.Answer.Fault is null).Select(c => SourceBuilder.Of(c.Question).Source)
            .Concat(Cases.Patterns.Where(c => c.Question.Craft == "crochet" && c.Answer.Faults.IsEmpty).Select(c => SourceBuilder.Of(c.Question).Source));
        var many = 0;
        foreach (var source in sources)
        {
            var plain = Compiler.Compile(source);
            if (plain.Pattern.Facts.TermsInForce is not { } from || !from.ToString().Equals(terms, StringComparison.OrdinalIgnoreCase) || plain.HasErrors)
            {
                continue;
            }

            many++;
            var there = EditionsOf.In(plain, other);
            var differs = EditionsOf.Differences(plain, there);
            if (differs.Length == 0)
            {
                differs = EditionsOf.Differences(plain, EditionsOf.In(there.Compilation!, terms));
            }

            if (differs.Length > 0)
            {
                wrong.Add(source.Path + ": " + differs);
            }
        }

        Assert.True(many > 12, $"{many} cases");
        Assert.Empty(wrong);
    }

    [Fact]
    public void A_crocheted_row_made_at_random_is_the_same_text_in_British_terms_and_the_same_counts_there_and_back() =>
        MetamorphicRows.Crocheted.Sample(
            row =>
            {
                var us = MetamorphicPiece.Work(row, new MetamorphicStyle { Names = MetamorphicRows.NamesIn(Dialect.Us) });
                var uk = MetamorphicPiece.Work(row, new MetamorphicStyle { Names = MetamorphicRows.NamesIn(Dialect.Uk) }, terms: "uk");
                var made = EditionsOf.In(us.Compiled, "uk");
                if (!us.Compiled.Source.Text.Contains("fpdc", StringComparison.OrdinalIgnoreCase))
                {
                    Assert.Equal(uk.Compiled.Source.Text, made.Source.Text.Text); // the made rows know one name for a post stitch
                }

                Assert.Equal("", EditionsOf.Differences(us.Compiled, made));
                Assert.Equal(us.Compiled.Source.Text, EditionsOf.In(made.Compilation!, "us").Source.Text.Text, ignoreCase: true);
            },
            iter: 400);

    [Fact]
    public void A_row_made_at_random_comes_to_the_same_without_abbreviations() =>
        Gen.Select(Gen.OneOf(MetamorphicRows.Knitted, MetamorphicRows.Crocheted), Gen.Bool).Sample(
            (row, british) =>
            {
                var terms = british ? Dialect.Uk : Dialect.Us;
                var plain = MetamorphicPiece.Work(row, new MetamorphicStyle { Names = MetamorphicRows.NamesIn(terms) }, terms: british ? "uk" : "us").Compiled;
                var made = EditionsOf.In(plain, "spelled-out");
                Assert.Equal("", EditionsOf.Differences(plain, made));
                Assert.True(made.Findings.All(f => f.Rule != EditionRules.LineLeft), made.Source.Text.Text);
            },
            iter: 400);

    [Fact]
    public void A_finding_of_an_edition_stands_at_its_place_in_the_file()
    {
        const string Source = "---\ntitle: Square\ncraft: crochet\nterms: us\nabbreviations: [sc = single crochet]\n---\n\n## Square\n\nRnd 1: 6 sc in magic ring. (6 sc)\n\nRnd 2: 2 single crochet in each st around, sk 99 sts. (12 sc)\n";
        var plain = EditionsOf.Compile(Source);
        var made = EditionsOf.In(plain, "uk");
        var inEdition = made.Compilation!.Findings.Where(f => f.Severity == Severity.Error).Select(f => Source[made.Source.ToSource(f.Span).Start..].Split('\n')[0]);

        Assert.Equal(plain.Findings.Where(f => f.Severity == Severity.Error).Select(f => Source[f.Span.Start..].Split('\n')[0]), inEdition);
        Assert.NotEmpty(inEdition);
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
    }

    [Fact]
    public void A_pattern_in_the_terms_asked_for_stays_as_it_is()
    {
        var text = File.ReadAllText(RepositoryRoot.Path("examples", "net-loft-scarf.pattern.md"));
        Assert.Equal(text, EditionsOf.Text(text, "us"));
    }
}
