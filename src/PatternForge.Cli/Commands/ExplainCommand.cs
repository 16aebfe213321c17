using System.CommandLine;
using System.CommandLine.Completions;
using System.Text;
using PatternForge.Cli.Reporting;
using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Commands;

/// <summary><c>explain PFnnn</c>: what a finding means, why it matters, and an example put right.</summary>
internal static class ExplainCommand
{
    // Templates are no part of the compiler's core: their rules stand beside its own.
    private static IEnumerable<Rule> Known => RuleCatalog.All.Concat(TemplateRules.All).OrderBy(r => r.Code, StringComparer.Ordinal);

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var code = new Argument<string[]>("PFnnn") { Description = "The code of a finding, or its name", Arity = ArgumentArity.ZeroOrMore, HelpName = "PFnnn" };
        code.CompletionSources.Add(_ => Known.Select(r => new CompletionItem(r.Code, detail: $"{r.Name}: {r.Summary}")));
        code.CompletionSources.Add(_ => Known.Select(r => Suggestions.Longer(r.Name, $"{r.Code}: {r.Summary}")));
        var command = new Command("explain", "Explain a finding: what it means, why it matters, and how to put it right.") { code };
        command.SetAction(parsed => Run(parsed.GetValue(code) ?? [], around));
        return command;
    }

    private static int Run(string[] said, Surroundings around)
    {
        if (said.Length != 1)
        {
            return CommandLine.Refuse("say which finding to explain, by its code or its name: `patternforge explain PF301`", around, "explain");
        }

        if (Find(said[0]) is { } rule)
        {
            around.Write(PageOf(rule, around.Width, new Paint(around.ColourOut)));
            return ExitCode.Clean;
        }

        return CommandLine.Refuse($"there is no finding `{said[0]}`{Near(said[0])}", around, "explain");
    }

    private static Rule? Find(string said) => Known.FirstOrDefault(r =>
        string.Equals(r.Code, said, StringComparison.OrdinalIgnoreCase) || string.Equals(r.Name, said, StringComparison.OrdinalIgnoreCase));

    /// <summary>What a rule says, as a page of text.</summary>
    private static string PageOf(Rule rule, int width, Paint paint)
    {
        var page = new StringBuilder();
        page.Append(paint.Weight(rule.Severity, $"{rule.Code} {rule.Name}")).Append('\n');
        page.Append(paint.Faint($"{Words.Of(rule.Severity)}, about {Words.Of(rule.Area)}")).Append("\n\n");
        page.Append(paint.Strong(rule.Summary)).Append("\n\n");
        foreach (var paragraph in rule.Explanation.ReplaceLineEndings("\n").Split("\n\n", StringSplitOptions.RemoveEmptyEntries))
        {
            Wrap(page, paragraph, Math.Min(width, 88));
            page.Append('\n');
        }

        if (!rule.Sources.IsEmpty)
        {
            Wrap(page, $"Source: {string.Join("; ", rule.Sources)}.", Math.Min(width, 88));
            page.Append('\n');
        }

        if (rule.Bad.Length > 0)
        {
            Example(page, "Gets this finding:", rule.Bad, paint);
            Example(page, "Put right:", rule.Good, paint);
        }

        return page.ToString().TrimEnd('\n') + "\n";
    }

    private static void Example(StringBuilder page, string title, string text, Paint paint)
    {
        page.Append(paint.Strong(title)).Append("\n\n");
        foreach (var line in text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n'))
        {
            page.Append(("    " + DisplayText.OneLine(line)).TrimEnd()).Append('\n');
        }

        page.Append('\n');
    }

    private static void Wrap(StringBuilder page, string paragraph, int width)
    {
        var column = 0;
        foreach (var word in paragraph.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            var columns = DisplayText.Width(word);
            if (column > 0 && column + 1 + columns > width)
            {
                page.Append('\n');
                column = 0;
            }

            page.Append(column > 0 ? " " : "").Append(word);
            column += (column > 0 ? 1 : 0) + columns;
        }

        page.Append('\n');
    }

    // A code that nobody gave out is near in its digits; a name is near in its letters.
    private static string Near(string said)
    {
        var code = said.StartsWith("PF", StringComparison.OrdinalIgnoreCase) ? said : "PF" + said;
        var nearest = int.TryParse(code.AsSpan(2), System.Globalization.NumberStyles.None, null, out var number)
            ? Known.OrderBy(r => Math.Abs((long)int.Parse(r.Code.AsSpan(2), System.Globalization.NumberStyles.None, null) - number)).Take(2).ToArray()
            : [.. Suggest.Nearest(said, Known.Select(r => r.Name), 2).Select(name => Find(name)!)];
        return nearest.Length == 0 ? "" : $"; the nearest: {string.Join(", ", nearest.Select(r => $"{r.Code} {r.Name}"))}";
    }
}
