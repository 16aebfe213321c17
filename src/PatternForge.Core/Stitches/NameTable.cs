namespace PatternForge.Core.Stitches;

/// <summary>
/// What names mean, whatever their spelling: blanks, hyphens and full stops do not count, and case only where it alone tells two things apart.
/// What is said first of a name holds. Made when a run begins, so making it must be cheap.
/// </summary>
/// <typeparam name="T">What a name stands for.</typeparam>
internal sealed class NameTable<T>
    where T : class
{
    private readonly Dictionary<string, Entry> _entries;
    private readonly Dictionary<string, Entry>.AlternateLookup<ReadOnlySpan<char>> _lookup;
    private readonly Func<T, T, bool> _isSame;

    /// <summary>An empty table.</summary>
    /// <param name="room">About how many names there will be.</param>
    /// <param name="isSame">Tells whether two meanings are one: case decides only between those that are not.</param>
    public NameTable(int room, Func<T, T, bool> isSame)
    {
        _entries = new Dictionary<string, Entry>(room, StringComparer.OrdinalIgnoreCase);
        _lookup = _entries.GetAlternateLookup<ReadOnlySpan<char>>();
        _isSame = isSame;
    }

    /// <summary>Gives a name its meaning, unless it has one; names too long to be looked up are passed over.</summary>
    public void Add(ReadOnlySpan<char> name, T meaning)
    {
        Span<char> room = stackalloc char[SpokenForms.LongestName];
        var length = SpokenForms.Squeeze(name, room);
        if (length <= 0)
        {
            return;
        }

        ReadOnlySpan<char> key = room[..length];
        if (!_lookup.TryGetValue(key, out var first))
        {
            _lookup[key] = new Entry(key.ToString(), meaning);
            return;
        }

        var last = first;
        for (var entry = first; entry is not null; entry = entry.Next)
        {
            if (key.SequenceEqual(entry.Name))
            {
                return;
            }

            last = entry;
        }

        last.Next = new Entry(key.ToString(), meaning);
        first.CaseDecides |= !_isSame(first.Meaning, meaning);
    }

    /// <summary>The meaning of a name that was squeezed already; null when it has none.</summary>
    public T? Find(ReadOnlySpan<char> squeezed)
    {
        if (!_lookup.TryGetValue(squeezed, out var first))
        {
            return null;
        }

        for (var entry = first.CaseDecides ? first : null; entry is not null; entry = entry.Next)
        {
            if (squeezed.SequenceEqual(entry.Name))
            {
                return entry.Meaning;
            }
        }

        return first.Meaning;
    }

    // Spellings that differ in case alone hang together, the first one in front.
    private sealed class Entry(string name, T meaning)
    {
        public string Name { get; } = name;

        public T Meaning { get; } = meaning;

        public Entry? Next { get; set; }

        public bool CaseDecides { get; set; }
    }
}
