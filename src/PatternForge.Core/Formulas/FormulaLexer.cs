using PatternForge.Core.Model;

namespace PatternForge.Core.Formulas;

/// <summary>Kinds of tokens of a formula.</summary>
internal enum FormulaTokenKind
{
    /// <summary>A number, its unit with it.</summary>
    Number,

    /// <summary>A word.</summary>
    Name,

    /// <summary>A size in quotes.</summary>
    Size,

    /// <summary>A sign, a bracket or a comma.</summary>
    Sign,

    /// <summary>The end.</summary>
    End,
}

/// <summary>A token of a formula.</summary>
internal readonly record struct FormulaToken(FormulaTokenKind Kind, string Text, int Start, int End, decimal Number = 0, Unit? Unit = null)
{
    /// <summary>True for that sign or word.</summary>
    public bool Is(string text) => Kind is FormulaTokenKind.Sign or FormulaTokenKind.Name && string.Equals(Text, text, StringComparison.OrdinalIgnoreCase);
}

/// <summary>Cuts a formula into numbers, names and signs. A hyphen between letters belongs to a name; a minus has blanks around it, or stands before a number.</summary>
internal sealed class FormulaLexer(string text)
{
    private static readonly string[] CountUnits = ["st", "sts", "stitch", "stitches", "row", "rows", "rnd", "rnds", "round", "rounds"];

    /// <summary>The first thing that cannot be read; null when all can.</summary>
    public FormulaFault? Fault { get; private set; }

    /// <summary>The tokens, an end as the last.</summary>
    public List<FormulaToken> Read()
    {
        var tokens = new List<FormulaToken>();
        var at = 0;
        while (Fault is null)
        {
            while (at < text.Length && char.IsWhiteSpace(text[at]))
            {
                at++;
            }

            if (at >= text.Length)
            {
                break;
            }

            tokens.Add(Next(ref at));
        }

        tokens.Add(new(FormulaTokenKind.End, "", text.Length, text.Length));
        return tokens;
    }

    private FormulaToken Next(ref int at)
    {
        var start = at;
        var c = text[at];
        if (char.IsAsciiDigit(c) || (c == '.' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1])))
        {
            return Number(ref at);
        }

        if (char.IsLetter(c))
        {
            at = NameEnd(at);
            return new(FormulaTokenKind.Name, text[start..at], start, at);
        }

        if (c is '\'' or '"' or '‘' or '“')
        {
            var close = text.IndexOf(c switch { '‘' => '’', '“' => '”', _ => c }, at + 1);
            if (close < 0)
            {
                Fault = new(FaultKind.NotUnderstood, at, 1, "the name of a size that begins here has no closing quote");
                return default;
            }

            at = close + 1;
            return new(FormulaTokenKind.Size, text[(start + 1)..close].Trim(), start, at);
        }

        var sign = c switch
        {
            '+' or '*' or '/' or '(' or ')' or ',' or '=' => c.ToString(),
            '-' or '−' or '–' => "-",
            '×' or '·' => "*",
            '÷' => "/",
            '≤' => "<=",
            '≥' => ">=",
            '<' or '>' when at + 1 < text.Length && text[at + 1] == '=' => text.Substring(at, 2),
            '<' or '>' => c.ToString(),
            _ => null,
        };
        if (sign is null)
        {
            Fault = new(FaultKind.NotUnderstood, at, 1, $"`{c}` is no sign of formulas", "the signs are + - * / ( ) and commas; a condition has < <= = >= >");
            return default;
        }

        at += sign.Length == 2 && c is '<' or '>' && at + 1 < text.Length && text[at + 1] == '=' ? 2 : 1;
        return new(FormulaTokenKind.Sign, sign, start, at);
    }

    // Letters, digits, points between parts and hyphens between letters: upper-arm, gauge.rib.stitches, fits.bust.
    private int NameEnd(int at)
    {
        while (at < text.Length && (char.IsLetterOrDigit(text[at]) || (text[at] is '-' or '.' or '_' && at + 1 < text.Length && char.IsLetterOrDigit(text[at + 1]) && char.IsLetterOrDigit(text[at - 1]))))
        {
            at++;
        }

        return at;
    }

    private FormulaToken Number(ref int at)
    {
        var start = at;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || (text[at] == '.' && at + 1 < text.Length && char.IsAsciiDigit(text[at + 1]))))
        {
            at++;
        }

        if (!decimal.TryParse(text.AsSpan(start, at - start), System.Globalization.NumberStyles.AllowDecimalPoint, System.Globalization.CultureInfo.InvariantCulture, out var number))
        {
            Fault = new(FaultKind.NotUnderstood, start, at - start, $"`{text[start..at]}` is no number that can be read");
            return default;
        }

        if (at < text.Length && text[at] == '%')
        {
            at++;
            return new(FormulaTokenKind.Number, text[start..at], start, at, number / 100);
        }

        var word = at;
        while (word < text.Length && text[word] == ' ')
        {
            word++;
        }

        var end = word < text.Length && char.IsLetter(text[word]) ? NameEnd(word) : word;
        if (end > word && UnitOf(text[word..end]) is { } unit && !FunctionFollows(end))
        {
            at = end;
            return new(FormulaTokenKind.Number, text[start..at], start, at, number, unit);
        }

        return new(FormulaTokenKind.Number, text[start..at], start, at, number);
    }

    private bool FunctionFollows(int at) => at < text.Length && text[at] == '(';

    private static Unit? UnitOf(string word) => Unit.Find(word) ?? (CountUnits.Contains(word, StringComparer.OrdinalIgnoreCase) ? new Unit(word, Dimension.Count, 1m) : null);
}
