using System.Diagnostics;

namespace PatternForge.Cli.Tests;

/// <summary>The completion scripts in real shells, where the machine has them; in CI bash, zsh and fish must be there.</summary>
public class ShellTests
{
    [Theory]
    [InlineData("bash", "complete -F")]
    [InlineData("zsh", "compdef")]
    [InlineData("fish", "complete -c")]
    [InlineData("powershell", "Register-ArgumentCompleter")]
    public void Each_shell_gets_its_script(string shell, string begin)
    {
        using var folder = new TemporaryFolder();
        var outcome = Outcome.Of(folder, "completions", shell);
        Assert.Equal((0, ""), (outcome.Code, outcome.Error));
        Assert.Contains(begin, outcome.Out, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', outcome.Out);
    }

    [Fact]
    public void Bash_completes()
    {
        if (IsMissing("bash"))
        {
            return;
        }

        using var folder = Prepared("bash");
        Assert.Equal(
            """
            lint:lint
            lint --fo:--format
            lint --format = j:json
            build --out su:sub folder
            lint my:my hat.pattern.md
            lint my\ h:my hat.pattern.md
            lint :sub folder,my hat.pattern.md
            lint no:
            counts my\ hat.pattern.md --size X:XL
            explain PF301:PF301

            """.ReplaceLineEndings("\n"),
            Run(folder, "bash", ["--norc", "-s"], $$"""
            patternforge() { {{Program}} "$@"; }
            source ./script
            line() {
                COMP_WORDS=(patternforge "$@") COMP_CWORD=$#
                _patternforge patternforge
                local IFS=,
                joined="${COMPREPLY[*]}"
                IFS=' '
                echo "$*:$joined"
            }
            line lint
            line lint --fo
            line lint --format = j
            line build --out su
            line lint my
            line lint 'my\ h'
            line lint ''
            line lint no
            line counts 'my\ hat.pattern.md' --size X
            line explain PF301
            """));
    }

    [Fact]
    public void Fish_completes()
    {
        if (IsMissing("fish"))
        {
            return;
        }

        using var folder = Prepared("fish");
        Assert.Equal(
            """
            lint
            --format
            --format=json
            sub folder/
            --out=sub folder/
            my hat.pattern.md
            notes.txt
            XL
            PF301

            """.ReplaceLineEndings("\n"),
            Run(folder, "fish", ["--no-config"], $"""
            function patternforge
                {Program} $argv
            end
            source script
            for line in 'li' 'lint --fo' 'lint --format=j' 'build --out su' 'build --out=su' 'lint my' 'lint no' 'counts my\ hat.pattern.md --size X' 'explain PF301'
                complete -C "patternforge $line" | string replace -r '\t.*' ''
            end
            """));
    }

    [Fact]
    public void Zsh_completes()
    {
        if (IsMissing("zsh"))
        {
            return;
        }

        using var folder = Prepared("zsh");
        folder.Write("inner", $$"""
            PS1= PS2=
            autoload -Uz compinit
            compinit -u -D
            patternforge() {
                if [[ $1 == "[suggest]" ]]; then {{Program}} "$@"; else print -r -- "<<$*>>"; fi
            }
            source ./script
            print ready
            """);
        Assert.Equal(
            """
            <<lint>>
            <<lint --format>>
            <<lint --format=json>>
            <<build --out=sub folder>>
            <<lint my hat.pattern.md>>
            <<lint notes.txt>>
            <<counts my hat.pattern.md --size XL>>
            <<explain PF301>>

            """.ReplaceLineEndings("\n"),
            Run(folder, "zsh", ["-f"], """
            zmodload zsh/zpty
            zpty inner 'zsh -f -i'
            zpty -w inner 'source ./inner'
            zpty -r inner answer '*ready*'
            for line in 'li' 'lint --fo' 'lint --format=j' 'build --out=su' 'lint my' 'lint no' 'counts my\ hat.pattern.md --size X' 'explain PF301'; do
                zpty -w -n inner "patternforge $line"$'\t\n'
                zpty -r inner answer $'*<<*>>*'
                answer=${answer##*<<}
                print -r -- "<<${answer%%>>*}>>"
            done
            zpty -d inner
            """));
    }

    [Fact]
    public void PowerShell_completes()
    {
        if (Find("pwsh") is null)
        {
            return;
        }

        using var folder = Prepared("powershell");
        Assert.Equal(
            """
            lint
            --format
            --format=json
            XL
            PF301

            """.ReplaceLineEndings("\n"),
            Run(folder, "pwsh", ["-NoProfile", "-NonInteractive", "-Command", "-"], $$"""
            function patternforge { {{Program.Replace("'", "", StringComparison.Ordinal)}} @args }
            Get-Content -Raw script | Invoke-Expression
            foreach ($line in 'li', 'lint --fo', 'lint --format=j', 'counts "my hat.pattern.md" --size X', 'explain PF301') { (TabExpansion2 -inputScript "patternforge $line" -cursorColumn "patternforge $line".Length).CompletionMatches.ForEach({ $_.CompletionText }) }

            """));
    }

    private static string Program => $"'{Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet"}' exec '{typeof(CommandLine).Assembly.Location}'";

    /// <summary>A folder with files to complete and the script of a shell.</summary>
    private static TemporaryFolder Prepared(string shell)
    {
        var folder = new TemporaryFolder();
        folder.Write("my hat.pattern.md", "---\ntitle: Hat\nsizes: S (M, L, XL)\n---\n");
        folder.Write("notes.txt", "");
        folder.Write("sub folder/photo.jpg", "");
        folder.Write("script", Outcome.Of(folder, "completions", shell).Out);
        return folder;
    }

    private static string Run(TemporaryFolder folder, string shell, string[] arguments, string input)
    {
        var start = new ProcessStartInfo(Find(shell)!, arguments)
        {
            WorkingDirectory = folder.Path,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["HOME"] = folder.Path;
        start.Environment["TERM"] = "dumb";
        using var process = Process.Start(start)!;
        process.StandardInput.Write(input.ReplaceLineEndings("\n") + "\n");
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(2)))
        {
            process.Kill(entireProcessTree: true);
        }

        Assert.Equal("", error.Result);
        return output.Result.ReplaceLineEndings("\n");
    }

    /// <summary>True when the machine has no such shell. Where all must be there, that is a failure.</summary>
    private static bool IsMissing(string shell)
    {
        var missing = OperatingSystem.IsWindows() || Find(shell) is null;
        Assert.False(missing && Environment.GetEnvironmentVariable("PATTERNFORGE_REQUIRE_SHELLS") is "1", $"{shell} is not installed");
        return missing;
    }

    private static string? Find(string shell) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, shell))
        .FirstOrDefault(File.Exists);
}
