using System.Diagnostics;

namespace PatternForge.Cli.Tests;

/// <summary>The real program in a process of its own: what only a process shows.</summary>
public class ProcessTests
{
    [Fact]
    public void Exit_codes_reach_the_caller()
    {
        using var folder = new TemporaryFolder();
        folder.Write("good.pattern.md", "");
        folder.Write("bad.pattern.md", [0]);
        Assert.Equal(0, Run(folder, "", "--version").Code);
        Assert.Equal(1, Run(folder, "", "lint", "bad.pattern.md").Code);
        Assert.Equal(2, Run(folder, "", "lint", "gone.pattern.md").Code);
        Assert.Equal(2, Run(folder, "", "lint", "--frmat", "json").Code);
    }

    [Fact]
    public void Standard_input_is_read_and_the_streams_are_kept_apart()
    {
        using var folder = new TemporaryFolder();
        var outcome = Run(folder, "---\ntitle: Zoë's 毛糸\uFFFD\n---\n", "lint", "-", "gone.pattern.md", "--format", "json");
        Assert.Equal(2, outcome.Code);
        Assert.Equal("there is no file or folder `gone.pattern.md`", outcome.Error.Trim());
        Assert.Contains("PF130", outcome.Out, StringComparison.Ordinal);
        Assert.Equal("-", outcome.Json.GetProperty("files")[0].GetProperty("path").GetString());
    }

    [Fact]
    public void Into_a_pipe_there_is_no_colour_and_no_progress()
    {
        using var folder = new TemporaryFolder();
        folder.Write("bad.pattern.md", "毛\uFFFD");
        var outcome = Run(folder, "", "lint", ".");
        Assert.DoesNotContain('\e', outcome.Out + outcome.Error);
        Assert.Contains("1 │ 毛\uFFFD\n  │   ━\n", outcome.Out, StringComparison.Ordinal);
        Assert.Equal("", outcome.Error);
    }

    [Fact]
    public void A_new_file_is_written_into_the_current_folder()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, Run(folder, "", "new", "Harbour Hat").Code);
        Assert.Equal(["Harbour-Hat.pattern.md"], folder.Files());
    }

    [Fact]
    public void A_reader_that_has_seen_enough_is_no_fault()
    {
        using var folder = new TemporaryFolder();
        for (var i = 0; i < 300; i++)
        {
            folder.Write($"{i:000}.pattern.md", [(byte)'x', 0xFF]);
        }

        using var process = Start(folder, "lint", ".");
        process.StandardOutput.BaseStream.ReadByte();
        process.StandardOutput.Close();
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.Equal((1, ""), (process.ExitCode, error));
    }

    [Fact]
    public void An_interrupt_ends_the_program_quietly()
    {
        if (OperatingSystem.IsWindows() || InterruptsAreIgnored())
        {
            // There is no signal that one process could send to another here, or none that is heeded: so it is for jobs started in the background.
            return;
        }

        using var folder = new TemporaryFolder();
        using var process = Start(folder, "lint", "-", "gone.pattern.md");

        // The missing file is told before standard input is read: then the program listens.
        var first = process.StandardError.ReadLine();
        Assert.Equal("there is no file or folder `gone.pattern.md`", first);
        using (var kill = Process.Start("kill", ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]))
        {
            kill.WaitForExit();
        }

        Assert.Equal("stopped\n", process.StandardError.ReadToEnd());
        process.WaitForExit();
        Assert.Equal(130, process.ExitCode);
    }

    [Theory]
    [InlineData("lint", ".", "--format", "json")]
    [InlineData("build", ".", "--draft")]
    public void One_core_and_several_give_the_same_bytes(params string[] arguments)
    {
        var (first, second) = (With(cores: 1), With(cores: 4));
        Assert.Equal(first.Outcome, second.Outcome);
        Assert.Equal(first.Files, second.Files);

        (Outcome Outcome, string[] Files) With(int cores)
        {
            using var folder = new TemporaryFolder();
            foreach (var example in Repository.Examples())
            {
                folder.Write(Path.GetRelativePath(Repository.Root, example), File.ReadAllBytes(example));
            }

            using var process = Start(folder, cores, arguments);
            process.StandardInput.Close();
            var error = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (new(process.ExitCode, output, error.Result), [.. folder.Files().Select(name => $"{name}: {folder.Read(name)}")]);
        }
    }

    [Fact]
    public async Task Checking_needs_none_of_the_libraries_that_make_pages()
    {
        using var folder = new TemporaryFolder();
        foreach (var file in Directory.EnumerateFiles(AppContext.BaseDirectory).Where(f => Path.GetFileName(f) is var name && (name.EndsWith(".dll", StringComparison.Ordinal) || name == "patternforge.runtimeconfig.json") && !name.StartsWith("Scriban", StringComparison.Ordinal) && !name.StartsWith("Markdig", StringComparison.Ordinal)))
        {
            File.Copy(file, folder.At(Path.GetFileName(file)));
        }

        File.Copy(Repository.Examples().First(e => !e.Contains("faulty", StringComparison.Ordinal) && e.EndsWith(".pattern.md", StringComparison.Ordinal)), folder.At("one.pattern.md"));
        using var lint = Process.Start(new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", [folder.At("patternforge.dll"), "lint", folder.At("one.pattern.md")]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = lint.StandardError.ReadToEndAsync();
        var output = await lint.StandardOutput.ReadToEndAsync();
        await lint.WaitForExitAsync();

        Assert.Equal((0, ""), (lint.ExitCode, await error));
        Assert.Contains("instruction lines checked", output, StringComparison.Ordinal);
    }

    // What a process ignores from its start, its children ignore as well (Linux: /proc/self/status, the second bit is SIGINT).
    private static bool InterruptsAreIgnored() =>
        File.Exists("/proc/self/status")
        && File.ReadLines("/proc/self/status").FirstOrDefault(line => line.StartsWith("SigIgn:", StringComparison.Ordinal)) is { } ignored
        && (ulong.Parse(ignored.AsSpan("SigIgn:".Length).Trim(), System.Globalization.NumberStyles.HexNumber, System.Globalization.CultureInfo.InvariantCulture) & 2) != 0;

    private static Outcome Run(TemporaryFolder folder, string input, params string[] arguments)
    {
        using var process = Start(folder, arguments);
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, output, error.Result);
    }

    private static Process Start(TemporaryFolder folder, params string[] arguments) => Start(folder, null, arguments);

    private static Process Start(TemporaryFolder folder, int? cores, string[] arguments)
    {
        var utf8 = new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet")
        {
            WorkingDirectory = folder.Path,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = utf8,
            StandardOutputEncoding = utf8,
            StandardErrorEncoding = utf8,
        };
        start.ArgumentList.Add("exec");
        start.ArgumentList.Add(typeof(CommandLine).Assembly.Location);
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        if (cores is { } count)
        {
            start.Environment["DOTNET_PROCESSOR_COUNT"] = count.ToString("X", System.Globalization.CultureInfo.InvariantCulture);
        }

        start.Environment.Remove("NO_COLOR");
        start.Environment.Remove("PATTERNFORGE_TRACE");
        return Process.Start(start)!;
    }
}
