using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>The sizes that a line is for.</summary>
/// <param name="Names">Names as written; <c>#2</c> for "2nd size", <c>S–L</c> for "S to L"; empty for all sizes.</param>
/// <param name="Span">Where they are named.</param>
internal sealed record SizeNames(ImmutableArray<string> Names, TextSpan Span);

/// <summary>Reads for which sizes a line is: "Sizes S and M only:", "For size M:", "On all sizes:", "2nd and 3rd sizes only:", "Sizes M (L):".</summary>
internal static class SizeScope
{
    private const int Most = 64;

    /// <summary>The sizes at the cursor; null, with the cursor unmoved, when none are named.</summary>
    public static SizeNames? Read(AtomCursor atoms)
    {
        var start = atoms.At;
        atoms.Eat("for", "on");
        atoms.Eat("the");
        var all = atoms.Eat("all");
        var ordinals = Ordinals(atoms);
        if (!atoms.Eat("size", "sizes"))
        {
            atoms.At = start;
            return null;
        }

        var names = ImmutableArray.CreateBuilder<string>();
        names.AddRange(ordinals ?? []);
        while (ordinals is null && !all && names.Count < Most && Name(atoms, names))
        {
        }

        var span = atoms.All[start].Span.Cover(atoms.All[Math.Max(start, atoms.At - 1)].Span);
        var isOnly = atoms.Eat("only");
        span = isOnly ? span.Cover(atoms.All[atoms.At - 1].Span) : span;
        var sign = atoms.EatKind(TokenKind.Comma) | atoms.EatKind(TokenKind.Colon);
        if ((names.Count == 0 && !all && !sign) || (!isOnly && (!sign || (!all && atoms.All[atoms.At - 1].Kind != TokenKind.Colon))))
        {
            atoms.At = start;
            return null;
        }

        return new SizeNames(all ? [] : names.ToImmutable(), span);
    }

    /// <summary>"2nd", "1st, 3rd and 4th"; null for none.</summary>
    private static List<string>? Ordinals(AtomCursor atoms)
    {
        var start = atoms.At;
        List<string>? names = null;
        while (atoms.Peek() is { Kind: TokenKind.Number, Number: { IsOrdinal: true } number } && (names?.Count ?? 0) < Most)
        {
            (names ??= []).AddRange(number.Values.OfType<decimal>().Select(v => "#" + v.ToString(CultureInfo.InvariantCulture)));
            atoms.At++;
            atoms.EatKind(TokenKind.Comma);
            RowWords.EatAnd(atoms);
        }

        if (names is not null && atoms.Peek()?.Is("size") != true && atoms.Peek()?.Is("sizes") != true)
        {
            atoms.At = start;
            return null;
        }

        return names;
    }

    /// <summary>Takes one more name, or the signs and brackets between names; false where the names end.</summary>
    private static bool Name(AtomCursor atoms, ImmutableArray<string>.Builder names)
    {
        var atom = atoms.Peek();
        switch (atom?.Kind)
        {
            case TokenKind.Comma when names.Count > 0 && atoms.Peek(1) is { Kind: TokenKind.Word or TokenKind.Number } next && !next.Is("row") && !next.Is("rows") && !next.Is("rnd") && !next.Is("next"):
            case TokenKind.Open or TokenKind.Close or TokenKind.Slash:
            case TokenKind.Dash when names.Count == 0:
                atoms.At++;
                return true;
            case TokenKind.Dash when atoms.Peek(1) is { Kind: TokenKind.Word or TokenKind.Number }:
                atoms.At++;
                return Range(atoms, names);
            case TokenKind.Number:
                var suffix = atoms.Peek(1) is { Kind: TokenKind.Word, SpaceBefore: false } behind ? behind.Text : "";
                names.AddRange(atom.Number!.IsList ? atom.Number.Values.OfType<decimal>().Select(v => v.ToString(CultureInfo.InvariantCulture)) : [atom.Text + suffix]);
                atoms.At += suffix.Length > 0 ? 2 : 1;
                return true;
            case TokenKind.Word when atom.Is("only"):
                return false;
            case TokenKind.Word when (atom.Is("to") || atom.Is("through")) && names.Count > 0:
                atoms.At++;
                return Range(atoms, names);
            case TokenKind.Word:
                if (!RowWords.EatAnd(atoms))
                {
                    names.Add(atom.Text);
                    atoms.At++;
                }

                return true;
            default:
                return atom is not null && RowWords.EatAnd(atoms);
        }
    }

    private static bool Range(AtomCursor atoms, ImmutableArray<string>.Builder names)
    {
        var count = names.Count;
        if (!Name(atoms, names) || names.Count != count + 1)
        {
            return false;
        }

        names[count - 1] += "–" + names[count];
        names.RemoveAt(count);
        return true;
    }
}
