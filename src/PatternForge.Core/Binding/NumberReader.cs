using System.Globalization;

namespace PatternForge.Core.Binding;

/// <summary>Reads numbers as the trade writes them: 12, 6.5, ½, 6½, 6 ½, 6 1/2, 6-1/2.</summary>
internal static class NumberReader
{
    private const int MostDigits = 9;

    /// <summary>Reads the number that begins at <paramref name="at"/> and moves past it. False, without moving, where none begins.</summary>
    public static bool TryRead(ReadOnlySpan<char> text, ref int at, out decimal value)
    {
        value = 0;
        var i = at;
        while (i < text.Length && char.IsAsciiDigit(text[i]))
        {
            i++;
        }

        var digits = i - at;
        if (digits == 0)
        {
            if (at < text.Length && Vulgar(text[at]) is { } alone)
            {
                value = alone;
                at++;
                return true;
            }

            return false;
        }

        if (digits > MostDigits)
        {
            return false;
        }

        if (i < text.Length && text[i] == '/' && Fraction(text, at, out var bare, out var bareEnd))
        {
            value = bare;
            at = bareEnd;
            return true;
        }

        if (i + 1 < text.Length && text[i] == '.' && char.IsAsciiDigit(text[i + 1]))
        {
            var point = i++;
            while (i < text.Length && char.IsAsciiDigit(text[i]))
            {
                i++;
            }

            if (i - point > MostDigits)
            {
                return false;
            }
        }

        value = decimal.Parse(text[at..i], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        var rest = i;
        while (rest < text.Length && text[rest] == ' ')
        {
            rest++;
        }

        if (rest < text.Length && Vulgar(text[rest]) is { } part)
        {
            value += part;
            at = rest + 1;
            return true;
        }

        var dash = i < text.Length && text[i] == '-' ? i + 1 : rest > i ? rest : -1;
        if (dash > 0 && Fraction(text, dash, out var fraction, out var end))
        {
            value += fraction;
            at = end;
            return true;
        }

        at = i;
        return true;
    }

    /// <summary>The value of a fraction written as one sign; null for another character.</summary>
    public static decimal? Vulgar(char c) => c switch
    {
        '½' => 0.5m,
        '¼' => 0.25m,
        '¾' => 0.75m,
        '⅓' => 1m / 3,
        '⅔' => 2m / 3,
        '⅛' => 0.125m,
        '⅜' => 0.375m,
        '⅝' => 0.625m,
        '⅞' => 0.875m,
        '⅕' => 0.2m,
        _ => null,
    };

    // "1/2" but not "60/66" or "1/2/3": the lower number is one that rulers have, the upper one smaller, and no third follows.
    private static bool Fraction(ReadOnlySpan<char> text, int at, out decimal value, out int end)
    {
        (value, end) = (0, at);
        var slash = at;
        while (slash < text.Length && char.IsAsciiDigit(text[slash]))
        {
            slash++;
        }

        if (slash == at || slash - at > 2 || slash >= text.Length || text[slash] != '/')
        {
            return false;
        }

        end = slash + 1;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        if (end - slash is < 2 or > 3 || (end < text.Length && text[end] == '/'))
        {
            return false;
        }

        var upper = int.Parse(text[at..slash], CultureInfo.InvariantCulture);
        var lower = int.Parse(text[(slash + 1)..end], CultureInfo.InvariantCulture);
        if (lower is not (2 or 3 or 4 or 5 or 8 or 16) || upper >= lower || upper == 0)
        {
            return false;
        }

        value = (decimal)upper / lower;
        return true;
    }
}
