using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests;

/// <summary>A rule's example as the tests compile it: its caret lines cut out, and under a plain header where it is rows alone.</summary>
internal static class RuleExample
{
    private const string PlainHeader = """
        ---
        title: Harbour hat
        sizes: one size
        ---

        ## Piece

        CO 12 sts.

        """;

    /// <summary>The source of an example and the places that its carets mark.</summary>
    public static (string Text, TextSpan[] Marks) Read(string example)
    {
        var isFile = example.StartsWith("---", StringComparison.Ordinal) || example.Contains("\n\n", StringComparison.Ordinal);
        var text = isFile ? "" : PlainHeader + "\n";
        var marks = new List<TextSpan>();
        var lineStart = text.Length;
        foreach (var line in example.Split('\n'))
        {
            var carets = line.TrimEnd();
            if (carets.Length > 0 && carets.All(c => c is ' ' or '^') && carets.EndsWith('^'))
            {
                var first = carets.IndexOf('^', StringComparison.Ordinal);
                marks.Add(new TextSpan(lineStart + first, carets.Length - first));
                continue;
            }

            lineStart = text.Length;
            text += line + "\n";
        }

        return (text, [.. marks]);
    }

    /// <summary>Compiles an example, with small limits for the rules that speak of limits.</summary>
    public static Compilation Compile(Rule rule, string text) => Compiler.Compile(
        new SourceText("example.pattern.md", text),
        rule.Code == "PF108" ? new CompileOptions { MaxHeaderLength = 200 } : CompileOptions.Default);
}
