namespace PatternForge.Core.Binding;

/// <summary>Several ways to say the same thing, found by the word that they begin with. Every one of them begins with a word of its own.</summary>
internal sealed class PhrasePatterns
{
    private readonly FirstWords<PhrasePattern> _byFirstWord = new();

    public PhrasePatterns(params ReadOnlySpan<string> patterns)
    {
        foreach (var text in patterns)
        {
            var pattern = new PhrasePattern(text);
            _byFirstWord.Add(pattern.FirstWords!, pattern);
        }
    }

    /// <summary>The first of them that stands at a place; null for none.</summary>
    public PhraseMatch? Match(List<Lexeme> lexemes, int at)
    {
        if (at >= lexemes.Count || _byFirstWord.Of(lexemes[at].Norm) is not { } patterns)
        {
            return null;
        }

        foreach (var pattern in patterns)
        {
            if (pattern.Match(lexemes, at) is { } match)
            {
                return match;
            }
        }

        return null;
    }
}
