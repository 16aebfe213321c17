using System.Text.Json;
using PatternForge.Cli.Photos;

namespace PatternForge.Cli.Tests;

/// <summary>The page of all patterns of a folder, and what is not made again.</summary>
public class ShelfTests
{
    private static string Pattern(string title, string more = "") =>
        $"---\ntitle: {title}\nsizes: one size\n{more}---\n\n## Piece\n\nCO 12 sts.\n\nRow 1: Knit. 12 sts.\n\nBO all sts.\n";

    private static void Fill(TemporaryFolder folder)
    {
        folder.Write("designs/hat.pattern.md", Pattern("Harbour hat", "photos:\n  - {file: front.jpg, alt: From the front}\n"));
        folder.Write("designs/front.jpg", TakenPicture.Jpeg(900, 700));
        folder.Write("designs/deep/cowl.pattern.md", Pattern("Ferry cowl"));
        folder.Write("designs/mitt.pattern.md", Pattern("Quay mitt", "omit: [designs]\n"));
    }

    private static string[] Written(Outcome built) => built.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    [Fact]
    public void A_folder_gets_a_page_of_its_patterns_and_each_page_names_the_others()
    {
        using var folder = new TemporaryFolder();
        Fill(folder);
        var built = Outcome.Of(folder, "build", "designs");
        Assert.Equal(0, built.Code);
        Assert.Superset(new HashSet<string> { "out/index.html", "out/studio.css", "out/index.files.json", "out/hat.html", "out/hat.shelf.jpg", "out/deep/cowl.html" }, Written(built).ToHashSet(StringComparer.Ordinal));
        var shelf = folder.Read("out/index.html");
        Assert.Contains("<a href=\"deep/cowl.html\">Ferry cowl</a>", shelf, StringComparison.Ordinal);
        Assert.Contains("<img src=\"hat.shelf.jpg\" width=\"640\" height=\"498\" alt=\"From the front\"", shelf, StringComparison.Ordinal);
        Assert.Equal((640, 498), PictureCopy.SizeOf(File.ReadAllBytes(folder.At("out/hat.shelf.jpg"))));

        // A page is sold alone: without an address on the web it names the others and links to none.
        Assert.Contains("<li>Harbour hat: ", folder.Read("out/deep/cowl.html"), StringComparison.Ordinal);
        Assert.DoesNotContain("index.html", folder.Read("out/deep/cowl.html"), StringComparison.Ordinal);
        Assert.Contains("- Ferry cowl: ", folder.Read("out/hat.md"), StringComparison.Ordinal);
        Assert.DoesNotContain("Other designs", folder.Read("out/mitt.html"), StringComparison.Ordinal);

        Outcome.Of(folder, "build", "designs", "--site", "https://example.com/designs");
        Assert.Contains("<a href=\"https://example.com/designs/deep/cowl.html\">", folder.Read("out/hat.html"), StringComparison.Ordinal);
        Assert.Equal(2, Outcome.Of(folder, "build", "designs", "--site", "javascript:alert(1)").Code);
    }

