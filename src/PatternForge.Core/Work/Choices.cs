using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>
/// The readings of one line that are being tried. A place with several readings asks here which one to take; places are met on the way,
/// and the next assignment is made from what was met. Never more than 32 are tried (NOTATION 4c).
/// </summary>
internal sealed class Choices
{
    public const int MostTries = 32;

    private readonly Dictionary<(TextSpan Span, ReadingKind Kind), int> _taken;
    private readonly List<((TextSpan Span, ReadingKind Kind) Key, int Alternatives)> _met = [];

    private Choices(Dictionary<(TextSpan Span, ReadingKind Kind), int> taken) => _taken = taken;

    /// <summary>The default reading everywhere.</summary>
    public static Choices First => new([]);

    /// <summary>Which of the alternatives to take, from 0, the default.</summary>
    public int Take(TextSpan span, ReadingKind kind, int alternatives = 2)
    {
        var key = (span, kind);
        if (!_met.Exists(m => m.Key == key))
        {
            _met.Add((key, alternatives));
        }

        return _taken.GetValueOrDefault(key);
    }

    /// <summary>The next assignment to try, or null when all have been.</summary>
    public Choices? Next()
    {
        var next = new Dictionary<(TextSpan, ReadingKind), int>(_taken);
        foreach (var (key, alternatives) in _met)
        {
            var now = next.GetValueOrDefault(key);
            if (now + 1 < alternatives)
            {
                next[key] = now + 1;
                return new Choices(next);
            }

            next[key] = 0;
        }

        return null;
    }
}
