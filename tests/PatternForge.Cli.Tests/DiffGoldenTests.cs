using PatternForge.Tests;

namespace PatternForge.Cli.Tests;

/// <summary>Two versions of a knitted and of a crocheted pattern, held against each other in every form: to be read as a maker of the old version reads it.</summary>
public class DiffGoldenTests
{
    [Theory]
    [InlineData("thole-mitts", "text", "txt")]
    [InlineData("thole-mitts", "md", "md")]
    [InlineData("thole-mitts", "html", "html")]
    [InlineData("thole-mitts", "json", "json")]
    [InlineData("thole-mitts", "yaml", "yaml")]
    [InlineData("creel-mat", "text", "txt")]
    [InlineData("creel-mat", "md", "md")]
    [InlineData("creel-mat", "html", "html")]
    [InlineData("creel-mat", "json", "json")]
    public void What_changed_is_told_as_it_was_approved(string name, string format, string ending)
    {
        using var folder = Versions($"{name}-1.0.pattern.md", $"{name}-1.1.pattern.md");
        var outcome = Outcome.Of(folder, "diff", $"{name}-1.0.pattern.md", $"{name}-1.1.pattern.md", "--format", format);
        Assert.Equal((ExitCode.Findings, ""), (outcome.Code, outcome.Error));
        Golden.MatchBeside(outcome.Out, RepositoryRoot.Path("tests", "corpus", "versions", $"{name}.diff.{ending}"));
    }

    [Fact]
    public void A_pattern_that_was_only_typed_otherwise_has_not_changed()
    {
        using var folder = Versions("thole-mitts-1.0.pattern.md", "thole-mitts-1.0-retyped.pattern.md");
        var outcome = Outcome.Of(folder, "diff", "thole-mitts-1.0.pattern.md", "thole-mitts-1.0-retyped.pattern.md");
        Assert.Equal((ExitCode.Clean, "Thole Mitts, version 1.0\n\nnothing has changed in meaning\n"), (outcome.Code, outcome.Out));
        Assert.Empty(Outcome.Of(folder, "diff", "thole-mitts-1.0.pattern.md", "thole-mitts-1.0-retyped.pattern.md", "--format", "json").Json.GetProperty("corrections").EnumerateArray());
    }

    [Theory]
    [InlineData("corpus/versions/creel-mat-1.0", "uk")]
    [InlineData("../examples/net-loft-scarf", "uk")]
    [InlineData("../examples/skerry-seal-pup", "uk")]
    [InlineData("../examples/porthole-blanket", "us")]
    [InlineData("../examples/fairwater-jumper", "uk")]
    public void The_same_pattern_in_other_terms_differs_in_its_terms_alone(string pattern, string edition)
    {
        using var folder = new TemporaryFolder();
        folder.Write("old.pattern.md", File.ReadAllText(Path.Combine(RepositoryRoot.Path("tests"), pattern + ".pattern.md")));
        Outcome.Of(folder, "build", "old.pattern.md", "--format", "source", "--edition", edition, "--out", ".");
        var told = Outcome.Of(folder, "diff", "old.pattern.md", $"old.{edition}.pattern.md", "--format", "json").Json.GetProperty("corrections").EnumerateArray();
        Assert.All(told.Where(c => c.GetProperty("label").GetString() != "Terms"), c => Assert.StartsWith("Abbreviations", c.GetProperty("label").GetString(), StringComparison.Ordinal));
        Assert.Contains(told, c => c.GetProperty("label").GetString() == "Terms");
    }

    private static TemporaryFolder Versions(params string[] names)
    {
        var folder = new TemporaryFolder();
        foreach (var name in names)
        {
            folder.Write(name, File.ReadAllText(RepositoryRoot.Path("tests", "corpus", "versions", name)).ReplaceLineEndings("\n"));
        }

        return folder;
    }
}
