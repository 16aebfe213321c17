using System.Collections.Frozen;
using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Core.Editions;

/// <summary>Finds the measurements in words, each number with its place, so that they can be told in other units. What may be something else ("sc 2 in next st", "sl 2 m") is none.</summary>
internal sealed class MeasureScan
{
    private const int MostNumbers = 64;
    private const string Fractions = "½¼¾⅓⅔⅛⅜⅝⅞";

    private static readonly decimal[] FractionValues = [0.5m, 0.25m, 0.75m, 1 / 3m, 2 / 3m, 0.125m, 0.375m, 0.625m, 0.875m];

    // What may follow inches that are written "in": with any other word it is a preposition.
    private static readonly FrozenSet<string> BehindInches =
        "from long wide deep tall high thick above below beyond past before after less more apart across around square and or of at for when over on remaining longer shorter wider deeper short total unstretched circumference diameter rem beg tail tails circular needle needles length lengths strip strips x by"
            .Split(' ').ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly string[] Spelled = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    private readonly string _said;
    private readonly bool _isRow;
    private readonly Func<int, int> _skip;
    private readonly IReadOnlyDictionary<string, PerSize<Quantity?>> _called;

    /// <summary>Prepares for one stretch of words.</summary>
    /// <param name="said">The words.</param>
    /// <param name="isRow">True where they are instructions.</param>
    /// <param name="skip">Where to go on behind what must not be read (addresses, remarks) that begins at a place; the place itself where nothing does.</param>
    /// <param name="called">The numbers of the header by name.</param>
    public MeasureScan(string said, bool isRow, Func<int, int> skip, IReadOnlyDictionary<string, PerSize<Quantity?>> called) => (_said, _isRow, _skip, _called) = (said, isRow, skip, called);

    /// <summary>The measurements in their order.</summary>
    public IEnumerable<MeasurePlace> All()
    {
        for (var at = 0; at < _said.Length;)
        {
            if (_said[at] != '{' && _skip(at) is var behind && behind > at)
            {
                at = behind;
                continue;
            }

            if (!MayStart(at) || Read(at) is not { } first)
            {
                at++;
                continue;
            }

            var place = Pair(first);
            yield return place;
            at = Math.Max(place.End, at + 1);
        }
    }

    private bool MayStart(int at)
    {
        var c = _said[at];
        if (c == '{')
        {
            return true;
        }

        var before = at == 0 ? ' ' : _said[at - 1];
        if (char.IsLetterOrDigit(before) || before is '.' or '/' or '#' or '$' or '£' or '€' or '_' || (before is '-' or '–' or '/' && at > 1 && char.IsLetterOrDigit(_said[at - 2])))
        {
            return false;
        }

        return char.IsAsciiDigit(c) || Fractions.Contains(c, StringComparison.Ordinal) || (char.IsLetter(c) && SpelledAt(at) is not null);
    }

    private MeasureTold? Read(int start)
    {
        if (_said[start] == '{')
        {
            return Named(start);
        }

        if (SpelledAt(start) is { } word)
        {
            var behind = start + word.Length;
            return UnitAt(Blanks(behind), out var spelledEnd) is { } unit ? new MeasureTold(start, [new MeasureNumber(start, behind, Array.FindIndex(Spelled, s => s.Equals(word, StringComparison.OrdinalIgnoreCase)) + 1, false)], Blanks(behind), spelledEnd, unit) : null;
        }

        var numbers = new List<MeasureNumber>();
        var (at, open) = (start, 0);
        var isUpTo = false;
        while (numbers.Count < MostNumbers)
        {
            if (Number(at) is not { } number)
            {
                return null;
            }

            numbers.Add(number with { IsUpTo = isUpTo });
            at = number.End;
            isUpTo = false;
            while (open > 0 && Blanks(at) is var close && close < _said.Length && _said[close] is ')' or ']')
            {
                (at, open) = (close + 1, open - 1);
            }

            var sign = Blanks(at);
            if (open == 0 && UnitAt(_said.AsSpan(sign) is ['-', ..] ? sign + 1 : sign, out var end) is { } unit)
            {
                return new MeasureTold(start, numbers, _said[sign] == '-' ? sign + 1 : sign, end, unit);
            }

            if (Next(sign, ref open, ref isUpTo) is not { } next)
            {
                return null;
            }

            at = next;
        }

        return null;
    }

