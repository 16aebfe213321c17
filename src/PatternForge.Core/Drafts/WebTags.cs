using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Leaves out the tags of a web page that stand in a row; `br` ends the row, and italics around a repeat stand for its stars.</summary>
internal static class WebTags
{
    private const int Longest = 80;

    /// <summary>The mends of one line.</summary>
    public static void Read(SourceText source, TextSpan line, List<Mend> mends)
    {
        var text = source.Slice(line);
        if (text.IndexOf('<') < 0 || !RowLooks.Reads(text))
        {
            return;
        }

        var stars = text.IndexOf('*') < 0 && text.Contains("from", StringComparison.OrdinalIgnoreCase);
        var at = 0;
        while (at < text.Length && text[at..].IndexOf('<') is var ahead and >= 0)
        {
            at += ahead;
            var (name, length) = TagAt(text[at..]);
            if (length == 0)
            {
                at++;
                continue;
            }

            var span = new TextSpan(line.Start + at, length);
            at += length;
            var read = name switch
            {
                "br" or "/p" or "/div" or "/li" or "/tr" => source.Slice(TextSpan.FromBounds(span.End, line.End)).Trim().IsEmpty ? "" : "\n\n",
                "em" or "/em" or "i" or "/i" when stars => "*",
                "/td" => " ",
                _ => "",
            };
            mends.Add(new Mend(span, read, DraftRules.WebTags, span));
        }
    }

    private static (string Name, int Length) TagAt(ReadOnlySpan<char> text)
    {
        var end = text[..Math.Min(text.Length, Longest)].IndexOf('>');
        if (end < 2)
        {
            return ("", 0);
        }

        var inside = text[1..end].TrimEnd("/ ");
        var blank = inside.IndexOf(' ');
        var name = (blank < 0 ? inside : inside[..blank]).ToString().ToLowerInvariant();
        return name.TrimStart('/') is "b" or "strong" or "em" or "i" or "u" or "s" or "span" or "font" or "p" or "div" or "br" or "li" or "ul" or "ol" or "td" or "tr" or "sup" or "sub" or "small" or "mark"
            ? (name, end + 1)
            : ("", 0);
    }
}
