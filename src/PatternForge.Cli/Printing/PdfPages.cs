namespace PatternForge.Cli.Printing;

/// <summary>The pages of a document.</summary>
internal static class PdfPages
{
    /// <summary>How many pages a document has whose page objects stand in it as they are (ISO 32000-1, 7.7.3.3), as browsers write them.</summary>
    public static int CountOf(ReadOnlySpan<byte> pdf)
    {
        var count = 0;
        var kind = "/Type /Page"u8;
        for (var at = pdf.IndexOf(kind); at >= 0; at = pdf.IndexOf(kind))
        {
            pdf = pdf[(at + kind.Length)..];
            count += pdf.IsEmpty || !char.IsAsciiLetter((char)pdf[0]) ? 1 : 0;
        }

        return count;
    }
}