    /// <summary>Where the next number of a list, a range or a second side begins; null where none follows.</summary>
    private int? Next(int sign, ref int open, ref bool isUpTo)
    {
        if (sign >= _said.Length)
        {
            return null;
        }

        switch (_said[sign])
        {
            case '(' or '[' when open < 2:
                open++;
                return Missing(Blanks(sign + 1));
            case '-' or '–' or '—':
                isUpTo = true;
                return Digits(Blanks(sign + 1));
            case ',' or ':' or ';' when open > 0:
            case '/':
                return Missing(Blanks(sign + 1));
            case '×':
                return Digits(Blanks(sign + 1));
        }

        foreach (var word in (ReadOnlySpan<string>)["to", "or", "and", "x", "by"])
        {
            if (string.CompareOrdinal(_said, sign, word, 0, word.Length) == 0 && sign + word.Length < _said.Length && (char.IsWhiteSpace(_said[sign + word.Length]) || word is "x") && Digits(Blanks(sign + word.Length)) is { } behind)
            {
                isUpTo = word is "to";
                return behind;
            }
        }

        return null;
    }

    private int? Digits(int at) => at < _said.Length && (char.IsAsciiDigit(_said[at]) || Fractions.Contains(_said[at], StringComparison.Ordinal)) ? at : null;

    // A size that has no value has a dash in its place.
    private int? Missing(int at)
    {
        for (var values = 0; values < MostNumbers && at < _said.Length && _said[at] is '-' or '–' or '—'; values++)
        {
            at = Blanks(at + 1);
            if (at < _said.Length && _said[at] is ',' or ':' or ';' or '/')
            {
                at = Blanks(at + 1);
            }
        }

        return Digits(at);
    }

    private MeasureNumber? Number(int start)
    {
        var at = start;
        while (at < _said.Length && char.IsAsciiDigit(_said[at]))
        {
            at++;
        }

        if (at - start > 6)
        {
            return null;
        }

        if (at > start && at + 1 < _said.Length && _said[at] == '.' && char.IsAsciiDigit(_said[at + 1]))
        {
            for (at++; at < _said.Length && char.IsAsciiDigit(_said[at]) && at - start < 12;)
            {
                at++;
            }
        }

        var value = at > start ? decimal.Parse(_said.AsSpan(start, at - start), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture) : 0;
        var sign = at < _said.Length ? Fractions.IndexOf(_said[at], StringComparison.Ordinal) : -1;
        if (sign >= 0)
        {
            return new MeasureNumber(start, at + 1, value + FractionValues[sign], false);
        }

        if (at == start)
        {
            return null;
        }

        // "1/2", "5 1/2", "5-1/2"
        if (Broken(start) is { } part && part.End > at)
        {
            return new MeasureNumber(start, part.End, part.Value, false);
        }

        return at + 1 < _said.Length && _said[at] is ' ' or '-' && Broken(at + 1) is { } rest ? new MeasureNumber(start, rest.End, value + rest.Value, false) : new MeasureNumber(start, at, value, false);
    }

    private (decimal Value, int End)? Broken(int at) =>
        at + 2 < _said.Length && char.IsAsciiDigit(_said[at]) && _said[at + 1] == '/' && _said[at + 2] is '2' or '3' or '4' or '8' && _said[at] < _said[at + 2] && _said[at] > '0'
        && (at + 3 == _said.Length || (!char.IsAsciiDigit(_said[at + 3]) && _said[at + 3] is not '/' and not '.'))
            ? ((_said[at] - '0') / (decimal)(_said[at + 2] - '0'), at + 3) : null;

    private string? SpelledAt(int at)
    {
        var word = WordAt(at);
        return word.Length is > 2 and < 7 && Array.Exists(Spelled, s => s.Equals(word, StringComparison.OrdinalIgnoreCase)) ? word : null;
    }

    /// <summary>A number of the header that is called by name and measures something, or stands before a unit.</summary>
    private MeasureTold? Named(int start)
    {
        var close = _said.IndexOf('}', start);
        if (close < 0 || close - start > 80 || !_called.TryGetValue(_said[(start + 1)..close], out var values))
        {
            return null;
        }

        var unit = values.Values.FirstOrDefault(v => v is not null)?.Unit;
        if (unit is { Dimension: not Dimension.Count } && unit != Unit.Millimetre)
        {
            return new MeasureTold(start, [], close + 1, close + 1, unit) { Called = values };
        }

        return unit is not null && UnitAt(Blanks(close + 1), out var end) is { } behind
            ? new MeasureTold(start, [], Blanks(close + 1), end, behind) { Called = values.Map(v => v is null ? null : v with { Unit = behind }) }
            : null;
    }

