using System.Globalization;
using System.Text;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>
/// Brings words with numbers for the sizes into each format. As HTML each number is marked with its size, and what stands between the numbers is marked as well, so
/// that a page can leave one of them alone. Where that would not be what the size's own edition says ("1 time" for "1 (2, 3) times"), the edition's words stand beside it.
/// </summary>
internal static class SizeMarks
{
    /// <summary>What ends a mark.</summary>
    public const string Close = "</span>";

    private const string Between = "<span class=\"or\">";

    private const string OpenBegin = "<span class=\"sz s";

    /// <summary>What begins the mark of a size.</summary>
    public static string Open(int size) => string.Create(CultureInfo.InvariantCulture, $"{OpenBegin}{size}\">");

    /// <summary>As HTML: each number of a list is marked with the size that it is for, counted from 1, and no word or sign is changed.</summary>
    public static string ToHtml(SizedText sized)
    {
        var lists = OneSizeWords.Lists(sized);
        var html = new StringBuilder(sized.Text.Length + (lists.Count * 128));
        var at = 0;
        foreach (var list in lists)
        {
            Append(html, sized, list, ref at);
        }

        var marked = html.Append(Escaping.Html(sized.Text[at..])).ToString();
        return sized.In is null ? marked : WithOwnWords(marked, sized.Sizes, size => sized.In(size) is { } own ? Escaping.Html(own) : null, "span");
    }

    /// <summary>The same for Markdown that has become HTML.</summary>
    public static string WithOwnWords(string marked, int sizes, Func<int, string?> own, string element)
    {
        List<(string Words, List<int> Sizes)> differing = [];
        for (var size = 1; size <= sizes; size++)
        {
            if (own(size - 1) is not { } words || words == OfSize(marked, size))
            {
                continue;
            }

            if (differing.Find(d => d.Words == words) is { Sizes: { } others })
            {
                others.Add(size);
            }
            else
            {
                differing.Add((words, [size]));
            }
        }

        if (differing.Count == 0)
        {
            return marked;
        }

        var html = new StringBuilder($"<{element} data-no=\"").AppendJoin(' ', differing.SelectMany(d => d.Sizes).Order()).Append("\">").Append(marked).Append($"</{element}>");
        foreach (var (words, own_) in differing)
        {
            html.Append($"<{element} hidden=\"hidden\" data-only=\"").AppendJoin(' ', own_).Append("\">").Append(words).Append($"</{element}>");
        }

        return html.ToString();
    }

    /// <summary>What a page that leaves out the other sizes shows of marked words.</summary>
    public static string OfSize(string marked, int size)
    {
        if (!marked.Contains("<span class=\"", StringComparison.Ordinal))
        {
            return marked;
        }

        var left = new StringBuilder(marked.Length);
        var at = 0;
        while (marked.IndexOf("<span class=\"", at, StringComparison.Ordinal) is >= 0 and var open)
        {
            left.Append(marked, at, open - at);
            var inside = marked.IndexOf('>', open) + 1;
            var close = marked.IndexOf(Close, inside, StringComparison.Ordinal);
            if (marked.AsSpan(open).StartsWith(Between))
            {
                // What lies between two sizes may hold room for digits.
                close = marked.AsSpan(inside).StartsWith("<span class=\"room") || marked[inside..close].Contains("<span", StringComparison.Ordinal) ? marked.IndexOf(Close, close + Close.Length, StringComparison.Ordinal) : close;
            }
            else if (marked.AsSpan(open).StartsWith(Open(size)))
            {
                left.Append(marked, inside, close - inside);
            }
            else if (!marked.AsSpan(open).StartsWith(OpenBegin) && !marked.AsSpan(open).StartsWith("<span class=\"room"))
            {
                left.Append(marked, open, inside - open);
                at = inside;
                continue;
            }

            at = close + Close.Length;
        }

        return left.Append(marked, at, marked.Length - at).ToString();
    }

    /// <summary>As Markdown, which has no colours: the words, escaped.</summary>
    public static string ToMarkdown(SizedText sized) => Escaping.Markdown(sized.Text);

    /// <summary>What stands between the numbers of two sizes, and what closes the last bracket.</summary>
    public static string Gap(string words) => words.Length == 0 ? "" : $"{Between}{words}{Close}";

    private static void Append(StringBuilder html, SizedText sized, SizeValueList list, ref int at)
    {
        var isFirst = true;
        foreach (var value in list.Values)
        {
            // Room for lacking digits goes before the bracket, so that none gapes.
            var room = sized.Digits - value.Length;
            var start = room > 0 && value.Start > at && sized.Text[value.Start - 1] is '(' or '[' ? value.Start - 1 : value.Start;
            var before = Escaping.Html(sized.Text[at..start]) + (room > 0 ? $"<span class=\"room{room}\"></span>" : "") + Escaping.Html(sized.Text[start..value.Start]);
            html.Append(isFirst ? before : Gap(before)).Append(Open(value.Size));
            at = value.Start + value.Length;
            html.Append(Escaping.Html(sized.Text[value.Start..at])).Append(Close);
            isFirst = false;
        }

        html.Append(Gap(Escaping.Html(sized.Text[at..list.End])));
        at = list.End;
    }
}
