using System.Text;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>Brings words with numbers for the sizes into each format.</summary>
internal static class SizeMarks
{
    /// <summary>As HTML: each number of a list is marked with the size that it is for, counted from 1, and no word or sign is changed.</summary>
    public static string ToHtml(SizedText sized)
    {
        var values = SizeValues.Find(sized.Text, sized.Sizes);
        if (values.Count == 0 && sized.Only is { IsDefaultOrEmpty: false } only)
        {
            values = [.. SizeValues.Find(sized.Text, only.Length).Select(v => v with { Size = only[v.Size - 1] + 1 })];
        }

        if (values.Count == 0)
        {
            return Escaping.Html(sized.Text);
        }

        var html = new StringBuilder(sized.Text.Length + (values.Count * 32));
        var at = 0;
        foreach (var value in values)
        {
            // Room for lacking digits goes before the bracket, so that none gapes.
            var room = sized.Digits - value.Length;
            var start = room > 0 && value.Start > at && sized.Text[value.Start - 1] is '(' or '[' ? value.Start - 1 : value.Start;
            html.Append(Escaping.Html(sized.Text[at..start])).Append(room > 0 ? $"<span class=\"room{room}\"></span>" : "");
            html.Append(Escaping.Html(sized.Text[start..value.Start])).Append(Open(value.Size));
            at = value.Start + value.Length;
            html.Append(Escaping.Html(sized.Text[value.Start..at])).Append(Close);
        }

        return html.Append(Escaping.Html(sized.Text[at..])).ToString();
    }

    /// <summary>What ends a mark.</summary>
    public const string Close = "</span>";

    /// <summary>What begins the mark of a size.</summary>
    public static string Open(int size) => $"<span class=\"sz s{size}\">";

    /// <summary>As Markdown, which has no colours: the words, escaped.</summary>
    public static string ToMarkdown(SizedText sized) => Escaping.Markdown(sized.Text);
}
