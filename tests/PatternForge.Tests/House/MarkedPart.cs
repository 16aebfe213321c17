namespace PatternForge.Tests.House;

/// <summary>
/// A part of a document that is written by the tests, between <c>&lt;!-- name: written by the tests --&gt;</c> and <c>&lt;!-- end of name --&gt;</c>.
/// UPDATE_GOLDEN=1 writes it anew, except in CI.
/// </summary>
internal static class MarkedPart
{
    /// <summary>Compares the part with what it should say.</summary>
    public static void Match(string path, string name, IEnumerable<string> lines)
    {
        var text = ProjectFiles.Read(path).Text;
        var (open, close) = ($"<!-- {name}: written by the tests -->\n", $"\n<!-- end of {name} -->");
        var start = text.IndexOf(open, StringComparison.Ordinal) + open.Length;
        var end = text.IndexOf(close, Math.Max(start - 1, 0), StringComparison.Ordinal);
        Assert.True(start >= open.Length && end >= start - 1, $"{path} has no marks for {name}");
        var wanted = $"\n{string.Join('\n', lines)}\n";
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1" && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")))
        {
            File.WriteAllText(RepositoryRoot.Path(path), text[..start] + wanted + text[end..]);
            return;
        }

        var now = text[start..Math.Max(start, end)];
        var missing = wanted.Split('\n').Except(now.Split('\n'), StringComparer.Ordinal).FirstOrDefault() ?? "lines that are no longer so, or in another order";
        Assert.True(now == wanted, $"{name} in {path} are not current: {missing}\nUPDATE_GOLDEN=1 dotnet test PatternForge.sln -c Release writes them anew");
    }
}
