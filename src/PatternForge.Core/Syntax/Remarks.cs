using System.Text;

namespace PatternForge.Core.Syntax;

/// <summary>Remarks to oneself or to an editor: <c>&lt;!-- ... --&gt;</c>. They stand in the source and never print.</summary>
public static class Remarks
{
    /// <summary>The offset after the remark that opens at <paramref name="at"/>; <paramref name="end"/> when it is never closed.</summary>
    public static int EndOf(string text, int at, int end)
    {
        var close = text.IndexOf("-->", at, end - at, StringComparison.Ordinal);
        return close < 0 ? end : close + 3;
    }

    /// <summary>The text without its remarks.</summary>
    public static string Strip(string text)
    {
        var open = text.IndexOf("<!--", StringComparison.Ordinal);
        if (open < 0)
        {
            return text;
        }

        var kept = new StringBuilder(text.Length);
        var at = 0;
        while (open >= 0)
        {
            kept.Append(text, at, open - at);
            at = EndOf(text, open, text.Length);
            open = text.IndexOf("<!--", at, StringComparison.Ordinal);
        }

        return kept.Append(text, at, text.Length - at).ToString();
    }
}
