namespace PatternForge.Cli.Tests;

/// <summary>The starting hat with a mistake planted: what the whole program makes of it.</summary>
public class LintTests
{
    private static void WriteHat(TemporaryFolder folder, string name, string from = "", string to = "")
    {
        Outcome.Of(folder, "new", "Harbour Hat");
        var text = folder.Read("Harbour-Hat.pattern.md");
        File.Delete(folder.At("Harbour-Hat.pattern.md"));
        if (from.Length > 0)
        {
            Assert.Contains(from, text, StringComparison.Ordinal);
            text = text.Replace(from, to, StringComparison.Ordinal);
        }

        folder.Write(name, text);
    }

    [Fact]
    public void A_wrong_count_in_one_size_is_an_error_at_its_place_and_for_its_size()
    {
        using var folder = new TemporaryFolder();
        WriteHat(folder, "hat.pattern.md", "88 (96, 104) sts", "88 (96, 105) sts");
        var outcome = Outcome.Of(folder, "lint", "hat.pattern.md", "--format", "json");
        Assert.Equal((1, ""), (outcome.Code, outcome.Error));
        var file = outcome.Json.GetProperty("files")[0];
        Assert.Equal("Harbour Hat", file.GetProperty("title").GetString());
        Assert.Equal("""["S","M","L"]""", file.GetProperty("sizes").GetRawText());
        var finding = Assert.Single(file.GetProperty("findings").EnumerateArray());
        Assert.Equal(("PF301", "counts", "error"), (finding.GetProperty("code").GetString(), finding.GetProperty("area").GetString(), finding.GetProperty("severity").GetString()));
        Assert.Equal("""["L"]""", finding.GetProperty("sizes").GetRawText());
        var line = folder.Read("hat.pattern.md").Split('\n')[finding.GetProperty("line").GetInt32() - 1];
        var marked = line[(finding.GetProperty("column").GetInt32() - 1)..(finding.GetProperty("endColumn").GetInt32() - 1)];
        Assert.Contains("105", marked, StringComparison.Ordinal);
        Assert.Equal("""{"errors":1,"warnings":0,"notes":0}""", outcome.Json.GetProperty("summary").GetRawText());
        Assert.Equal(1, Outcome.Of(folder, "build", "hat.pattern.md").Code);
        Assert.Equal(["hat.pattern.md"], folder.Files());
        var draft = Outcome.Of(folder, "build", "hat.pattern.md", "--draft");
        Assert.Equal((0, "out/hat.html\nout/hat.md\nout/hat.files.json\n"), (draft.Code, draft.Out));
    }

    [Fact]
    public void A_warning_fails_only_when_warnings_count_as_errors()
    {
        using var folder = new TemporaryFolder();
        WriteHat(folder, "hat.pattern.md", "designer:", "desinger:");
        Assert.Equal(0, Outcome.Of(folder, "lint", ".").Code);
        var strict = Outcome.Of(folder, "lint", ".", "--warnings-as-errors");
        Assert.Equal(1, strict.Code);
        Assert.Contains("\n0 errors, 1 warning, 0 notes\n", strict.Out, StringComparison.Ordinal);
        Assert.Equal(0, Outcome.Of(folder, "build", ".").Code);
    }

    [Fact]
    public void A_line_that_is_not_understood_is_named_in_the_summary()
    {
        using var folder = new TemporaryFolder();
        WriteHat(folder, "hat.pattern.md", "Rnd 21: *K2tog; rep from * around. 8 (12, 16) sts.", "Rnd 21: *Frobnicate; rep from * around.");
        var outcome = Outcome.Of(folder, "lint", ".");
        Assert.Contains(" not understood: Rnd 21: *Frobnicate; rep from * around.\n", outcome.Out, StringComparison.Ordinal);
        var coverage = Outcome.Of(folder, "lint", ".", "--format", "json").Json.GetProperty("files")[0].GetProperty("coverage");
        Assert.Equal(1, coverage.GetProperty("unread").GetInt32());
        Assert.Equal(
            coverage.GetProperty("instructions").GetInt32(),
            coverage.GetProperty("checked").GetInt32() + coverage.GetProperty("trusted").GetInt32() + coverage.GetProperty("unread").GetInt32());
    }

