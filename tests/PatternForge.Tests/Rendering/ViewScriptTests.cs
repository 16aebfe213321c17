using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

public class ViewScriptTests
{
    private const string Begin = "<!-- view: begin (made from the view's own comments; a test keeps it current) -->\n";
    private const string End = "<!-- view: end -->";

    [Fact]
    public void Templates_see_every_property_of_every_view_and_nothing_else()
    {
        foreach (var (record, names) in ViewReference.Records)
        {
            Assert.Equal(ViewReference.PropertiesOf(record).Select(p => ViewReference.NameOf(p.Name)).Order(StringComparer.Ordinal), names.Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Every_view_has_its_names()
    {
        var views = typeof(PatternView).Assembly.GetTypes()
            .Where(t => t.Namespace == typeof(PatternView).Namespace && t is { IsPublic: true, IsAbstract: false } && t.Name.EndsWith("View", StringComparison.Ordinal));
        Assert.Equal(views.Select(v => v.Name).Order(StringComparer.Ordinal), ViewReference.Records.Select(r => r.Record.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_reference_for_writers_of_templates_is_current()
    {
        var path = RepositoryRoot.Path("templates", "README.md");
        var readme = File.ReadAllText(path).ReplaceLineEndings("\n");
        var (from, to) = (readme.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length, readme.IndexOf(End, StringComparison.Ordinal));
        var reference = ViewReference.Write();
        if (readme[from..to] != reference && Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1" && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CI")))
        {
            File.WriteAllText(path, readme[..from] + reference + readme[to..]);
            return;
        }

        Assert.Equal(reference, readme[from..to]);
    }
}
