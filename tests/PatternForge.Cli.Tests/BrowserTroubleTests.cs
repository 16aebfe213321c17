using System.Diagnostics;
using System.Text;
using PatternForge.Cli.Printing;

namespace PatternForge.Cli.Tests;

/// <summary>Browsers that are not there, fail, never end or write something else.</summary>
public class BrowserTroubleTests
{
    private const string Hat = "---\ntitle: Harbour Hat\ndate: 2025-03-01\n---\n\n## Care\n\nWash by hand.\n";

    [Fact]
    public void Without_a_browser_the_page_made_for_print_is_written_and_how_to_come_by_one_is_told()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat.Replace("date:", "paper: both\ndate:", StringComparison.Ordinal));
        var outcome = Outcome.WithBrowsers(new BrowserSearch(), folder, [], "build", "hat.pattern.md", "--format", "pdf");
        Assert.Equal((2, "out/hat.a4.html\nout/hat.letter.html\nout/hat.files.json\n"), (outcome.Code, outcome.Out));
        Assert.Contains("no browser was found", outcome.Error, StringComparison.Ordinal);
        Assert.Contains("--browser PATH", outcome.Error, StringComparison.Ordinal);
        Assert.Contains("size: A4;", folder.Read("out/hat.a4.html"), StringComparison.Ordinal);
        Assert.Contains("size: letter;", folder.Read("out/hat.letter.html"), StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", folder.Read("out/hat.a4.html").Replace("&#39;", "'", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_paper_that_is_not_known_is_a_finding()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat.Replace("date:", "paper: lettre\ndate:", StringComparison.Ordinal));
        Assert.Contains("did you mean `letter`?", Outcome.Of(folder, "lint", "hat.pattern.md").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("echo 'no display' >&2; exit 7", "it ended with 7 and said: no display")]
    [InlineData("exit 0", "it ended without a document")]
    [InlineData("for a; do case $a in --print-to-pdf=*) echo hello > \"${a#*=}\";; esac; done", "is not the PDF that is expected")]
    [InlineData("sleep 987654 & sleep 987654", "it did not end within 1 second")]
    public void A_browser_that_fails_is_told_and_the_page_is_written(string script, string told)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat);
        folder.Write("browser", "#!/bin/sh\n" + script + "\n");
        File.SetUnixFileMode(folder.At("browser"), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var patience = TimeSpan.FromSeconds(told.Contains("within", StringComparison.Ordinal) ? 1 : 60);
        var outcome = Outcome.WithBrowsers(new BrowserSearch { Patience = patience }, folder, [], "build", "hat.pattern.md", "--format", "pdf", "--browser", "browser");
        Assert.Equal((2, "out/hat.a4.html\nout/hat.files.json\n"), (outcome.Code, outcome.Out));
        Assert.Contains(told, outcome.Error, StringComparison.Ordinal);
        Assert.True(SpinWait.SpinUntil(() => !Array.Exists(Process.GetProcessesByName("sleep"), p => CommandOf(p).Contains("987654", StringComparison.Ordinal)), TimeSpan.FromMinutes(1)));
    }

    [Fact]
    public void A_browser_is_looked_for_on_the_path_and_only_in_whole_folders()
    {
        var places = BrowserSearch.OnPath(string.Join(Path.PathSeparator, [Path.GetTempPath(), "here", ""])).ToArray();
        Assert.Contains(Path.Combine(Path.GetTempPath(), OperatingSystem.IsWindows() ? "chromium.exe" : "chromium"), places);
        Assert.All(places, p => Assert.True(Path.IsPathFullyQualified(p)));
    }

    [Theory]
    [InlineData("(D:20261126212158+02'30')", "(D:20250301000000+00'00')")]
    [InlineData("(D:20261126212158Z)", "(D:20250301000000Z)")]
    public void Dates_are_set_in_their_place_and_an_identifier_hangs_on_the_bytes_alone(string said, string set)
    {
        byte[] With(string date, string id) => Encoding.Latin1.GetBytes($"%PDF-1.4\n1 0 obj\n<</Title (x \\(D:19990101\\))\n/CreationDate {date}\n/ModDate {date}>>\nendobj\nxref\n0 1\ntrailer\n<</Size 2\n/Info 1 0 R\n/ID [<{id}> <{id}>]>>\nstartxref\n9\n%%EOF\n");
        var (one, other) = (With(said, "00112233445566778899AABBCCDDEEFF"), With(said.Replace("2026", "2031", StringComparison.Ordinal), "F0112233445566778899AABBCCDDEEF0"));
        var length = one.Length;
        Assert.True(PdfDates.Set(one, new(2025, 3, 1)) && PdfDates.Set(other, new(2025, 3, 1)));
        Assert.Equal(one, other);
        Assert.Equal(length, one.Length);
        var text = Encoding.Latin1.GetString(one);
        Assert.Contains($"/CreationDate {set}\n/ModDate {set}>>", text, StringComparison.Ordinal);
        Assert.Contains("(x \\(D:19990101\\))", text, StringComparison.Ordinal);
        Assert.DoesNotContain("<00000000", text, StringComparison.Ordinal);
        Assert.False(PdfDates.Set(Encoding.Latin1.GetBytes("hello"), new(2025, 3, 1)));
        Assert.Equal(PdfDates.None, PdfDates.Of("March 2025"));
    }

    private static string CommandOf(Process process) => File.Exists($"/proc/{process.Id}/cmdline") ? File.ReadAllText($"/proc/{process.Id}/cmdline") : "";
}
