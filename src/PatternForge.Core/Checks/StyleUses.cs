using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>One place where a pattern writes something that can be written in several ways.</summary>
/// <param name="Matter">What.</param>
/// <param name="Form">In which form, by its place in the matter's list.</param>
/// <param name="Span">Where.</param>
internal readonly record struct StyleUse(StyleMatter Matter, int Form, TextSpan Span);

/// <summary>Finds the places where a pattern had a choice of form. Only what certainly has the same meaning in another form is found.</summary>
internal static class StyleUses
{
    private const int MostLabels = 3;

    /// <summary>The uses of the matters in which a pattern does not keep to one form: the settled one or, where none is settled, any. In the order of the source.</summary>
    public static List<StyleUse> Divided(CheckContext context)
    {
        // Most patterns keep to one form of everything: they are read once, and nothing is kept of them.
        var forms = new byte[StyleMatter.All.Length];
        foreach (var stretch in PlainText.Of(context))
        {
            Find(stretch, use => forms[StyleMatter.All.IndexOf(use.Matter)] |= (byte)(1 << use.Form));
        }

        var divided = StyleMatter.All.Where((matter, i) => (forms[i] & ~(context.House.Style.FormOf(matter) is { } right ? 1 << right : forms[i] & -forms[i])) != 0).ToHashSet();
        var uses = new List<StyleUse>();
        if (divided.Count > 0)
        {
            foreach (var stretch in PlainText.Of(context))
            {
                Find(stretch, use =>
                {
                    if (divided.Contains(use.Matter))
                    {
                        uses.Add(use);
                    }
                });
            }
        }

        return uses;
    }

    /// <summary>One finding for the uses of a matter that are not in the right form, with the repair that brings them into it.</summary>
    public static Finding Finding(Rule rule, SourceText source, List<StyleUse> wrong, int right, string message, bool isExact)
    {
        var matter = wrong[0].Matter;
        var edits = wrong.Select(u => new Edit(u.Span, Rewritten(u, right, source))).Where(e => !source.Slice(e.Span).SequenceEqual(e.NewText)).ToArray();
        return new Finding(rule, source, wrong[0].Span, message)
        {
            Labels = [.. wrong.Skip(1).Take(MostLabels).Select(u => new Label(u.Span, "and here"))],
            Help = $"write {Shown(matter, right)} throughout",
            Fix = isExact && edits.Length > 0 ? new Fix($"Write {Shown(matter, right)} throughout", [.. edits]) : null,
        };
    }

    /// <summary>A form in backticks.</summary>
    public static string Shown(StyleMatter matter, int form) => $"`{matter.Forms[form]}`";

    /// <summary>A use in another form.</summary>
    private static string Rewritten(StyleUse use, int form, SourceText source)
    {
        var written = source.ToString(use.Span);
        if (use.Matter == StyleMatter.Round || use.Matter == StyleMatter.Stitches || use.Matter == StyleMatter.Repeat)
        {
            var word = use.Matter.Forms[form];
            word = use.Matter == StyleMatter.Round && written[^1] is 's' or 'S' ? word + "s" : word;
            return char.IsUpper(written[0]) ? char.ToUpperInvariant(word[0]) + word[1..] : word;
        }

        if (use.Matter == StyleMatter.Letters)
        {
            return (form == 0 ? char.ToLowerInvariant(written[0]) : char.ToUpperInvariant(written[0])) + written[1..];
        }

        if (use.Matter == StyleMatter.Dash)
        {
            return form == 0 ? "-" : "–";
        }

        if (use.Matter == StyleMatter.UnitSpace)
        {
            return form == 0 ? " " : "";
        }

        var before = source.Text.AsSpan(0, use.Span.Start);
        var isOne = before.EndsWith("1") && (before.Length == 1 || !(char.IsLetterOrDigit(before[^2]) || before[^2] is '.' or '/'));
        return form switch { 0 => " in", 1 => isOne ? " inch" : " inches", _ => "\"" };
    }

    private static void Find(Stretch stretch, Action<StyleUse> uses)
    {
        var text = stretch.Text;
        for (var at = 0; at < text.Length; at++)
        {
            if (char.IsAsciiLetter(text[at]) && (at == 0 || !char.IsLetterOrDigit(text[at - 1])))
            {
                var word = PlainText.WordAt(text, at);
                if (stretch.IsRow)
                {
                    Word(stretch, at, word, uses);
                }

                at += word.Length - 1;
            }
            else if (IsDigit(text[at]) && at + 1 < text.Length && !IsDigit(text[at + 1]))
            {
                AfterNumber(stretch, at + 1, uses);
            }
        }
    }

