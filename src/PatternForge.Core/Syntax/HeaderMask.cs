using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>The header's characters, of which some are replaced one for one by letters that the header does not use.</summary>
internal sealed class HeaderMask
{
    private const string Maskable = ":[]{},*&!%@`\"'#|>?";

    private readonly string _text;
    private readonly int _start;
    private readonly char[] _letters;
    private readonly char _base;

    /// <summary>Takes a header as it stands.</summary>
    public HeaderMask(SourceText source, TextSpan header)
    {
        (_text, _start) = (source.Text, header.Start);
        _letters = source.Slice(header).ToArray();
        _base = FreeLetters(_letters);
    }

    /// <summary>The characters; as many as the header has.</summary>
    public char[] Letters => _letters;

    /// <summary>Replaces the sign at an offset of the whole file.</summary>
    public void Cover(int at) => _letters[at - _start] = (char)(_base + Maskable.IndexOf(_text[at]));

    /// <summary>Replaces what YAML takes for a line end or refuses altogether.</summary>
    public void CoverOddLetters()
    {
        for (var i = 0; i < _letters.Length; i++)
        {
            _letters[i] = _letters[i] switch
            {
                '\t' or '\u0085' or '\u2028' or '\u2029' or '\uFEFF' => ' ',
                < ' ' and not ('\n' or '\r') => '\uFFFD',
                var c => c,
            };
        }
    }

    /// <summary>A text read from the masked header with its own characters put back.</summary>
    public string Uncover(string text)
    {
        if (!text.AsSpan().ContainsAnyInRange(_base, (char)(_base + Maskable.Length - 1)))
        {
            return text;
        }

        return string.Create(text.Length, (text, letters: _base), static (to, from) =>
        {
            for (var i = 0; i < to.Length; i++)
            {
                var mask = from.text[i] - from.letters;
                to[i] = mask >= 0 && mask < Maskable.Length ? Maskable[mask] : from.text[i];
            }
        });
    }

    private static char FreeLetters(ReadOnlySpan<char> text)
    {
        for (var first = '\uE000'; first < '\uF8E0'; first += ' ')
        {
            if (!text.ContainsAnyInRange(first, (char)(first + Maskable.Length - 1)))
            {
                return first;
            }
        }

        return '\uE000';
    }
}
