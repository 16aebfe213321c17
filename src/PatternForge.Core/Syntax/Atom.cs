using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>A token after numbers and their size lists have been put together.</summary>
public sealed class Atom
{
    /// <summary>Holds an atom.</summary>
    public Atom(TokenKind kind, TextSpan span, Spelling spelling, bool spaceBefore, SizedNumber? number = null)
    {
        Kind = kind;
        Span = span;
        Spelling = spelling;
        SpaceBefore = spaceBefore;
        Number = number;
    }

    /// <summary>Its kind.</summary>
    public TokenKind Kind { get; }

    /// <summary>Its place, the size list included.</summary>
    public TextSpan Span { get; }

    /// <summary>As written; for a word with a size list (<c>k2 (3, 4)</c>) the word alone.</summary>
    public string Text => Spelling.Text;

    /// <summary>The same with what is known of it.</summary>
    public Spelling Spelling { get; }

    /// <summary>True when a blank stands before it.</summary>
    public bool SpaceBefore { get; }

    /// <summary>The value of a number; for a word, the size list behind it, its first value being the word's last digits.</summary>
    public SizedNumber? Number { get; }

    /// <summary>True for a word that reads so, ignoring case.</summary>
    public bool Is(string word) => Kind == TokenKind.Word && string.Equals(Text, word, StringComparison.OrdinalIgnoreCase);
}
