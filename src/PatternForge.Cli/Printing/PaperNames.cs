using PatternForge.Core.Model;

namespace PatternForge.Cli.Printing;

/// <summary>The papers that a document is made for.</summary>
internal static class PaperNames
{
    /// <summary>The words of the command line.</summary>
    public static IReadOnlyList<string> Words { get; } = ["a4", "letter", "both"];

    /// <summary>The paper of a word; null where there is none such.</summary>
    public static Paper? Of(string word) => word.ToUpperInvariant() switch { "A4" => Paper.A4, "LETTER" => Paper.Letter, "BOTH" => Paper.Both, _ => null };

    /// <summary>Each sheet that is to be made, by the name that a style sheet has for it (CSS Paged Media, 7.1) and in small letters in the name of its file.</summary>
    public static IEnumerable<string> Sheets(Paper? paper) => paper switch { Paper.Both => ["A4", "letter"], Paper.Letter => ["letter"], _ => ["A4"] };
}
