using System.Globalization;
using System.Text;
using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Drafts;

public class PastedDraftTests
{
    // Things that pasting leaves, to be strewn into a draft.
    private static readonly string[] Scraps =
    [
        "•", " • ", "\n• ", "_", "__", "*", "* ", "\n* ", "rep from", "rep from •", " to end", "|", "\n| ", " | ", "|---|---|\n", "\t", "\n1\t", "\n1. ", "\n1) ", "\n2 ", "\nRow: Knit.\n", "\nRow 7: ", "> ", "\n> ", "```", "\n```\n", "~~~",
        "<b>", "</b>", "<br>", "<em>", "&nbsp;", "&frac12;", "&#42;", "&#x2a;", "&amp;", "â€“", "Â½", "Â", "Ã—", "ï»¿", "\uFEFF", "\u00AD", "\u200B", "\u200D", "🧶", "\uD83E", "ﬁ", "（", "２", "1ˢᵗ", "∗", "\v", "\u2028", "\r", "\n", "\r\n", "-\n", "stit-\nches",
        "\\*", "\\- ", "<!--", "-->", "\n## Notes\n", "\n## Sleeve\n", "“", "”", "\"", "…", "...", " ",
    ];

    public static TheoryData<string> Titles => [.. DraftBook.Cases.Select(c => c.Title)];

    [Fact]
    public void Each_draft_is_read_as_it_was_meant()
    {
        var told = new StringBuilder();
        foreach (var (title, source) in DraftBook.Cases)
        {
            told.Append(CultureInfo.InvariantCulture, $"= {title}\n");
            Tell(DraftBook.Compile(source), told);
            told.Append('\n');
        }

        Golden.Match(told.ToString(), "drafts/pasted.txt");
    }

    [Theory]
    [MemberData(nameof(Titles))]
    public void Every_line_is_checked_and_nothing_is_called_wrong(string title)
    {
        var compilation = DraftBook.Compile(SourceOf(title));

        Assert.DoesNotContain(compilation.Lines, l => l.Status != LineStatus.Checked);
        Assert.DoesNotContain(compilation.Findings, f => IsOfRows(f) && f.Severity != Severity.Note);
    }

    [Theory]
    [MemberData(nameof(Titles))]
    public void The_exact_repair_makes_what_was_guessed_permanent(string title)
    {
        var before = DraftBook.Compile(SourceOf(title));
        var text = SourceOf(title);
        var edits = before.Findings.Where(f => DraftRules.All.Contains(f.Rule)).SelectMany(f => f.Fix!.Edits).ToList();
        foreach (var edit in edits.OrderByDescending(e => e.Span.Start).ThenByDescending(e => e.Span.Length))
        {
            text = text[..edit.Span.Start] + edit.NewText + text[edit.Span.End..];
        }

        var after = DraftBook.Compile(text);

        Assert.DoesNotContain(after.Findings, f => DraftRules.All.Contains(f.Rule));
        Assert.Equal(before.Lines.Select(Counts), after.Lines.Select(Counts));
    }

    [Fact]
    public void Whatever_is_strewn_into_a_draft_every_place_lies_in_the_file_and_what_was_kept_leads_back_to_itself() =>
        Gen.Select(Gen.Int[0, DraftBook.Cases.Count - 1], Gen.Select(Gen.Double[0, 1], Gen.Int[0, 4], Gen.Int[0, Scraps.Length - 1]).List[1, 6]).Sample(
            (index, edits) =>
            {
                var text = DraftBook.Cases[index].Source;
                foreach (var (place, drop, scrap) in edits)
                {
                    var at = (int)(place * text.Length);
                    text = text[..at] + Scraps[scrap] + text[Math.Min(text.Length, at + drop)..];
                }

                var compilation = DraftBook.Compile(text);
                foreach (var finding in compilation.Findings)
                {
                    Assert.Same(compilation.Source, finding.Source);
                    Assert.InRange(finding.Span.Start, 0, text.Length);
                    Assert.InRange(finding.Span.End, finding.Span.Start, text.Length);
                }

                var read = compilation.Text.Text.Text;
                for (var i = 0; i < read.Length; i++)
                {
                    var from = compilation.Text.ToSource(new TextSpan(i, 1));
                    Assert.True(from.Start >= 0 && from.End <= text.Length);
                }
            },
            iter: 3000);

    [Fact]
    public void A_finding_behind_repairs_stands_at_its_own_column()
    {
        const string Row = "Row 1: K&frac12;\u00AD2, ∗k2, mkb; rep from ∗ to end.";
        var source = DraftBook.Cases[0].Source[..DraftBook.Cases[0].Source.IndexOf("1. ", StringComparison.Ordinal)] + Row.Replace("&frac12;", "", StringComparison.Ordinal) + "\n";

        var finding = Assert.Single(DraftBook.Compile(source).Findings, f => f.Rule.Code == "PF201");

        Assert.Equal("mkb", source[finding.Span.Start..finding.Span.End]);
    }

    [Fact]
    public void A_pattern_without_such_things_is_read_as_it_stands()
    {
        var source = new SourceText("x.pattern.md", File.ReadAllText(RepositoryRoot.Path("examples", "ostrey-light-hat.pattern.md")));

        Assert.Same(source, DraftReader.Read(source).Mended.Text);
    }

    [Fact]
    public void A_note_can_be_accepted_where_it_stands()
    {
        var source = DraftBook.Cases[0].Source + "\n\nRow 9: • K2, p1; rep from • to last 2 sts, k2. <!-- accept PF154: it is a bullet in print as well -->\n";

        Assert.NotNull(Assert.Single(DraftBook.Compile(source).Findings, f => f.Rule.Code == "PF154").Accepted);
    }

    private static string SourceOf(string title) => DraftBook.Cases.Single(c => c.Title == title).Source;

    private static bool IsOfRows(Finding finding) => finding.Rule.Area is Area.Source or Area.Notation or Area.Counts or Area.Terms;

    private static string Counts(WorkedLine line) => $"{line.Status} {string.Join(", ", line.After)}";

    private static void Tell(Compilation compilation, StringBuilder told)
    {
        foreach (var line in compilation.Lines.Skip(1))
        {
            told.Append(CultureInfo.InvariantCulture, $"  line {compilation.LineOf(line.Origin)}: [{line.Label}] {line.Text} -> {(line.Status == LineStatus.Checked ? "" : line.Status + " ")}{string.Join(", ", line.After)}\n");
        }

        foreach (var finding in compilation.Findings.Where(IsOfRows))
        {
            var (row, column) = finding.Source.Lines.PositionOf(finding.Span.Start);
            told.Append(CultureInfo.InvariantCulture, $"  {finding.Rule.Code} at {row}:{column} «{finding.Source.ToString(finding.Span).ReplaceLineEndings(" / ")}» {finding.Message}\n");
        }
    }
}
