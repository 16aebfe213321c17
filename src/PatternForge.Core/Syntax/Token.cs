using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>What a token of an instruction line is. Words are not split: whether <c>k2tog</c> is one stitch or two is for the binder to say.</summary>
public enum TokenKind
{
    /// <summary>Letters, with digits, apostrophes and joining signs inside: <c>k2tog</c>, <c>w&amp;t</c>, <c>dec'd</c>, <c>ch-2</c>.</summary>
    Word,

    /// <summary>Digits, perhaps with a decimal part or a fraction sign: <c>12</c>, <c>3.25</c>, <c>6½</c>.</summary>
    Number,

    /// <summary>A comma.</summary>
    Comma,

    /// <summary>A semicolon.</summary>
    Semicolon,

    /// <summary>A full stop.</summary>
    Stop,

    /// <summary>A colon.</summary>
    Colon,

    /// <summary>An opening bracket of any kind.</summary>
    Open,

    /// <summary>A closing bracket of any kind.</summary>
    Close,

    /// <summary>A repeat mark: one or more asterisks, a dagger and the like.</summary>
    Mark,

    /// <summary>A hyphen or dash.</summary>
    Dash,

    /// <summary>A slash.</summary>
    Slash,

    /// <summary>An equals sign.</summary>
    EqualsSign,

    /// <summary>A multiplication sign.</summary>
    Times,

    /// <summary>An inch mark.</summary>
    Inch,

    /// <summary>A header number called by name: <c>{cuff-rounds}</c>, or <c>{count}</c>.</summary>
    Placeholder,

    /// <summary>Any other character.</summary>
    Other,
}

/// <summary>One token and its place. Blanks, remarks and backslashes before signs lie between tokens.</summary>
public readonly record struct Token(TokenKind Kind, TextSpan Span, bool SpaceBefore);
