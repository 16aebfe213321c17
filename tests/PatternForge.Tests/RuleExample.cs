using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;
using PatternForge.Core.Trials;

namespace PatternForge.Tests;

/// <summary>A rule's example as the tests compile it: its caret lines cut out, and under a plain header where it is rows alone.</summary>
internal static class RuleExample
{
    private const string Header = "---\ntitle: Harbour hat\nsizes: one size\n---\n\n";
    private static readonly string[] BeginsItself = ["#", "CO ", "Cast on", "Begin with"];
    private const string Start = "## Piece\n\nCO 12 sts.\n\n";

    /// <summary>
    /// The source of an example and the places that its carets mark. A whole file begins with <c>---</c>; what begins with a heading or a
    /// cast-on gets a plain header; other rows get a cast-on of 12 stitches as well.
    /// </summary>
    public static (string Text, TextSpan[] Marks) Read(Rule rule, string example)
    {
        var isFile = example.StartsWith("---", StringComparison.Ordinal) || rule == SyntaxRules.MissingHeader || IsOfProjectFile(rule) || AnswerRules.All.Contains(rule);
        var text = isFile ? "" : BeginsItself.Any(start => example.StartsWith(start, StringComparison.OrdinalIgnoreCase)) ? Header : Header + Start;
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

    private static readonly Dictionary<string, LinkAnswer> Asked = new(StringComparer.Ordinal)
    {
        ["https://example.com/gone"] = new LinkAnswer(LinkState.Gone, "answers 404: there is no such page"),
        ["https://example.com/slow"] = new LinkAnswer(LinkState.Unanswered, "gave no answer within 10 seconds"),
        ["https://example.com/blocking"] = new LinkAnswer(LinkState.Alive, "answers"),
    };

    /// <summary>True for a rule whose examples are project files.</summary>
    public static bool IsOfProjectFile(Rule rule) => HouseRules.All.Contains(rule) && rule != HouseRules.AcceptanceNotAllowed;

    /// <summary>The findings of an example: of a pattern, or of a project file.</summary>
    public static ImmutableArray<Finding> FindingsOf(Rule rule, string text) =>
        AnswerRules.All.Contains(rule) ? AnswersReader.Read(new SourceText("answers.yaml", text), Compiler.Compile(new SourceText("hat.pattern.md", Trials.TestResultsTests.Hat))).Findings
        : IsOfProjectFile(rule) ? HouseFile.Read(new SourceText(HouseFile.Name, text)).Findings : Compile(rule, text).Findings;

    /// <summary>Compiles an example with the editions that it asks for, with small limits for the rules that speak of limits, the network's answers or a project file for those that speak of them, and photos that are told by their names.</summary>
    public static Compilation Compile(Rule rule, string text)
    {
        var plain = Compiler.Compile(new SourceText("example.pattern.md", text), rule.Code switch
        {
            "PF108" => new CompileOptions { MaxHeaderLength = 200 },
            "PF902" or "PF903" => CompileOptions.Default with { Answers = Asked },
            "PF163" => CompileOptions.Default.Under(Core.Model.House.None with { NeverAccepted = ["PF210"] }),
            "PF420" => CompileOptions.Default.Under(Core.Model.House.None with { Style = new StyleSheet(StyleSheet.Open.Choices.Add(StyleMatter.Round, 0)) }),
            "PF905" or "PF906" or "PF908" or "PF909" => CompileOptions.Default with { LookAtPhoto = Photo },
            _ => CompileOptions.Default,
        });
        return plain with { Findings = EditionCompiler.WithEditions(plain, EditionCompiler.Released(plain).Select(e => EditionCompiler.Compile(plain, e))) };
    }

    private static PhotoFacts Photo(string name) => name switch
    {
        "missing.jpg" => new(PhotoState.Missing),
        "small.jpg" => new(PhotoState.There) { Width = 320, Height = 240 },
        "located.jpg" => new(PhotoState.There) { Width = 1600, Height = 1200, HasLocation = true },
        _ => new(PhotoState.There) { Width = 1600, Height = 1200 },
    };
}
