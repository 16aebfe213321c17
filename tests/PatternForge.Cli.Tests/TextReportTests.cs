using PatternForge.Cli.Reporting;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Cli.Tests;

public class TextReportTests
{
    private static string[] Lines(SourceText source, params Finding[] findings) =>
        TextReport.Of([Samples.Report(source, [.. findings]) with { OpenLines = [] }], 80, new Paint(false)).Split('\n');

    [Fact]
    public void A_finding_shows_its_line_its_place_the_sizes_the_other_place_and_a_help_line()
    {
        var source = new SourceText("hat.pattern.md", "## Crown\n\nRow 12: k2, *k2tog, yo; rep from * to last st, k1. (84, 90, 96 sts)\n");
        var finding = Samples.Finding(source, "96", "Row 12 makes 95 stitches in size L, but says 96") with
        {
            Sizes = [2],
            Labels = [new(Samples.SpanOf(source, "k2, *k2tog, yo; rep from * to last st, k1"), "this makes 95 in size L")],
            Help = "sizes S and M agree; check the 96",
        };

        Assert.Equal(
            """
            error[PF301] Row 12 makes 95 stitches in size L, but says 96
              ┌ hat.pattern.md:3:61 · size L
            3 │ Row 12: k2, *k2tog, yo; rep from * to last st, k1. (84, 90, 96 sts)
              │                                                             ━━
              │         ───────────────────────────────────────── this makes 95 in size L
              = help: sizes S and M agree; check the 96

            hat.pattern.md: 61 of 64 instruction lines checked
               line 30 taken on trust: Row 12 (RS): work as set
               line 33 taken on trust: Row 14: as before
               line 40 not understood: Work the earflap
            1 error, 0 warnings, 0 notes
            `patternforge explain PF301` says more about a finding

            """.ReplaceLineEndings("\n"),
            TextReport.Of([Samples.Report(source, finding)], 80, new Paint(false)));
    }

    [Fact]
    public void Marks_stand_under_their_characters_after_tabs_and_wide_and_combining_characters()
    {
        var source = new SourceText("x.pattern.md", "a\tb毛糸e\u0301🧶 bad one");
        var lines = Lines(source, Samples.Finding(source, "bad", "m"));
        Assert.Equal("1 │ a   b毛糸e\u0301🧶 bad one", lines[2]);
        Assert.Equal("  │              ━━━", lines[3]);
    }

    [Fact]
    public void A_very_long_line_is_cut_around_its_mark()
    {
        var source = new SourceText("x.pattern.md", string.Concat(Enumerable.Repeat("k2, p2, ", 20_000)) + "bad" + string.Concat(Enumerable.Repeat(", k2, p2", 20_000)));
        var lines = Lines(source, Samples.Finding(source, "bad", "m"));
        var shown = lines[2][4..];
        Assert.StartsWith("…", shown, StringComparison.Ordinal);
        Assert.EndsWith("…", shown, StringComparison.Ordinal);
        Assert.InRange(shown.Length, 60, 76);
        Assert.Equal(shown.IndexOf("bad", StringComparison.Ordinal), lines[3][4..].IndexOf('━', StringComparison.Ordinal));
    }

    [Fact]
    public void The_end_of_a_long_line_is_shown_to_its_end()
    {
        var source = new SourceText("x.pattern.md", string.Concat(Enumerable.Repeat("k2, p2, ", 100)) + "bad");
        var lines = Lines(source, Samples.Finding(source, "bad", "m"));
        Assert.EndsWith("k2, p2, bad", lines[2], StringComparison.Ordinal);
        Assert.EndsWith(" ━━━", lines[3], StringComparison.Ordinal);
        Assert.Equal(lines[2].Length, lines[3].Length);
    }

    [Fact]
    public void A_label_in_the_part_that_was_cut_away_is_told_by_its_column()
    {
        var source = new SourceText("x.pattern.md", "first, " + string.Concat(Enumerable.Repeat("k2, p2, ", 100)) + "bad");
        var lines = Lines(source, Samples.Finding(source, "bad", "m") with { Labels = [new(Samples.SpanOf(source, "first"), "opened here")] });
        Assert.Equal("  │ column 1: opened here", lines[4]);
    }

