namespace PatternForge.Core.Syntax;

/// <summary>Reads what may stand between a row's number or name and its colon: the side, a name or colour in brackets, "and all WS rows".</summary>
internal static class LabelTail
{
    private const int MostWords = 6;

    /// <summary>The label begun at <paramref name="start"/> with what stands behind it; null, when nothing ends it as a label.</summary>
    public static LabelNode? Read(AtomCursor atoms, int start, LabelNode begun)
    {
        var (side, name) = (begun.Side, begun.Name);
        var rule = RowRule.None;
        SizedNumber? countOfRows = null;
        var labelEnd = atoms.At;
        for (var i = 0; i < 4; i++)
        {
            if (RuleWords(atoms, out _))
            {
                rule = RowRule.SameParity;
                labelEnd = atoms.At;
                continue;
            }

            if (!begun.Numbers.IsEmpty && Pass(atoms))
            {
                labelEnd = atoms.At;
                continue;
            }

            if (side is null && atoms.IsKind(TokenKind.Comma))
            {
                // "Rnd 5, RS:"
                var comma = atoms.At++;
                if (Pass(atoms))
                {
                    labelEnd = atoms.At;
                    continue;
                }

                if (RowWords.SideWord(atoms) is { } behind && atoms.IsKind(TokenKind.Colon))
                {
                    side = behind;
                    labelEnd = atoms.At;
                    continue;
                }

                atoms.At = comma;
            }

            if (side is null && (RowWords.SideWord(atoms) ?? RowWords.BracketedSide(atoms)) is { } said)
            {
                side = said;
                labelEnd = atoms.At;
                continue;
            }

            if (atoms.IsKind(TokenKind.Open))
            {
                var bracket = atoms.At;
                atoms.At++;
                if (RuleWords(atoms, out _) && atoms.EatKind(TokenKind.Close))
                {
                    rule = RowRule.SameParity;
                    labelEnd = atoms.At;
                    continue;
                }

                if (atoms.IsKind(TokenKind.Number) && RowWords.WordOf(atoms.Peek(1)) != RowWord.None && atoms.IsKind(TokenKind.Close, 2))
                {
                    countOfRows = atoms.Peek()!.Number;
                    atoms.At += 3;
                    labelEnd = atoms.At;
                    continue;
                }

                // "(dec rnd)", "(increase)", "(B)", "(cable row)": a name or a colour, when a colon or dash follows.
                var text = NameInBracket(atoms);
                if (text is not null && (atoms.EndsLabel() || RowWords.BracketedSide(atoms) is { } later && (side = later) is not null))
                {
                    name ??= text;
                    labelEnd = atoms.At;
                    continue;
                }

                atoms.At = bracket;
            }

            break;
        }

        atoms.At = labelEnd;
        if (side is null && !atoms.EndsLabel())
        {
            // Without a sign behind it, only a number or "next row" that work follows is a label; a name never is.
            var isPlain = begun.Numbers.IsEmpty && name is null && !begun.IsNext;
            if ((begun.Numbers.IsEmpty && name is not null) || (!isPlain && !StartsWork(atoms.Peek()!)))
            {
                return null;
            }
        }

        // A sentence of prose may have "row" before a comma or a full stop; the name of a row has its colon.
        if (begun.Numbers.IsEmpty && !begun.IsNext && name is not null && side is null && atoms.Peek()?.Kind is TokenKind.Stop or TokenKind.Comma)
        {
            return null;
        }

        var node = begun with { Span = atoms.Covered(start), Name = name, Side = side, Rule = rule, CountOfRows = countOfRows };
        while (atoms.Peek()?.Kind is TokenKind.Colon or TokenKind.Stop or TokenKind.Dash or TokenKind.Comma or TokenKind.Semicolon)
        {
            if (atoms.IsKind(TokenKind.Dash) && atoms.IsKind(TokenKind.Open, 1))
            {
                // " - (12, 13)" is a list that leaves out the first size; "- (RS)" is still the label.
                var dash = atoms.At++;
                var isSide = side is null && RowWords.BracketedSide(atoms) is not null;
                atoms.At = dash + (isSide ? 1 : 0);
                break;
            }

            atoms.At++;
        }

        if (side is null && RowWords.BracketedSide(atoms) is { } late)
        {
            atoms.EatKind(TokenKind.Colon);
            atoms.EatKind(TokenKind.Stop);
            return node with { Span = atoms.Covered(start), Side = late };
        }

        return node;
    }

    // "R 27 K4", "Row 1 Knit": no sign, but a stitch count, a bracket or a capital verb begins the row.
    private static bool StartsWork(Atom atom) => atom.Kind is TokenKind.Open or TokenKind.Mark || (atom.Kind == TokenKind.Word && (atom.Text.Any(char.IsAsciiDigit) || atom.Text is "Knit" or "Purl" or "KNIT" or "PURL" or "K" or "P" or "Ch" or "Sc" or "Sl"));

    /// <summary>"Row 2 FP:", "Row 2 return pass:": the pass of a Tunisian row, before the label's colon.</summary>
    private static bool Pass(AtomCursor atoms)
    {
        var start = atoms.At;
        if (atoms.Eat("fp", "fwdp", "fwd", "forward", "rp", "retp", "ret", "return"))
        {
            atoms.Eat("pass");
            if (atoms.IsKind(TokenKind.Colon))
            {
                return true;
            }
        }

        atoms.At = start;
        return false;
    }

    private static string? NameInBracket(AtomCursor atoms)
    {
        var words = new List<string>();
        while (atoms.Peek() is { Kind: TokenKind.Word } atom && words.Count < MostWords)
        {
            words.Add(atom.Text.ToLowerInvariant());
            atoms.At++;
        }

        return words.Count > 0 && atoms.EatKind(TokenKind.Close) ? string.Join(' ', words) : null;
    }

    /// <summary>True when "and every alt row" and the like stand at the cursor, which stays.</summary>
    public static bool HasRule(AtomCursor atoms, out RowWord word)
    {
        var start = atoms.At;
        var found = RuleWords(atoms, out word);
        atoms.At = start;
        return found;
    }

    /// <summary>"and all WS rows", "and every even-numbered round", "and every alt row", "and all odd rows".</summary>
    private static bool RuleWords(AtomCursor atoms, out RowWord word)
    {
        var start = atoms.At;
        word = RowWord.None;
        atoms.EatKind(TokenKind.Comma);
        if (RowWords.EatAnd(atoms) && atoms.Eat("all", "every", "each") && OtherRows(atoms, out word))
        {
            return true;
        }

        atoms.At = start;
        return false;
    }

    /// <summary>"WS rows", "foll alt row", "even-numbered rounds", "other rows": which rows beside those given; the cursor moves only past all of it.</summary>
    public static bool OtherRows(AtomCursor atoms, out RowWord word)
    {
        var start = atoms.At;
        var words = 0;
        while (words < MostWords && (RowWords.SideWord(atoms) is not null || atoms.Eat("even", "odd", "alt", "alternate", "other", "even-numbered", "odd-numbered", "numbered", "foll", "following", "subsequent", "rem", "remaining")))
        {
            words++;
        }

        word = RowWords.WordOf(atoms.Peek());
        if (words == 0 || word == RowWord.None)
        {
            atoms.At = start;
            return false;
        }

        atoms.At++;
        return true;
    }
}
