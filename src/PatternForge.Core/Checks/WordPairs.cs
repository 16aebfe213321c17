using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>Words for the same thing in American and in British knitting patterns, and where the rows use them.</summary>
internal static class WordPairs
{
    /// <summary>Pairs of the published tables of American and British terms (common practice).</summary>
    public static readonly (string Us, string Uk)[] All = [("bind off", "cast off"), ("stockinette", "stocking")];

    /// <summary>The words, one or several, that stand at a token; null for others.</summary>
    public static TextSpan? At(SourceText source, List<Token> tokens, int at, string words)
    {
        var span = tokens[at].Span;
        foreach (var range in words.AsSpan().Split(' '))
        {
            if (at >= tokens.Count || !source.Slice(tokens[at].Span).Equals(words.AsSpan()[range], StringComparison.OrdinalIgnoreCase))
            {
                return null;
            }

            span = span.Cover(tokens[at].Span);
            at++;
        }

        return span;
    }
}
