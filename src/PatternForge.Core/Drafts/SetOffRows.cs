using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Finds rows that stand in a quotation or in a fenced block without a name of its own, where they would be printed and never worked.</summary>
internal static class SetOffRows
{
    /// <summary>The mends that take them out of it, in order.</summary>
    public static List<Mend> Find(SourceText source, TextSpan body)
    {
        var mends = new List<Mend>();
        var text = source.Text.AsSpan(0, body.End);
        if (text[body.Start..].IndexOfAny('>', '`', '~') < 0)
        {
            return mends;
        }

        var lines = new BodyLines(source, body);
        while (lines.Next())
        {
            if (lines.Fence is not null)
            {
                Fenced(source, lines, mends);
            }
            else if (!lines.IsProse && lines.Starts('>'))
            {
                Quoted(source, lines, mends);
            }
        }

        return mends;
    }

    private static void Quoted(SourceText source, BodyLines lines, List<Mend> mends)
    {
        var from = mends.Count;
        var first = lines.Content;
        var rows = 0;
        do
        {
            var content = lines.Content;
            var text = source.Slice(content);
            var mark = 0;
            while (mark < text.Length && text[mark] is '>' or ' ')
            {
                mark++;
            }

            var rest = TextSpan.FromBounds(content.Start + mark, content.End);
            rows += RowLooks.Reads(source.Slice(rest)) && (RowLooks.BeginsNumbered(source, rest) || rows > 0) ? 1 : 0;
            mends.Add(new Mend(new TextSpan(content.Start, mark), "", DraftRules.RowsSetOff, mends.Count == from ? first : null));
        }
        while (lines.PeekStarts('>') && lines.Next());

        if (rows == 0)
        {
            mends.RemoveRange(from, mends.Count - from);
        }
    }

    private static void Fenced(SourceText source, BodyLines lines, List<Mend> mends)
    {
        var fence = lines.Fence!;
        var opening = lines.Content;
        var info = source.Slice(opening).Trim(fence).Trim().ToString().ToLowerInvariant();
        var (rows, others) = (0, 0);
        while (lines.NextInside())
        {
            var content = lines.Content;
            var text = source.Slice(content).TrimEnd();
            if (text.StartsWith(fence))
            {
                if (!lines.IsProse && rows > 0 && others == 0 && info is "" or "text" or "txt" or "plain" or "pattern" or "rows" or "knitting" or "crochet")
                {
                    mends.Add(new Mend(opening, "", DraftRules.RowsSetOff, opening));
                    mends.Add(new Mend(content, "", DraftRules.RowsSetOff));
                }

                return;
            }

            if (text.IsEmpty)
            {
                continue;
            }

            // Lines without a number are rows running on, or "Rep Rows 1-4".
            var isRow = RowLooks.Reads(text) && (rows > 0 || RowLooks.BeginsNumbered(source, content));
            rows += isRow ? 1 : 0;
            others += isRow || rows > 0 ? 0 : 1;
        }
    }
}
