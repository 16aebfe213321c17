using System.Globalization;
using System.Text;

namespace PatternForge.Cli.Reporting;

/// <summary>Text on a terminal: how many columns it takes, and what may be shown at all.</summary>
internal static class DisplayText
{
    // First and last characters of the stretches that take two columns: East Asian Wide and Fullwidth
    // (Unicode Standard Annex 11, assigned characters; whole blocks where the rest of a block is reserved for the same).
    private static readonly int[] Wide =
    [
        0x1100, 0x115F, 0x231A, 0x231B, 0x2329, 0x232A, 0x23E9, 0x23EC, 0x23F0, 0x23F0, 0x23F3, 0x23F3, 0x25FD, 0x25FE,
        0x2614, 0x2615, 0x2648, 0x2653, 0x267F, 0x267F, 0x2693, 0x2693, 0x26A1, 0x26A1, 0x26AA, 0x26AB, 0x26BD, 0x26BE,
        0x26C4, 0x26C5, 0x26CE, 0x26CE, 0x26D4, 0x26D4, 0x26EA, 0x26EA, 0x26F2, 0x26F3, 0x26F5, 0x26F5, 0x26FA, 0x26FA,
        0x26FD, 0x26FD, 0x2705, 0x2705, 0x270A, 0x270B, 0x2728, 0x2728, 0x274C, 0x274C, 0x274E, 0x274E, 0x2753, 0x2755,
        0x2757, 0x2757, 0x2795, 0x2797, 0x27B0, 0x27B0, 0x27BF, 0x27BF, 0x2B1B, 0x2B1C, 0x2B50, 0x2B50, 0x2B55, 0x2B55,
        0x2E80, 0x303E, 0x3041, 0x3247, 0x3250, 0x4DBF, 0x4E00, 0xA4CF, 0xA960, 0xA97F, 0xAC00, 0xD7A3, 0xF900, 0xFAFF,
        0xFE10, 0xFE19, 0xFE30, 0xFE6F, 0xFF01, 0xFF60, 0xFFE0, 0xFFE6, 0x16FE0, 0x18DFF, 0x1AFF0, 0x1B2FF, 0x1F004, 0x1F004,
        0x1F0CF, 0x1F0CF, 0x1F18E, 0x1F18E, 0x1F191, 0x1F19A, 0x1F200, 0x1F320, 0x1F32D, 0x1F335, 0x1F337, 0x1F37C,
        0x1F37E, 0x1F393, 0x1F3A0, 0x1F3CA, 0x1F3CF, 0x1F3D3, 0x1F3E0, 0x1F3F0, 0x1F3F4, 0x1F3F4, 0x1F3F8, 0x1F43E,
        0x1F440, 0x1F440, 0x1F442, 0x1F4FC, 0x1F4FF, 0x1F53D, 0x1F54B, 0x1F54E, 0x1F550, 0x1F567, 0x1F57A, 0x1F57A,
        0x1F595, 0x1F596, 0x1F5A4, 0x1F5A4, 0x1F5FB, 0x1F64F, 0x1F680, 0x1F6C5, 0x1F6CC, 0x1F6CC, 0x1F6D0, 0x1F6D2,
        0x1F6D5, 0x1F6DF, 0x1F6EB, 0x1F6EF, 0x1F6F4, 0x1F6FF, 0x1F7E0, 0x1F7EB, 0x1F7F0, 0x1F7F0, 0x1F90C, 0x1F93A,
        0x1F93C, 0x1F945, 0x1F947, 0x1F9FF, 0x1FA70, 0x1FAFF, 0x20000, 0x2FFFD, 0x30000, 0x3FFFD,
    ];

    /// <summary>The columns that one character takes: 0, 1 or 2.</summary>
    public static int Width(Rune rune)
    {
        var value = rune.Value;
        if (value < 0x300)
        {
            return 1;
        }

        if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format
            || value is >= 0x1160 and <= 0x11FF)
        {
            return 0;
        }

        var at = Array.BinarySearch(Wide, value);
        return at >= 0 || (~at & 1) == 1 ? 2 : 1;
    }

    /// <summary>The columns that a text without tabs takes.</summary>
    public static int Width(string text)
    {
        var width = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            width += Width(rune);
        }

        return width;
    }

    /// <summary>
    /// What stands for a character that must not reach a terminal as it is: control characters (they could move the cursor)
    /// and marks that turn the reading direction. The same character when it may.
    /// </summary>
    public static Rune Shown(Rune rune) => rune.Value switch
    {
        < 0x20 => new Rune(0x2400 + rune.Value),
        0x7F => new Rune(0x2421),
        >= 0x80 and < 0xA0 => Rune.ReplacementChar,
        0x061C or 0x200E or 0x200F or 0x2028 or 0x2029 or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => Rune.ReplacementChar,
        _ => rune,
    };

    /// <summary>A text on one line, fit to be shown: line ends and tabs become blanks, control characters visible signs.</summary>
    public static string OneLine(string text)
    {
        var at = 0;
        while (at < text.Length && text[at] is >= ' ' and < '\u007F')
        {
            at++;
        }

        if (at == text.Length)
        {
            return text;
        }

        var line = new StringBuilder(text, 0, at, text.Length + 8);
        foreach (var rune in text.AsSpan(at).EnumerateRunes())
        {
            if (rune.Value is '\n' or '\r' or '\t')
            {
                if (line.Length == 0 || line[^1] != ' ')
                {
                    line.Append(' ');
                }
            }
            else
            {
                line.Append(Shown(rune));
            }
        }

        return line.ToString();
    }

    /// <summary>At most so many columns of a text on one line, with an ellipsis where it was cut.</summary>
    public static string Cut(string text, int columns)
    {
        // More units than this cannot be needed; a mile of marks that take no column is cut as well.
        var most = columns * 8;
        var line = OneLine(text.Length > most ? text[..most] : text);
        return text.Length <= most && FittingUnits(line, columns) == line.Length
            ? line
            : line[..FittingUnits(line, columns - 1)].TrimEnd() + "…";
    }

    private static int FittingUnits(string line, int columns)
    {
        var width = 0;
        var at = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            width += Width(rune);
            if (width > columns)
            {
                break;
            }

            at += rune.Utf16SequenceLength;
        }

        return at;
    }
}
