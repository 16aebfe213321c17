using System.Globalization;
using System.Text;

namespace PatternForge.Cli.Printing;

/// <summary>Writes the author into what a document says of itself, as an incremental update at its end (ISO 32000-1, 7.5.6 and 14.3.3): no byte before it changes.</summary>
internal static class PdfAuthor
{
    private const int Longest = 400;

    /// <summary>The document with its author; the document itself where there is none to tell, or where its end is not a plain trailer.</summary>
    public static byte[] Add(byte[] pdf, string? author)
    {
        var said = string.Concat((author ?? "").Where(c => !char.IsControl(c) && !char.IsSurrogate(c))).Trim();
        var bytes = pdf.AsSpan();
        var trailer = bytes.LastIndexOf("trailer"u8);
        var start = bytes.LastIndexOf("startxref"u8);
        if (said.Length == 0 || trailer < 0 || start < trailer
            || PdfDates.NumberAfter(bytes[trailer..start], "/Info "u8) is not { } info || PdfDates.ObjectOf(bytes, info) is not var (from, to)
            || !int.TryParse(Encoding.ASCII.GetString(bytes[(start + "startxref".Length)..]).Split((char[])['\r', '\n', ' '], StringSplitOptions.RemoveEmptyEntries).FirstOrDefault(), NumberStyles.None, CultureInfo.InvariantCulture, out var before))
        {
            return pdf;
        }

        var (old, ending) = (Encoding.Latin1.GetString(bytes[from..to]), Encoding.Latin1.GetString(bytes[trailer..start]));
        var (close, last) = (old.LastIndexOf(">>", StringComparison.Ordinal), ending.LastIndexOf(">>", StringComparison.Ordinal));
        if (close < 0 || last < 0 || old.Contains("/Author", StringComparison.Ordinal))
        {
            return pdf;
        }

        // A text string: UTF-16 with its mark, in hexadecimal digits.
        var name = "FEFF" + Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(said.Length > Longest ? said[..Longest] : said));
        var update = new StringBuilder();
        update.Append(CultureInfo.InvariantCulture, $"{(pdf[^1] == '\n' ? "" : "\n")}{old[1..close]}/Author <{name}>\n>>\nendobj\n");
        var place = pdf.Length + (pdf[^1] == '\n' ? 0 : 1);
        var table = pdf.Length + update.Length;
        update.Append(CultureInfo.InvariantCulture, $"xref\n{info} 1\n{place:0000000000} 00000 n \n{ending[..last]}/Prev {before}\n>>\nstartxref\n{table}\n%%EOF\n");
        return [.. pdf, .. Encoding.Latin1.GetBytes(update.ToString())];
    }
}
