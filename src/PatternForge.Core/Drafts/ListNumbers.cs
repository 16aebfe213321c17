using System.Globalization;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>
/// Reads what automatic numbering leaves: "1) Knit", "1 Knit" line after line, "1." at every item, "1. Row 1: Knit", and "Row: Knit" where the number is gone.
/// </summary>
internal sealed class ListNumbers
{
    private readonly SourceText _source;
    private readonly List<Mend> _mends;
    private readonly List<Item> _bare = [];
    private readonly List<TextSpan> _ones = [];
    private readonly List<TextSpan> _nameless = [];
    private bool _hasNumbers;
    private int _section;

    public ListNumbers(SourceText source, List<Mend> mends)
    {
        _source = source;
        _mends = mends;
    }

    /// <summary>Looks at the next line.</summary>
    /// <param name="line">The line without a bullet.</param>
    /// <param name="section">A number that changes with the section.</param>
    /// <param name="begins">True for the first line of a paragraph: one without a number ends the lists. Other lines are rows running on.</param>
    public void Read(TextSpan line, int section, bool begins)
    {
        if (section != _section)
        {
            Break();
            _section = section;
        }

        var text = _source.Slice(line);
        if (text.IsEmpty || !char.IsAsciiDigit(text[0]))
        {
            Nameless(line, text, begins);
            return;
        }

        var digits = 1;
        while (digits < text.Length && digits < 4 && char.IsAsciiDigit(text[digits]))
        {
            digits++;
        }

        var sign = digits;
        var escape = sign < text.Length && text[sign] == '\\' ? 1 : 0;
        var mark = sign + escape < text.Length ? text[sign + escape] : ' ';
        var isMarked = mark is '.' or ')';
        var blank = sign + escape + (isMarked ? 1 : 0);
        if (digits > 3 || blank >= text.Length || text[blank] is not (' ' or '\t') || (escape == 1 && !isMarked))
        {
            return;
        }

        var rest = TextSpan.FromBounds(line.End - text[blank..].TrimStart().Length, line.End);
        var number = new TextSpan(line.Start, digits);
        var value = int.Parse(text[..digits], CultureInfo.InvariantCulture);
        if (isMarked && RowLooks.BeginsNumbered(_source, rest) && _source.Slice(rest) is [not (>= '0' and <= '9'), ..])
        {
            _mends.Add(new Mend(TextSpan.FromBounds(line.Start, rest.Start), "", DraftRules.NumbersGuessed, number));
            return;
        }

        if (!RowLooks.Reads(_source.Slice(rest)))
        {
            return;
        }

        if (isMarked)
        {
            if (mark == ')' || escape == 1)
            {
                _mends.Add(new Mend(TextSpan.FromBounds(number.End, line.Start + blank), "."));
            }

            if (value == 1)
            {
                _ones.Add(number);
            }
            else
            {
                _ones.Clear(); // a list that counts on
            }
        }
        else if (_source.Slice(rest)[0] is (>= 'A' and <= 'Z') or '*' or '(' or '[')
        {
            if (_bare.Count > 0 && _bare[^1].Value + 1 != value)
            {
                Bare();
            }

            _bare.Add(new Item(number, value));
        }
    }

    /// <summary>Ends the lists that were being read.</summary>
    public void Break()
    {
        Bare();
        Ones();
        for (var i = 0; i < _nameless.Count && _nameless.Count > 1 && !_hasNumbers; i++)
        {
            _mends.Add(new Mend(new TextSpan(_nameless[i].End, 0), $" {i + 1}", DraftRules.NumbersGuessed, _nameless[i]));
        }

        _nameless.Clear();
        _hasNumbers = false;
    }

    /// <summary>"1. Knit. / 1. Purl.": every item the first.</summary>
    private void Ones()
    {
        for (var i = 1; i < _ones.Count; i++)
        {
            _mends.Add(new Mend(_ones[i], (i + 1).ToString(CultureInfo.InvariantCulture), DraftRules.NumbersGuessed, _ones[i]));
        }

        _ones.Clear();
    }

    /// <summary>"1 Knit. / 2 Purl.": at least two lines that count on, the first of them 1.</summary>
    private void Bare()
    {
        for (var i = 0; i < _bare.Count && _bare.Count > 1; i++)
        {
            _mends.Add(new Mend(new TextSpan(_bare[i].Span.End, 0), ".", DraftRules.NumbersGuessed, _bare[i].Span));
        }

        _bare.Clear();
    }

    /// <summary>"Row: Knit.": a label that has lost its number.</summary>
    private void Nameless(TextSpan line, ReadOnlySpan<char> text, bool begins)
    {
        var head = text[..Math.Min(text.Length, 12)];
        if (head is ['R' or 'r', ..])
        {
            _hasNumbers |= head.IndexOf(' ') is var blank and > 0 && blank + 1 < head.Length && char.IsAsciiDigit(head[blank + 1]);
            var colon = head.IndexOf(':');
            var word = colon > 0 ? head[..colon].TrimEnd() : default;
            if (word is "Row" or "Rnd" or "Round" or "ROW" or "RND" or "ROUND" && RowLooks.Reads(text[(colon + 1)..]))
            {
                _nameless.Add(new TextSpan(line.Start, word.Length));
                return;
            }
        }

        if (begins)
        {
            Bare();
            Ones();
        }
    }

    private readonly record struct Item(TextSpan Span, int Value);
}
