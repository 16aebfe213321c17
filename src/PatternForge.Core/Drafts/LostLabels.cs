using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>
/// Reads a label that has lost a part between two rows that have theirs: "Row: Knit" and "3: Knit" between Rows 2 and 4, "Rwo 3: Knit". The rows on both sides show what it was.
/// </summary>
internal sealed class LostLabels
{
    private const int LongestLabel = 24;

    private readonly SourceText _source;
    private readonly List<Mend> _mends;
    private Mend? _pending;
    private string _word = "Row";
    private int _last = -1;
    private int _section;

    public LostLabels(SourceText source, List<Mend> mends)
    {
        _source = source;
        _mends = mends;
    }

    /// <summary>Looks at the next line.</summary>
    public void Read(TextSpan line, int section)
    {
        if (section != _section)
        {
            Break();
            (_section, _last) = (section, -1);
        }

        var text = _source.Slice(line);
        text = text.Length > LongestLabel ? text[..LongestLabel] : text;
        var letters = 0;
        while (letters < text.Length && char.IsAsciiLetter(text[letters]))
        {
            letters++;
        }

        var at = letters;
        while (at < text.Length && text[at] == ' ')
        {
            at++;
        }

        var number = Number(text, ref at, out var to);
        if (letters > 0 && number >= 0 && at > letters && IsRowWord(text[..letters]))
        {
            Numbered(text[..letters], number, to);
            return;
        }

        if (_last < 0 || !EndsLabel(text[at..]) || !RowLooks.Reads(_source.Slice(line)[at..]))
        {
            return;
        }

        if (letters == 0 && number == _last + 1)
        {
            Keep(new Mend(new TextSpan(line.Start, 0), _word + " ", DraftRules.NumbersGuessed, new TextSpan(line.Start, at)));
        }
        else if (letters > 0 && number < 0 && IsRowWord(text[..letters]))
        {
            var span = new TextSpan(line.Start, letters);
            Keep(new Mend(new TextSpan(span.End, 0), string.Create(CultureInfo.InvariantCulture, $" {_last + 1}"), DraftRules.NumbersGuessed, span));
        }
        else if (letters is > 1 and < 7 && number == _last + 1 && IsNearly(text[..letters].ToString()))
        {
            var span = new TextSpan(line.Start, letters);
            Keep(new Mend(span, _word, DraftRules.NumbersGuessed, span));
        }
    }

    /// <summary>Ends the rows that were being read.</summary>
    public void Break()
    {
        if (_pending is { } mend)
        {
            _mends.Add(mend);
        }

        _pending = null;
    }

    private void Numbered(ReadOnlySpan<char> word, int number, int to)
    {
        // What was lost is known only where the next row goes on from it.
        if (_pending is { } mend && number == _last + 1)
        {
            _mends.Add(mend);
        }

        _pending = null;
        _last = to;
        _word = word.TrimEnd("sS").ToString();
    }

    private void Keep(Mend mend)
    {
        Break();
        _pending = mend;
        _last++;
    }

    private static bool IsRowWord(ReadOnlySpan<char> word) =>
        word.Equals("row", StringComparison.OrdinalIgnoreCase) || word.Equals("rnd", StringComparison.OrdinalIgnoreCase) || word.Equals("round", StringComparison.OrdinalIgnoreCase) || word.Equals("rows", StringComparison.OrdinalIgnoreCase)
        || word.Equals("rnds", StringComparison.OrdinalIgnoreCase) || word.Equals("rounds", StringComparison.OrdinalIgnoreCase);

    private bool IsNearly(string word) => Suggest.Distance(word, _word, 1) <= 1 && char.ToLowerInvariant(word[0]) == char.ToLowerInvariant(_word[0]);

    private static int Number(ReadOnlySpan<char> text, ref int at, out int to)
    {
        var number = Digits(text, ref at);
        to = number;
        var dash = at;
        if (number >= 0 && dash < text.Length && text[dash] is '-' or '–')
        {
            dash++;
            if (Digits(text, ref dash) is > 0 and var last && last > number)
            {
                (at, to) = (dash, last);
            }
        }

        return number;
    }

    private static int Digits(ReadOnlySpan<char> text, ref int at)
    {
        var (start, number) = (at, 0);
        while (at < text.Length && at - start < 4 && char.IsAsciiDigit(text[at]))
        {
            number = (number * 10) + text[at++] - '0';
        }

        return at == start ? -1 : number;
    }

    // ":" or "(RS):"
    private static bool EndsLabel(ReadOnlySpan<char> text)
    {
        text = text.TrimStart();
        if (text is ['(' or '[', 'R' or 'W' or 'r' or 'w', 'S' or 's', ')' or ']', ..])
        {
            text = text[4..].TrimStart();
        }

        return text is [':', ..];
    }
}
