using System.Collections.Frozen;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Editions;

/// <summary>
/// The stitches of crochet in the other terms. Each word is looked up as the rows are read, in the terms that the pattern declares, and what takes its place is the name
/// that the other terms have for the same operation.
/// </summary>
internal sealed class CrochetTermWords : ITermWords
{
    private const int LongestName = 6;
    private static readonly char[] Joints = ['-', '\u2011', '/', '&', '+'];

    // The tables of both ways, each made when the first edition asks for it.
    private static readonly Lazy<CrochetTermWords> ToUk = new(() => new CrochetTermWords(Dialect.Us, Dialect.Uk));
    private static readonly Lazy<CrochetTermWords> ToUs = new(() => new CrochetTermWords(Dialect.Uk, Dialect.Us));

    private readonly FrozenDictionary<string, string> _names;
    private readonly Dialect _from;

    private CrochetTermWords(Dialect from, Dialect to)
    {
        _from = from;
        var names = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var operation in OperationTable.All(Craft.Crochet))
        {
            foreach (var name in operation.Names.Where(n => n.Dialect == from))
            {
                if (OperationTable.Counterpart(operation, name.Text, to) is { } other)
                {
                    names.TryAdd(name.Text, other);
                }
            }
        }

        _names = names.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The words of one way.</summary>
    public static CrochetTermWords For(Dialect to) => to == Dialect.Uk ? ToUk.Value : ToUs.Value;

    /// <inheritdoc/>
    public (int Tokens, string? Words) At(WordRun run, int at)
    {
        var word = run.Word(at);
        if (word.Length == 0 || run.Is(at - 1, "Tunisian"))
        {
            return default; // Tunisian stitches have one name
        }

        if (Spoken(run, at) is { Tokens: > 0 } spoken)
        {
            return spoken;
        }

        if (Apart(run, at) is { Tokens: > 0 } apart)
        {
            return apart;
        }

        if (Fragment(run, at) is { } part)
        {
            return part;
        }

        if (!run.IsRow && Wordings.IsShouted(word) && !_names.Keys.Contains(word, StringComparer.Ordinal))
        {
            return default; // in prose, capitals are somebody's initials
        }

        return Single(word) is { } name ? (1, name) : default;
    }

    /// <summary>A word that is a stitch by itself, or has one in it: "dc", "FPdc", "dcs", "dc-blo", "dc/tr"; null for other words.</summary>
    public string? Single(string word)
    {
        if (Named(word) is { } name)
        {
            return name;
        }

        if (LoopNames.StitchIn(word) is var (start, length) && length > 1 && Named(word.Substring(start, length)) is { } inner)
        {
            return string.Concat(word.AsSpan(0, start), inner, word.AsSpan(start + length));
        }

        if (word.IndexOfAny(Joints) < 0)
        {
            return null;
        }

        var parts = new List<string>();
        var (from, changed) = (0, false);
        for (var i = 0; i <= word.Length; i++)
        {
            if (i < word.Length && !Joints.Contains(word[i]))
            {
                continue;
            }

            var part = word[from..i];
            var other = Named(part);
            changed |= other is not null;
            parts.Add(other ?? part);
            parts.Add(i < word.Length ? word[i].ToString() : "");
            from = i + 1;
        }

        return changed ? string.Concat(parts) : null;
    }

    private string? Named(string word)
    {
        if (_names.TryGetValue(word, out var name))
        {
            return name;
        }

        var digits = word.AsSpan().TrimEnd("0123456789").Length;
        if (digits < word.Length && digits > 1 && _names.TryGetValue(word[..digits], out name))
        {
            return name + word[digits..];
        }

        foreach (var ending in (ReadOnlySpan<string>)["'s", "’s", "(s)", "s"])
        {
            if (word.Length > ending.Length + 1 && word.EndsWith(ending, StringComparison.OrdinalIgnoreCase) && _names.TryGetValue(word[..^ending.Length], out name))
            {
                return name + ending;
            }
        }

        return null;
    }

    /// <summary>The longest name in words that begins here: "half double crochet", "front post dc", "trebles".</summary>
    private (int Tokens, string? Words) Spoken(WordRun run, int at)
    {
        var (many, said) = (0, "");
        (int Tokens, string? Words) best = default;
        while (many < LongestName && run.KindOf(at + many) == TokenKind.Word && run.Word(at + many).Length > 0 && (many == 0 || run.IsApart(at + many)))
        {
            said += (many == 0 ? "" : " ") + run.Word(at + many).Replace('-', ' ');
            many++;
            if (!said.Contains(' ', StringComparison.Ordinal) && many == 1 && said.Length < 6)
            {
                continue;
            }

            if (_names.TryGetValue(said, out var name))
            {
                best = (many, Cased(said, name));
            }
            else if (said.EndsWith('s') && said.Length > 6 && _names.TryGetValue(said[..^1], out name))
            {
                best = (many, Cased(said, name + "s"));
            }
        }

        return best;
    }

    /// <summary>"s c", "d tr c": an abbreviation with blanks between its letters, as old books have it.</summary>
    private (int Tokens, string? Words) Apart(WordRun run, int at)
    {
        (int Tokens, string? Words) best = default;
        var said = "";
        for (var many = 1; many <= 4 && run.IsRow && run.Word(at + many - 1) is { Length: 1 or 2 } letters; many++)
        {
            said += letters;
            if (many > 1 && _names.TryGetValue(said, out var name))
            {
                best = (many, Wordings.LikeCase(name, run.Word(at)));
            }
        }

        return run.Word(at).Length == 1 || (best.Tokens > 1 && !_names.ContainsKey(run.Word(at))) ? best : default;
    }

    private static string Cased(string said, string name) => Wordings.LikeCase(name, said.Split(' ')[0]);

    /// <summary>"single and double crochet": the first of two names that share their last word.</summary>
    private (int Tokens, string? Words)? Fragment(WordRun run, int at)
    {
        if (_from != Dialect.Us)
        {
            return null;
        }

        var words = run.Are(at, "half", "double") ? 2 : run.Is(at, "single", "double", "half-double") ? 1 : 0;
        if (words == 0 || !run.Is(at + words, "and", "or") || Spoken(run, at + words + 1) is not { Tokens: > 1 } || !run.Is(at + words + Spoken(run, at + words + 1).Tokens, "crochet", "crochets"))
        {
            return null;
        }

        var said = string.Join(' ', Enumerable.Range(at, words).Select(i => run.Word(i).Replace('-', ' '))) + " crochet";
        return _names.TryGetValue(said, out var name) ? (words, Cased(run.Word(at), name)) : null;
    }
}
