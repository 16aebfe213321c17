using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>A word or number of a phrase after spelling variants have been made one: "stitches" is <c>st</c>, "bind off" and "cast off" are <c>bo</c>.</summary>
internal sealed record Lexeme(string Norm, Atom Atom, TextSpan Span)
{
    public SizedNumber? Number => Atom.Kind == TokenKind.Number ? Atom.Number : null;

    public bool IsNumber => Atom.Kind is TokenKind.Number or TokenKind.Placeholder;

    public bool Is(string norm) => Norm == norm;
}
