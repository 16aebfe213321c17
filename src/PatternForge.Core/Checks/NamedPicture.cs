using System.Text;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>A picture that a pattern names: a photo of its header, or one that stands in its text (<c>![words](file.jpg)</c>).</summary>
/// <param name="File">Its file as a path; empty when none is named.</param>
/// <param name="Words">What is read in its place; null when there are none.</param>
/// <param name="Origin">Where it is named.</param>
/// <param name="IsInText">True when it stands in the text.</param>
internal readonly record struct NamedPicture(string File, string? Words, TextSpan Origin, bool IsInText)
{
    // Of words, an address or a title: no hostile text makes the reading slow.
    private const int Longest = 2000;

    /// <summary>What it is called in a finding.</summary>
    public string Name => IsInText ? "picture" : "photo";

    /// <summary>Every picture, those of the header first.</summary>
    public static IEnumerable<NamedPicture> Of(CheckContext context)
    {
        foreach (var photo in context.Facts.Photos)
        {
            yield return new(photo.File, photo.Alt, photo.Origin, IsInText: false);
        }

        foreach (var block in context.Pattern.Sections.SelectMany(s => s.Blocks).OfType<ProseBlock>())
        {
            foreach (var picture in In(context.Source, block.Origin))
            {
                yield return picture;
            }
        }
    }

    // The images of a block, as CommonMark 0.31 (section 6.4) writes them: with their address, or with the name of an address that the block defines.
    private static IEnumerable<NamedPicture> In(SourceText source, TextSpan block)
    {
        var text = source.Text;
        Dictionary<string, string>? definitions = null;
        for (var at = block.Start; at < block.End; at++)
        {
            switch (text[at])
            {
                case '\\':
                    at++;
                    break;
                case '`':
                    at = EndOfCode(text, at, block.End) - 1;
                    break;
                case '<' when string.CompareOrdinal(text, at, "<!--", 0, 4) == 0:
                    at = Math.Max(at, Remarks.EndOf(text, at, block.End) - 1);
                    break;
                case '!' when at + 1 < block.End && text[at + 1] == '[' && EndOfWords(text, at + 1, block.End) is >= 0 and var close:
                    var words = text[(at + 2)..close];
                    if (Address(text, close + 1, block) is var (address, end))
                    {
                        yield return new(FileOf(address), words, new(at, end - at), IsInText: true);
                        at = end - 1;
                    }
                    else if (Defined(text, close + 1, words, block, definitions ??= Definitions(text, block)) is var (defined, behind))
                    {
                        yield return new(FileOf(defined), words, new(at, behind - at), IsInText: true);
                        at = behind - 1;
                    }

                    break;
            }
        }
    }

    // Behind the run of marks that ends what a run of as many began; behind the run itself where none does.
    private static int EndOfCode(string text, int at, int end)
    {
        var marks = Run(text, at, end);
        for (var i = at + marks; i < end; i++)
        {
            if (text[i] == '`')
            {
                var run = Run(text, i, end);
                if (run == marks)
                {
                    return i + run;
                }

                i += run - 1;
            }
        }

        return at + marks;

        static int Run(string text, int at, int end)
        {
            var stop = at;
            while (stop < end && text[stop] == '`')
            {
                stop++;
            }

            return stop - at;
        }
    }

    // The bracket that closes the one at a place; -1 where none does.
    private static int EndOfWords(string text, int open, int end)
    {
        var depth = 0;
        for (var i = open; i < Math.Min(end, open + Longest); i++)
        {
            switch (text[i])
            {
                case '\\':
                    i++;
                    break;
                case '[':
                    depth++;
                    break;
                case ']' when --depth == 0:
                    return i;
            }
        }

        return -1;
    }

    // The address in brackets at a place, with the end of the brackets; null where none stands.
    private static (string Address, int End)? Address(string text, int at, TextSpan block)
    {
        if (at >= block.End || text[at] != '(')
        {
            return null;
        }

        var address = Destination(text, at + 1, block.End, out var behind);
        var close = text.IndexOf(')', behind, Math.Min(block.End - behind, Longest));
        return close < 0 ? null : (address, close + 1);
    }

    // The address that the block gives a name to, with the end of the name.
    private static (string Address, int End)? Defined(string text, int at, string words, TextSpan block, Dictionary<string, string> definitions)
    {
        var (name, end) = (words, at);
        if (at < block.End && text[at] == '[' && EndOfWords(text, at, block.End) is >= 0 and var close)
        {
            name = close > at + 1 ? text[(at + 1)..close] : words;
            end = close + 1;
        }

        return definitions.TryGetValue(name.Trim(), out var address) ? (address, end) : null;
    }

    // Lines such as `[brim]: brim.jpg` (CommonMark 0.31, section 4.7).
    private static Dictionary<string, string> Definitions(string text, TextSpan block)
    {
        var found = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        for (var line = block.Start; line < block.End;)
        {
            var open = line;
            while (open < block.End && text[open] == ' ')
            {
                open++;
            }

            if (open < block.End && text[open] == '[' && EndOfWords(text, open, block.End) is >= 0 and var close && close + 1 < block.End && text[close + 1] == ':')
            {
                found.TryAdd(text[(open + 1)..close].Trim(), Destination(text, close + 2, block.End, out _));
            }

            var next = text.IndexOf('\n', line, block.End - line);
            line = next < 0 ? block.End : next + 1;
        }

        return found;
    }

    private static string Destination(string text, int at, int end, out int behind)
    {
        while (at < end && char.IsWhiteSpace(text[at]))
        {
            at++;
        }

        var address = new StringBuilder();
        end = Math.Min(end, at + Longest);
        var isSet = at < end && text[at] == '<';
        var depth = 0;
        for (at += isSet ? 1 : 0; at < end; at++)
        {
            var sign = text[at];
            if (isSet ? sign is '>' or '\n' : char.IsWhiteSpace(sign) || (sign == ')' && depth == 0))
            {
                break;
            }

            if (sign == '\\' && at + 1 < end && char.IsAscii(text[at + 1]) && (char.IsPunctuation(text[at + 1]) || char.IsSymbol(text[at + 1])))
            {
                sign = text[++at];
            }
            else
            {
                depth += sign == '(' ? 1 : sign == ')' ? -1 : 0;
            }

            address.Append(sign);
        }

        behind = Math.Min(at, end);
        return address.ToString();
    }

    /// <summary>The path that an address beside the page stands for: codes for signs are read (RFC 3986, section 2.1).</summary>
    private static string FileOf(string address) => Uri.UnescapeDataString(address.Trim());
}
