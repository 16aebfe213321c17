using System.Globalization;
using System.Text;

namespace PatternForge.Cli.Commands;

/// <summary>What a new pattern is called: its title, and a file name that every system takes.</summary>
internal sealed record StarterName(string Title, string FileName)
{
    private const int MostLetters = 80;

    // Names that Windows keeps for devices.
    private static readonly string[] Reserved =
    [
        "CON", "PRN", "AUX", "NUL",
        "COM1", "COM2", "COM3", "COM4", "COM5", "COM6", "COM7", "COM8", "COM9",
        "LPT1", "LPT2", "LPT3", "LPT4", "LPT5", "LPT6", "LPT7", "LPT8", "LPT9",
    ];

    /// <summary>Takes a title or a name as it was said; null when it holds neither a letter nor a digit.</summary>
    public static StarterName? From(string said)
    {
        var name = said.Trim();
        foreach (var extension in (string[])[InputFiles.Extension, ".md"])
        {
            if (name.EndsWith(extension, StringComparison.OrdinalIgnoreCase))
            {
                name = name[..^extension.Length];
                break;
            }
        }

        var stem = StemOf(name);
        return stem.Length == 0 ? null : new(TitleOf(name), stem + InputFiles.Extension);
    }

    // Letters, digits and their marks stay; a full stop or underscore stays between them; everything else parts words.
    private static string StemOf(string name)
    {
        var stem = new StringBuilder();
        foreach (var rune in name.EnumerateRunes())
        {
            if (stem.Length >= MostLetters)
            {
                break;
            }

            var mark = Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark;
            if ((Rune.IsLetterOrDigit(rune) || (mark && stem.Length > 0)) && rune != Rune.ReplacementChar)
            {
                stem.Append(rune);
            }
            else if (rune.Value is '.' or '_' && stem.Length > 0 && stem[^1] is not ('.' or '-'))
            {
                stem.Append(rune);
            }
            else if (rune.Value is not ('\'' or '’') && stem.Length > 0 && stem[^1] != '-')
            {
                stem.Append('-');
            }
        }

        var plain = stem.ToString().Trim('-', '.', '_');
        return Reserved.Contains(plain.Split('.')[0], StringComparer.OrdinalIgnoreCase) ? plain + "-pattern" : plain;
    }

    // A name with hyphens and no blanks is a file name: its words make the title.
    private static string TitleOf(string name)
    {
        var title = Reporting.DisplayText.OneLine(name).Trim();
        if (!title.Contains(' ') && title.AsSpan().IndexOfAny('-', '_') >= 0)
        {
            title = title.Replace('-', ' ').Replace('_', ' ').Trim();
            title = char.ToUpperInvariant(title[0]) + title[1..];
        }

        return title;
    }
}
