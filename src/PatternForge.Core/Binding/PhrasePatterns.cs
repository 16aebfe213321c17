using System.Collections.Frozen;

namespace PatternForge.Core.Binding;

/// <summary>Several ways to say the same thing, found by the word that they begin with. Every one of them begins with a word of its own.</summary>
internal sealed class PhrasePatterns
{
    private readonly FrozenDictionary<string, PhrasePattern[]> _byFirstWord;

    public PhrasePatterns(IEnumerable<string> patterns) => _byFirstWord = patterns
        .Select(text => new PhrasePattern(text))
        .SelectMany(pattern => pattern.FirstWords!.Split('|').Select(word => (word, pattern)))
        .GroupBy(pair => pair.word, StringComparer.Ordinal)
        .ToFrozenDictionary(group => group.Key, group => group.Select(pair => pair.pattern).ToArray(), StringComparer.Ordinal);

    /// <summary>The first of them that stands at a place; null for none.</summary>
    public PhraseMatch? Match(List<Lexeme> lexemes, int at)
    {
        if (at >= lexemes.Count || !_byFirstWord.TryGetValue(lexemes[at].Norm, out var patterns))
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
