using System.Text.RegularExpressions;

namespace PatternForge.Tests.House;

public class LayeringTests
{
    private static readonly ProjectFile Document = ProjectFiles.Read("DEVELOPERS.md");

    private static readonly Room[] Rooms = ImportTable.Read(Document);

    [Fact]
    public void Every_folder_imports_only_what_the_table_allows_it() => Assert.Empty(ImportTable.Breaches(Rooms, ProjectFiles.Source));

    [Fact]
    public void The_table_names_every_folder_of_the_source_once_and_no_other()
    {
        Assert.Equal(ImportTable.Folders(ProjectFiles.Source).Order(StringComparer.Ordinal), Rooms.SelectMany(r => r.Folders).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void No_earlier_stage_imports_a_later_one()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var backwards = new List<string>();
        foreach (var room in Rooms)
        {
            backwards.AddRange(room.Allowed.Where(a => a.Contains('/') && !a.EndsWith("/*", StringComparison.Ordinal) && !seen.Contains(a)).Select(a => $"{room.Folders[0]} -> {a}"));
            seen.UnionWith(room.Folders);
        }

        Assert.Empty(backwards);
    }

    [Fact]
    public void A_table_that_allows_less_than_the_source_uses_is_noticed()
    {
        var narrowed = Rooms.Select(r => r.Folders[0] == "Core/Checks" ? r with { Allowed = ["Core/Text"] } : r).ToArray();
        Assert.Contains(ImportTable.Breaches(narrowed, ProjectFiles.Source), b => b.EndsWith("PatternForge.Core.Findings", StringComparison.Ordinal));
        Assert.Contains(Breaches("Core/Syntax", "class A { Work.Needles? N; }"), b => b.EndsWith("Work.Needles", StringComparison.Ordinal));
        Assert.Contains(Breaches("Core/Syntax", "class A { Compilation? C; }"), b => b.EndsWith("Core.Compilation", StringComparison.Ordinal));
        Assert.Contains(Breaches("Core/Text", "using static PatternForge.Core.Model.PerSize;"), b => b.EndsWith("PatternForge.Core.Model.PerSize", StringComparison.Ordinal));
        Assert.Contains(Breaches("Core/Model", "using Rows = PatternForge.Rendering.Renderer;"), b => b.EndsWith("PatternForge.Rendering.Renderer", StringComparison.Ordinal));
        Assert.Empty(Breaches("Core/Syntax", "// Work.Needles and Compilation\nclass A { string S = \"Work.Needles\"; CompileOptions? O; }"));
    }

    [Fact]
    public void A_library_is_used_only_behind_its_fence()
    {
        var breaches =
            from fence in Fences()
            from file in ProjectFiles.Source
            where Regex.IsMatch(file.Text, $@"^[^/\n]*\b{Regex.Escape(fence.Library)}\b", RegexOptions.Multiline | RegexOptions.ExplicitCapture)
            let path = file.Path["src/PatternForge.".Length..]
            where !fence.Places.Any(place => path == place || path.StartsWith(place + "/", StringComparison.Ordinal))
            select $"{file.Path} uses {fence.Library}";
        Assert.Empty(breaches);
    }

    [Fact]
    public void Every_library_of_the_product_has_a_fence()
    {
        var used =
            from file in ProjectFiles.All
            where file.Path.StartsWith("src/", StringComparison.Ordinal) && file.Path.EndsWith(".csproj", StringComparison.Ordinal)
            from Match package in Regex.Matches(file.Text, @"<PackageReference Include=""([^""]+)"" />")
            select package.Groups[1].Value;
        Assert.Equal(Fences().Select(f => f.Package).Order(StringComparer.Ordinal), used.Order(StringComparer.Ordinal));
    }

    private static string[] Breaches(string folder, string code)
    {
        var planted = new ProjectFile($"src/PatternForge.{folder}/Planted.cs", code);
        return [.. ImportTable.Breaches(Rooms, [.. ProjectFiles.Source, planted]).Where(b => b.StartsWith(planted.Path, StringComparison.Ordinal))];
    }

    private static IEnumerable<(string Package, string Library, string[] Places)> Fences() =>
        MarkdownTable.Rows(Document, "package", "namespace", "only in").Select(cells => (MarkdownTable.Quoted(cells[0])[0], MarkdownTable.Quoted(cells[1])[0], MarkdownTable.Quoted(cells[2])));
}
