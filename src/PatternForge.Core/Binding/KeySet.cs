using System.Collections.Frozen;
using System.Collections.Immutable;

namespace PatternForge.Core.Binding;

/// <summary>The keys that one level of the header knows, each with other words for it.</summary>
internal sealed record KeySet
{
    private readonly FrozenDictionary<string, string> _plain;

    /// <summary>Declares keys; "a|b|c" makes b and c other words for a.</summary>
    /// <param name="path">The key whose value this is ("gauge"); empty for the header itself.</param>
    /// <param name="keys">The keys.</param>
    public KeySet(string path, params string[] keys)
    {
        Path = path;
        Names = [.. keys.Select(k => k.Split('|')[0])];
        _plain = keys
            .SelectMany(k => k.Split('|').Select(word => KeyValuePair.Create(word, k.Split('|')[0])))
            .ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>The key whose value this is; empty for the header itself.</summary>
    public string Path { get; init; }

    /// <summary>The keys in the order of their declaration.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>The keys and the other words for them.</summary>
    public IEnumerable<string> Words => _plain.Keys;

    /// <summary>The key meant by a word, letters' case and blanks for hyphens aside; null when there is none.</summary>
    public string? Find(string written) => _plain.GetValueOrDefault(Plain(written));

    /// <summary>The key's place in the header as a dotted path.</summary>
    public string PathOf(string key) => Path.Length == 0 ? key : $"{Path}.{key}";

    /// <summary>A key in small letters with hyphens.</summary>
    public static string Plain(string written) => written.Trim().ToLowerInvariant().Replace(' ', '-').Replace('_', '-');
}
