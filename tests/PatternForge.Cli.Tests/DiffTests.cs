namespace PatternForge.Cli.Tests;

/// <summary><c>diff</c>: what makers of the old version must know.</summary>
public class DiffTests
{
    private const string Cuff = "---\ntitle: Ferryman cuff\nversion: 1.1\nsizes:\n  names: S (M, L)\n  finished: {circumference: 18 (20, 22) cm}\n---\n\n## Cuff\n\nCO 40 (44, 48) sts. Join in the round.\n\nDec rnd: [K2, k2tog] 4 (4, 6) times, k to end.\n";

    private static readonly string New = Cuff.Replace("version: 1.1", "version: 1.2\ndate: 2025-03-01", StringComparison.Ordinal)
        .Replace("4 (4, 6) times", "4 (4, 8) times", StringComparison.Ordinal).Replace("20, 22", "20.5, 22", StringComparison.Ordinal);

    private const string Told =
        """
        Ferryman cuff, version 1.1 to 1.2

        For everybody who is making it

          Cuff, Dec rnd, size L: decrease 8 stitches, not 6; work the repeat 8 times, not 6; 40 stitches (was 42)
              was: [K2, k2tog] 4 (4, 6) times, k to end.
              now: [K2, k2tog] 4 (4, 8) times, k to end.

        For those who have not begun

          Finished measurements, circumference, size M: 20.5 cm, not 20 cm

        """;

    [Fact]
    public void The_report_tells_rows_sizes_and_whom_it_concerns()
    {
        using var folder = Both();
        var outcome = Outcome.Of(folder, "diff", "old.pattern.md", "new.pattern.md");
        Assert.Equal(ExitCode.Findings, outcome.Code);
        Assert.Equal(Told.ReplaceLineEndings("\n"), outcome.Out);
    }

    [Fact]
    public void A_file_is_no_different_from_itself_and_one_of_two_may_come_over_standard_input()
    {
        using var folder = Both();
        var outcome = Outcome.WithInput(folder, New, "diff", "new.pattern.md", "-");
        Assert.Equal((ExitCode.Clean, "Ferryman cuff, version 1.2\n\nnothing has changed in meaning\n"), (outcome.Code, outcome.Out));
    }

    [Fact]
    public void One_size_hears_only_what_concerns_it()
    {
        using var folder = Both();
        var outcome = Outcome.Of(folder, "diff", "old.pattern.md", "new.pattern.md", "--size", "M");
        Assert.DoesNotContain("Dec rnd", outcome.Out, StringComparison.Ordinal);
        Assert.Contains("20.5 cm", outcome.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, Outcome.Of(folder, "diff", "old.pattern.md", "new.pattern.md", "--size", "S").Code);
        Assert.Equal(ExitCode.Usage, Outcome.Of(folder, "diff", "old.pattern.md", "new.pattern.md", "--size", "XL").Code);
    }

    [Fact]
    public void Json_has_the_promised_keys_and_the_lines_of_both_files()
    {
        using var folder = Both();
        var json = Outcome.Of(folder, "diff", "old.pattern.md", "new.pattern.md", "--format", "json").Json;
        Assert.Equal(["version", "old", "new", "title", "oldVersion", "newVersion", "corrections", "notUnderstood"], json.EnumerateObject().Select(p => p.Name));
        var row = json.GetProperty("corrections").EnumerateArray().Single(c => c.GetProperty("about").GetString() == "row");
        Assert.Equal(["about", "concerns", "section", "label", "sizes", "text", "was", "now", "why", "oldLine", "newLine"], row.EnumerateObject().Select(p => p.Name));
        Assert.Equal((13, 14), (row.GetProperty("oldLine").GetInt32(), row.GetProperty("newLine").GetInt32()));
    }

    [Fact]
    public void The_list_for_the_header_can_be_pasted_and_is_then_clean()
    {
        using var folder = Both();
        var yaml = Outcome.Of(folder, "diff", "old.pattern.md", "new.pattern.md", "--format", "yaml").Out;
        Assert.Contains("sizes: [\"L\"]", yaml, StringComparison.Ordinal);
        folder.Write("pasted.pattern.md", New.Replace("sizes:\n", yaml + "sizes:\n", StringComparison.Ordinal));
        var json = Outcome.Of(folder, "lint", "pasted.pattern.md", "--format", "json").Json;
        var codes = json.GetProperty("files")[0].GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("code").GetString()!);
        Assert.DoesNotContain(codes, c => c[2] is '1' or '5');
        Assert.Equal(ExitCode.Clean, Outcome.Of(folder, "diff", "new.pattern.md", "pasted.pattern.md").Code);
    }

    [Fact]
    public void What_a_designer_writes_is_escaped()
    {
        using var folder = new TemporaryFolder();
        folder.Write("old.pattern.md", Cuff);
        folder.Write("new.pattern.md", Cuff.Replace("title: Ferryman cuff", "title: \"<script>alert(1)</script> & [x](javascript:1)\"", StringComparison.Ordinal));
        var html = Outcome.Of(folder, "diff", "old.pattern.md", "new.pattern.md", "--format", "html").Out;
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.NotNull(System.Xml.Linq.XDocument.Parse(html.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal)));
        Assert.Contains("\\[x\\](javascript", Outcome.Of(folder, "diff", "old.pattern.md", "new.pattern.md", "--format", "md").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("diff")]
    [InlineData("diff", "old.pattern.md")]
    [InlineData("diff", "-", "-")]
    [InlineData("diff", "old.pattern.md", "gone.pattern.md")]
    [InlineData("diff", "old.pattern.md", ".")]
    [InlineData("diff", "old.pattern.md", "new.pattern.md", "--format", "pdf")]
    public void What_cannot_be_read_is_wrong_usage(params string[] arguments)
    {
        using var folder = Both();
        var outcome = Outcome.Of(folder, arguments);
        Assert.Equal((ExitCode.Usage, ""), (outcome.Code, outcome.Out));
        Assert.NotEmpty(outcome.Error);
    }

    private static TemporaryFolder Both()
    {
        var folder = new TemporaryFolder();
        folder.Write("old.pattern.md", Cuff);
        folder.Write("new.pattern.md", New);
        return folder;
    }
}
