using System.Globalization;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Binding;

/// <summary>What is said of a clause with a slip in it. The clauses stand in <c>broken.txt</c>, the messages in <c>tests/golden/recovery</c>.</summary>
public class RecoveryTests
{
    private const string Knitting = "---\ntitle: Draft\ncraft: knitting\nsizes: one size\n---\n\n## Piece\n\nCO 24 sts.\n\nRow 1: ";
    private const string Crochet = "---\ntitle: Draft\ncraft: crochet\nterms: us\nsizes: one size\n---\n\n## Piece\n\nCh 25.\n\nRow 1: Sc in 2nd ch from hook and in each ch across. (24 sc)\n\nRow 2: ";

    public static TheoryData<string> Clauses => [.. Read().Select(c => c.Source)];

    [Fact]
    public void Each_message_names_the_words_that_stopped_the_reading_and_what_would_be_understood()
    {
        var told = new StringBuilder();
        foreach (var (clause, source) in Read())
        {
            told.Append(CultureInfo.InvariantCulture, $"{clause}\n");
            foreach (var finding in OfRows(Compile(source)))
            {
                told.Append(CultureInfo.InvariantCulture, $"  {finding.Rule.Code} «{finding.Source.ToString(finding.Span)}» {finding.Message}\n    {finding.Help}\n");
            }
        }

        Golden.Match(told.ToString(), "recovery/broken.txt");
    }

    [Theory]
    [MemberData(nameof(Clauses))]
    public void One_slip_gives_one_finding_with_a_help_line(string source)
    {
        var finding = Assert.Single(OfRows(Compile(source)));

        Assert.NotNull(finding.Help);
        Assert.True(finding.Span.Start > source.LastIndexOf("\nRow", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Clauses))]
    public void What_is_offered_as_a_repair_of_what_was_not_read_lets_the_row_be_read(string source)
    {
        foreach (var finding in OfRows(Compile(source)).Where(f => f.Rule.Code == "PF208" && f.Fix is not null))
        {
            var edit = Assert.Single(finding.Fix!.Edits);
            var mended = Compile(source[..edit.Span.Start] + edit.NewText + source[edit.Span.End..]);

            Assert.Equal(LineStatus.Checked, mended.Lines[^1].Status);
            Assert.DoesNotContain(OfRows(mended), f => f.Rule.Code is "PF201" or "PF208");
        }
    }

    [Fact]
    public void Nothing_is_offered_for_a_word_that_is_like_no_other()
    {
        var finding = Assert.Single(OfRows(Compile(Knitting + "K2, twizzle the next 3 sts, k to end.\n")));

        Assert.Null(finding.Fix);
        Assert.DoesNotContain("did you mean", finding.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_read_inside_a_repeat_is_told_as_well()
    {
        var finding = Assert.Single(OfRows(Compile(Knitting + "*K2, swing round; rep from * to end.\n")));

        Assert.Equal("swing round", finding.Source.ToString(finding.Span));
    }

    private static IEnumerable<Finding> OfRows(Compilation compilation) => compilation.Findings.Where(f => f.Rule.Area is Area.Source or Area.Notation or Area.Counts || f.Rule.Code == "PF620");

    private static Compilation Compile(string source) => Compiler.Compile(new SourceText("draft.pattern.md", source));

    private static List<(string Clause, string Source)> Read()
    {
        var start = Knitting;
        var cases = new List<(string, string)>();
        foreach (var line in File.ReadAllLines(RepositoryRoot.Path("tests", "PatternForge.Tests", "Binding", "broken.txt")))
        {
            if (line.StartsWith("= ", StringComparison.Ordinal))
            {
                start = line == "= knitting" ? Knitting : Crochet;
            }
            else if (line.Length > 0 && !line.StartsWith("//", StringComparison.Ordinal))
            {
                cases.Add((line, start + line + "\n"));
            }
        }

        return cases;
    }
}