    [Fact]
    public void A_single_file_gets_no_shelf()
    {
        using var folder = new TemporaryFolder();
        Fill(folder);
        Assert.DoesNotContain("out/index.html", Written(Outcome.Of(folder, "build", "designs/hat.pattern.md")));
        Assert.DoesNotContain("out/index.html", Written(Outcome.Of(folder, "build", "designs", "--format", "md")));
        Assert.DoesNotContain("Other designs", folder.Read("out/hat.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_would_come_out_the_same_is_not_made_again()
    {
        using var folder = new TemporaryFolder();
        Fill(folder);
        var first = Written(Outcome.Of(folder, "build", "designs"));
        var page = folder.Read("out/index.html");
        string[] shelf = ["out/index.html", "out/studio.css", "out/index.files.json"];
        var second = Outcome.Of(folder, "build", "designs");
        Assert.Equal(shelf, Written(second));
        Assert.Contains("3 of 3 patterns have not changed", second.Error, StringComparison.Ordinal);
        Assert.Equal(page, folder.Read("out/index.html"));

        Assert.Equal(first.Order(StringComparer.Ordinal), Written(Outcome.Of(folder, "build", "designs", "--anew")).Order(StringComparer.Ordinal));
        Assert.Equal(first.Order(StringComparer.Ordinal), Written(Outcome.Of(folder, "build", "designs", "--draft")).Order(StringComparer.Ordinal));
        Outcome.Of(folder, "build", "designs");
        Assert.Equal(shelf, Written(Outcome.Of(folder, "build", "designs")));

        string[] Made() => [.. Written(Outcome.Of(folder, "build", "designs")).Except(shelf).Where(n => n.EndsWith(".html", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
        folder.Write("designs/mitt.pattern.md", Pattern("Quay mitt", "summary: Warm.\nomit: [designs]\n"));
        Assert.Equal(["out/mitt.html"], Made());
        folder.Write("designs/front.jpg", TakenPicture.Jpeg(800, 700));
        Assert.Equal(["out/hat.html"], Made());
        File.Delete(folder.At("out/deep/cowl.md"));
        Assert.Equal(["out/deep/cowl.html"], Made());
        folder.Write("out/hat.html", "changed by hand");
        Assert.Equal(["out/hat.html"], Made());
        folder.Write("out/hat.files.json", "[\"no list of ours\"");
        Assert.Equal(["out/hat.html"], Made());

        // Who is named by others changes their pages as well.
        folder.Write("designs/deep/cowl.pattern.md", Pattern("Ferry snood"));
        Assert.Contains("out/hat.html", Made());
        folder.Write("patternforge.yaml", "defaults:\n  designer: Ilsa Merrowby\n");
        Assert.Equal(["out/deep/cowl.html", "out/hat.html", "out/mitt.html"], Made());
        Assert.Contains("Designs by Ilsa Merrowby", folder.Read("out/index.html"), StringComparison.Ordinal);
        Assert.Empty(Made());
    }

    [Fact]
    public void What_is_found_is_told_every_time_and_what_has_errors_is_not_on_the_shelf()
    {
        using var folder = new TemporaryFolder();
        Fill(folder);
        folder.Write("designs/bad.pattern.md", Pattern("Broken").Replace("Knit. 12", "Knit. 13", StringComparison.Ordinal));
        for (var run = 0; run < 2; run++)
        {
            var built = Outcome.Of(folder, "build", "designs");
            Assert.Equal(1, built.Code);
            Assert.Contains("states 13 stitches", built.Error, StringComparison.Ordinal);
            Assert.DoesNotContain("Broken", folder.Read("out/index.html"), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_page_of_somebody_else_is_left_alone()
    {
        using var folder = new TemporaryFolder();
        Fill(folder);
        folder.Write("out/index.html", "<h1>My own page</h1>");
        var built = Outcome.Of(folder, "build", "designs");
        Assert.Equal(2, built.Code);
        Assert.Equal("<h1>My own page</h1>", folder.Read("out/index.html"));
        Assert.Contains("was left alone", built.Error, StringComparison.Ordinal);

        folder.Write("designs/index.pattern.md", Pattern("Index"));
        Assert.Equal(2, Outcome.Of(folder, "build", "designs", "--out", "elsewhere").Code);
    }

    [Fact]
    public void The_lists_of_files_name_every_file_of_the_shelf()
    {
        using var folder = new TemporaryFolder();
        Fill(folder);
        Outcome.Of(folder, "build", "designs");
        var named = new HashSet<string>(StringComparer.Ordinal);
        foreach (var list in Directory.EnumerateFiles(folder.At("out"), "*.files.json", SearchOption.AllDirectories))
        {
            var below = Path.GetRelativePath(folder.At("out"), Path.GetDirectoryName(list)!);
            named.UnionWith(JsonDocument.Parse(File.ReadAllText(list)).RootElement.GetProperty("files").EnumerateArray().Select(f => Path.GetFullPath(Path.Combine(folder.At("out"), below, f.GetProperty("name").GetString()!))));
            named.Add(Path.GetFullPath(list));
        }

        Assert.Equal(Directory.EnumerateFiles(folder.At("out"), "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal), named.Order(StringComparer.Ordinal));
    }
}
