using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>
/// Finds the stars of repeats that have become bullets, dashes, underscores or other ornaments, or were lost: "rep from" names the sign, so the same sign before it is the star.
/// </summary>
internal sealed class LostStars
{
    private const int MostBehind = 2000;

    private readonly SourceText _source;
    private readonly List<Mend> _mends;
    private readonly List<TextSpan> _lines = []; // of the paragraph, up to the one that is looked at

    public LostStars(SourceText source, List<Mend> mends)
    {
        _source = source;
        _mends = mends;
    }

    /// <summary>Ends the row that was being read.</summary>
    public void Break() => _lines.Clear();

    /// <summary>Looks at the next line of a row.</summary>
    public void Read(TextSpan line)
    {
        if (_lines.Count > 0 && line.Start - _lines[0].Start > MostBehind)
        {
            _lines.Clear();
        }

        _lines.Add(line);
        var text = _source.Slice(line);
        var at = 0;
        while (at < text.Length && text[at..].IndexOf("from", StringComparison.OrdinalIgnoreCase) is var ahead and >= 0)
        {
            at += ahead;
            if (SaysRepeat(text[..at]) && (at + 4 == text.Length || !char.IsLetterOrDigit(text[at + 4])))
            {
                From(line.Start + at + 4, line.End);
            }

            at += 4;
        }
    }

    private bool IsNewRow(TextSpan line) => _source.Slice(line) is ['R' or 'r' or (>= '0' and <= '9') or 'N' or 'n', ..] && RowLooks.BeginsLabelled(_source, line);

    private static bool SaysRepeat(ReadOnlySpan<char> before)
    {
        var word = before.TrimEnd();
        word = word.EndsWith(".") ? word[..^1] : word;
        return word.Length < before.Length && (word.EndsWith("rep", StringComparison.OrdinalIgnoreCase) || word.EndsWith("repeat", StringComparison.OrdinalIgnoreCase) || word.EndsWith("repeating", StringComparison.OrdinalIgnoreCase) || word.EndsWith("reps", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Looks at what "rep from" names.</summary>
    private void From(int at, int lineEnd)
    {
        var text = _source.Text;
        var named = at;
        while (named < lineEnd && text[named] is ' ' or '\t' or '\u00A0')
        {
            named++;
        }

        var isOrnament = named < lineEnd && IsOrnament(text[named]);
        var words = text.AsSpan(named, lineEnd - named);
        if (!isOrnament && !IsHowFar(words))
        {
            return;
        }

        var row = TextSpan.FromBounds(RowStart(), at - 4);
        if (isOrnament && Earlier(row, text[named]) is { Count: > 0 } earlier)
        {
            foreach (var place in earlier)
            {
                _mends.Add(new Mend(new TextSpan(place, 1), "*", DraftRules.StarGuessed, place == earlier[0] ? new TextSpan(place, 1) : null));
            }

            _mends.Add(new Mend(new TextSpan(named, 1), "*", DraftRules.StarGuessed));
            return;
        }

        // "*k2, p2; rep from to end": one star before it, none named.
        if (!isOrnament && named > at && _source.Slice(row).Count('*') == 1)
        {
            _mends.Add(new Mend(new TextSpan(named, 0), "* ", DraftRules.StarGuessed, TextSpan.FromBounds(at - 4, at)));
        }
    }

    private static bool IsHowFar(ReadOnlySpan<char> words) =>
        words.StartsWith("to ", StringComparison.OrdinalIgnoreCase) || words.StartsWith("across", StringComparison.OrdinalIgnoreCase) || words.StartsWith("around", StringComparison.OrdinalIgnoreCase)
        || words.StartsWith("until", StringComparison.OrdinalIgnoreCase);

    /// <summary>Where the row begins that the last line belongs to.</summary>
    private int RowStart()
    {
        for (var i = _lines.Count - 1; i > 0; i--)
        {
            if (IsNewRow(_lines[i]))
            {
                return _lines[i].Start;
            }
        }

        return _lines[0].Start;
    }

    /// <summary>Where the same sign stands before "rep from", alone or at a word's edge; of dashes only the last, because they join and part other words too.</summary>
    private List<int> Earlier(TextSpan row, char sign)
    {
        var places = new List<int>();
        var text = _source.Text;
        var isDash = sign is '-' or '–' or '—' or '~';
        for (var at = row.Start; at < row.End; at++)
        {
            if (text[at] != sign)
            {
                continue;
            }

            var opens = at == row.Start || text[at - 1] is ' ' or '\t' or '\n' or '\r' or ':' or ',' or ';' or '.' or '(' or '[';
            var closes = at + 1 < row.End && text[at + 1] is ' ' or ',' or ';' or '.' or ')';
            if (isDash ? opens && closes : opens || closes)
            {
                places.Add(at);
            }
        }

        return isDash && places.Count > 1 ? [places[^1]] : places;
    }

    private static bool IsOrnament(char c) => c is '•' or '·' or '●' or '○' or '◦' or '▪' or '■' or '□' or '◆' or '◇' or '♦' or '★' or '☆' or '✳' or '✻' or '✼' or '❋' or '⋆' or '_' or '-' or '–' or '—' or '~' or '¤' or '\uF0B7' or '\uF02A' or '\uFFFD';
}
