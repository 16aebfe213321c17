using System.Buffers;
using System.Globalization;
using System.Text;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Documents;

/// <summary>Adds to a needle or hook the names that it has elsewhere: "4 mm" is told as "4 mm (US 6, UK 8)".</summary>
internal static class ToolNames
{
    private static readonly SearchValues<char> Apart = SearchValues.Create("0123456789.;,:()");

    /// <summary>The words of a tool with the names added; unchanged where they are no tool, or say the names themselves.</summary>
    /// <param name="text">What the designer wrote.</param>
    /// <param name="isCrochet">True where a tool that is not told by its kind is a hook.</param>
    /// <param name="readers">Whose names are added; those of both sides where null.</param>
    public static string Add(string text, bool isCrochet, Dialect? readers = null)
    {
        if (!ToolText.IsTool(text))
        {
            return text;
        }

        var isHook = ToolText.IsHook(text, isCrochet);
        var printed = new StringBuilder(text);
        var sizes = ToolText.Read(text);
        for (var i = sizes.Length - 1; i >= 0; i--)
        {
            if (i > 0 && AreOne(text, sizes[i - 1], sizes[i]))
            {
                i--;
            }
            else if (Names(sizes[i], isHook, readers) is { Length: > 0 } names)
            {
                printed.Insert(sizes[i].Marks[^1].End, $" ({names})");
            }
        }

        return printed.ToString();
    }

    // "5 mm needles (US 8)": the same needle, told in two ways with a word between.
    private static bool AreOne(string text, ToolTold first, ToolTold second)
    {
        var (from, at, end) = (first.Marks[^1].End, second.Marks[0].Start, second.Marks[^1].End);
        return (first.Mm is null) != (second.Mm is null) && at > 0 && end < text.Length && text[at - 1] == '(' && text[end] == ')' && text.AsSpan(from, at - 1 - from).IndexOfAny(Apart) < 0;
    }

    // One size told in one way: the others stand in brackets behind it. Who has written two of them has made a choice.
    private static string? Names(ToolTold told, bool isHook, Dialect? readers)
    {
        if (told.Marks.Length != 1)
        {
            return null;
        }

        var mark = told.Marks[0];
        if (mark.Scale == ToolScale.Millimetres)
        {
            return readers is { } side ? ToolSizes.NameIn(mark.Mm!.Value, isHook, side == Dialect.Uk) : ToolSizes.Names(mark.Mm!.Value, isHook);
        }

        return mark.Scale is ToolScale.Us or ToolScale.Uk or ToolScale.Steel && ToolSizes.Of(mark, isHook) is [var only] ? string.Create(CultureInfo.InvariantCulture, $"{only} mm") : null;
    }
}