    /// <summary>The unit at a place, and where it ends; null where none stands that other units could take the place of.</summary>
    private Unit? UnitAt(int at, out int end)
    {
        end = at;
        if (at >= _said.Length)
        {
            return null;
        }

        if (_said[at] is '"' or '″' or '”' or '\\' || string.CompareOrdinal(_said, at, "''", 0, 2) == 0)
        {
            var isMark = _said[at] == '″' || (_said[at] == '\\' && at + 1 < _said.Length && _said[at + 1] == '"') || (_said[at] == '"' && _said.AsSpan(0, at).Count('"') % 2 == 0)
                || (_said[at] == '”' && !_said.AsSpan(0, at).Contains('“')) || _said[at] == '\'';
            end = at + (_said[at] is '\\' or '\'' ? 2 : 1);
            return isMark ? Unit.Inch : null;
        }

        var word = WordAt(at);
        end = at + word.Length;
        if (word.Length is 0 or > 12 || (end < _said.Length && (char.IsLetterOrDigit(_said[end]) || _said[end] is '²' or '\'' or '’')) || Unit.Find(word) is not { } unit || (word.Length < 3 && word.Any(char.IsUpper)))
        {
            return null;
        }

        var next = WordAt(Blanks(end));
        switch (word)
        {
            case "in" or "ins":
                if (end < _said.Length && _said[end] == '.' && Blanks(end + 1) is var behind && behind < _said.Length && (char.IsLower(_said[behind]) || _said[behind] is ')' or ',' or '(' or '['))
                {
                    end++; // the stop of an abbreviation
                    return unit;
                }

                return next.Length == 0 || BehindInches.Contains(next) ? unit : null;
            case "m":
                return next is "of" || (!_isRow && next is not "to") || next is "tail" or "tails" or "long" or "wide" ? unit : null;
            case "g" or "gr":
                return !_isRow || next is "of" ? unit : null;
        }

        return unit == Unit.Millimetre ? null : unit;
    }

    /// <summary>The same in the other system: in brackets, or behind a slash, an equals sign or "or".</summary>
    private MeasurePlace Pair(MeasureTold first)
    {
        var at = Blanks(first.End);
        var none = new MeasurePlace(first, null, first.End);
        if (at >= _said.Length)
        {
            return none;
        }

        var sign = _said[at];
        var from = sign is '(' or '[' or '/' or '=' or '≈' ? Blanks(at + 1) : WordAt(at) is "or" ? Blanks(at + 2) : -1;
        from = from > 0 && WordAt(from) is "about" or "approx" ? Blanks(from + WordAt(from).Length + (_said.AsSpan(Math.Min(_said.Length, from + WordAt(from).Length)) is ['.', ..] ? 1 : 0)) : from;
        if (from < 0 || from >= _said.Length || (!char.IsAsciiDigit(_said[from]) && !Fractions.Contains(_said[from], StringComparison.Ordinal)) || Read(from) is not { } second
            || second.Unit.Dimension != first.Unit.Dimension || second.System == first.System || !Agree(first, second))
        {
            return none;
        }

        if (sign is not ('(' or '['))
        {
            return new MeasurePlace(first, second, second.End);
        }

        var close = Blanks(second.End);
        return close < _said.Length && _said[close] == (sign == '(' ? ')' : ']') ? new MeasurePlace(first, second, close + 1) : none;
    }

    private static bool Agree(MeasureTold first, MeasureTold second)
    {
        if (first.Called is not null || first.Numbers.Count != second.Numbers.Count)
        {
            return first.Called is not null;
        }

        for (var i = 0; i < first.Numbers.Count; i++)
        {
            var (one, other) = (first.Numbers[i].Value * first.Unit.InBase, second.Numbers[i].Value * second.Unit.InBase);
            if (Math.Abs(one - other) > Math.Max(0.2m * Math.Max(one, other), 0.7m))
            {
                return false;
            }
        }

        return true;
    }

    private string WordAt(int at)
    {
        var end = at;
        while (end < _said.Length && char.IsLetter(_said[end]))
        {
            end++;
        }

        return at >= _said.Length ? "" : _said[at..end];
    }

    private int Blanks(int at)
    {
        while (at < _said.Length && (char.IsWhiteSpace(_said[at]) || _said[at] is '\u00A0'))
        {
            at++;
        }

        return at;
    }
}
