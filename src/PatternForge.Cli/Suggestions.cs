using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using PatternForge.Cli.Reporting;

namespace PatternForge.Cli;

/// <summary>
/// Answers a shell that asks how a command line may go on: <c>patternforge "[suggest]" "lint --f"</c>. Each line of the answer is a word and,
/// after a tab, what it stands for. Files are the shell's own business: <c>:patterns</c> asks it for pattern files and folders, <c>:folders</c>
/// for folders alone.
/// </summary>
internal sealed class Suggestions(RootCommand root, SuggestDirective directive, Surroundings around) : SynchronousCommandLineAction
{
    private const string Patterns = "patterns";
    private const string Folders = "folders";
    private const string OnceBegun = "once begun";
    private const string Listed = "listed";

    /// <summary>Pattern files and folders.</summary>
    public static IEnumerable<CompletionItem> PatternFiles(CompletionContext context) => [new(context.WordToComplete, Patterns)];

    /// <summary>Folders.</summary>
    public static IEnumerable<CompletionItem> FolderNames(CompletionContext context) => [new(context.WordToComplete, Folders)];

    /// <summary>A value that may stand in a list parted by commas.</summary>
    public static CompletionItem InList(string value) => new(value, Listed);

    /// <summary>A value that is offered only once its first letter is there, beside shorter ones that mean the same.</summary>
    public static CompletionItem Longer(string value, string about) => new(value, OnceBegun, detail: about);

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        var text = parseResult.Tokens.LastOrDefault(t => t.Type != TokenType.Directive)?.Value ?? "";
        if (parseResult.GetResult(directive)?.Values is [var at, ..] && int.TryParse(at, out var position) && position >= 0 && position < text.Length)
        {
            text = text[..position];
        }

        // The library parts words at some blanks and not at others: all are made one kind.
        text = string.Create(text.Length, text, (made, said) =>
        {
            for (var i = 0; i < made.Length; i++)
            {
                made[i] = char.IsWhiteSpace(said[i]) ? ' ' : said[i];
            }
        });
        around.Write(string.Concat(After(text).Select(line => DisplayLine(line) + "\n")));
        return ExitCode.Clean;
    }

    /// <summary>What may stand where a text ends: in the place of its last word, or as a new word after a blank.</summary>
    private IEnumerable<(string Word, string? About)> After(string text)
    {
        var begin = BeginOfWord(text);
        var (before, word) = (text[..begin], text[begin..].TrimStart('"'));
        var option = "";
        if (word.StartsWith("--", StringComparison.Ordinal) && word.IndexOf('=', StringComparison.Ordinal) is > 2 and var equals)
        {
            // `--format=js` is completed as the two words it stands for.
            option = word[..(equals + 1)];
            before += word[..equals] + " ";
            word = word[(equals + 1)..];
        }

        // The library knows what fits in a place; the word that has begun there is left out, since it need not be one that fits.
        var parsed = root.Parse(before, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.CommandResult.Command is RootCommand && parsed.UnmatchedTokens.Count > 0)
        {
            return [];
        }

        var literal = parsed.Tokens.Any(t => t.Type == TokenType.DoubleDash);
        return parsed.GetCompletions(before.Length)
            .Where(item => item.Kind is Patterns or Folders || !item.Label.StartsWith('-') || (word.StartsWith('-') && option.Length == 0 && !literal))
            .SelectMany(item => Offer(item, option, word))
            .Distinct();
    }

    private static IEnumerable<(string Word, string? About)> Offer(CompletionItem item, string option, string word)
    {
        if (item.Kind is Patterns or Folders)
        {
            return word.StartsWith('-') ? [] : [(":" + item.Kind, null)];
        }

        // A list is taken up where its last comma stands, and names nothing twice.
        var first = item.Kind is Listed ? word[..(word.LastIndexOf(',') + 1)] : "";
        var early = item.Kind is OnceBegun && word.Length == 0;
        var twice = first.Split(',').Contains(item.Label, StringComparer.OrdinalIgnoreCase);
        return !early && !twice && (first + item.Label).StartsWith(word, StringComparison.OrdinalIgnoreCase)
            ? [(option + first + item.Label, item.Detail)]
            : [];
    }

    // Words are parted by blanks outside double quotes, as the library parts them.
    private static int BeginOfWord(string text)
    {
        var (begin, quoted) = (0, false);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '"')
            {
                quoted = !quoted;
            }
            else if (!quoted && char.IsWhiteSpace(text[i]))
            {
                begin = i + 1;
            }
        }

        return begin;
    }

    private static string DisplayLine((string Word, string? About) line) =>
        DisplayText.OneLine(line.Word) + (string.IsNullOrEmpty(line.About) ? "" : "\t" + DisplayText.OneLine(line.About));
}
