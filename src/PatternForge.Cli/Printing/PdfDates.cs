using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace PatternForge.Cli.Printing;

/// <summary>
/// Gives a document the date of the pattern in place of the moment of printing, and an identifier made from its own bytes in place of one made by chance
/// (ISO 32000-1, 7.9.4 and 14.4). No byte is added or taken away, so that every place in the file stays what it was.
/// </summary>
internal static class PdfDates
{
    private const string Date = "D:20000101000000";

    /// <summary>The date of a pattern that bears none.</summary>
    public static DateOnly None { get; } = new(2000, 1, 1);

    /// <summary>The date as a pattern says it, "2025-03-01"; <see cref="None"/> where it says none that can be read.</summary>
    public static DateOnly Of(string? said) => DateOnly.TryParseExact(said?.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : None;

    /// <summary>Sets dates and identifier.</summary>
    /// <returns>False when the bytes are not those of a PDF with a plain trailer; then nothing was changed.</returns>
    public static bool Set(Span<byte> pdf, DateOnly date)
    {
        var trailer = pdf.LastIndexOf("trailer"u8);
        if (!pdf.StartsWith("%PDF-"u8) || trailer < 0 || pdf[trailer..].IndexOf("%%EOF"u8) < 0)
        {
            return false;
        }

        if (NumberAfter(pdf[trailer..], "/Info "u8) is { } info && ObjectOf(pdf, info) is var (start, end))
        {
            foreach (var key in (string[])["/CreationDate", "/ModDate"])
            {
                SetDate(pdf[start..end], key, date);
            }
        }

        SetIdentifier(pdf, trailer);
        return true;
    }

    private static void SetDate(Span<byte> dictionary, string key, DateOnly date)
    {
        var at = dictionary.IndexOf(Encoding.ASCII.GetBytes(key));
        var open = at < 0 ? -1 : dictionary[at..].IndexOf("(D:"u8);
        if (open < 0 || at + open + 1 + Date.Length > dictionary.Length)
        {
            return;
        }

        var value = dictionary[(at + open + 1)..];
        Encoding.ASCII.GetBytes($"D:{date:yyyyMMdd}000000".AsSpan(), value);

        // The offset from universal time, "+01'00'", keeps its signs and loses its numbers.
        for (var i = Date.Length; i < value.Length && value[i] != ')'; i++)
        {
            value[i] = value[i] switch { (byte)'-' => (byte)'+', >= (byte)'0' and <= (byte)'9' => (byte)'0', var other => other };
        }
    }

    /// <summary>Both halves of an identifier in hexadecimal digits, where the trailer has one.</summary>
    private static void SetIdentifier(Span<byte> pdf, int trailer)
    {
        var at = pdf[trailer..].IndexOf("/ID"u8);
        if (at < 0)
        {
            return;
        }

        var rest = pdf[(trailer + at)..];
        var digits = new List<int>();
        for (var i = 3; i < rest.Length && rest[i] != ']'; i++)
        {
            if (char.IsAsciiHexDigit((char)rest[i]))
            {
                digits.Add(i);
                rest[i] = (byte)'0';
            }
        }

        var hash = Convert.ToHexString(SHA256.HashData(pdf));
        foreach (var (place, i) in digits.Select((place, i) => (place, i)))
        {
            rest[place] = (byte)hash[i % (digits.Count / 2 is > 0 and var half ? half : 1) % hash.Length];
        }
    }

    /// <summary>The number behind a word; null where it is not there.</summary>
    internal static int? NumberAfter(ReadOnlySpan<byte> text, ReadOnlySpan<byte> word)
    {
        var at = text.IndexOf(word);
        if (at < 0)
        {
            return null;
        }

        var number = 0;
        var i = at + word.Length;
        for (; i < text.Length && text[i] is >= (byte)'0' and <= (byte)'9' && number < 100_000_000; i++)
        {
            number = (number * 10) + (text[i] - '0');
        }

        return number;
    }

    /// <summary>Where an object stands, from the table of the places of all objects; null where it cannot be found.</summary>
    internal static (int Start, int End)? ObjectOf(ReadOnlySpan<byte> pdf, int number)
    {
        var head = Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"\n{number} 0 obj"));
        var start = pdf.IndexOf(head);
        var length = start < 0 ? -1 : pdf[start..].IndexOf("endobj"u8);
        return length < 0 ? null : (start, start + length);
    }
}
