using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>What a phrase pattern caught: its numbers in order, and how far it reached.</summary>
internal sealed class PhraseMatch
{
    public List<Lexeme> Numbers { get; } = new(0);

    /// <summary>The words that were matched.</summary>
    public IReadOnlyList<Lexeme> Words { get; set; } = [];

    public required TextSpan Span { get; set; }

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

        var match = new PhraseMatch { Span = default };
        if (!Try(lexemes, at, 0, match))
        {
            return null;
        }

        match.Words = lexemes.GetRange(at, match.End - at);
        match.Span = lexemes[at].Span.Cover(lexemes[Math.Max(at, match.End - 1)].Span);
        return match;
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

    private bool Try(List<Lexeme> lexemes, int at, int part, PhraseMatch match)
    {
        if (part == _parts.Length)
        {
            match.End = at;
            return _mayStop || at == lexemes.Count;
        }

        var now = _parts[part];
        if (now.Kind == PartKind.Rest)
        {
            for (var skip = at; skip <= lexemes.Count; skip++)
            {
                var numbers = match.Numbers.Count;
                if (Try(lexemes, skip, part + 1, match))
                {
                    return true;
                }

                match.Numbers.RemoveRange(numbers, match.Numbers.Count - numbers);
            }

            return false;
        }

        if (at < lexemes.Count && now.Fits(lexemes[at]))
        {
            var numbers = match.Numbers.Count;
            if (now.Kind is PartKind.Number or PartKind.Ordinal)
            {
                match.Numbers.Add(lexemes[at]);
            }

            if (Try(lexemes, at + 1, part + 1, match))
            {
                return true;
            }

            match.Numbers.RemoveRange(numbers, match.Numbers.Count - numbers);
        }

        return now.IsOptional && Try(lexemes, at, part + 1, match);
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
