using System.Diagnostics;
using System.Text;

namespace PatternForge.Cli.Tests;

/// <summary><c>lint --fix</c> and <c>--diff</c>: exact repairs only, shown before they are made, and a file is whole at every moment.</summary>
public class RepairTests
{
    private const string Hat = "---\ntitle: Harbour hat\ndesinger: Ilsa Merrowby\nsizes: one size\n---\n\n## Piece\n\nCO 12 sts.\n\nRow 1: K2, k2togg, k to end. (11 sts)\n\nBO all sts.\n";

    [Fact]
    public void A_diff_shows_what_would_change_and_changes_nothing()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat);
        var outcome = Outcome.Of(folder, "lint", "hat.pattern.md", "--fix", "--diff");
        Assert.Equal(
            """
            --- hat.pattern.md
            +++ hat.pattern.md
            @@ -1,6 +1,6 @@
             ---
             title: Harbour hat
            -desinger: Ilsa Merrowby
            +designer: Ilsa Merrowby
             sizes: one size
             ---
             
            @@ -8,6 +8,6 @@
             
             CO 12 sts.
             
            -Row 1: K2, k2togg, k to end. (11 sts)
            +Row 1: K2, k2tog, k to end. (11 sts)
             
             BO all sts.

            """.ReplaceLineEndings("\n"),
            outcome.Out);
        Assert.Equal(Hat, folder.Read("hat.pattern.md"));
    }

    [Fact]
    public void What_the_diff_shows_is_what_the_repair_does_and_patch_takes_it()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hat.pattern.md", Hat);
        folder.Write("copy/hat.pattern.md", Hat);
        var diff = Outcome.Of(folder, "lint", "hat.pattern.md", "--diff").Out;
        var outcome = Outcome.Of(folder, "lint", "hat.pattern.md", "--fix");
        Assert.Contains("`hat.pattern.md`: 2 repairs made\n", outcome.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("PF120", outcome.Out, StringComparison.Ordinal);
        Assert.Equal(Hat.Replace("desinger", "designer", StringComparison.Ordinal).Replace("k2togg", "k2tog", StringComparison.Ordinal), folder.Read("hat.pattern.md"));
        Assert.Equal(["copy/hat.pattern.md", "hat.pattern.md"], folder.Files());
        if (OperatingSystem.IsWindows() || !File.Exists("/usr/bin/patch"))
        {
            return;
        }

        folder.Write("x.diff", diff);
        using var patch = Process.Start(new ProcessStartInfo("/usr/bin/patch", ["-p0", "-i", folder.At("x.diff"), folder.At("copy/hat.pattern.md")]) { RedirectStandardOutput = true })!;
        patch.WaitForExit();
        Assert.Equal(folder.Read("hat.pattern.md"), folder.Read("copy/hat.pattern.md"));
    }

    [Fact]
    public void Line_ends_the_mark_and_permissions_stay()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("hat.pattern.md", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Hat.Replace("\n", "\r\n", StringComparison.Ordinal))]);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead);
        }

        Outcome.Of(folder, "lint", "hat.pattern.md", "--fix");
        var bytes = File.ReadAllBytes(path);
        var text = Encoding.UTF8.GetString(bytes);
        Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
        Assert.Contains("designer: Ilsa Merrowby\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead, File.GetUnixFileMode(path));
        }
    }

    [Fact]
    public void Standard_input_is_repaired_to_standard_output()
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.WithInput(folder, Hat, "lint", "-", "--fix");
        Assert.StartsWith("---\ntitle: Harbour hat\ndesigner: Ilsa Merrowby\n", outcome.Out, StringComparison.Ordinal);
        Assert.Contains("note[PF805]", outcome.Error, StringComparison.Ordinal);
        Assert.Equal(2, Outcome.WithInput(folder, Hat, "lint", "-", folder.Write("x.pattern.md", Hat), "--fix").Code);
    }

    [Fact]
    public void A_link_out_of_the_folder_is_left_alone()
    {
        using var folder = new TemporaryFolder();
        folder.Write("far/hat.pattern.md", Hat);
        Directory.CreateDirectory(folder.At("here"));
        File.CreateSymbolicLink(folder.At("here/hat.pattern.md"), folder.At("far/hat.pattern.md"));
        var outcome = Outcome.Of(folder, "lint", "here/hat.pattern.md", "--fix");
        Assert.Equal(2, outcome.Code);
        Assert.Contains("it is a link to a file in another folder", outcome.Error, StringComparison.Ordinal);
        Assert.Equal(Hat, folder.Read("far/hat.pattern.md"));
    }

    [Fact]
    public void What_is_not_exact_is_left_alone_and_so_is_what_was_accepted()
    {
        using var folder = new TemporaryFolder();
        var wrong = Hat.Replace("desinger: Ilsa Merrowby", "desinger: Ilsa Merrowby # accept PF120: an old key", StringComparison.Ordinal).Replace("k2togg", "k2tog", StringComparison.Ordinal).Replace("(11 sts)", "(10 sts)", StringComparison.Ordinal);
        folder.Write("hat.pattern.md", wrong);
        var outcome = Outcome.Of(folder, "lint", "hat.pattern.md", "--fix");
        Assert.Equal(1, outcome.Code);
        Assert.Equal(wrong, folder.Read("hat.pattern.md"));
        Assert.Equal("", Outcome.Of(folder, "lint", "hat.pattern.md", "--diff").Out);
    }

    [Fact]
    public void The_style_of_the_house_is_brought_into_every_place_and_other_meanings_are_left_alone()
    {
        using var folder = new TemporaryFolder();
        folder.Write("patternforge.yaml", "style:\n  round: rnd\n  stitches: sts\n  repeat: rep\n  unit-space: 10 cm\n  dash: 1–4\n");
        folder.Write("hat.pattern.md", "---\ntitle: Harbour hat\nsizes: one size\n---\n\n## Piece\n\nCO 12 stitches. Join in the round.\n\nRound 1: *K2, p2; repeat from * around. 12 stitches.\n\nRounds 2-4: Work as Round 1.\n\nRepeat Rounds 1-4 until piece measures 5cm.\n\nBind off all sts.\n");
        var outcome = Outcome.Of(folder, "lint", "hat.pattern.md");
        Assert.Contains("warning[PF420] the word for a round: `round` stands 4 times where the style sheet has `rnd`", outcome.Out, StringComparison.Ordinal);
        Outcome.Of(folder, "lint", "hat.pattern.md", "--fix");
        Assert.Contains("CO 12 sts. Join in the round.\n\nRnd 1: *K2, p2; rep from * around. 12 sts.\n\nRnds 2–4: Work as Rnd 1.\n\nRep Rnds 1–4 until piece measures 5 cm.\n", folder.Read("hat.pattern.md"), StringComparison.Ordinal);
        Assert.DoesNotContain("PF420", Outcome.Of(folder, "lint", "hat.pattern.md").Out, StringComparison.Ordinal);
    }
}
