using PatternForge.Cli.Photos;
using PatternForge.Core.Model;

namespace PatternForge.Cli.Tests;

public class BuildTests
{
    private const string Plain = "---\ntitle: Harbour Hat\n---\n\n## Care\n\nWash by hand.\n";

    // A character that was lost is an error whatever else is checked.
    private const string Faulty = "---\ntitle: Harbour \uFFFD Hat\n---\n\n## Care\n\nWash by hand.\n";

    private static void WritePlain(TemporaryFolder folder, string name) => Assert.Equal(0, OutcomeOfNew(folder, name));

    private static int OutcomeOfNew(TemporaryFolder folder, string name)
    {
        using var starter = new TemporaryFolder();
        var code = Outcome.Of(starter, "new", "Harbour Hat").Code;
        folder.Write(name, File.ReadAllBytes(starter.At("Harbour-Hat.pattern.md")));
        return code;
    }

    [Fact]
    public void A_pattern_becomes_a_page_and_a_text_in_the_folder_out()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        var outcome = Outcome.Of(folder, "build", "hat.pattern.md");
        Assert.Equal((0, "out/hat.html\nout/hat.md\nout/hat.files.json\n"), (outcome.Code, outcome.Out));
        Assert.Equal(["hat.pattern.md", "out/hat.files.json", "out/hat.html", "out/hat.md"], folder.Files());
        Assert.Contains("Harbour Hat", folder.Read("out/hat.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void Formats_and_folder_can_be_chosen()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        Assert.Equal("a/b/hat.md\na/b/hat.files.json\n", Outcome.Of(folder, "build", "hat.pattern.md", "--format", "md", "--out", "a/b/").Out);
        Assert.Equal("c/hat.md\nc/hat.html\nc/hat.files.json\n", Outcome.Of(folder, "build", "hat.pattern.md", "--format", "MD,html", "--format", "md", "--out", "c").Out);
        Assert.Equal(["a/b/hat.files.json", "a/b/hat.md", "c/hat.files.json", "c/hat.html", "c/hat.md", "hat.pattern.md"], folder.Files());
    }

    [Theory]
    [InlineData("`legal` is not known as a paper: there are a4, letter, both", "--format", "pdf", "--paper", "legal")]
    [InlineData("there is no browser `gone/browser`", "--format", "pdf", "--browser", "gone/browser")]
    [InlineData("`htm` is not known as a format: did you mean `html`?", "--format", "htm")]
    [InlineData("`enormous` is not known as an edition: there are us, uk, spelled-out, metric, inches, both-units, sizes, left-handed, screen-reader, both-terms, large-print, low-ink, words-only, charts-only", "--edition", "enormous")]
    [InlineData("there is no folder of templates `gone`", "--templates", "gone")]
    [InlineData("`hat.pattern.md` cannot be the folder to write into", "--out", "hat.pattern.md")]
    public void What_does_not_exist_is_refused_and_nothing_is_written(string sentence, params string[] wishes)
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Plain);
        var outcome = Outcome.Of(folder, ["build", "hat.pattern.md", .. wishes]);
        Assert.Equal((2, "", sentence), (outcome.Code, outcome.Out, outcome.Error.Split('\n')[0]));
        Assert.Equal(["hat.pattern.md"], folder.Files());
    }

    private const string Granny = "---\ntitle: Harbour square\ncraft: crochet\nterms: us\nrelease: [uk]\n---\n\n## Square\n\nCh 4 and join with a sl st to form a ring.\n\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\n";

    [Fact]
    public void An_edition_is_written_under_its_name_and_says_its_terms()
    {
        using var folder = new TemporaryFolder();
        folder.Write("square.pattern.md", Granny);
        var outcome = Outcome.Of(folder, "build", "square.pattern.md", "--format", "md,source", "--edition", "uk,spelled-out");
        Assert.Equal((0, "out/square.uk.md\nout/square.uk.pattern.md\nout/square.spelled-out.md\nout/square.spelled-out.pattern.md\nout/square.files.json\n"), (outcome.Code, outcome.Out));
        Assert.Contains("11 tr in ring", folder.Read("out/square.uk.md"), StringComparison.Ordinal);
        Assert.Contains("UK", folder.Read("out/square.uk.md"), StringComparison.Ordinal);
        Assert.Contains("terms: uk", folder.Read("out/square.uk.pattern.md"), StringComparison.Ordinal);
        Assert.Contains("Round 1: Chain 3 (counts as double crochet), 11 double crochet in ring", folder.Read("out/square.spelled-out.pattern.md"), StringComparison.Ordinal);
        Assert.Equal(0, Outcome.Of(folder, "lint", "out/square.uk.pattern.md").Code);
    }

    [Fact]
    public void Without_an_edition_the_pattern_is_written_as_it_is_and_in_those_that_its_header_releases()
    {
        using var folder = new TemporaryFolder();
        folder.Write("square.pattern.md", Granny);
        var outcome = Outcome.Of(folder, "build", "square.pattern.md", "--format", "md");
        Assert.Equal((0, "out/square.md\nout/square.uk.md\nout/square.files.json\n"), (outcome.Code, outcome.Out));
    }

    [Fact]
    public void What_is_wrong_with_an_edition_is_told_by_lint_at_the_place_in_the_file()
    {
        using var folder = new TemporaryFolder();
        folder.Write("square.pattern.md", Granny.Replace("release: [uk]", "stitches:\n  htr: (dc, ch 1, dc) in next st\nrelease: [uk]", StringComparison.Ordinal));
        var outcome = Outcome.Of(folder, "lint", "square.pattern.md");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("error[PF408] in the edition `uk`, `htr`", outcome.Out, StringComparison.Ordinal);
        Assert.Contains("square.pattern.md:6:3", outcome.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_names_the_editions_of_a_file_and_the_one_that_has_a_finding()
    {
        using var folder = new TemporaryFolder();
        folder.Write("square.pattern.md", Granny.Replace("release: [uk]", "stitches:\n  htr: (dc, ch 1, dc) in next st\nrelease: [uk]", StringComparison.Ordinal));
        var file = Outcome.Of(folder, "lint", "square.pattern.md", "--format", "json").Json.GetProperty("files")[0];
        Assert.Equal(["uk"], file.GetProperty("editions").EnumerateArray().Select(e => e.GetString()));
        var findings = file.GetProperty("findings").EnumerateArray().Select(f => (Code: f.GetProperty("code").GetString(), Edition: f.GetProperty("edition").GetString())).ToArray();
        Assert.Contains(("PF408", "uk"), findings);
        Assert.Contains(findings, f => f.Code != "PF408" && f.Edition is null);
    }

    private const string Shelf = "out/index.html\nout/studio.css\nout/index.files.json\n";

    [Fact]
    public void A_pattern_with_errors_is_not_released_and_the_others_are()
    {
        using var folder = new TemporaryFolder();
        folder.Write("bad.pattern.md", Faulty);
        WritePlain(folder, "good.pattern.md");
        var outcome = Outcome.Of(folder, "build", ".", "--format", "html");
        Assert.Equal((1, "out/good.html\nout/good.files.json\n" + Shelf), (outcome.Code, outcome.Out));
        Assert.Contains("error[PF130]", outcome.Error, StringComparison.Ordinal);
        Assert.Contains("`bad.pattern.md` has errors and was not released; `--draft` writes it as a draft", outcome.Error, StringComparison.Ordinal);
        Assert.Equal(["bad.pattern.md", "good.pattern.md", "out/good.files.json", "out/good.html", "out/index.files.json", "out/index.html", "out/studio.css"], folder.Files());
    }

    [Fact]
    public void A_draft_is_written_in_spite_of_errors_and_says_what_it_is()
    {
        using var folder = new TemporaryFolder();
        folder.Write("bad.pattern.md", Faulty);
        var outcome = Outcome.Of(folder, "build", ".", "--draft");
        Assert.Equal((0, "out/bad.html\nout/bad.md\nout/bad.files.json\n" + Shelf), (outcome.Code, outcome.Out));
        Assert.Contains("error[PF130]", outcome.Error, StringComparison.Ordinal);
        Assert.Contains("draft", folder.Read("out/bad.html"), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("draft", folder.Read("out/bad.md"), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_file_that_is_no_text_makes_no_draft_either()
    {
        using var folder = new TemporaryFolder();
        folder.Write("picture.pattern.md", [0, 1, 2, 3]);
        var outcome = Outcome.Of(folder, "build", ".", "--draft");
        Assert.Equal((1, ""), (outcome.Code, outcome.Out));
        Assert.Contains("`picture.pattern.md` has errors and was not released\n", outcome.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_ends_with_2_and_the_others_are_still_written()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        var outcome = Outcome.Of(folder, "build", "gone.pattern.md", "hat.pattern.md", "--format", "md");
        Assert.Equal((2, "out/hat.md\nout/hat.files.json\n"), (outcome.Code, outcome.Out));
    }

    [Fact]
    public void Patterns_of_a_folder_keep_their_folders()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "designs/a/hat.pattern.md");
        WritePlain(folder, "designs/b/hat.pattern.md");
        Assert.Equal("out/a/hat.md\nout/a/hat.files.json\nout/b/hat.md\nout/b/hat.files.json\n", Outcome.Of(folder, "build", "designs", "--format", "md").Out);
    }

    [Fact]
    public void Two_patterns_are_never_written_to_one_place()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a/hat.pattern.md", Plain);
        folder.Write("b/Hat.pattern.md", Plain);
        var outcome = Outcome.Of(folder, "build", "a/hat.pattern.md", "b/Hat.pattern.md");
        Assert.Equal(2, outcome.Code);
        Assert.StartsWith("`a/hat.pattern.md` and `b/Hat.pattern.md` would both be written to `Hat.html`", outcome.Error, StringComparison.Ordinal);
        Assert.Equal(["a/hat.pattern.md", "b/Hat.pattern.md"], folder.Files());
    }

    [Fact]
    public void A_source_is_never_written_over()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.md", Plain);
        var outcome = Outcome.Of(folder, "build", "hat.md", "--out", ".");
        Assert.Equal(2, outcome.Code);
        Assert.StartsWith("`hat.md` would be written over the source `hat.md`", outcome.Error, StringComparison.Ordinal);
        Assert.Equal(Plain, folder.Read("hat.md"));
    }

    [Fact]
    public void An_earlier_release_is_replaced_and_everything_else_is_left_alone()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        folder.Write("out/hat.html", "earlier");
        folder.Write("out/notes.html", "mine");
        Assert.Equal(0, Outcome.Of(folder, "build", "hat.pattern.md", "--format", "html").Code);
        Assert.NotEqual("earlier", folder.Read("out/hat.html"));
        Assert.Equal("mine", folder.Read("out/notes.html"));
        Assert.Equal(["hat.pattern.md", "out/hat.files.json", "out/hat.html", "out/notes.html"], folder.Files());
    }

    [Fact]
    public void A_place_that_cannot_be_written_is_told_and_nothing_is_left_behind()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        Directory.CreateDirectory(folder.At("out/hat.html"));
        var outcome = Outcome.Of(folder, "build", "hat.pattern.md");
        Assert.Equal((2, "out/hat.md\nout/hat.files.json\n"), (outcome.Code, outcome.Out));
        Assert.EndsWith("`hat.html` could not be written: a folder of that name is there\n", outcome.Error, StringComparison.Ordinal);
        Assert.Equal(["hat.pattern.md", "out/hat.files.json", "out/hat.md"], folder.Files());
    }

    [Fact]
    public void Standard_input_is_released_as_a_pattern_without_a_name()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        var outcome = Outcome.WithInput(folder, folder.Read("hat.pattern.md"), "build", "-", "--format", "html");
        Assert.Equal((0, "out/pattern.html\nout/pattern.files.json\n"), (outcome.Code, outcome.Out));
    }

    [Fact]
    public void The_same_source_gives_the_same_bytes()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        Outcome.Of(folder, "build", "hat.pattern.md", "--out", "one");
        Outcome.Of(folder, "build", ".", "--out", "two");
        Assert.Equal(folder.Read("one/hat.html"), folder.Read("two/hat.html"));
        Assert.Equal(folder.Read("one/hat.md"), folder.Read("two/hat.md"));
    }

    [Fact]
    public void A_template_of_ones_own_replaces_the_built_in_one()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        folder.Write("mine/markdown/pattern.md", "Only {{ title }}\n");
        Assert.Equal(0, Outcome.Of(folder, "build", "hat.pattern.md", "--templates", "mine").Code);
        Assert.Equal("Only Harbour Hat\n", folder.Read("out/hat.md"));
        Assert.NotEqual("Only Harbour Hat\n", folder.Read("out/hat.html"));
    }

    [Fact]
    public void A_fault_in_a_template_is_told_once_and_no_half_release_is_written()
    {
        using var folder = new TemporaryFolder();
        WritePlain(folder, "hat.pattern.md");
        WritePlain(folder, "scarf.pattern.md");
        folder.Write("mine/markdown/pattern.md", "{{ titel }}\n");
        var outcome = Outcome.Of(folder, "build", ".", "--templates", "mine");
        Assert.Equal((1, ""), (outcome.Code, outcome.Out));
        Assert.Equal(2, outcome.Error.Split("error[PF911]").Length);
        Assert.DoesNotContain(folder.Files(), f => f.StartsWith("out/", StringComparison.Ordinal));
    }

    [Fact]
    public void Photos_beside_the_pattern_are_put_into_the_page_and_no_others()
    {
        using var folder = new TemporaryFolder();
        var png = TakenPicture.Png(12, 8);
        folder.Write("secret.png", png);
        folder.Write("work/photos/hat front.png", png);
        folder.Write("work/list.png", "no picture");
        var photos = new PhotoFiles(folder.At("work"));
        Assert.Equal($"data:image/png;base64,{Convert.ToBase64String(PictureCopy.Of(png)!.Bytes)}", photos.Embedded("photos/hat front.png")!.Address);
        File.CreateSymbolicLink(folder.At("work/link.png"), folder.At("secret.png"));
        Assert.Equal(
            [PhotoState.There, PhotoState.Outside, PhotoState.Missing, PhotoState.Outside, PhotoState.NoPicture, PhotoState.Outside],
            new[] { "photos/hat front.png", "../secret.png", "gone.png", "link.png", "list.png", "https://example.com/a.png" }.Select(name => photos.Look(name).State));
        Assert.All(["gone.png", "../secret.png", "list.png", "link.png"], name => Assert.Null(photos.Embedded(name)));
        Assert.Empty(photos.Remarks);
    }
}
