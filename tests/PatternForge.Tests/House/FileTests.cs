using System.Text.RegularExpressions;

namespace PatternForge.Tests.House;

public class FileTests
{
    private const int MostLines = 500;
    private const int LookTwice = 300;

    private static readonly string[] TopLevel = ["README.md", "DEVELOPERS.md", "LICENSE", "PatternForge.sln", "src", "tests", "examples", "templates"];

    [Fact]
    public void No_source_file_is_longer_than_five_hundred_lines()
    {
        // Tables of stitches are data and may be longer.
        var lengths = ProjectFiles.Source.Where(f => !f.Name.EndsWith("Operations.cs", StringComparison.Ordinal)).Select(f => (f.Path, Lines: f.Lines.Length - 1)).OrderByDescending(f => f.Lines).ToArray();
        var tooLong = lengths.Where(f => f.Lines > MostLines).Select(f => $"{f.Path} has {f.Lines} lines").ToArray();
        var long300 = lengths.Where(f => f.Lines is > LookTwice and <= MostLines).Select(f => $"{f.Path} {f.Lines}");
        Assert.True(tooLong.Length == 0, $"{string.Join("\n", tooLong)}\nLook twice at those over {LookTwice}: {string.Join(", ", long300)}");
    }

    [Fact]
    public void A_namespace_is_the_folder_it_stands_in()
    {
        var strays = ProjectFiles.Source.Concat(ProjectFiles.Tests)
            .Select(f => (f, Declared: Regex.Matches(f.Text, @"^namespace ([\w.]+);", RegexOptions.Multiline).Select(m => m.Groups[1].Value).ToArray()))
            .Where(x => x.Declared.Length > 0 && !x.Declared.SequenceEqual([x.f.Folder[(x.f.Folder.IndexOf('/', StringComparison.Ordinal) + 1)..].Replace('/', '.')], StringComparer.Ordinal))
            .Select(x => $"{x.f.Path} declares {string.Join(", ", x.Declared)}");
        Assert.Empty(strays);
    }

    [Fact]
    public void No_folder_is_a_drawer_for_odds_and_ends()
    {
        string[] drawers = ["Helpers", "Utils", "Utilities", "Common", "Services", "Managers", "Misc"];
        Assert.DoesNotContain(ProjectFiles.All, f => f.Folder.Split('/').Intersect(drawers, StringComparer.OrdinalIgnoreCase).Any());
    }

    [Fact]
    public void The_top_level_stays_as_it_is_meant() => Assert.Empty(ProjectFiles.Top.Where(n => n[0] != '.').Except(TopLevel, StringComparer.Ordinal));

    [Fact]
    public void Size_is_never_hidden_in_partial_classes()
    {
        // What a generator completes is partial of necessity: source-generated JSON is the only such thing.
        var partial = ProjectFiles.Source.Where(f => Regex.IsMatch(f.Text, @"^\s*(?:\w+ )*partial (?:class|record|struct)", RegexOptions.Multiline | RegexOptions.ExplicitCapture) && !f.Text.Contains(": JsonSerializerContext", StringComparison.Ordinal)).Select(f => f.Path);
        Assert.Empty(partial);
    }

    [Fact]
    public void Nothing_in_the_product_stands_in_the_way_of_a_native_program()
    {
        var reflection = new Regex(@"\busing System\.(?:Reflection|Text\.RegularExpressions)\b|\bnew Regex\(|\bActivator\.|\bdynamic\b|\.ImportFrom|Import\(typeof|JsonSerializer\.(?:Serialize|Deserialize)(?:<\w+>)?\([^,]*\);", RegexOptions.ExplicitCapture);
        Assert.Empty(ProjectFiles.Source.SelectMany(f => f.Lines.Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal) && reflection.IsMatch(l)).Select(l => $"{f.Path}: {l.Trim()}")));
    }
}
