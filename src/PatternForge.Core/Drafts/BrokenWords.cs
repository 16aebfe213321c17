using System.Collections.Frozen;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Puts a word together that a narrow column has broken: "stit-" at the end of a line and "ches" on the next. Other hyphens stay: "right-hand" has its own.</summary>
internal static class BrokenWords
{
    private static readonly FrozenSet<string> Known = (
        "stitch stitches increase increases increased increasing decrease decreases decreased decreasing repeat repeats repeated repeating across around between beginning following remain remains remaining marker markers needle needles "
        + "together knitwise purlwise pattern patterns continue continuing chain chains double treble crochet single slipped working worked evenly measures center centre color colour round rounds purled knitting purling "
        + "finish finishing finished fasten another before after until ending joining turning places placed alternate established through without section sections shaping armhole shoulder cast bound unworked reverse every second third "
        + "skipped corner cluster shell picot space spaces front back twice times desired length thumb holder waste yarn over under right wrong sleeve sleeves body yoke neckline neck edge edges edging border first").Split(' ').ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>The mend at the end of the line, if its last word goes on in the next.</summary>
    public static void Read(SourceText source, BodyLines lines, List<Mend> mends)
    {
        var text = lines.Text.TrimEnd();
        if (text is not [.., >= 'a' and <= 'z', '-' or '‐'])
        {
            return;
        }

        var next = lines.Peek();
        var after = source.Slice(next);
        var length = 0;
        while (length < after.Length && after[length] is >= 'a' and <= 'z')
        {
            length++;
        }

        var start = text.Length - 1;
        while (start > 0 && char.IsAsciiLetter(text[start - 1]))
        {
            start--;
        }

        if (length == 0 || !Known.Contains(string.Concat(text[start..^1], after[..length])))
        {
            return;
        }

        while (length < after.Length && after[length] is ',' or ';' or '.' or ':' or ')')
        {
            length++;
        }

        var hyphen = lines.Content.Start + text.Length - 1;
        mends.Add(new Mend(TextSpan.FromBounds(hyphen, next.Start), ""));
        mends.Add(new Mend(new TextSpan(next.Start + length, 0), "\n"));
    }
}
