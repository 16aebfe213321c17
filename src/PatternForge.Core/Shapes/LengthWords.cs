using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Shapes;

/// <summary>From where a length is measured.</summary>
internal enum LengthFrom
{
    /// <summary>From the lower edge of the piece.</summary>
    Edge,

    /// <summary>From where the heading begins: ribbing, a band.</summary>
    Section,

    /// <summary>From where the armhole begins.</summary>
    Armhole,

    /// <summary>From here.</summary>
    Here,

    /// <summary>From the back of a sock's heel.</summary>
    Heel,

    /// <summary>From under a sock's heel: how far that is from its stitches hangs on the way it is measured.</summary>
    Sole,
}

/// <summary>A length that a line states for its rows.</summary>
/// <param name="From">From where it is measured.</param>
/// <param name="Cm">Centimetres, one value or one a size.</param>
internal sealed record LengthWords(LengthFrom From, ImmutableArray<decimal> Cm)
{
    private static readonly string[] Underarms = ["from underarm", "from the underarm", "from armhole", "from the armhole", "from the division", "from division", "from the dividing", "from dividing"];

    private static readonly string[] Soles = ["bottom of the heel", "bottom of heel", "base of the heel", "base of heel"];

    private static readonly string[] Bands = ["rib", "cuff", "hem", "brim", "band", "border", "edging", "garter"];

    /// <summary>The length in a size; null where the list has no value for it.</summary>
    public decimal? In(int size, int sizes) => Cm.Length == 1 ? Cm[0] : Cm.Length == sizes ? Cm[size] : null;

    /// <summary>"until piece measures 39 (39, 40) cm", "for 6 cm"; null where no length is told, or from a place that is not known.</summary>
    public static LengthWords? Read(string text)
    {
        var lower = text.ToLowerInvariant();
        if (lower.IndexOf("measure", StringComparison.Ordinal) is >= 0 and var at)
        {
            var start = lower.LastIndexOf("until", at, StringComparison.Ordinal);
            var subject = lower[Math.Max(0, start)..at];
            var values = Values(lower, at);
            if (values is null)
            {
                return null;
            }

            var behind = lower[values.Value.End..];
            var from = subject.Contains("armhole", StringComparison.Ordinal) || Array.Exists(Underarms, w => behind.Contains(w, StringComparison.Ordinal)) ? LengthFrom.Armhole
                : Array.Exists(Soles, w => behind.Contains(w, StringComparison.Ordinal)) ? LengthFrom.Sole
                : behind.Contains("of the heel", StringComparison.Ordinal) || behind.Contains("of heel", StringComparison.Ordinal) ? LengthFrom.Heel
                : Array.Exists(Bands, b => subject.Contains(b, StringComparison.Ordinal)) ? LengthFrom.Section
                : LengthFrom.Edge;
            return behind.Contains(" from ", StringComparison.Ordinal) && from == LengthFrom.Edge && !Array.Exists(["beg", "cast", "co edge", "edge", "hem", "start", "bottom", "tip", "of the toe", "of toe"], w => behind.Contains(w, StringComparison.Ordinal)) ? null
                : new LengthWords(from, values.Value.Cm);
        }

        return lower.IndexOf(" for ", StringComparison.Ordinal) is >= 0 and var over && Values(lower, over) is var (cm, _) ? new LengthWords(LengthFrom.Here, cm) : null;
    }

    /// <summary>The first list of numbers behind a place that has a unit of length, in centimetres.</summary>
    private static (ImmutableArray<decimal> Cm, int End)? Values(string text, int from)
    {
        var i = from;
        while (i < text.Length && !char.IsAsciiDigit(text[i]))
        {
            i++;
        }

        var values = ImmutableArray.CreateBuilder<decimal>();
        var isOpen = false;
        while (i < text.Length && values.Count <= 64)
        {
            if (char.IsAsciiDigit(text[i]) && Number(text, ref i) is { } value)
            {
                values.Add(value);
            }
            else if (text[i] == '(' && !isOpen)
            {
                isOpen = true;
                i++;
            }
            else if (text[i] is ' ' or ',' or ':' or '[' or ']' or ')' or '\u00a0')
            {
                i++;
            }
            else
            {
                break;
            }
        }

        decimal? unit = values.Count == 0 ? null
            : Starts(text, i, "cm") || Starts(text, i, "centim") ? 1m
            : Starts(text, i, "mm") ? 0.1m
            : Starts(text, i, "in") || Starts(text, i, "\"") || Starts(text, i, "”") || Starts(text, i, "″") ? 2.54m
            : null;
        return unit is { } one ? ([.. values.Select(v => v * one)], i) : null;
    }

    private static bool Starts(string text, int at, string word) => string.CompareOrdinal(text, at, word, 0, word.Length) == 0;

    private static decimal? Number(string text, ref int i)
    {
        var start = i;
        while (i < text.Length && (char.IsAsciiDigit(text[i]) || (text[i] == '.' && i + 1 < text.Length && char.IsAsciiDigit(text[i + 1]))))
        {
            i++;
        }

        if (i - start > 9 || !decimal.TryParse(text.AsSpan(start, i - start), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
        {
            return null;
        }

        var fraction = i < text.Length ? "¼½¾⅛⅜⅝⅞".IndexOf(text[i], StringComparison.Ordinal) : -1;
        if (fraction >= 0)
        {
            i++;
            value += new[] { 0.25m, 0.5m, 0.75m, 0.125m, 0.375m, 0.625m, 0.875m }[fraction];
        }

        return value;
    }
}
