using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>Reads for which sizes a line is: "Sizes S and M only:", "For size M:", "On all sizes:".</summary>
internal static class SizeScope
{
    /// <summary>The sizes at the cursor and where they are named; empty, with the cursor unmoved, when none are.</summary>
    public static (ImmutableArray<string> Names, TextSpan Span) Read(AtomCursor atoms)
    {
        var start = atoms.At;
        atoms.Eat("for", "on");
        var all = atoms.Eat("all");
        if (!atoms.Eat("size", "sizes"))
        {
            atoms.At = start;
            return ([], default);
        }

        var names = ImmutableArray.CreateBuilder<string>();
        var only = false;
        while (atoms.Peek() is { } atom && names.Count < 64)
        {
            if (atom.Kind == TokenKind.Colon)
            {
                var span = atoms.All[start].Span.Cover(atoms.All[atoms.At - 1].Span);
                atoms.At++;
                return (all || names.Count == 0 ? [] : names.ToImmutable(), span);
            }

            if (atom.Is("only"))
            {
                only = true;
                atoms.At++;
                var named = atoms.All[start].Span.Cover(atoms.All[atoms.At - 1].Span);
                atoms.EatKind(TokenKind.Comma);
                atoms.EatKind(TokenKind.Colon);
                return (names.ToImmutable(), named);
            }

            if (atom.Kind == TokenKind.Comma && all)
            {
                atoms.At++;
                return ([], default);
            }

            if (atom.Kind == TokenKind.Comma || atom.Is("and") || atom.Is("to"))
            {
                atoms.At++;
                continue;
            }

            if (atom.Kind == TokenKind.Number && atoms.Peek(1) is { Kind: TokenKind.Word, SpaceBefore: false } suffix)
            {
                names.Add(atom.Text + suffix.Text);
                atoms.At += 2;
                continue;
            }

            if (atom.Kind is TokenKind.Word or TokenKind.Number && !only)
            {
                names.Add(atom.Text);
                atoms.At++;
                continue;
            }

            break;
        }

        atoms.At = start;
        return ([], default);
    }
}
