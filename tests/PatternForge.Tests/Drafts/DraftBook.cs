using System.Globalization;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Drafts;

/// <summary>The cases of <c>pasted.txt</c>: drafts as they come, each under a plain header and a start.</summary>
internal static class DraftBook
{
    private const string Knitting = "---\ntitle: Draft\ncraft: knitting\nsizes: one size\n---\n\n## Piece\n\nCO 24 sts.\n\n";
    private const string Crochet = "---\ntitle: Draft\ncraft: crochet\nterms: us\nsizes: one size\n---\n\n## Piece\n\nCh 25.\n\n";

    /// <summary>Title and whole source of every case.</summary>
    public static IReadOnlyList<(string Title, string Source)> Cases { get; } = [.. Read()];

    /// <summary>Compiles a source under the name that the cases have.</summary>
    public static Compilation Compile(string source) => Compiler.Compile(new SourceText("draft.pattern.md", source));

    private static IEnumerable<(string Title, string Source)> Read()
    {
        var text = File.ReadAllText(RepositoryRoot.Path("tests", "PatternForge.Tests", "Drafts", "pasted.txt")).ReplaceLineEndings("\n");
        foreach (var part in text.Split("\n= ").Skip(1))
        {
            var end = part.IndexOf('\n', StringComparison.Ordinal);
            var title = part[..end];
            yield return (title.TrimEnd(' ', '~'), (title.EndsWith('~') ? Crochet : Knitting) + Unescape(part[(end + 1)..].TrimEnd('\n')) + "\n");
        }
    }

    private static string Unescape(string text)
    {
        var plain = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] != '\\')
            {
                plain.Append(text[i]);
                continue;
            }

            i++;
            plain.Append(text[i] switch { 't' => '\t', 'u' => (char)int.Parse(text.AsSpan(i + 1, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture), var other => other });
            i += text[i] == 'u' ? 4 : 0;
        }

        return plain.ToString();
    }
}
