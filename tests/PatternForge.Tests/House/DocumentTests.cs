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
        // Words of two capitals are types; those with a place or a suffix of their own are checked above.
        var code = ProjectFiles.Source.Concat(ProjectFiles.Tests).Select(f => f.Text).ToArray();
        var libraries = MarkdownTable.Rows(Document, "package", "namespace").SelectMany(cells => MarkdownTable.Quoted(cells[0])).SelectMany(name => name.Split('.'));
        var named = Regex.Matches(Section("Architecture"), @"(?<![\w./])[A-Z][a-z]+(?:[A-Z][a-z]+)+\b(?!\.(?:cs|md|txt|[A-Z]))", RegexOptions.ExplicitCapture).Select(m => m.Value)
            .Except([.. libraries, "PatternForge"], StringComparer.Ordinal);
        Assert.DoesNotContain(named, word => !code.Any(text => Regex.IsMatch(text, $@"\b(?:class|record|struct|enum|interface) {word}\b")));
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
