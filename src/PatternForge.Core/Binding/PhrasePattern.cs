using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>What a phrase pattern caught: its numbers in order, and how far it reached.</summary>
internal sealed class PhraseMatch
{
    private static readonly List<Lexeme> None = [];

    private readonly List<Lexeme> _phrase;
    private readonly int _start;
    private readonly int _end;
    private List<Lexeme>? _words;

    public PhraseMatch(List<Lexeme> phrase, int start, int end, List<Lexeme>? numbers)
    {
        _phrase = phrase;
        _start = start;
        _end = end;
        End = end;
        Numbers = numbers ?? None;
        Span = phrase[start].Span.Cover(phrase[Math.Max(start, end - 1)].Span);
    }

    public IReadOnlyList<Lexeme> Numbers { get; }

    /// <summary>The words that were matched.</summary>
    public IReadOnlyList<Lexeme> Words => _words ??= _phrase.GetRange(_start, _end - _start);

    public TextSpan Span { get; }

    public int End { get; set; }
}

/// <summary>
/// A way to say something, as words of the vocabulary: <c>a|b</c> one of these, <c>word?</c> may be missing, <c>{n}</c> a number or size list,
/// <c>{ord}</c> an ordinal, <c>{w}</c> any one word, <c>...</c> any further words. A pattern must reach the end of the phrase unless it ends in <c>&gt;</c>.
/// </summary>
internal sealed class PhrasePattern
{
    private readonly Part[] _parts;
    private readonly bool _mayStop;

    public PhrasePattern(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        _mayStop = words[^1] == ">";
        _parts = [.. (_mayStop ? words[..^1] : words).Select(Part.Of)];
    }

    /// <summary>The words that a phrase must begin with; null when it may begin with anything.</summary>
    public string? FirstWords => _parts[0] is { Kind: PartKind.Word, IsOptional: false } first ? first.Words : null;

    public PhraseMatch? Match(List<Lexeme> lexemes, int at)
    {
        if (!MayBegin(lexemes, at))
        {
            return null; // nothing is made for the many that do not even begin so
        }

        List<Lexeme>? caught = null;
        return Try(lexemes, at, 0, ref caught) is >= 0 and var end ? new PhraseMatch(lexemes, at, end, caught) : null;
    }

    private bool MayBegin(List<Lexeme> lexemes, int at)
    {
        foreach (var part in _parts)
        {
            if (part.Kind == PartKind.Rest || (at < lexemes.Count && part.Fits(lexemes[at])))
            {
                return true;
            }

            if (!part.IsOptional)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Where the words from a part on end; -1 when they do not stand here.</summary>
    private int Try(List<Lexeme> lexemes, int at, int part, ref List<Lexeme>? caught)
    {
        if (part == _parts.Length)
        {
            return _mayStop || at == lexemes.Count ? at : -1;
        }

        var now = _parts[part];
        if (now.Kind == PartKind.Rest)
        {
            if (part + 1 == _parts.Length && !_mayStop)
            {
                return lexemes.Count; // any words to the end
            }

            for (var skip = at; skip <= lexemes.Count; skip++)
            {
                if (Try(lexemes, skip, part + 1, ref caught) is >= 0 and var rest)
                {
                    return rest;
                }
            }

            return -1;
        }

        if (at < lexemes.Count && now.Fits(lexemes[at]))
        {
            var isNumber = now.Kind is PartKind.Number or PartKind.Ordinal;
            if (isNumber)
            {
                (caught ??= new List<Lexeme>(2)).Add(lexemes[at]);
            }

            if (Try(lexemes, at + 1, part + 1, ref caught) is >= 0 and var end)
            {
                return end;
            }

            if (isNumber)
            {
                caught!.RemoveAt(caught.Count - 1); // what was caught behind it is given back already
            }
        }

        return now.IsOptional ? Try(lexemes, at, part + 1, ref caught) : -1;
    }

    private enum PartKind
    {
        Word,
        Number,
        Ordinal,
        AnyWord,
        Rest,
    }

    private sealed record Part(PartKind Kind, string Words, bool IsOptional)
    {
        public static Part Of(string text)
        {
            if (text == "...")
            {
                return new Part(PartKind.Rest, "", false);
            }

            var isOptional = text[^1] == '?';
            var core = isOptional ? text[..^1] : text;
            return core switch
            {
                "{n}" => new Part(PartKind.Number, "", isOptional),
                "{ord}" => new Part(PartKind.Ordinal, "", isOptional),
                "{w}" => new Part(PartKind.AnyWord, "", isOptional),
                _ => new Part(PartKind.Word, core, isOptional),
            };
        }

        public bool Fits(Lexeme lexeme) => Kind switch
        {
            PartKind.Number => lexeme.IsNumber && lexeme.Number is not { IsOrdinal: true },
            PartKind.Ordinal => lexeme.Number is { IsOrdinal: true },
            PartKind.AnyWord => !lexeme.IsNumber,
            _ => Vocabulary.AlternativesContain(Words, lexeme.Norm),
        };
    }
}
