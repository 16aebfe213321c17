using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>What is wrong with a file before anything in it is read: it is no text, or too much of it.</summary>
public static class FileRules
{
    /// <summary>The sign that stands where bytes could not be read.</summary>
    private const char Lost = '\uFFFD';

    /// <summary>Characters that were lost because the file is not UTF-8.</summary>
    public static Rule LostCharacters { get; } = new(
        "PF130",
        "lost-characters",
        Area.Source,
        Severity.Error,
        "Some characters of the file were lost because it is not saved as UTF-8.",
        """
        A pattern file is plain text saved as UTF-8. A file saved in another way loses every character beyond plain English ones: degree
        and multiplication signs, fractions, accented letters. The same sign stands in a text that lost a character earlier, when it was
        copied or converted. Save the file as UTF-8 (most editors offer it when saving), then look at the marked place: what is lost
        has to be typed again.
        """)
    {
        Bad = "Row 1: K12 \uFFFD rest of row.\n           ^",
        Good = "Row 1: K12.",
    };

    /// <summary>A file larger than the limit.</summary>
    public static Rule FileTooLarge { get; } = new(
        "PF131",
        "file-too-large",
        Area.Source,
        Severity.Error,
        "The file is too large to be a pattern and was not read.",
        """
        The longest patterns are some hundred thousand characters long. A file beyond the limit is most likely not a pattern: a picture
        or a book under a wrong name. It is refused before it is read. Pictures are named in the header and stay files of their own.
        """)
    {
        Bad = "",
        Good = "Row 1: K12.",
    };

    /// <summary>A file that is no text.</summary>
    public static Rule NotText { get; } = new(
        "PF132",
        "not-text",
        Area.Source,
        Severity.Error,
        "The file is not plain text.",
        """
        A pattern file is plain text saved as UTF-8, written in any text editor. This one holds bytes that no text holds: it is a document of a
        word processor, a picture, or a text saved as UTF-16. Open it in the program that made it and save or export it as plain text in UTF-8.
        """)
    {
        Bad = "Row 1: K12.\0\n           ^",
        Good = "Row 1: K12.",
    };

    /// <summary>The rules of this stage, in the order of their codes.</summary>
    public static IReadOnlyList<Rule> All { get; } = [LostCharacters, FileTooLarge, NotText];

    /// <summary>True for a finding that says that nothing of the file was read.</summary>
    public static bool IsRefusal(Finding finding) => finding.Rule == FileTooLarge || finding.Rule == NotText;

    /// <summary>Looks at a text as a whole; false when it makes no sense to read on.</summary>
    /// <param name="source">The text; characters that could not be read stand in it as U+FFFD.</param>
    /// <param name="bag">Where findings go.</param>
    public static bool Check(SourceText source, FindingBag bag)
    {
        var text = source.Text;
        var nul = text.IndexOf('\0');
        if (nul >= 0)
        {
            var help = text.AsSpan().Count('\0') > text.Length / 3
                ? "It looks like UTF-16: save it again as UTF-8"
                : "Save or export it as plain text in UTF-8";
            bag.Add(NotText, new TextSpan(nul, 1), "This file is not plain text: it holds bytes that no text holds, the first one here", help);
            return false;
        }

        var lost = text.IndexOf(Lost);
        if (lost < 0)
        {
            return true;
        }

        var count = text.AsSpan().Count(Lost);
        if (count > 16 && count > text.Length / 10)
        {
            bag.Add(NotText, new TextSpan(lost, 1), $"This file is not plain text in UTF-8: {count} of its {text.Length} characters cannot be read",
                "Save or export it as plain text in UTF-8");
            return false;
        }

        bag.Add(
            LostCharacters,
            new TextSpan(lost, 1),
            count == 1 ? "A character was lost here: the file is not saved as UTF-8" : $"{count} characters were lost, the first one here: the file is not saved as UTF-8",
            "Save it again as UTF-8, then type the lost characters anew");
        return true;
    }

    /// <summary>The finding for a file that was refused for its size.</summary>
    /// <param name="source">The file; nothing of it has been read.</param>
    /// <param name="most">The largest size allowed, in bytes or characters.</param>
    public static Finding TooLarge(SourceText source, int most) => new(
        FileTooLarge,
        source,
        new TextSpan(0, 0),
        $"This file is larger than {(most >= 1024 * 1024 ? $"{most / (1024 * 1024)} MB" : $"{most} characters")} and was not read")
    {
        Help = "A pattern is plain text: pictures stay files of their own and are named in the header",
    };
}
