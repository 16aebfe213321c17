using System.Text.RegularExpressions;

namespace PatternForge.Tests.House;

public class WordingTests
{
    // Addresses that stand for a published format; every other one in a file is an example.
    private static readonly string[] KnownHosts = ["example.com", "example.org", "example.net", "www.w3.org", "docs.oasis-open.org", "json-schema.org", "ns.adobe.com"];

    [Fact]
    public void No_file_knows_the_machine_it_was_written_on()
    {
        var place = new Regex(@"(?<![\w.~/])(?:/(?:root|home|Users|mnt|work)/\w|[A-Z]:\\\w)", RegexOptions.ExplicitCapture);
        Assert.Empty(Lines().Where(x => place.IsMatch(x.Line)).Select(x => $"{x.File.Path}: {x.Line.Trim()}"));
    }

    [Fact]
    public void Addresses_are_examples_or_belong_to_a_published_format()
    {
        var strange =
            from x in Lines()
            from Match address in Regex.Matches(x.Line, @"\b(?:https?|ftp)://([A-Za-z0-9.-]+)")
            let host = address.Groups[1].Value.TrimEnd('.')
            where host.Contains('.') && !KnownHosts.Any(known => host == known || host.EndsWith("." + known, StringComparison.Ordinal))
            select $"{x.File.Path}: {address.Value}";
        Assert.Empty(strange);
    }

    [Fact]
    public void Messages_never_call_anything_invalid()
    {
        var said = new Regex(@"""[^""\n]*\b(?:invalid|illegal|malformed)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture);
        Assert.Empty(Lines().Where(x => ProjectFiles.Source.Contains(x.File) && said.IsMatch(x.Line)).Select(x => $"{x.File.Path}: {x.Line.Trim()}"));
    }

    [Fact]
    public void No_test_is_skipped()
    {
        // The browser's test is the only one that may be left out, and only where no browser is found.
        var skips = new Regex(@"\bSkip\s*=(?!=)|\bSkip\.(?:If|Unless|When)|#if false", RegexOptions.ExplicitCapture);
        Assert.Empty(ProjectFiles.Tests
            .Where(f => f.Folder != "tests/PatternForge.Tests/House" && !f.Name.Contains("Browser", StringComparison.Ordinal))
            .SelectMany(f => f.Lines.Where(l => skips.IsMatch(l)).Select(l => $"{f.Path}: {l.Trim()}")));
    }

    private static IEnumerable<(ProjectFile File, string Line)> Lines() => ProjectFiles.All.SelectMany(f => f.Lines.Select(l => (f, l)));
}
