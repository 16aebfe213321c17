using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>Reads the bullets of a word processor before a row as list marks: they are typography and are told to nobody.</summary>
internal static class ListMarks
{
    /// <summary>The line without its bullet.</summary>
    public static TextSpan Read(SourceText source, TextSpan line, List<Mend> mends)
    {
        var text = source.Slice(line);
        var escape = text is ['\\', '-' or '*' or '+' or '•', ' ' or '\t', ..] ? 1 : 0;
        if (text.Length < escape + 3 || text[escape + 1] is not (' ' or '\t'))
        {
            return line;
        }

        var mark = text[escape];
        var blanks = text[(escape + 1)..].Length - text[(escape + 1)..].TrimStart().Length;
        var rest = TextSpan.FromBounds(line.Start + escape + 1 + blanks, line.End);
        var isBullet = mark is '•' or '▪' or '■' or '●' or '○' or '◦' or '‣' or '·' or '\uF0B7' or '\uF0A7';
        var isDash = mark is '–' or '—' or 'o' or '§' || (escape == 1 && mark is '-' or '+' or '*') || (mark is '-' or '*' or '+' && text[1] == '\t');
        if ((!isBullet && !isDash) || (isBullet && RepeatsFrom(source.Slice(rest), mark)) || (isDash && !RowLooks.BeginsLabelled(source, rest)))
        {
            return line;
        }

        mends.Add(new Mend(TextSpan.FromBounds(line.Start, rest.Start), "- "));
        return rest;
    }

    // "• K2, p2; rep from • to end": this bullet is a star.
    private static bool RepeatsFrom(ReadOnlySpan<char> text, char mark) =>
        text.IndexOf(mark) is var at and > 0 && text[..at].TrimEnd() is var before && (before.EndsWith("from") || before.EndsWith("between") || before.EndsWith("at"));
}
