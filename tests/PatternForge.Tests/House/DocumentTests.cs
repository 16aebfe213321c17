using System.Text.RegularExpressions;

namespace PatternForge.Tests.House;

public class DocumentTests
{
    private static readonly ProjectFile Document = ProjectFiles.Read("DEVELOPERS.md");

    [Fact]
    public void Every_test_that_the_document_names_is_there()
    {
        var named = MarkdownTable.Rows(Document, "invariant", "held by").SelectMany(cells => MarkdownTable.Quoted(cells[1])).ToArray();
        Assert.NotEmpty(named);
        Assert.DoesNotContain(named, n => !IsThere(n));
    }

    [Fact]
    public void Every_file_that_the_documents_name_is_there()
    {
        var missing =
            from document in ProjectFiles.All.Where(f => f.Folder.Length == 0 && f.Path.EndsWith(".md", StringComparison.Ordinal))
            from Match path in Regex.Matches(document.Text, @"`((?:src|tests|examples|templates|\.ci)/[\w./-]+)`")
            where !ProjectFiles.Has(path.Groups[1].Value)
            select $"{document.Path}: {path.Value}";
        Assert.Empty(missing);
    }

    [Fact]
    public void Every_type_that_the_architecture_names_is_there()
    {
        var source = ProjectFiles.Source.Select(f => f.Text).ToArray();
        var libraries = MarkdownTable.Rows(Document, "package", "namespace").SelectMany(cells => MarkdownTable.Quoted(cells[0]));
        var missing = Section("Architecture").Split('`').Where((_, i) => i % 2 == 1).Except(libraries, StringComparer.Ordinal)
            .Where(word => Regex.IsMatch(word, "^[A-Z][a-z]+(?:[A-Z][a-z]+)+$", RegexOptions.ExplicitCapture))
            .Where(word => !source.Any(text => Regex.IsMatch(text, $@"\b(?:class|record|struct|enum) {word}\b")) && !ProjectFiles.Tests.Any(f => f.Text.Contains($"class {word}", StringComparison.Ordinal)));
        Assert.Empty(missing);
    }

    // `Class.Method`, or `Class` alone.
    private static bool IsThere(string name)
    {
        var parts = name.Split('.');
        return ProjectFiles.Tests.Any(f => Regex.IsMatch(f.Text, $@"\bclass {parts[0]}\b") && (parts.Length == 1 || Regex.IsMatch(f.Text, $@"\b{parts[1]}\(")));
    }

    private static string Section(string heading)
    {
        var start = Document.Text.IndexOf($"\n## {heading}\n", StringComparison.Ordinal);
        var end = Document.Text.IndexOf("\n## ", start + 4, StringComparison.Ordinal);
        return Document.Text[start..(end < 0 ? Document.Text.Length : end)];
    }
}
