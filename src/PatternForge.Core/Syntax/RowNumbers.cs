using System.Collections.Immutable;

namespace PatternForge.Core.Syntax;

/// <summary>Reads the numbers of a label: "Row 3", "Rnds 3-6", "Rows 2, 4 and 6", "R 27", "1st row", "R7-8:".</summary>
internal static class RowNumbers
{
    private const int Most = 64;

    /// <summary>The numbers at the cursor, and row or round; empty, with the cursor unmoved, where no numbered label begins.</summary>
    public static ImmutableArray<NumberRange> Read(AtomCursor atoms, out RowWord word)
    {
        var start = atoms.At;
        word = RowWords.WordOf(atoms.Peek());
        if (atoms.Peek() is not { Kind: TokenKind.Number } && word == RowWord.None && (atoms.Peek() is not { Kind: TokenKind.Word } begins || begins.Text[0] is not ('R' or 'r')))
        {
            return [];
        }

        var numbers = ImmutableArray.CreateBuilder<NumberRange>(1);
        if (word != RowWord.None && atoms.IsKind(TokenKind.Number, 1))
        {
            atoms.At++;
            Ranges(atoms, numbers, word);
        }
        else if (word != RowWord.None && atoms.IsKind(TokenKind.Stop, 1) && atoms.IsKind(TokenKind.Number, 2) && atoms.At == 0)
        {
            atoms.At += 2; // "Rnd. 5:"
            Ranges(atoms, numbers, word);
        }
        else if (atoms.Peek()?.Is("r") == true && atoms.IsKind(TokenKind.Number, 1))
        {
            word = RowWord.Row;
            atoms.At++;
            Ranges(atoms, numbers, word);
        }
        else if (atoms.IsKind(TokenKind.Number))
        {
            Before(atoms, numbers, ref word);
        }
        else if (atoms.Peek() is { Kind: TokenKind.Word } shortForm && ShortLabel(atoms, shortForm) is { } range)
        {
            word = RowWord.Row;
            numbers.Add(range);
            atoms.At++;
        }

        atoms.At = numbers.Count == 0 ? start : atoms.At;
        return numbers.DrainToImmutable();
    }

    /// <summary>The numbers first: "1st row", "2nd and 4th rows", "3rd to 8th rows", "9-16 row:", "6 row:", and "2nd and every alt row", whose rule is read later.</summary>
    private static void Before(AtomCursor atoms, ImmutableArray<NumberRange>.Builder numbers, ref RowWord word)
    {
        var first = atoms.Peek()!.Number!;
        var isOrdinal = first.IsOrdinal;
        if (!isOrdinal && atoms.At > 0)
        {
            return;
        }

        if (first is { IsList: false, IsWord: false, IsOrdinal: false } && first.Values[0] is > 0 and < 1000 and var bare && bare == decimal.Truncate(bare) && (atoms.IsKind(TokenKind.Stop, 1) || atoms.IsKind(TokenKind.Close, 1)) && atoms.Peek(2)?.Kind is TokenKind.Word or TokenKind.Mark or TokenKind.Open or TokenKind.Semicolon)
        {
            // "12. K5, turn.", "12) K5", "5. Rnd: K5"
            numbers.Add(new NumberRange(first, null));
            atoms.At++;
            if (RowWords.WordOf(atoms.Peek(1)) is not RowWord.None and var behind && atoms.IsKind(TokenKind.Colon, 2))
            {
                word = behind;
                atoms.At += 2;
            }
            else if (atoms.IsKind(TokenKind.Close))
            {
                atoms.At++;
            }

            return;
        }

        Ranges(atoms, numbers, RowWord.None);
        word = RowWords.WordOf(atoms.Peek());
        if (word != RowWord.None)
        {
            atoms.At++;
        }

        // "6 row:" needs its sign, so that "6 rows garter stitch" is no label.
        var isLabel = word == RowWord.None ? isOrdinal && LabelTail.HasRule(atoms, out word) : isOrdinal || (atoms.EndsLabel() && atoms.Peek() is not null);
        if (!isLabel)
        {
            numbers.Clear();
        }
    }

    private static NumberRange? ShortLabel(AtomCursor atoms, Atom atom)
    {
        // R7, R7-8: only with a sign behind it that ends a label.
        var text = atom.Text;
        if (text.Length < 2 || text[0] is not ('R' or 'r') || !char.IsAsciiDigit(text[1]) || atoms.Peek(1)?.Kind is not (TokenKind.Colon or TokenKind.Stop or TokenKind.Dash or TokenKind.Open))
        {
            return null;
        }

        var dash = text.IndexOf('-', StringComparison.Ordinal);
        var first = dash < 0 ? text[1..] : text[1..dash];
        var last = dash < 0 ? null : text[(dash + 1)..];
        if (!first.All(char.IsAsciiDigit) || (last is not null && (last.Length == 0 || !last.All(char.IsAsciiDigit))))
        {
            return null;
        }

        SizedNumber Of(string digits) => new([NumberFolder.ValueOf(digits)], atom.Span);
        return new NumberRange(Of(first), last is null ? null : Of(last));
    }

    private static void Ranges(AtomCursor atoms, ImmutableArray<NumberRange>.Builder numbers, RowWord word)
    {
        while (atoms.IsKind(TokenKind.Number) && numbers.Count < Most)
        {
            var from = atoms.Peek()!.Number!;
            atoms.At++;
            SizedNumber? to = null;
            Atom? named = null;
            var mark = atoms.At;
            if (atoms.EatKind(TokenKind.Dash) || atoms.Eat("to", "through", "thru"))
            {
                if (word != RowWord.None && RowWords.WordOf(atoms.Peek()) == word)
                {
                    atoms.At++;
                }

                if (atoms.IsKind(TokenKind.Number))
                {
                    to = atoms.Peek()!.Number;
                    atoms.At++;
                    atoms.Eat("incl", "inclusive");
                }
                else if (atoms.IsKind(TokenKind.Placeholder))
                {
                    named = atoms.Peek();
                    atoms.At++;
                }
                else
                {
                    atoms.At = mark;
                }
            }

            numbers.Add(new NumberRange(from, to) { ToName = named });
            mark = atoms.At;
            var comma = atoms.EatKind(TokenKind.Comma);
            if (!RowWords.EatAnd(atoms) && !comma)
            {
                return;
            }

            if (!atoms.IsKind(TokenKind.Number))
            {
                atoms.At = mark;
                return;
            }

            // "R 27, 4 sts": a number with a noun behind it is no row number.
            if (atoms.Peek(1) is { Kind: TokenKind.Word } noun && !noun.Is("and") && !noun.Is("to") && !noun.Is("through") && !noun.Is("incl") && word != RowWord.None)
            {
                atoms.At = mark;
                return;
            }
        }
    }
}