    [Fact]
    public void Findings_of_the_same_file_are_the_same_from_a_file_a_folder_and_standard_input()
    {
        using var folder = new TemporaryFolder();
        WriteHat(folder, "a/hat.pattern.md", "88 (96, 104) sts", "88 (96, 105) sts");
        string Of(Outcome outcome) => outcome.Json.GetProperty("files")[0].GetProperty("findings").GetRawText();
        var expected = Of(Outcome.Of(folder, "lint", "a/hat.pattern.md", "--format", "json"));
        Assert.Equal(expected, Of(Outcome.Of(folder, "lint", ".", "--format", "json")));
        Assert.Equal(expected, Of(Outcome.WithInput(folder, folder.Read("a/hat.pattern.md"), "lint", "-", "--format", "json")));
    }

    [Fact]
    public void Counts_are_told_for_every_size_or_for_one()
    {
        using var folder = new TemporaryFolder();
        WriteHat(folder, "hat.pattern.md");
        var all = Outcome.Of(folder, "counts", "hat.pattern.md", "--format", "json");
        Assert.Equal((0, ""), (all.Code, all.Error));
        Assert.Equal(["Brim", "Body", "Crown"], all.Json.GetProperty("pieces").EnumerateArray().Select(p => p.GetProperty("name").GetString()));
        var first = all.Json.GetProperty("pieces")[2].GetProperty("rows")[0];
        Assert.Equal(
            ("Rnd 1", "checked", "[1]", "[96,104,112]", "[88,96,104]", "null", "[88,96,104]"),
            (first.GetProperty("label").GetString(), first.GetProperty("status").GetString(), first.GetProperty("worked").GetRawText(),
                first.GetProperty("before").GetRawText(), first.GetProperty("after").GetRawText(), first.GetProperty("kinds").GetRawText(), first.GetProperty("stated").GetRawText()));
        var one = Outcome.Of(folder, "counts", "hat.pattern.md", "--format", "json", "--size", "m");
        Assert.Equal("""["M"]""", one.Json.GetProperty("sizes").GetRawText());
        Assert.Equal("[96]", one.Json.GetProperty("pieces")[2].GetProperty("rows")[0].GetProperty("after").GetRawText());
        Assert.Contains("before M,after M,stated M", Outcome.Of(folder, "counts", "hat.pattern.md", "--format", "csv", "--size", "M").Out, StringComparison.Ordinal);
        Assert.Contains("Rnd 1", Outcome.Of(folder, "counts", "hat.pattern.md").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Counts_of_a_size_that_is_not_there_end_with_2_and_name_the_sizes()
    {
        using var folder = new TemporaryFolder();
        WriteHat(folder, "hat.pattern.md");
        var outcome = Outcome.Of(folder, "counts", "hat.pattern.md", "--size", "giant");
        Assert.Equal((2, ""), (outcome.Code, outcome.Out));
        Assert.StartsWith("the pattern has no size `giant`: there are S, M, L\n", outcome.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Counts_of_a_pattern_with_errors_are_told_with_a_word_of_warning()
    {
        using var folder = new TemporaryFolder();
        WriteHat(folder, "hat.pattern.md", "88 (96, 104) sts", "88 (96, 105) sts");
        var outcome = Outcome.Of(folder, "counts", "hat.pattern.md");
        Assert.Equal((0, "1 error in this pattern: `patternforge lint` tells which rows are wrong\n"), (outcome.Code, outcome.Error));
    }

    [Fact]
    public void Counts_of_a_file_that_is_no_text_end_with_1_and_tell_the_finding()
    {
        using var folder = new TemporaryFolder();
        folder.Write("x.pattern.md", [0, 1]);
        var outcome = Outcome.Of(folder, "counts", "x.pattern.md");
        Assert.Equal((1, ""), (outcome.Code, outcome.Out));
        Assert.StartsWith("error[PF132]", outcome.Error, StringComparison.Ordinal);
    }
}
