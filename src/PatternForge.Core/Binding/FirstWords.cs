namespace PatternForge.Core.Binding;

/// <summary>Ways to say something, found by the words that they begin with; those of one word stay in the order in which they were added. Made when a run begins, so making it must be cheap.</summary>
internal sealed class FirstWords<T>
{
    private readonly Dictionary<string, List<T>> _byWord = new(StringComparer.Ordinal);

    /// <summary>Adds one under each of the words <c>a|b|c</c>.</summary>
    public void Add(string words, T entry)
    {
        foreach (var range in words.AsSpan().Split('|'))
        {
            var word = words[range];
            if (!_byWord.TryGetValue(word, out var entries))
            {
                _byWord.Add(word, entries = new List<T>(2));
            }

            entries.Add(entry);
        }
    }

    /// <summary>Those that begin with a word; null for none.</summary>
    public List<T>? Of(string word) => _byWord.GetValueOrDefault(word);
}
