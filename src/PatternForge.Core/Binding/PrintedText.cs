using System.Globalization;
using System.Text;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>The designer's own words as the page prints them: remarks out, header numbers filled in, blanks made single. Nothing is re-worded.</summary>
internal static class PrintedText
{
    /// <summary>A row's text; <c>{count}</c> stays for the worker's number.</summary>
    public static string Row(string source, PatternFacts facts) => Fill(Unescape(Squeeze(Remarks.Strip(source))), facts);

    /// <summary>A label's text, without emphasis marks.</summary>
    public static string Label(string source) => Squeeze(Remarks.Strip(source)).Trim('*', '_', ' ');

    /// <summary>Replaces each <c>{name}</c> that the header knows by its values in trade form.</summary>
    public static string Fill(string text, PatternFacts facts)
    {
        if (!text.Contains('{', StringComparison.Ordinal) || facts.Numbers.IsEmpty)
        {
            return text;
        }

        foreach (var number in facts.Numbers)
        {
            text = text.Replace("{" + number.Name + "}", TradeForm(number.Values), StringComparison.OrdinalIgnoreCase);
        }

        return text;
    }

    /// <summary>"12 (14, 16)", with its unit behind it where it has one.</summary>
    public static string TradeForm(PerSize<Quantity?> values)
    {
        string One(Quantity? q) => q is null ? "–" : q.Value.ToString("0.####", CultureInfo.InvariantCulture);
        var first = One(values.Values[0]);
        var list = values.IsShared ? first : $"{first} ({string.Join(", ", values.Values.Skip(1).Select(One))})";
        var unit = values.Values.FirstOrDefault(v => v is not null)?.Unit;
        return unit is null || unit.Dimension == Dimension.Count ? list : $"{list} {unit.Symbol}";
    }

    private static string Squeeze(string text)
    {
        if (IsSqueezed(text))
        {
            return text.Trim();
        }

        var squeezed = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (!char.IsWhiteSpace(c))
            {
                squeezed.Append(c);
            }
            else if (squeezed.Length > 0 && squeezed[^1] != ' ')
            {
                squeezed.Append(' ');
            }
        }

        return squeezed.ToString().Trim();
    }

    private static bool IsSqueezed(string text)
    {
        var before = 'x';
        foreach (var c in text)
        {
            if (char.IsWhiteSpace(c) && (c != ' ' || before == ' '))
            {
                return false;
            }

            before = c;
        }

        return true;
    }

    // A backslash that keeps a Markdown viewer from seeing a star is not printed.
    private static string Unescape(string text)
    {
        if (!text.Contains('\\', StringComparison.Ordinal))
        {
            return text;
        }

        var plain = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\\' && i + 1 < text.Length && !char.IsLetterOrDigit(text[i + 1]) && !char.IsWhiteSpace(text[i + 1]))
            {
                i++;
            }

            plain.Append(text[i]);
        }

        return plain.ToString();
    }
}
