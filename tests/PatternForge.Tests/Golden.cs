using System.Collections.Concurrent;

namespace PatternForge.Tests;

/// <summary>
/// Compares what the program wrote with a file that somebody has read and approved: <c>tests/golden/NAME.verified.EXT</c>. A mismatch writes
/// <c>NAME.received.EXT</c> beside it, shows the first difference and fails. UPDATE_GOLDEN=1 approves everything anew, except in CI.
/// </summary>
internal static class Golden
{
    private static readonly ConcurrentDictionary<string, bool> Asked = new(StringComparer.Ordinal);
    private static readonly Lock Files = new();

    public static string Folder => RepositoryRoot.Path("tests", "golden");

    /// <summary>Files that no test has asked for so far.</summary>
    public static IEnumerable<string> NotAsked => Directory.Exists(Folder)
        ? Directory.EnumerateFiles(Folder, "*.verified.*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Folder, f).Replace('\\', '/'))
            .Where(f => !Asked.ContainsKey(f))
            .Order(StringComparer.Ordinal)
        : [];

    private static bool Updates => Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1" && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI"));

    /// <summary>Compares a text with the approved one.</summary>
    /// <param name="actual">What the program wrote.</param>
    /// <param name="name">Folder and file, <c>hat/pattern.html</c>.</param>
    public static void Match(string actual, string name)
    {
        var (verified, received) = (Named(name, "verified"), Named(name, "received"));
        Asked[verified] = true;
        Compare(actual, Path.Combine(Folder, verified), Path.Combine(Folder, received));
    }

    /// <summary>Compares a text with an approved file that stands beside what it tells of, <c>hat.expected.txt</c>; a mismatch writes <c>hat.expected.received.txt</c>.</summary>
    /// <param name="actual">What the program wrote.</param>
    /// <param name="approved">The approved file's full path.</param>
    public static void MatchBeside(string actual, string approved) =>
        Compare(actual, approved, Path.Combine(Path.GetDirectoryName(approved)!, Named(Path.GetFileName(approved), "received")));

    private static void Compare(string actual, string approved, string fresh)
    {
        var text = actual.ReplaceLineEndings("\n");

        // Two tests may ask for the same file at the same time.
        using var alone = Files.EnterScope();
        if (Updates)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(approved)!);
            File.WriteAllText(approved, text);
            File.Delete(fresh);
            return;
        }

        var expected = File.Exists(approved) ? File.ReadAllText(approved).ReplaceLineEndings("\n") : null;
        if (expected == text)
        {
            File.Delete(fresh);
            return;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(fresh)!);
        File.WriteAllText(fresh, text);
        var (name, other) = (Path.GetFileName(approved), Path.GetFileName(fresh));
        Assert.Fail(expected is null ? $"{name} does not exist yet: read {other}, then run with UPDATE_GOLDEN=1" : $"{name} differs from {other}:\n{Difference(expected, text)}");
    }

    private static string Named(string name, string state)
    {
        var dot = name.LastIndexOf('.');
        return $"{name[..dot]}.{state}{name[dot..]}";
    }

    /// <summary>The first lines that differ, with one line before them.</summary>
    private static string Difference(string expected, string actual)
    {
        var (old, now) = (expected.Split('\n'), actual.Split('\n'));
        var at = 0;
        while (at < old.Length && at < now.Length && old[at] == now[at])
        {
            at++;
        }

        var lines = new List<string> { $"line {at + 1}:" };
        lines.AddRange(old.Skip(Math.Max(0, at - 1)).Take(Math.Min(1, at)).Select(l => "  " + l));
        lines.AddRange(old.Skip(at).Take(4).Select(l => "- " + l));
        lines.AddRange(now.Skip(at).Take(4).Select(l => "+ " + l));
        return string.Join('\n', lines.Select(l => l.Length > 200 ? l[..200] + "…" : l));
    }
}