    private static void Word(Stretch stretch, int at, ReadOnlySpan<char> word, Action<StyleUse> uses)
    {
        var text = stretch.Text;
        var after = at + word.Length;
        if (after < text.Length && text[after] is '-' or '\'' or '’' || (at > 0 && text[at - 1] is '-' or '\'' or '’'))
        {
            return;
        }

        if (word.Is("k", "p") && after < text.Length && char.IsAsciiDigit(text[after]))
        {
            var end = after;
            while (end < text.Length && char.IsAsciiDigit(text[end]))
            {
                end++;
            }

            end += PlainText.WordAt(text, end).Is("tog") ? 3 : 0;
            if ((end == text.Length || !char.IsLetterOrDigit(text[end])) && !BeginsSentence(text, at))
            {
                uses(new(StyleMatter.Letters, char.IsUpper(word[0]) ? 1 : 0, stretch.At(at, end - at)));
            }

            return;
        }

        // Words in capitals throughout are a heading's own.
        if (word.Length > 1 && char.IsUpper(word[1]))
        {
            return;
        }

        var next = PlainText.SkipBlanks(text, after);
        if (word.Is("rnd", "rnds", "round", "rounds"))
        {
            if ((next < text.Length && char.IsAsciiDigit(text[next])) || PlainText.WordBefore(text, at).Is("next", "last", "dec", "inc", "every", "each", "first", "final", "previous", "following"))
            {
                uses(new(StyleMatter.Round, word.Is("rnd", "rnds") ? 0 : 1, stretch.At(at, word.Length)));
            }
        }
        else if (word.Is("sts", "stitches"))
        {
            if (PlainText.WordBefore(text, at) is var before && (before.IsEmpty || before.Is("rem", "remaining", "all", "last", "next", "first", "these", "more", "held", "of", "the", "live", "bust", "neck")))
            {
                uses(new(StyleMatter.Stitches, word.Is("sts") ? 0 : 1, stretch.At(at, word.Length)));
            }
        }
        else if (word.Is("rep", "repeat") && !PlainText.WordBefore(text, at).Is("the", "each", "every", "one", "a", "this", "st", "stitch", "pattern", "patt", "last", "work")
            && (at == 0 || !char.IsAsciiDigit(text[PreviousSign(text, at)])) && next < text.Length
            && (text[next] is '*' or '(' or '[' || PlainText.WordAt(text, next).Is("from", "row", "rows", "rnd", "rnds", "round", "rounds", "last", "these", "this", "between", "to", "until", "dec", "inc")))
        {
            uses(new(StyleMatter.Repeat, word.Is("rep") ? 0 : 1, stretch.At(at, word.Length)));
        }
    }

    private static int PreviousSign(ReadOnlySpan<char> text, int at)
    {
        var before = at - 1;
        while (before > 0 && text[before] == ' ')
        {
            before--;
        }

        return before;
    }

    // The first word after a label or a stop is written large by everybody: only behind a comma is there a choice. Stars and brackets before a word do not count.
    private static bool BeginsSentence(ReadOnlySpan<char> text, int at)
    {
        var before = at - 1;
        while (before >= 0 && text[before] is ' ' or '*' or '(' or '[' or '\n' or '\r')
        {
            before--;
        }

        return before < 0 || text[before] is not (',' or ';');
    }

    private static void AfterNumber(Stretch stretch, int at, Action<StyleUse> uses)
    {
        var text = stretch.Text;
        if (text[at] is '-' or '–' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]))
        {
            var first = at;
            while (first > 0 && char.IsAsciiDigit(text[first - 1]))
            {
                first--;
            }

            if (PlainText.WordBefore(text, first).Is("rows", "rnds", "rounds", "row", "rnd", "round"))
            {
                uses(new(StyleMatter.Dash, text[at] == '-' ? 0 : 1, stretch.At(at, 1)));
            }

            return;
        }

        var blanks = at;
        while (blanks < text.Length && text[blanks] == ' ')
        {
            blanks++;
        }

        var unit = PlainText.WordAt(text, blanks);
        var end = blanks + unit.Length;
        if (end < text.Length && char.IsLetterOrDigit(text[end]))
        {
            return;
        }

        if (unit.Is("cm", "mm", "g", "kg", "oz", "yd", "yds", "inch", "inches"))
        {
            uses(new(StyleMatter.UnitSpace, blanks > at ? 0 : 1, stretch.At(at, blanks - at)));
        }

        if (blanks < text.Length && text[blanks] == '"' && blanks == at && text[..at].Count('"') % 2 == 0)
        {
            uses(new(StyleMatter.Inches, 2, stretch.At(at, 1)));
        }
        else if (unit.Is("inch", "inches") || (unit.Is("in") && Measures.IsInch(text, end)))
        {
            uses(new(StyleMatter.Inches, unit.Length == 2 ? 0 : 1, stretch.At(at, end - at)));
        }
    }

    private static bool IsDigit(char c) => char.IsAsciiDigit(c) || c is '½' or '¼' or '¾';
}
