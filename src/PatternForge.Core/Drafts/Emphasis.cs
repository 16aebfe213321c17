using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Leaves out the underscores of italic and bold words in a row: "__Row 3__: Knit", "_k2tog_". Emphasis is typography and is told to nobody; a row never passes through Markdown.</summary>
internal static class Emphasis
{
    /// <summary>The mends of one line.</summary>
    public static void Read(SourceText source, TextSpan line, List<Mend> mends)
    {
        var text = source.Slice(line);
        if (text is ['*', not ('*' or ' '), ..])
        {
            Label(source, line, text, mends);
        }

        if (text.IndexOf('_') < 0 || !RowLooks.Reads(text))
        {
            return;
        }

        for (var at = 0; at < text.Length; at++)
        {
            var start = at;
            while (at < text.Length && text[at] == '_')
            {
                at++;
            }

            var isWithin = start > 0 && char.IsLetterOrDigit(text[start - 1]) && at < text.Length && char.IsLetterOrDigit(text[at]);
            for (var i = start; i < at && !isWithin && at - start < 4; i++)
            {
                mends.Add(new Mend(new TextSpan(line.Start + i, 1), ""));
            }
        }
    }

    /// <summary>"*Row 4:* Knit": the stars around a label are no repeat.</summary>
    private static void Label(SourceText source, TextSpan line, ReadOnlySpan<char> text, List<Mend> mends)
    {
        var close = text[1..Math.Min(text.Length, 40)].IndexOf('*') + 1;
        var isLabel = close > 1 && (text[close - 1] == ':' || (close + 1 < text.Length && text[close + 1] == ':')) && !RowLooks.Reads(text[1..close]);
        if (isLabel && RowLooks.BeginsLabelled(source, TextSpan.FromBounds(line.Start + 1, line.End)))
        {
            mends.Add(new Mend(new TextSpan(line.Start, 1), ""));
            mends.Add(new Mend(new TextSpan(line.Start + close, 1), ""));
        }
    }
}
