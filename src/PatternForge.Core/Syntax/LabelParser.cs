
namespace PatternForge.Core.Syntax;

/// <summary>Reads the label at the start of a sentence: sizes, "Row 3", "1st row", "Next rnd", "Dec row (RS)", "Toe:".</summary>
public sealed class LabelParser
{
    private const int MostWords = 6;

    // A sentence that begins so is an instruction, not the name of a row.
    private static readonly HashSet<string> Verbs = new[] { "rep", "repeat", "work", "knit", "purl", "k", "p", "as", "cont", "continue", "beg", "begin", "same", "every", "on", "in", "at", "end", "ending" }.ToHashSet(StringComparer.OrdinalIgnoreCase);

    private readonly AtomCursor _atoms;

    private LabelParser(AtomCursor atoms) => _atoms = atoms;

    /// <summary>The label at <paramref name="at"/> and the place after it, or null.</summary>
    public static LabelNode? TryParse(List<Atom> atoms, ref int at)
    {
        var cursor = new AtomCursor(atoms, at);
        var label = new LabelParser(cursor).Label();
        if (label is not null)
        {
            at = cursor.At;
        }

        return label;
    }

    private LabelNode? Label()
    {
        var start = _atoms.At;
        if (_atoms.At == 0)
        {
            YarnFirst();
        }

        var sizes = SizeScope.Read(_atoms);
        var emphasis = _atoms.IsKind(TokenKind.Mark) && _atoms.Peek()!.Text == "**" && _atoms.At == 0 && _atoms.EatKind(TokenKind.Mark);
        var from = _atoms.At;
        var side = RowWords.BracketedSide(_atoms);
        var label = Numbered(side) ?? NextRow(side) ?? AllOthers() ?? Named();
        if (label is null)
        {
            _atoms.At = from;
            return sizes is null ? null : new LabelNode { Span = _atoms.Covered(start), Sizes = sizes.Names, SizesSpan = sizes.Span };
        }

        if (emphasis && _atoms.IsKind(TokenKind.Mark) && _atoms.Peek()!.Text == "**")
        {
            _atoms.At++;
            _atoms.EatKind(TokenKind.Colon); // "**Row 2**: Knit"
        }

        label = _atoms.All[start].Span.Start >= label.Span.Start ? label : label with { Span = _atoms.All[start].Span.Cover(label.Span) };
        return sizes is null ? label : label with { Sizes = sizes.Names, SizesSpan = sizes.Span };
    }

    /// <summary>"With CC, Row 5:", "A) Row 1:": the yarn stands before the label.</summary>
    private void YarnFirst()
    {
        var isLetter = _atoms.Peek() is { Kind: TokenKind.Word, Text.Length: 1 } && _atoms.IsKind(TokenKind.Close, 1);
        var isNamed = (_atoms.Peek()?.Is("with") == true || _atoms.Peek()?.Is("using") == true || _atoms.Peek()?.Is("in") == true) && _atoms.IsKind(TokenKind.Word, 1);
        if (!isLetter && !isNamed)
        {
            return;
        }

        _atoms.At += isLetter ? 2 : 1;
        for (var words = 0; isNamed && words < MostWords && (_atoms.EatKind(TokenKind.Word) || _atoms.EatKind(TokenKind.Number)); words++)
        {
        }

        var comma = isLetter || _atoms.EatKind(TokenKind.Comma) || _atoms.EatKind(TokenKind.Colon);
        var at = _atoms.At;
        var follows = comma && (!RowNumbers.Read(_atoms, out _).IsEmpty || (_atoms.Eat("next") && RowWords.WordOf(_atoms.Peek()) != RowWord.None));
        _atoms.At = follows ? at : 0;
    }

    /// <summary>"All WS rows:", "Every RS row:", "Even-numbered rounds:": the rows that are not given themselves.</summary>
    private LabelNode? AllOthers()
    {
        var start = _atoms.At;
        var all = _atoms.Eat("all", "every", "each");
        var side = Peeked(RowWords.SideWord);
        if (!LabelTail.OtherRows(_atoms, out var word) || !(all || _atoms.All[_atoms.At - 1].Text.EndsWith('s')))
        {
            _atoms.At = start;
            return null;
        }

        var label = Rest(start, new LabelNode { Span = default, Word = word, Name = "others" });
        _atoms.At = label is null ? start : _atoms.At;
        return label is null ? null : label with { Name = null, Side = label.Side ?? side, Rule = RowRule.NotGiven };
    }