    [Fact]
    public void A_label_on_another_line_shows_that_line_too()
    {
        var source = new SourceText("x.pattern.md", "first\n\n\nsecond\n");
        var lines = Lines(source, Samples.Finding(source, "second", "m") with { Labels = [new(Samples.SpanOf(source, "first"), "opened here")] });
        Assert.Equal(["1 │ first", "  │ ───── opened here", "  ⋮", "4 │ second", "  │ ━━━━━━"], lines[2..7]);
    }

    [Fact]
    public void A_place_over_several_lines_is_marked_on_the_first_and_names_the_last()
    {
        var source = new SourceText("x.pattern.md", "title: x\nsizes: y\nend\n");
        var finding = Samples.Finding(source, "sizes", "m") with { Span = new(7, 10) };
        Assert.Equal("  │        ━ and on to line 2", Lines(source, finding)[3]);
    }

    [Fact]
    public void A_place_between_two_characters_and_the_end_of_the_file_take_one_column()
    {
        var source = new SourceText("x.pattern.md", "abc");
        Assert.Equal("  │    ━", Lines(source, Samples.Finding(source, "abc", "m") with { Span = new(3, 0) })[3]);
        var empty = new SourceText("x.pattern.md", "");
        Assert.Equal("  │ ━", Lines(empty, new Finding(Samples.Rule(), empty, new(0, 0), "m"))[3]);
    }

    [Fact]
    public void Control_characters_of_the_source_never_reach_the_terminal()
    {
        var source = new SourceText("x.pattern.md", "k2 \e[2J\u202Ep2 bad");
        var page = TextReport.Of([Samples.Report(source, Samples.Finding(source, "bad", "says `\e[0m`"))], 80, new Paint(false));
        Assert.DoesNotContain('\e', page);
        Assert.DoesNotContain('\u202E', page);
        Assert.Contains("k2 ␛[2J\uFFFDp2 bad", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Halves_of_surrogate_pairs_do_no_harm()
    {
        var source = new SourceText("x.pattern.md", "k2 \uD83E bad \uDDF6");
        Assert.Equal("  │      ━━━", Lines(source, Samples.Finding(source, "bad", "m"))[3]);
    }

    [Fact]
    public void An_accepted_finding_stays_listed_with_its_reason_and_does_not_count()
    {
        var source = new SourceText("x.pattern.md", "Row 1: k2");
        var lines = Lines(source, Samples.Finding(source, "k2", "m") with { Accepted = "on purpose" });
        Assert.Equal(["accepted error[PF301] m", "  ┌ x.pattern.md:1:8", "  └ accepted: on purpose", ""], lines[..4]);
        Assert.Contains("0 errors, 0 warnings, 0 notes (1 accepted)", lines);
    }

    [Fact]
    public void Several_files_end_with_the_coverage_of_all_and_name_open_lines_by_file()
    {
        var (one, two) = (new SourceText("a.pattern.md", ""), new SourceText("b.pattern.md", ""));
        var page = TextReport.Of([Samples.Report(one), Samples.Report(two) with { OpenLines = [], Coverage = new(2, 2, 0, 0) }], 80, new Paint(false));
        Assert.Equal(
            """
            a.pattern.md: 61 of 64 instruction lines checked
               line 30 taken on trust: Row 12 (RS): work as set
               line 33 taken on trust: Row 14: as before
               line 40 not understood: Work the earflap
            in 2 files: 63 of 66 instruction lines checked
            0 errors, 0 warnings, 0 notes

            """.ReplaceLineEndings("\n"),
            page);
    }

    [Fact]
    public void Colour_is_used_only_when_asked_for()
    {
        var source = new SourceText("x.pattern.md", "Row 1: k2");
        var report = Samples.Report(source, Samples.Finding(source, "k2", "m"));
        Assert.DoesNotContain('\e', TextReport.Of([report], 80, new Paint(false)));
        Assert.Contains("\e[1;31merror[PF301]\e[0m", TextReport.Of([report], 80, new Paint(true)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("short", 10, "short")]
    [InlineData("exactly 10", 10, "exactly 10")]
    [InlineData("more than ten", 10, "more than…")]
    [InlineData("毛糸毛糸毛糸", 7, "毛糸毛…")]
    [InlineData("two\nlines\there", 20, "two lines here")]
    public void A_text_is_cut_to_its_columns(string text, int columns, string expected) =>
        Assert.Equal(expected, DisplayText.Cut(text, columns));
}
