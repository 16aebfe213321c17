using System.Globalization;
using System.Text.Json;
using NJsonSchema;

namespace PatternForge.Cli.Tests;

/// <summary>Patterns as JSON and as plain text, and the list of a release's files.</summary>
public class DataTests
{
    private static readonly string[] Examples = [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.pattern.md").Order(StringComparer.Ordinal)];

    [Fact]
    public async Task Every_example_and_edition_follows_the_published_schema()
    {
        using var folder = new TemporaryFolder();
        var printed = Outcome.Of(folder, "schema");
        Assert.Equal(0, printed.Code);
        var schema = await JsonSchema.FromJsonAsync(printed.Out);
        Assert.Equal(0, Outcome.Of(folder, ["build", .. Examples, "--format", "json"]).Code);
        Assert.Equal(0, Outcome.Of(folder, ["build", .. Examples, "--format", "json", "--edition", "spelled-out", "--draft"]).Code);
        var files = folder.Files().Where(f => f.EndsWith(".json", StringComparison.Ordinal) && !f.EndsWith(".files.json", StringComparison.Ordinal)).ToArray();
        Assert.Equal(2 * Examples.Length, files.Length);
        Assert.All(files, f => Assert.Empty(schema.Validate(folder.Read(f))));

        // The schema holds its ground: a key that is not there or not known is told.
        var text = folder.Read(files[0]);
        Assert.NotEmpty(schema.Validate(text.Replace("\"designer\":", "\"desinger\":", StringComparison.Ordinal)));
        Assert.NotEmpty(schema.Validate(text.Replace("\"status\": \"checked\"", "\"status\": \"fine\"", StringComparison.Ordinal)));
    }

    [Fact]
    public void Json_has_the_counts_that_counts_tells_and_every_drawing_is_there()
    {
        using var folder = new TemporaryFolder();
        foreach (var example in Examples)
        {
            Assert.Equal(0, Outcome.Of(folder, "build", example, "--format", "json").Code);
            var stem = Path.GetFileName(example).Replace(".pattern.md", "", StringComparison.Ordinal);
            var pattern = JsonDocument.Parse(folder.Read($"out/{stem}.json")).RootElement;
            var rows = Rows(pattern).Select(r => r.GetProperty("after").ToString()).ToArray();
            var counted = Outcome.Of(folder, "counts", example, "--format", "json").Json.GetProperty("pieces").EnumerateArray()
                .SelectMany(p => p.GetProperty("rows").EnumerateArray()).Select(r => r.GetProperty("after").ToString().Replace(" ", "", StringComparison.Ordinal)).ToArray();
            Assert.Equal(counted, rows.Select(r => string.Concat(r.Where(c => !char.IsWhiteSpace(c)))));
            Assert.All(pattern.GetProperty("drawings").EnumerateArray(), d => Assert.True(File.Exists(folder.At("out/" + d.GetProperty("file").GetString()))));
        }
    }

    [Fact]
    public void A_chart_covers_every_square_of_its_rows()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, Outcome.Of(folder, ["build", .. Examples, "--format", "json"]).Code);
        var charts = folder.Files().Where(f => f.EndsWith(".json", StringComparison.Ordinal) && !f.EndsWith(".files.json", StringComparison.Ordinal))
            .SelectMany(f => JsonDocument.Parse(folder.Read(f)).RootElement.GetProperty("charts").EnumerateArray()).ToArray();
        Assert.NotEmpty(charts);
        Assert.All(charts, c => Assert.All(c.GetProperty("rows").EnumerateArray(), r =>
            Assert.Equal(c.GetProperty("columns").GetInt32(), r.GetProperty("squares").EnumerateArray().Sum(s => s.GetProperty("span").GetInt32()))));
    }

    [Fact]
    public void Plain_text_says_every_row_and_no_line_is_wider_than_mail_shows()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, Outcome.Of(folder, ["build", .. Examples, "--format", "txt,json"]).Code);
        foreach (var file in folder.Files().Where(f => f.EndsWith(".txt", StringComparison.Ordinal)))
        {
            var text = folder.Read(file);
            Assert.All(text.Split('\n'), l => Assert.True(new StringInfo(l).LengthInTextElements <= 72 || !l.Trim().Contains(' ', StringComparison.Ordinal), $"{file}: {l}"));
            Assert.DoesNotContain('\t', text);
            Assert.DoesNotContain('\v', text);
            Assert.DoesNotContain(text.Split('\n'), l => l.EndsWith(' '));
            var plain = string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
            var rows = Rows(JsonDocument.Parse(folder.Read(Path.ChangeExtension(file, ".json"))).RootElement).Select(r => r.GetProperty("text").GetString()!);
            Assert.All(rows, r => Assert.Contains(string.Concat(r.Where(c => !char.IsWhiteSpace(c))), plain, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_steers_nothing_in_plain_text_stays_words()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", "---\ntitle: \"Hat\\tand\\vhood\"\n---\n\n## Notes\n\nSee [the page](https://example.com/a) or [this](javascript:alert(1)).\n\n1. One\n2. Two\n\n```\n  set   as it is\n```\n\n| A | B | C |\n|---|---|---|\n| 1 | 22 | 333 |\n");
        Outcome.Of(folder, "build", "hat.pattern.md", "--format", "txt", "--draft");
        var text = folder.Read("out/hat.txt");
        Assert.Contains("See the page <https://example.com/a> or this.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("javascript", text, StringComparison.Ordinal);
        Assert.Contains("1.  One\n2.  Two\n", text, StringComparison.Ordinal);
        Assert.Contains("  set   as it is\n", text, StringComparison.Ordinal);
        Assert.Contains("A   B    C\n-  --  ---\n1  22  333\n", text, StringComparison.Ordinal);
        Assert.Contains("Draft, not for release", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_list_names_every_file_with_its_bytes_and_is_the_same_anywhere()
    {
        using var folder = new TemporaryFolder();
        var culture = CultureInfo.CurrentCulture;
        try
        {
            // A language with other signs for numbers; the program knows no culture of the system.
            var other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            (other.NumberFormat.NumberDecimalSeparator, other.NumberFormat.NegativeSign, other.DateTimeFormat.ShortDatePattern) = (",", "~", "dd.MM.yy");
            foreach (var (place, used) in (ReadOnlySpan<(string, CultureInfo)>)[("a", CultureInfo.InvariantCulture), ("deep/er/b", other)])
            {
                (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture) = (used, used);
                Assert.Equal(0, Outcome.Of(folder, ["build", .. Examples, "--format", "html,md,txt,json,png,source,listing", "--out", place]).Code);
            }
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture) = (culture, null);
        }

        foreach (var example in Examples)
        {
            var name = Path.GetFileName(example).Replace(".pattern.md", ".files.json", StringComparison.Ordinal);
            Assert.Equal(folder.Read("a/" + name), folder.Read("deep/er/b/" + name));
            var list = JsonDocument.Parse(folder.Read("a/" + name)).RootElement;
            Assert.Equal(list.GetProperty("files").EnumerateArray().Select(f => f.GetProperty("name").GetString()).Order(StringComparer.Ordinal), list.GetProperty("files").EnumerateArray().Select(f => f.GetProperty("name").GetString()));
            Assert.All(list.GetProperty("files").EnumerateArray(), f =>
            {
                var bytes = File.ReadAllBytes(folder.At("a/" + f.GetProperty("name").GetString()));
                Assert.Equal(bytes.Length, f.GetProperty("bytes").GetInt32());
                Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes)), f.GetProperty("sha256").GetString());
            });
        }

        var listed = folder.Files().Where(f => f.StartsWith("a/", StringComparison.Ordinal) && f.EndsWith(".files.json", StringComparison.Ordinal))
            .SelectMany(f => JsonDocument.Parse(folder.Read(f)).RootElement.GetProperty("files").EnumerateArray().Select(e => "a/" + e.GetProperty("name").GetString())).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(folder.Files().Where(f => f.StartsWith("a/", StringComparison.Ordinal) && !f.EndsWith(".files.json", StringComparison.Ordinal)).Except(listed));
    }

    private static IEnumerable<JsonElement> Rows(JsonElement pattern) => pattern.GetProperty("sections").EnumerateArray()
        .SelectMany(s => s.GetProperty("blocks").EnumerateArray()).Where(b => b.GetProperty("kind").GetString() == "rows").SelectMany(b => b.GetProperty("rows").EnumerateArray());
}
