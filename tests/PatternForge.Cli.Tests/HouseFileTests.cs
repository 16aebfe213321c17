namespace PatternForge.Cli.Tests;

/// <summary>The project file: found upward from a pattern, told once, and in force for what it settles.</summary>
public class HouseFileTests
{
    private const string Hat = "---\ntitle: Harbour hat\nsizes: one size\n---\n\n## Piece\n\nCO 12 sts.\n\nRow 1: Knit.\n\nBO all sts.\n";

    [Fact]
    public void It_is_found_upward_up_to_the_root_of_the_repository()
    {
        using var folder = new TemporaryFolder();
        folder.Write("patternforge.yaml", "defaults:\n  designer: Outside\n");
        folder.Write("studio/.git/HEAD", "x");
        folder.Write("studio/hats/harbour/hat.pattern.md", Hat);
        Assert.DoesNotContain("Outside", Built(folder, "studio/hats/harbour/hat.pattern.md"), StringComparison.Ordinal);
        folder.Write("studio/patternforge.yaml", "defaults:\n  designer: Ilsa Merrowby\n");
        Assert.Contains("Ilsa Merrowby", Built(folder, "studio/hats/harbour/hat.pattern.md"), StringComparison.Ordinal);
        folder.Write("studio/hats/patternforge.yaml", "defaults:\n  designer: Odo Tarn\n");
        Assert.Contains("Odo Tarn", Built(folder, "studio/hats/harbour/hat.pattern.md"), StringComparison.Ordinal);
        Assert.DoesNotContain("Merrowby", Built(folder, "studio/hats/harbour/hat.pattern.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_checked_as_a_project_file_where_it_is_named_itself_and_is_no_pattern()
    {
        using var folder = new TemporaryFolder();
        folder.Write("patternforge.yaml", "defaults:\n  designer: Ilsa Merrowby\n  care: [wash by hand]\n");
        folder.Write("hat.pattern.md", Hat);
        var clean = Outcome.Of(folder, "lint", "patternforge.yaml", "--format", "json");
        Assert.Equal((0, ""), (clean.Code, clean.Error));
        var file = clean.Json.GetProperty("files")[0];
        Assert.Equal(("patternforge.yaml", 0), (file.GetProperty("path").GetString(), file.GetProperty("findings").GetArrayLength()));
        Assert.Contains("Wash by hand", Built(folder, "hat.pattern.md"), StringComparison.Ordinal);

        folder.Write("patternforge.yaml", "style:\n  round: circle\n");
        Assert.Equal(1, Outcome.Of(folder, "lint", "patternforge.yaml").Code);
        var both = Outcome.Of(folder, "lint", "patternforge.yaml", "hat.pattern.md", "--format", "json").Json.GetProperty("files").EnumerateArray();
        Assert.Equal(["patternforge.yaml", "hat.pattern.md"], both.Select(f => f.GetProperty("path").GetString()));

        var counted = Outcome.Of(folder, "counts", "patternforge.yaml");
        Assert.Equal((2, "`patternforge.yaml` is a project file and no pattern; `lint` checks it\n"), (counted.Code, counted.Error));
    }

    [Fact]
    public void Standard_input_takes_that_of_the_current_folder()
    {
        using var folder = new TemporaryFolder();
        folder.Write("patternforge.yaml", "defaults:\n  omit: [designer]\n");
        Assert.DoesNotContain("designer", Outcome.WithInput(folder, Hat, "lint", "-").Out, StringComparison.Ordinal);
        File.Delete(folder.At("patternforge.yaml"));
        Assert.Contains("to decide by: designer,", Outcome.WithInput(folder, Hat, "lint", "-").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void The_own_value_of_a_pattern_wins()
    {
        using var folder = new TemporaryFolder();
        folder.Write("patternforge.yaml", "defaults:\n  designer: Ilsa Merrowby\n  contact: studio@example.com\n");
        folder.Write("hat.pattern.md", Hat.Replace("sizes:", "designer: Odo Tarn\nsizes:", StringComparison.Ordinal));
        var page = Built(folder, "hat.pattern.md");
        Assert.Contains("Odo Tarn", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Merrowby", page, StringComparison.Ordinal);
        Assert.Contains("studio@example.com", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Its_findings_are_told_once_at_its_own_place_and_an_error_in_it_stops_the_release()
    {
        using var folder = new TemporaryFolder();
        folder.Write("patternforge.yaml", "tolerances:\n  mesurement: 4%\nstyle:\n  round: circle\n");
        folder.Write("a.pattern.md", Hat);
        folder.Write("b/c.pattern.md", Hat);
        var outcome = Outcome.Of(folder, "lint", ".", "--format", "json");
        Assert.Equal(1, outcome.Code);
        var files = outcome.Json.GetProperty("files").EnumerateArray().ToArray();
        Assert.Equal(["patternforge.yaml", "a.pattern.md", "b/c.pattern.md"], files.Select(f => f.GetProperty("path").GetString()));
        Assert.Equal([("PF160", 2), ("PF161", 4)], files[0].GetProperty("findings").EnumerateArray().Select(f => (f.GetProperty("code").GetString(), f.GetProperty("line").GetInt32())));
        Assert.Equal("measurement", files[0].GetProperty("findings")[0].GetProperty("fix").GetProperty("edits")[0].GetProperty("newText").GetString());
        var built = Outcome.Of(folder, "build", ".");
        Assert.Equal((1, ""), (built.Code, built.Out));
        Assert.Contains("`a.pattern.md` was not released: its project file `patternforge.yaml` has errors", built.Error, StringComparison.Ordinal);
        Assert.Equal(0, Outcome.Of(folder, "build", "a.pattern.md", "--draft").Out.Length == 0 ? 1 : 0);
    }

    [Fact]
    public void A_finding_that_nobody_may_accept_stands()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat.Replace("Row 1: Knit.", "Row 1: Knit. (13 sts) <!-- accept PF301: so it is -->", StringComparison.Ordinal));
        Assert.Equal(0, Outcome.Of(folder, "lint", ".").Code);
        folder.Write("patternforge.yaml", "never-accept: [stated-count-differs]\n");
        var outcome = Outcome.Of(folder, "lint", ".");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("error[PF163]", outcome.Out, StringComparison.Ordinal);
        Assert.Contains("error[PF301]", outcome.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_project_file_that_cannot_be_read_ends_with_2()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat);
        File.CreateSymbolicLink(folder.At("patternforge.yaml"), folder.At("patternforge.yaml"));
        var outcome = Outcome.Of(folder, "lint", ".");
        Assert.InRange(outcome.Code, 0, 2);
    }

    [Fact]
    public void Any_bytes_in_it_give_findings_and_never_a_fault()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat);
        var seed = "defaults:\n  designer: X\n  terms: uk\n  links: [{title: a, address: https://example.com}]\ntolerances: {measurement: 5%, photo-side: 10}\nstyle:\n  round: rnd\n  inches: 4\"\nnever-accept: [PF301]\n"u8.ToArray();
        var random = new Random(7);
        for (var i = 0; i < 120; i++)
        {
            var bytes = (byte[])seed.Clone();
            for (var n = random.Next(1, 12); n > 0; n--)
            {
                bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            }

            folder.Write("patternforge.yaml", i % 3 == 0 ? bytes[..random.Next(bytes.Length)] : bytes);
            Assert.InRange(Outcome.Of(folder, "lint", "hat.pattern.md").Code, 0, 1);
        }
    }

    private static string Built(TemporaryFolder folder, string pattern)
    {
        Assert.Equal(0, Outcome.Of(folder, "build", pattern, "--out", "out", "--format", "md").Code);
        return folder.Read("out/" + Path.GetFileName(pattern).Replace(".pattern.md", ".md", StringComparison.Ordinal));
    }
}
