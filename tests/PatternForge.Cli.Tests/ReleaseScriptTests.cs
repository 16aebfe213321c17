using System.Diagnostics;

namespace PatternForge.Cli.Tests;

/// <summary>The script beside the examples that releases all of them: run by a real shell, with the real program.</summary>
public class ReleaseScriptTests
{
    [Fact]
    public void All_examples_are_released_from_any_directory_into_a_folder_with_blanks_in_its_name()
    {
        if (OperatingSystem.IsWindows())
        {
            // There is no POSIX shell that every such system has.
            return;
        }

        using var folder = new TemporaryFolder();
        var (code, said, _) = Release(folder, Path.Combine(Repository.Root, "examples", "release-all.sh"), "my pages");
        var names = Directory.EnumerateFiles(Path.Combine(Repository.Root, "examples"), "*.pattern.md").Select(f => Path.GetFileName(f)[..^".pattern.md".Length]);

        Assert.Equal(0, code);
        Assert.EndsWith(" patterns released into ./my pages\n", said, StringComparison.Ordinal);
        Assert.Equal(
            names.SelectMany(n => (string[])[$"my pages/{n}.files.json", $"my pages/{n}.html", $"my pages/{n}.md"]).Order(StringComparer.Ordinal),
            folder.Files().Where(f => f.StartsWith("my pages/", StringComparison.Ordinal) && !f.Contains(".photos/", StringComparison.Ordinal) && !f.EndsWith(".svg", StringComparison.Ordinal)));
        Assert.Contains("my pages/hawser-cowl.chart-hawser-cable.svg", folder.Files());
        Assert.Contains("my pages/skerry-seal-pup.photos/seal-side.svg", folder.Files());
    }

    [Fact]
    public void An_example_that_is_not_clean_stops_the_release_and_is_named()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var folder = new TemporaryFolder();
        var script = folder.Write("of mine/release-all.sh", File.ReadAllBytes(Path.Combine(Repository.Root, "examples", "release-all.sh")));
        folder.Write("of mine/a hat.pattern.md", "---\ntitle: A hat\n---\n");
        var (code, _, error) = Release(folder, script, "pages");

        Assert.Equal(1, code);
        Assert.Equal("release-all: a hat.pattern.md is not clean, so nothing more is released\n", error);
        Assert.DoesNotContain(folder.Files(), f => f.StartsWith("pages/", StringComparison.Ordinal));
    }

    [Fact]
    public void A_page_that_cannot_be_written_stops_the_release_and_is_named()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var folder = new TemporaryFolder();
        folder.Write("pages", "a file stands where the folder should be");
        var (code, _, error) = Release(folder, Path.Combine(Repository.Root, "examples", "release-all.sh"), "pages");

        Assert.NotEqual(0, code);
        Assert.EndsWith("could not be built, so nothing more is released\n", error, StringComparison.Ordinal);
    }

    // With the SDK alone the script asks `dotnet run`; here a stand-in for it starts the program that is built already.
    [Theory]
    [InlineData("patternforge", "")]
    [InlineData("dotnet", "while [ \"$1\" != -- ]; do shift; done; shift; ")]
    public void Without_a_program_named_for_it_the_script_takes_the_one_on_the_path_or_the_repositorys_own(string name, string skipped)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var folder = new TemporaryFolder();
        WriteProgram(folder, $"bin/{name}", skipped);
        var script = folder.Write("repository/examples/release-all.sh", File.ReadAllBytes(Path.Combine(Repository.Root, "examples", "release-all.sh")));
        folder.Write("repository/examples/scarf.pattern.md", File.ReadAllBytes(Path.Combine(Repository.Root, "examples", "tidewrack-scarf.pattern.md")));
        var (code, said, error) = Release(folder, script, "pages", start =>
        {
            start.Environment.Remove("PATTERNFORGE");
            start.Environment["PATH"] = $"{folder.At("bin")}:/usr/bin:/bin";
        });

        Assert.Equal((0, ""), (code, string.Concat(error.Split('\n').Where(line => line.StartsWith("release-all", StringComparison.Ordinal)))));
        Assert.EndsWith("1 patterns released into ./pages\n", said, StringComparison.Ordinal);
        Assert.Contains("pages/scarf.html", folder.Files());
    }

    private static Outcome Release(TemporaryFolder folder, string script, string output) =>
        Release(folder, script, output, start => start.Environment["PATTERNFORGE"] = WriteProgram(folder, "the program/patternforge", ""));

    private static string WriteProgram(TemporaryFolder folder, string name, string skipped)
    {
        var dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";
        var program = folder.Write(name, $"#!/bin/sh\n{skipped}exec '{dotnet}' exec '{typeof(CommandLine).Assembly.Location}' \"$@\"\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(program, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        return program;
    }

    private static Outcome Release(TemporaryFolder folder, string script, string output, Action<ProcessStartInfo> prepare)
    {
        var start = new ProcessStartInfo("sh") { WorkingDirectory = folder.Path, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(script);
        start.ArgumentList.Add(output);
        prepare(start);
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, said, error.Result);
    }
}
