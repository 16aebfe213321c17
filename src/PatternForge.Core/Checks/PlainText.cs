using System.Buffers;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>A stretch of the source as a reader sees it.</summary>
/// <param name="Span">Its place.</param>
/// <param name="Letters">Its characters, one for one; what does not print, or is no language (remarks, code, addresses, names in braces), is covered.</param>
/// <param name="IsRow">True for an instruction line, false for prose.</param>
internal readonly record struct Stretch(TextSpan Span, ReadOnlyMemory<char> Letters, bool IsRow)
{
    /// <summary>The characters.</summary>
    public ReadOnlySpan<char> Text => Letters.Span;

    /// <summary>The place in the source of a part of the text.</summary>
    public TextSpan At(int start, int length) => new(Span.Start + start, length);
}

/// <summary>Reads the words of a pattern without working it: for checks of how things are written.</summary>
internal static class PlainText
{
    /// <summary>What stands for a character that no reader sees.</summary>
    public const char Covered = '\uFFFC';

    private static readonly SearchValues<char> EndsOfAddress = SearchValues.Create(" \r\n)>\"");

    /// <summary>Every instruction line, then every block of prose and every note of the header.</summary>
    public static IEnumerable<Stretch> Of(CheckContext context)
    {
        foreach (var line in context.Lines)
        {
            yield return Read(context.Source, line.Origin, isRow: true);
        }

        foreach (var prose in Prose(context))
        {
            yield return prose;
        }
    }

    /// <summary>Every block of prose and every note of the header.</summary>
    public static IEnumerable<Stretch> Prose(CheckContext context)
    {
        foreach (var section in context.Pattern.Sections)
        {
            foreach (var block in section.Blocks)
            {
                if (block is ProseBlock)
                {
                    yield return Read(context.Source, block.Origin, isRow: false);
                }
            }
        }

        foreach (var note in context.Facts.Notes)
        {
            yield return Read(context.Source, note.Origin, isRow: false);
        }
    }

    /// <summary>True when a chart stands in the body: rows and names may then be its own.</summary>
    public static bool HasChart(CheckContext context) =>
        context.Pattern.Sections.Any(s => s.Blocks.Any(b => b is FencedBlock fence && fence.Info.StartsWith("chart", StringComparison.OrdinalIgnoreCase)));

    /// <summary>The word of letters that begins at a place; empty where none does.</summary>
    public static ReadOnlySpan<char> WordAt(ReadOnlySpan<char> text, int at)
    {
        var end = at;
        while (end < text.Length && char.IsAsciiLetter(text[end]))
        {
            end++;
        }

        return text[at..end];
    }

    /// <summary>The word that ends before a place, blanks between passed over; empty where none does.</summary>
    public static ReadOnlySpan<char> WordBefore(ReadOnlySpan<char> text, int at)
    {
        var end = at;
        while (end > 0 && text[end - 1] is ' ' or '\n' or '\r')
        {
            end--;
        }

        var start = end;
        while (start > 0 && char.IsAsciiLetter(text[start - 1]))
        {
            start--;
        }

        return text[start..end];
    }

    /// <summary>The first place from one on that is no blank.</summary>
    public static int SkipBlanks(ReadOnlySpan<char> text, int at)
    {
        while (at < text.Length && text[at] is ' ' or '\n' or '\r')
        {
            at++;
        }

        return at;
    }

    /// <summary>True when a word is one of some, ignoring case.</summary>
    public static bool Is(this ReadOnlySpan<char> word, params ReadOnlySpan<string> some)
    {
        foreach (var one in some)
        {
            if (word.Equals(one, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    private static Stretch Read(SourceText source, TextSpan span, bool isRow)
    {
        var raw = source.Slice(span);
        if (raw.IndexOfAny('<', '`', '{') < 0 && raw.IndexOf("](") < 0 && raw.IndexOf("://") < 0)
        {
            return new(span, source.Text.AsMemory(span.Start, span.Length), isRow);
        }

        var text = raw.ToArray();
        for (var at = 0; at < text.Length; at++)
        {
            var rest = raw[at..];
            var end = rest[0] switch
            {
                '<' when rest.StartsWith("<!--") => Remarks.EndOf(source.Text, span.Start + at, span.End) - span.Start,
                '`' => After(rest, at, '`'),
                '{' => After(rest, at, '}'),
                ']' when rest.StartsWith("](") => After(rest, at, ')'),
                'h' when rest.StartsWith("http://") || rest.StartsWith("https://") => rest.IndexOfAny(EndsOfAddress) is >= 0 and var stop ? at + stop : text.Length,
                _ => at,
            };
            if (end > at)
            {
                text.AsSpan(at, end - at).Fill(Covered);
                at = end - 1;
            }
        }

        return new(span, text, isRow);
    }

    private static int After(ReadOnlySpan<char> rest, int at, char close)
    {
        var line = rest.IndexOfAny('\r', '\n');
        var within = line < 0 ? rest : rest[..line];
        return within[1..].IndexOf(close) is >= 0 and var length ? at + length + 2 : at;
    }
}
