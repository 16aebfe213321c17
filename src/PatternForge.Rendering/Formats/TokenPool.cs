namespace PatternForge.Rendering.Formats;

/// <summary>The tokens of the pages that are woven together: pages of one pattern are all but the same, so each token is kept once, with what it is compared by.</summary>
internal sealed class TokenPool
{
    private readonly HashSet<string> _tokens = new(StringComparer.Ordinal);
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _bySpan;
    private readonly Dictionary<string, string> _keys = new(StringComparer.Ordinal);

    /// <summary>An empty pool.</summary>
    public TokenPool() => _bySpan = _tokens.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>A token as the pool keeps it.</summary>
    public string Of(ReadOnlySpan<char> token)
    {
        if (!_bySpan.TryGetValue(token, out var known))
        {
            _tokens.Add(known = token.ToString());
        }

        return known;
    }

    /// <summary>What a token is compared by.</summary>
    /// <param name="token">The token.</param>
    /// <param name="make">Makes it of one that is new.</param>
    public string KeyOf(string token, Func<string, string> make)
    {
        if (!_keys.TryGetValue(token, out var key))
        {
            _keys[token] = key = make(token);
        }

        return key;
    }
}
