namespace PatternForge.Core.Syntax;

/// <summary>The words for row and round, and for the side that faces the maker.</summary>
internal static class RowWords
{
    /// <summary>Row or round; neither for another word.</summary>
    public static RowWord WordOf(Atom? atom)
    {
        if (atom is not { Kind: TokenKind.Word, Text.Length: <= 6 })
        {
            return RowWord.None;
        }

        Span<char> lower = stackalloc char[atom.Text.Length];
        atom.Text.AsSpan().ToLowerInvariant(lower);
        return lower switch
        {
            "row" or "rows" or "row(s)" => RowWord.Row,
            "rnd" or "rnds" or "round" or "rounds" or "rd" or "rds" or "rnd(s)" => RowWord.Round,
            _ => RowWord.None,
        };
    }

    /// <summary>"N1": the short name of a needle.</summary>
    public static bool IsNeedle(Atom atom) => atom is { Kind: TokenKind.Word, Text: [('N' or 'n'), >= '1' and <= '8'] };

    /// <summary>Takes "and" or its sign.</summary>
    public static bool EatAnd(AtomCursor atoms)
    {
        var isAnd = atoms.Peek() is { } atom && (atom.Is("and") || atom is { Kind: TokenKind.Other, Text: "&" });
        atoms.At += isAnd ? 1 : 0;
        return isAnd;
    }

    /// <summary>"(RS)", "[WS]", "(Right side of work)": null, with the cursor unmoved, for another bracket.</summary>
    public static Side? BracketedSide(AtomCursor atoms)
    {
        if (!atoms.IsKind(TokenKind.Open))
        {
            return null;
        }

        var start = atoms.At;
        atoms.At++;
        var side = SideWord(atoms);
        if (side is not null && EatUntilClose(atoms))
        {
            return side;
        }

        atoms.At = start;
        return null;
    }

    private static bool EatUntilClose(AtomCursor atoms)
    {
        for (var i = 0; i < 6 && atoms.Peek() is { } atom; i++)
        {
            atoms.At++;
            if (atom.Kind == TokenKind.Close)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>"RS", "wrong side": null, with the cursor unmoved, for other words.</summary>
    public static Side? SideWord(AtomCursor atoms)
    {
        if (atoms.Eat("RS"))
        {
            return Side.Right;
        }

        if (atoms.Eat("WS"))
        {
            return Side.Wrong;
        }

        if (atoms.Peek(1)?.Is("side") == true && (atoms.Peek()!.Is("right") || atoms.Peek()!.Is("wrong")))
        {
            var side = atoms.Peek()!.Is("right") ? Side.Right : Side.Wrong;
            atoms.At += 2;
            return side;
        }

        return null;
    }
}
