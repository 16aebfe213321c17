using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering.Formats;

namespace PatternForge.Tests.Rendering;

public class ExamplePageTests
{
    public static TheoryData<string, string> Pages()
    {
        var pages = new TheoryData<string, string>();
        foreach (var name in Names)
        {
            foreach (var format in OutputFormat.All)
            {
                pages.Add(name, format.Name);
            }
        }

        return pages;
    }

    internal static IEnumerable<string> Names =>
        Directory.EnumerateFiles(RepositoryRoot.Path("examples"), "*.pattern.md").Select(f => Path.GetFileName(f)[..^".pattern.md".Length]).Order(StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Pages))]
    public void The_page_of_an_example_is_as_it_was_approved(string name, string format)
    {
        var file = PageTests.Page(Compile(name), format);
        Golden.Match(file.Text, "examples/" + file.Name);
    }

    internal static Compilation Compile(string name)
    {
        var file = RepositoryRoot.Path("examples", name + ".pattern.md");
        return Compiler.Compile(new SourceText($"examples/{name}.pattern.md", File.ReadAllText(file).ReplaceLineEndings("\n")));
    }
}
