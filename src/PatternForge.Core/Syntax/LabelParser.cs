using System.Collections.Frozen;
using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>Reads the label at the start of a sentence: sizes, "Row 3", "1st row", "Next rnd", "Dec row (RS)", "Toe:".</summary>
public sealed class LabelParser
{
    private const int MostWords = 6;

    // A sentence that begins so is an instruction, not the name of a row.
    private static readonly FrozenSet<string> Verbs = new[] { "rep", "repeat", "work", "knit", "purl", "k", "p", "as", "cont", "continue", "beg", "begin", "same", "every", "on", "in", "at", "end", "ending" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private readonly List<Atom> _atoms;
    private int _at;

    private LabelParser(List<Atom> atoms, int at)
    {
        _atoms = atoms;
        _at = at;
    }

    /// <summary>The label at <paramref name="at"/> and the place after it, or null.</summary>
    public static LabelNode? TryParse(List<Atom> atoms, ref int at)
    {
        var parser = new LabelParser(atoms, at);
        var label = parser.Label();
        if (label is not null)
        {
            at = parser._at;
        }

        return label;
    }

    private Atom? Peek(int ahead = 0) => _at + ahead < _atoms.Count ? _atoms[_at + ahead] : null;

    private bool IsKind(TokenKind kind, int ahead = 0) => Peek(ahead)?.Kind == kind;

    private bool EatKind(TokenKind kind)
    {
        if (!IsKind(kind))
        {
            return false;
        }

        _at++;
        return true;
    }

    private bool Eat(params ReadOnlySpan<string> words)
    {
        foreach (var word in words)
        {
            if (Peek()?.Is(word) == true)
            {
                _at++;
                return true;
            }
        }

        return false;
    }

    private static RowWord WordOf(Atom? atom) => atom is not { Kind: TokenKind.Word } ? RowWord.None : atom.Text.ToLowerInvariant() switch
    {
        "row" or "rows" or "row(s)" => RowWord.Row,
        "rnd" or "rnds" or "round" or "rounds" or "rd" or "rds" or "rnd(s)" => RowWord.Round,
        _ => RowWord.None,
    };

    private LabelNode? Label()
    {
        var start = _at;
        var (sizes, sizesSpan) = Sizes();
        var emphasis = IsKind(TokenKind.Mark) && Peek()!.Text == "**" && _at == 0 && EatKind(TokenKind.Mark);
        var from = _at;
        var side = BracketedSide();
        var label = Numbered(side) ?? NextRow(side) ?? Named();
        if (label is null)
        {
            _at = from;
            if (sizes.IsEmpty)
            {
                return null;
            }

            return new LabelNode { Span = Covered(start), Sizes = sizes, SizesSpan = sizesSpan };
        }

        if (emphasis && IsKind(TokenKind.Mark) && Peek()!.Text == "**")
        {
            _at++;
        }

        return sizes.IsEmpty ? label : label with { Span = _atoms[start].Span.Cover(label.Span), Sizes = sizes, SizesSpan = sizesSpan };
    }

    private TextSpan Covered(int start)
    {
        var last = _at - 1;
        while (last > start && _atoms[last].Kind is TokenKind.Colon or TokenKind.Stop or TokenKind.Dash or TokenKind.Comma or TokenKind.Mark)
        {
            last--;
        }

        return _atoms[start].Span.Cover(_atoms[last].Span);
    }

    /// <summary>"Sizes S and M only:", "For size M:", "On all sizes:".</summary>
    private (ImmutableArray<string> Names, TextSpan Span) Sizes()
    {
        var start = _at;
        Eat("for", "on");
        var all = Eat("all");
        if (!Eat("size", "sizes"))
        {
            _at = start;
            return ([], default);
        }

        var names = ImmutableArray.CreateBuilder<string>();
        var only = false;
        while (Peek() is { } atom && names.Count < 64)
        {
            if (atom.Kind == TokenKind.Colon)
            {
                var span = _atoms[start].Span.Cover(_atoms[_at - 1].Span);
                _at++;
                return (all || names.Count == 0 ? [] : names.ToImmutable(), span);
            }

            if (atom.Is("only"))
            {
                only = true;
                _at++;
                EatKind(TokenKind.Comma);
                EatKind(TokenKind.Colon);
                return (names.ToImmutable(), _atoms[start].Span.Cover(_atoms[_at - 1].Span));
            }

            if (atom.Kind == TokenKind.Comma && all)
            {
                _at++;
                return ([], default);
            }

            if (atom.Kind == TokenKind.Comma || atom.Is("and") || atom.Is("to"))
            {
                _at++;
                continue;
            }

            if (atom.Kind == TokenKind.Number && Peek(1) is { Kind: TokenKind.Word, SpaceBefore: false } suffix)
            {
                names.Add(atom.Text + suffix.Text);
                _at += 2;
                continue;
            }

            if (atom.Kind is TokenKind.Word or TokenKind.Number && !only)
            {
                names.Add(atom.Text);
                _at++;
                continue;
            }

            break;
        }

        _at = start;
        return ([], default);
    }

    private Side? BracketedSide()
    {
        if (!IsKind(TokenKind.Open))
        {
            return null;
        }

        var start = _at;
        _at++;
        var side = SideWord();
        if (side is not null && EatUntilClose())
        {
            return side;
        }

        _at = start;
        return null;
    }

    private bool EatUntilClose()
    {
        for (var i = 0; i < MostWords && Peek() is { } atom; i++)
        {
            _at++;
            if (atom.Kind == TokenKind.Close)
            {
                return true;
            }
        }

        return false;
    }

    private Side? SideWord()
    {
        if (Eat("RS"))
        {
            return Side.Right;
        }

        if (Eat("WS"))
        {
            return Side.Wrong;
        }

        if (Peek(1)?.Is("side") == true && (Peek()!.Is("right") || Peek()!.Is("wrong")))
        {
            var side = Peek()!.Is("right") ? Side.Right : Side.Wrong;
            _at += 2;
            return side;
        }

        return null;
    }

    /// <summary>"Row 3", "Rnds 3-6", "R 27,", "1st row", "3d row.-", "Rnd 2 and all even rnds".</summary>
    private LabelNode? Numbered(Side? sideBefore)
    {
        var start = _at;
        var numbers = ImmutableArray.CreateBuilder<NumberRange>();
        var word = WordOf(Peek());
        if (word != RowWord.None && (IsKind(TokenKind.Number, 1) || Peek(1)?.Kind == TokenKind.Word && Peek(1)!.Number is { IsWord: true }))
        {
            _at++;
            Ranges(numbers, word);
        }
        else if (Peek()?.Is("r") == true && IsKind(TokenKind.Number, 1))
        {
            word = RowWord.Row;
            _at++;
            Ranges(numbers, word);
        }
        else if (IsKind(TokenKind.Number) && Peek()!.Number!.IsOrdinal && WordOf(Peek(1)) is var ordinalWord and not RowWord.None)
        {
            word = ordinalWord;
            numbers.Add(new NumberRange(Peek()!.Number!, null));
            _at += 2;
        }
        else if (Peek() is { Kind: TokenKind.Word } shortForm && ShortLabel(shortForm) is { } range)
        {
            word = RowWord.Row;
            numbers.Add(range);
            _at++;
        }

        if (numbers.Count == 0)
        {
            _at = start;
            return null;
        }

        return Rest(start, word, numbers.ToImmutable(), sideBefore, isNext: false, nextCount: null, name: null);
    }

    private NumberRange? ShortLabel(Atom atom)
    {
        // R7, R7-8: only with a sign behind it that ends a label.
        var text = atom.Text;
        if (text.Length < 2 || text[0] is not ('R' or 'r') || !char.IsAsciiDigit(text[1]) || Peek(1)?.Kind is not (TokenKind.Colon or TokenKind.Stop or TokenKind.Dash or TokenKind.Open))
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

    private void Ranges(ImmutableArray<NumberRange>.Builder numbers, RowWord word)
    {
        while (IsKind(TokenKind.Number) && numbers.Count < 64)
        {
            var from = Peek()!.Number!;
            _at++;
            SizedNumber? to = null;
            var mark = _at;
            if (EatKind(TokenKind.Dash) || Eat("to"))
            {
                if (WordOf(Peek()) == word)
                {
                    _at++;
                }

                if (IsKind(TokenKind.Number))
                {
                    to = Peek()!.Number;
                    _at++;
                    Eat("incl", "inclusive");
                }
                else
                {
                    _at = mark;
                }
            }

            numbers.Add(new NumberRange(from, to));
            mark = _at;
            if (EatKind(TokenKind.Comma))
            {
                Eat("and");
            }
            else if (!Eat("and", "&"))
            {
                if (Peek() is { Kind: TokenKind.Other, Text: "&" })
                {
                    _at++;
                }
                else
                {
                    return;
                }
            }

            if (!IsKind(TokenKind.Number))
            {
                _at = mark;
                return;
            }

            // "R 27, 4 sts": a number with a noun behind it is no row number.
            if (Peek(1) is { Kind: TokenKind.Word } noun && !noun.Is("and") && !noun.Is("to") && !noun.Is("incl"))
            {
                _at = mark;
                return;
            }
        }
    }

    /// <summary>"Next row", "Next 6 rows", "Last row", "Second row".</summary>
    private LabelNode? NextRow(Side? sideBefore)
    {
        var start = _at;
        var isNext = Eat("next", "following");
        if (!isNext && !Eat("last", "final", "second", "third", "first"))
        {
            return null;
        }

        SizedNumber? count = null;
        if (isNext && IsKind(TokenKind.Number))
        {
            count = Peek()!.Number;
            _at++;
        }

        var word = WordOf(Peek());
        if (word == RowWord.None)
        {
            _at = start;
            return null;
        }

        _at++;
        return Rest(start, word, [], sideBefore, isNext, count, name: null);
    }

    /// <summary>"Dec row (RS):", "Seed st row:", "Toe:". Needs its colon, or a side or a dash behind "row".</summary>
    private LabelNode? Named()
    {
        var start = _at;
        var words = 0;
        if (Peek() is { } first && Verbs.Contains(first.Text))
        {
            return null;
        }

        while (Peek() is { Kind: TokenKind.Word } atom && words < MostWords)
        {
            var word = WordOf(atom);
            _at++;
            words++;
            if (word == RowWord.None || words < 2)
            {
                continue;
            }

            if (IsKind(TokenKind.Number) && !Peek()!.Number!.IsList)
            {
                _at++;
            }

            var name = string.Join(' ', _atoms.Skip(start).Take(_at - start).Select(a => a.Text.ToLowerInvariant()));
            var label = Rest(start, word, [], null, isNext: false, nextCount: null, name);
            if (label is null)
            {
                _at = start;
            }

            return label;
        }

        if (words > 0 && IsKind(TokenKind.Open) && BracketedSide() is { } titleSide && EatKind(TokenKind.Colon))
        {
            return new LabelNode { Span = Covered(start), IsTitle = true, Side = titleSide };
        }

        if (words > 0 && IsKind(TokenKind.Number) && Peek(1)?.Kind == TokenKind.Colon)
        {
            // "Needle 1:" and the like are part of the row.
            _at = start;
            return null;
        }

        if (words > 0 && EatKind(TokenKind.Colon))
        {
            return new LabelNode { Span = Covered(start), IsTitle = true };
        }

        _at = start;
        return null;
    }

    /// <summary>What may stand between a row's number or name and its colon.</summary>
    private LabelNode? Rest(int start, RowWord word, ImmutableArray<NumberRange> numbers, Side? side, bool isNext, SizedNumber? nextCount, string? name)
    {
        var rule = RowRule.None;
        SizedNumber? countOfRows = null;
        var labelEnd = _at;
        for (var i = 0; i < 4; i++)
        {
            if (RuleWords())
            {
                rule = RowRule.SameParity;
                labelEnd = _at;
                continue;
            }

            if (side is null && (SideWord() ?? BracketedSide()) is { } said)
            {
                side = said;
                labelEnd = _at;
                continue;
            }

            if (IsKind(TokenKind.Open))
            {
                var bracket = _at;
                _at++;
                if (RuleWords() && EatKind(TokenKind.Close))
                {
                    rule = RowRule.SameParity;
                    labelEnd = _at;
                    continue;
                }

                if (IsKind(TokenKind.Number) && WordOf(Peek(1)) != RowWord.None && IsKind(TokenKind.Close, 2))
                {
                    countOfRows = Peek()!.Number;
                    _at += 3;
                    labelEnd = _at;
                    continue;
                }

                // "(dec rnd)", "(increase)", "(B)", "(cable row)": a name or a colour, when a colon or dash follows.
                var text = NameInBracket();
                if (text is not null && (EndsLabel() || BracketedSide() is { } later && (side = later) is not null))
                {
                    name ??= text;
                    labelEnd = _at;
                    continue;
                }

                _at = bracket;
            }

            break;
        }

        _at = labelEnd;
        if (numbers.IsEmpty && name is not null && side is null && !EndsLabel())
        {
            return null;
        }

        if (!numbers.IsEmpty && !EndsLabel() && side is null && Peek() is { } next && !StartsWork(next))
        {
            return null;
        }

        if (isNext && !EndsLabel() && side is null && Peek() is { } after && !StartsWork(after))
        {
            return null;
        }

        var node = new LabelNode
        {
            Span = Covered(start),
            Word = word,
            Numbers = numbers,
            NextCount = nextCount,
            IsNext = isNext,
            Name = name,
            Side = side,
            Rule = rule,
            CountOfRows = countOfRows,
        };
        while (Peek()?.Kind is TokenKind.Colon or TokenKind.Stop or TokenKind.Dash or TokenKind.Comma or TokenKind.Semicolon)
        {
            if (IsKind(TokenKind.Dash) && IsKind(TokenKind.Open, 1))
            {
                break;
            }

            _at++;
        }

        if (side is null && BracketedSide() is { } late)
        {
            EatKind(TokenKind.Colon);
            EatKind(TokenKind.Stop);
            return node with { Span = Covered(start), Side = late };
        }

        return node;
    }

    private bool EndsLabel() => Peek() is null || Peek()!.Kind is TokenKind.Colon or TokenKind.Stop or TokenKind.Dash or TokenKind.Comma;

    // "R 27 K4": no sign, but a stitch count or bracket begins the row.
    private static bool StartsWork(Atom atom) => atom.Kind is TokenKind.Open or TokenKind.Mark || (atom.Kind == TokenKind.Word && atom.Text.Any(char.IsAsciiDigit));

    private string? NameInBracket()
    {
        var words = new List<string>();
        while (Peek() is { Kind: TokenKind.Word } atom && words.Count < MostWords)
        {
            words.Add(atom.Text.ToLowerInvariant());
            _at++;
        }

        return words.Count > 0 && EatKind(TokenKind.Close) ? string.Join(' ', words) : null;
    }

    /// <summary>"and all WS rows", "and every even-numbered round", "and every alt row", "and all odd rows".</summary>
    private bool RuleWords()
    {
        var start = _at;
        EatKind(TokenKind.Comma);
        if (Eat("and", "&") && Eat("all", "every", "each"))
        {
            Eat("foll", "following", "other", "subsequent");
            if (Eat("ws", "rs", "even", "odd", "alt", "alternate", "other", "even-numbered", "odd-numbered", "foll", "following") | IsKind(TokenKind.Word))
            {
                Eat("numbered");
                Eat("alt", "alternate");
                if (WordOf(Peek()) != RowWord.None)
                {
                    _at++;
                    return true;
                }
            }
        }

        _at = start;
        return false;
    }
}
