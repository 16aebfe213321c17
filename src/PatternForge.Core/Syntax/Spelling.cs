namespace PatternForge.Core.Syntax;

/// <summary>A word, number or sign as it is written, with what holds of it in whatever line it stands. Lines are made of few words that come again and again: each is looked at once.</summary>
public sealed class Spelling
{
    private const int MostRemembered = 4_096;
    private const int LongestRemembered = 24;

    private static readonly Spelling?[] Signs = new Spelling?[128];

    // One a thread, so that files worked side by side never wait for each other.
    [ThreadStatic]
    private static Dictionary<string, Spelling>? _known;

    private Spelling(string text)
    {
        Text = text;
        Value = text.Length == 0 ? null : char.IsLetter(text[0]) ? NumberFolder.WordValue(text) : NumberFolder.IsNumber(text[0]) ? NumberFolder.ValueOf(text) : null;
    }

    /// <summary>As it is written.</summary>
    public string Text { get; }

    /// <summary>The value of a number in digits or in letters; null for what is none.</summary>
    public decimal? Value { get; }

    /// <summary>The one spelling under which the vocabulary of rows knows this word and its variants; null until it was looked up.</summary>
    public string? Norm { get; set; }

    /// <summary>The spelling of a stretch of text.</summary>
    public static Spelling Of(ReadOnlySpan<char> text)
    {
        if (text.Length == 1 && char.IsAscii(text[0]))
        {
            return Signs[text[0]] ??= new Spelling(text.ToString());
        }

        if (text.Length > LongestRemembered)
        {
            return new Spelling(text.ToString());
        }

        var known = (_known ??= new Dictionary<string, Spelling>(512, StringComparer.Ordinal)).GetAlternateLookup<ReadOnlySpan<char>>();
        if (!known.TryGetValue(text, out var spelling))
        {
            if (_known.Count >= MostRemembered)
            {
                _known.Clear();
            }

            spelling = new Spelling(text.ToString());
            _known.Add(spelling.Text, spelling);
        }

        return spelling;
    }
}
