namespace PatternForge.Rendering.Templates;

/// <summary>Counts how deep the blocks of a template nest, before anything recursive looks at it.</summary>
internal static class TemplateNesting
{
    private const int Deepest = 64;

    /// <summary>Where the nesting goes deeper than any page needs; null when it never does.</summary>
    public static int? TooDeepAt(string text)
    {
        var (depth, inCode, afterElse) = (0, false, false);
        for (var i = 0; i < text.Length; i++)
        {
            if (!inCode)
            {
                inCode = text[i] == '{' && i + 1 < text.Length && text[i + 1] == '{';
                i += inCode ? 1 : 0;
            }
            else if (text[i] == '}' && i + 1 < text.Length && text[i + 1] == '}')
            {
                (inCode, afterElse) = (false, false);
                i++;
            }
            else if (char.IsAsciiLetter(text[i]))
            {
                var start = i;
                while (i + 1 < text.Length && (char.IsAsciiLetterOrDigit(text[i + 1]) || text[i + 1] is '_' or '.'))
                {
                    i++;
                }

                var word = text.AsSpan(start, i + 1 - start);
                depth += word switch
                {
                    "if" => afterElse ? 0 : 1,
                    "for" or "while" or "case" or "func" or "capture" or "with" or "wrap" or "tablerow" or "do" => 1,
                    "end" => -1,
                    _ => 0,
                };
                afterElse = word is "else";
                if (depth > Deepest)
                {
                    return start;
                }
            }
        }

        return null;
    }
}
