using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>
/// The readings of one line that are being tried. A place with several readings asks here which one to take; places are met on the way,
/// and the next assignment is made from what was met. Never more than 32 are tried (NOTATION 4c).
/// </summary>
internal sealed class Choices
{
    public const int MostTries = 32;

    private readonly Dictionary<(TextSpan Span, ReadingKind Kind), int>? _taken;
    private readonly bool _timesInAll;

    private List<((TextSpan Span, ReadingKind Kind) Key, int Alternatives)>? _met;

    private Choices(Dictionary<(TextSpan Span, ReadingKind Kind), int>? taken, bool timesInAll)
    {
        _taken = taken;
        _timesInAll = timesInAll;
    }

    /// <summary>The default reading everywhere.</summary>
    public static Choices First => new(null, timesInAll: false);

    /// <summary>The default reading everywhere, but for "rep n times": what the pattern has shown it to mean comes first.</summary>
    public static Choices Beginning(bool timesInAll) => new(null, timesInAll);

    /// <summary>Which of the alternatives to take, from 0, the default.</summary>
    public int Take(TextSpan span, ReadingKind kind, int alternatives = 2)
    {
        var key = (span, kind);
        if (!IsMet(key))
        {
            (_met ??= []).Add((key, alternatives));
        }

        var taken = _taken is null ? 0 : _taken.GetValueOrDefault(key);
        return kind == ReadingKind.InAll && _timesInAll ? 1 - taken : taken;
    }

    /// <summary>The next assignment to try, or null when all have been.</summary>
    public Choices? Next()
    {
        if (_met is null)
        {
            return null;
        }

        var next = new Dictionary<(TextSpan, ReadingKind), int>(_taken ?? []);
        foreach (var (key, alternatives) in _met)
        {
            var now = next.GetValueOrDefault(key);
            if (now + 1 < alternatives)
            {
                next[key] = now + 1;
                return new Choices(next, _timesInAll);
            }

            next[key] = 0;
        }

        return null;
    }

    private bool IsMet((TextSpan Span, ReadingKind Kind) key)
    {
        foreach (var met in _met ?? [])
        {
            if (met.Key == key)
            {
                return true;
            }
        }

        return false;
    }
}
