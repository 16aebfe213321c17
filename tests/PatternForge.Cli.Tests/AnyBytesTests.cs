using System.Globalization;
using System.Text.Json;

namespace PatternForge.Cli.Tests;

/// <summary>
/// Any bytes as input give findings, never an exception: damaged examples go through <c>lint</c> and <c>build</c> as they would in use.
/// PATTERNFORGE_FUZZ=N tries N of them instead of 10,000; PATTERNFORGE_FUZZ_SEED=N begins elsewhere.
/// </summary>
public class AnyBytesTests
{
    private const int PageEach = 41;

    private static readonly string[] Forms = ["text", "json", "sarif", "github"];

    [Fact]
    public void Any_bytes_give_findings_and_never_a_fault()
    {
        var count = Number("PATTERNFORGE_FUZZ", 10_000);
        var seed = Number("PATTERNFORGE_FUZZ_SEED", 1);
        var texts = Texts();
        var failure = "";
        Parallel.ForEach(
            System.Collections.Concurrent.Partitioner.Create(0, count, Math.Max(1, count / 64)),
            () => new TemporaryFolder(),
            (range, state, folder) =>
            {
                for (var i = range.Item1; i < range.Item2 && !state.ShouldExitCurrentIteration; i++)
                {
                    var input = new Mutator(texts, seed + i).Next();
                    if (WrongWith(folder, input, i) is { } wrong)
                    {
                        var kept = Path.Combine(Path.GetTempPath(), $"patternforge-input-{seed + i}.pattern.md");
                        File.WriteAllBytes(kept, input);
                        Interlocked.CompareExchange(ref failure, $"input {seed + i}, kept as {kept}: {wrong}", "");
                        state.Stop();
                    }
                }

                return folder;
            },
            folder => folder.Dispose());
        Assert.Equal("", failure);
    }

    [Fact]
    public void A_byte_alone_and_nothing_at_all_give_no_fault()
    {
        using var folder = new TemporaryFolder();
        Assert.Null(WrongWith(folder, [], 0));
        for (var b = 0; b < 256; b++)
        {
            Assert.Null(WrongWith(folder, [(byte)b], b));
        }
    }

    private static string? WrongWith(TemporaryFolder folder, byte[] input, int turn)
    {
        var form = Forms[turn % Forms.Length];
        var lint = Outcome.WithInput(folder, input, "lint", "-", "--format", form);
        if (lint.Code is not (0 or 1))
        {
            return $"lint --format {form} ended with {lint.Code}: {lint.Error}";
        }

        if (form is "json" or "sarif")
        {
            try
            {
                using var json = JsonDocument.Parse(lint.Out);
            }
            catch (JsonException e)
            {
                return $"lint --format {form} is no JSON: {e.Message}";
            }
        }

        // What works the same rows for other answers takes turns.
        string[]? more = (turn % 3) switch
        {
            0 => ["counts", "-", "--format", turn % 2 == 0 ? "text" : "json"],
            1 => ["add-size", "-", "3X", turn % 2 == 0 ? "--before" : "--after", turn % 5 < 2 ? "S" : "L", "--format", turn % 4 < 2 ? "text" : "json"],
            _ => null,
        };
        if (more is not null && Outcome.WithInput(folder, input, more) is { Code: not (0 or 1) } answered && !(answered.Code == 2 && turn % 3 == 1))
        {
            return $"{more[0]} ended with {answered.Code}: {answered.Error}";
        }

        // A web page holds every size and other terms: it costs as much as a dozen of the other files.
        string[] formats = turn % PageEach == 0 ? [] : ["--format", "md,txt"];
        string[] build = turn % 8 == 0 ? ["build", "-", .. formats] : ["build", "-", "--draft", .. formats];
        var built = Outcome.WithInput(folder, input, build);
        return built.Code is 0 or 1 ? null : $"{string.Join(' ', build)} ended with {built.Code}: {built.Error}";
    }

    private static List<byte[]> Texts()
    {
        using var folder = new TemporaryFolder();
        Outcome.Of(folder, "new", "Harbour Hat");
        Outcome.Of(folder, "new", "Harbour Cloth", "--craft", "crochet");
        return [.. Repository.Examples().Concat(folder.Files().Select(folder.At)).Select(File.ReadAllBytes)];
    }

    private static int Number(string name, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : usual;
}