    private Side? Peeked(Func<AtomCursor, Side?> read)
    {
        var start = _atoms.At;
        var side = read(_atoms);
        _atoms.At = start;
        return side;
    }

    /// <summary>"Row 3", "Rnds 3-6", "R 27,", "1st row", "3d row.-", "Rnd 2 and all even rnds".</summary>
    private LabelNode? Numbered(Side? side)
    {
        var start = _atoms.At;
        var numbers = RowNumbers.Read(_atoms, out var word);
        var label = numbers.IsEmpty ? null : Rest(start, new LabelNode { Span = default, Word = word, Numbers = numbers, Side = side });
        if (label is null)
        {
            _atoms.At = start;
        }

        return label;
    }

    private LabelNode? Rest(int start, LabelNode begun) => LabelTail.Read(_atoms, start, begun);

    /// <summary>"Next row", "Next 6 rows", "Last row", "Second row".</summary>
    private LabelNode? NextRow(Side? side)
    {
        var start = _atoms.At;
        var isNext = _atoms.Eat("next", "following");
        if (!isNext && !_atoms.Eat("last", "final", "second", "third", "first"))
        {
            return null;
        }

        SizedNumber? count = null;
        Atom? named = null;
        if (isNext && _atoms.IsKind(TokenKind.Placeholder))
        {
            named = _atoms.Peek();
            _atoms.At++;
        }
        else if (isNext && _atoms.IsKind(TokenKind.Number))
        {
            count = _atoms.Peek()!.Number;
            _atoms.At++;
        }

        var word = RowWords.WordOf(_atoms.Peek());
        if (word == RowWord.None)
        {
            _atoms.At = start;
            return null;
        }

        _atoms.At++;
        return Rest(start, new LabelNode { Span = default, Word = word, Side = side, IsNext = isNext, NextCount = count, NextCountName = named });
    }

    /// <summary>"Dec row (RS):", "Seed st row:", "Toe:". Needs its colon, or a side or a dash behind "row".</summary>
    private LabelNode? Named()
    {
        var start = _atoms.At;
        var words = 0;
        if (_atoms.Peek() is { } first && Verbs.Contains(first.Text))
        {
            return null;
        }

        while (_atoms.Peek() is { Kind: TokenKind.Word } atom && words < MostWords)
        {
            // "Short-row 1" is the short row 1.
            var isJoined = atom.Is("short-row") || atom.Is("short-rnd") || atom.Is("short-round");
            var word = isJoined ? atom.Is("short-row") ? RowWord.Row : RowWord.Round : RowWords.WordOf(atom);
            _atoms.At++;
            words += isJoined ? 2 : 1;
            if (word == RowWord.None || words < 2)
            {
                continue;
            }

            if (_atoms.IsKind(TokenKind.Number) && !_atoms.Peek()!.Number!.IsList)
            {
                _atoms.At++;
            }

            var name = string.Join(' ', _atoms.All.Skip(start).Take(_atoms.At - start).Select(a => a.Text.ToLowerInvariant()));
            var label = Rest(start, new LabelNode { Span = default, Word = word, Name = name });
            if (label is null)
            {
                _atoms.At = start;
            }

            return label;
        }

        if (words > 0 && _atoms.IsKind(TokenKind.Open) && RowWords.BracketedSide(_atoms) is { } titleSide && _atoms.EatKind(TokenKind.Colon))
        {
            return new LabelNode { Span = _atoms.Covered(start), IsTitle = true, Side = titleSide };
        }

        if (words > 0 && _atoms.IsKind(TokenKind.Number) && _atoms.Peek(1)?.Kind == TokenKind.Colon)
        {
            // "Needle 1:" and the like are part of the row.
            _atoms.At = start;
            return null;
        }

        if (words > 0 && !RowWords.IsNeedle(_atoms.All[start]) && _atoms.EatKind(TokenKind.Colon))
        {
            return new LabelNode { Span = _atoms.Covered(start), IsTitle = true };
        }

        _atoms.At = start;
        return null;
    }
}
