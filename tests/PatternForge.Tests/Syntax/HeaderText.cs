using System.Text;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Syntax;

/// <summary>Reads headers in tests: the one place that knows how the stages are called.</summary>
internal static class HeaderText
{
    /// <summary>Puts a header between its two lines.</summary>
    public static string Fenced(string header) => $"---\n{header}\n---\n";

    public static (SourceText Source, HeaderMap? Header, FindingBag Bag) Read(string file, CompileOptions? options = null)
    {
        var source = new SourceText("x.pattern.md", file);
        var bag = new FindingBag(source);
        var split = FileSplitter.Split(source, bag);
        var header = split.Header is { } span ? HeaderReader.Read(source, span, options ?? CompileOptions.Default, bag) : null;
        return (source, header, bag);
    }

    public static string[] Codes(FindingBag bag) => [.. bag.ToSorted().Select(f => f.Rule.Code)];

    /// <summary>A tree as text: every key and text with what the source has at its place, where that differs.</summary>
    public static string Dump(SourceText source, HeaderNode? node)
    {
        var text = new StringBuilder();
        Dump(source, node, text);
        return text.ToString();
    }

    private static void Dump(SourceText source, HeaderNode? node, StringBuilder text)
    {
        switch (node)
        {
            case HeaderScalar scalar:
                text.Append(scalar.Text.ReplaceLineEndings("⏎"));
                if (source.ToString(scalar.Span) is var raw && raw != scalar.Text)
                {
                    text.Append('«').Append(raw.ReplaceLineEndings("⏎")).Append('»');
                }

                break;
            case HeaderList list:
                text.Append('[');
                foreach (var item in list.Items)
                {
                    text.Append(text[^1] == '[' ? "" : ", ");
                    Dump(source, item, text);
                }

                text.Append(']');
                break;
            case HeaderMap map:
                text.Append('{');
                foreach (var entry in map.Entries)
                {
                    text.Append(text[^1] == '{' ? "" : "; ");
                    Dump(source, entry.Key, text);
                    text.Append('=');
                    Dump(source, entry.Value, text);
                }

                text.Append('}');
                break;
            default:
                text.Append('-');
                break;
        }
    }
}
