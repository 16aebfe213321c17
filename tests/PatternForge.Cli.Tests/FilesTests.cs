using System.Text;
using PatternForge.Core;

namespace PatternForge.Cli.Tests;

/// <summary>Which files are looked at, and what comes of files that are no patterns.</summary>
public class FilesTests
{
    private static string[] PathsIn(Outcome outcome) =>
        [.. outcome.Json.GetProperty("files").EnumerateArray().Select(f => f.GetProperty("path").GetString()!)];

    private static string[] CodesIn(Outcome outcome) =>
        [.. outcome.Json.GetProperty("files")[0].GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("code").GetString()!)];

    [Fact]
    public void A_folder_is_searched_for_patterns_in_stable_order()
    {
        using var folder = new TemporaryFolder();
        foreach (var name in (string[])["b/two.pattern.md", "a.pattern.md", "b/one.pattern.md", "b/c/deep.pattern.md", "B.pattern.md", "readme.md", "b/x.pattern.txt", ".hidden/h.pattern.md", ".pattern.md"])
        {
            folder.Write(name, "");
        }

        string[] expected = ["B.pattern.md", "a.pattern.md", "b/c/deep.pattern.md", "b/one.pattern.md", "b/two.pattern.md"];
        Assert.Equal(expected, PathsIn(Outcome.Of(folder, "lint", ".", "--format", "json")));
        Assert.Equal(
            ["b/c/deep.pattern.md", "b/one.pattern.md", "b/two.pattern.md"],
            PathsIn(Outcome.Of(folder, "lint", "b", "--format", "json")));
        Assert.Equal(PathsIn(Outcome.Of(folder, "lint", "b", "--format", "json")), PathsIn(Outcome.Of(folder, "lint", "b/", "--format", "json")));
    }

    [Fact]
    public void Results_stand_in_the_order_of_the_command_line_each_file_once()
    {
        using var folder = new TemporaryFolder();
        for (var i = 0; i < 40; i++)
        {
            folder.Write($"many/{i:00}.pattern.md", "");
        }

        folder.Write("notes.txt", "");
        var paths = PathsIn(Outcome.Of(folder, "lint", "notes.txt", "many/07.pattern.md", "many", "-", "notes.txt", "-", "--format", "json"));
        Assert.Equal(["notes.txt", "many/07.pattern.md", .. Enumerable.Range(0, 40).Where(i => i != 7).Select(i => $"many/{i:00}.pattern.md"), "-"], paths);
    }

    [Fact]
    public void A_missing_path_ends_with_2_and_the_others_are_still_looked_at()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a.pattern.md", "");
        var outcome = Outcome.Of(folder, "lint", "gone.pattern.md", "a.pattern.md", "--format", "json");
        Assert.Equal(2, outcome.Code);
        Assert.Equal("there is no file or folder `gone.pattern.md`\n", outcome.Error);
        Assert.Equal(["a.pattern.md"], PathsIn(outcome));
    }

    [Theory]
    [InlineData("")]
    [InlineData("a\0b")]
    public void A_path_that_no_file_can_have_ends_with_2(string path)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(2, Outcome.Of(folder, "lint", path).Code);
    }

    [Fact]
    public void A_folder_without_a_pattern_ends_with_2_and_says_so()
    {
        using var folder = new TemporaryFolder();
        folder.Write("sub/readme.md", "");
        var outcome = Outcome.Of(folder, "lint", "sub");
        Assert.Equal((2, "", "there is no pattern in `sub`: no file in it ends in .pattern.md\n"), (outcome.Code, outcome.Out, outcome.Error));
    }

    [Fact]
    public void A_link_to_a_folder_is_not_followed_so_that_loops_end()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a/one.pattern.md", "");
        Directory.CreateSymbolicLink(folder.At("a/loop"), folder.At("a"));
        Directory.CreateSymbolicLink(folder.At("a/self"), folder.At("a/self"));
        var outcome = Outcome.Of(folder, "lint", "a", "--format", "json");
        Assert.Equal(["a/one.pattern.md"], PathsIn(outcome));
        Assert.Contains("`a/loop` is a link to a folder and was not followed", outcome.Error, StringComparison.Ordinal);
        Assert.NotEqual(2, outcome.Code);
    }

    [Fact]
    public void A_link_to_a_file_is_read_and_a_broken_one_is_told()
    {
        using var folder = new TemporaryFolder();
        folder.Write("real.txt", "");
        Directory.CreateDirectory(folder.At("a"));
        File.CreateSymbolicLink(folder.At("a/good.pattern.md"), folder.At("real.txt"));
        File.CreateSymbolicLink(folder.At("a/broken.pattern.md"), folder.At("gone.txt"));
        var outcome = Outcome.Of(folder, "lint", "a", "--format", "json");
        Assert.Equal(2, outcome.Code);
        Assert.Equal(["a/good.pattern.md"], PathsIn(outcome));
        Assert.Equal("`a/broken.pattern.md` cannot be read: it is not there\n", outcome.Error);
    }

    [Fact]
    public void A_byte_order_mark_is_no_part_of_the_text()
    {
        using var folder = new TemporaryFolder();
        folder.Write("plain.pattern.md", Encoding.UTF8.GetBytes("Row 1: k2."));
        folder.Write("marked.pattern.md", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("Row 1: k2.")]);
        var plain = Outcome.Of(folder, "lint", "plain.pattern.md", "--format", "json");
        var marked = Outcome.Of(folder, "lint", "marked.pattern.md", "--format", "json");
        Assert.Equal(plain.Out.Replace("plain", "marked", StringComparison.Ordinal), marked.Out);
    }

    [Fact]
    public void Bytes_that_are_not_UTF8_are_a_finding_at_their_place_and_reading_goes_on()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a.pattern.md", [.. "---\ntitle: caf"u8, 0xE9, .. "\n---\n"u8]);
        var outcome = Outcome.Of(folder, "lint", "a.pattern.md", "--format", "json");
        Assert.Equal(1, outcome.Code);
        var finding = outcome.Json.GetProperty("files")[0].GetProperty("findings").EnumerateArray().Single(f => f.GetProperty("code").GetString() is "PF130");
        Assert.Equal((2, 11, 2, 12), (finding.GetProperty("line").GetInt32(), finding.GetProperty("column").GetInt32(), finding.GetProperty("endLine").GetInt32(), finding.GetProperty("endColumn").GetInt32()));
        Assert.Equal("A character was lost here: the file is not saved as UTF-8", finding.GetProperty("message").GetString());
        Assert.Equal("source", finding.GetProperty("area").GetString());
    }

    [Fact]
    public void A_binary_file_is_one_finding()
    {
        using var folder = new TemporaryFolder();
        var bytes = new byte[5000];
        new Random(1).NextBytes(bytes);
        folder.Write("picture.pattern.md", bytes);
        var outcome = Outcome.Of(folder, "lint", "picture.pattern.md", "--format", "json");
        Assert.Equal((1, "PF132"), (outcome.Code, string.Join(' ', CodesIn(outcome))));
    }

    [Fact]
    public void A_text_in_UTF16_is_one_finding_that_says_so()
    {
        using var folder = new TemporaryFolder();
        folder.Write("wide.pattern.md", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes("---\ntitle: x\n---\n")]);
        var outcome = Outcome.Of(folder, "lint", "wide.pattern.md");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("error[PF132] This file is not plain text", outcome.Out, StringComparison.Ordinal);
        Assert.Contains("help: It looks like UTF-16: save it again as UTF-8", outcome.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_over_the_limit_is_refused_with_a_finding()
    {
        using var folder = new TemporaryFolder();
        using (var stream = File.Create(folder.At("big.pattern.md")))
        {
            stream.SetLength((long)CompileOptions.Default.MaxLength + 1);
        }

        var outcome = Outcome.Of(folder, "lint", "big.pattern.md", "--format", "json");
        Assert.Equal((1, "PF131"), (outcome.Code, string.Join(' ', CodesIn(outcome))));
        Assert.Equal(
            "This file is larger than 8 MB and was not read",
            outcome.Json.GetProperty("files")[0].GetProperty("findings")[0].GetProperty("message").GetString());
    }

    [Fact]
    public void Standard_input_over_the_limit_is_refused_without_reading_on()
    {
        using var folder = new TemporaryFolder();
        var endless = new EndlessStream();
        using var output = new StringWriter();
        var code = CommandLine.Run(["lint", "-"], new Surroundings { In = endless, Out = output, Error = TextWriter.Null, Folder = folder.Path });
        Assert.Equal(1, code);
        Assert.Contains("PF131", output.ToString(), StringComparison.Ordinal);
        Assert.InRange(endless.Given, CompileOptions.Default.MaxLength, CompileOptions.Default.MaxLength + (1 << 20));
    }

    [Fact]
    public void A_wish_to_stop_ends_a_wait_for_standard_input()
    {
        using var folder = new TemporaryFolder();
        using var stop = new CancellationTokenSource();
        using var error = new StringWriter();
        stop.CancelAfter(TimeSpan.FromMilliseconds(100));
        var code = CommandLine.Run(["lint", "-"], new Surroundings { In = new SilentStream(), Out = TextWriter.Null, Error = error, Folder = folder.Path, Stop = stop.Token });
        Assert.Equal((130, "stopped"), (code, error.ToString().Trim()));
    }

    [Fact]
    public void Output_that_cannot_be_written_ends_with_2_and_says_why()
    {
        using var folder = new TemporaryFolder();
        folder.Write("a.pattern.md", "");
        using var full = new FullWriter();
        using var error = new StringWriter { NewLine = "\n" };
        var code = CommandLine.Run(["counts", "a.pattern.md"], new Surroundings { In = Stream.Null, Out = full, Error = error, Folder = folder.Path });
        Assert.Equal((2, "the result could not be written: No space left on device\n"), (code, error.ToString()));
    }

    private sealed class FullWriter : TextWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(string? value) => throw new IOException("No space left on device.");
    }

    private sealed class EndlessStream : MemoryStreamBase
    {
        public int Given { get; private set; }

        public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
        {
            Array.Fill(buffer, (byte)'k', offset, count);
            Given += count;
            return Task.FromResult(count);
        }
    }

    private sealed class SilentStream : MemoryStreamBase
    {
        public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            new TaskCompletionSource<int>().Task;
    }

    private abstract class MemoryStreamBase : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
