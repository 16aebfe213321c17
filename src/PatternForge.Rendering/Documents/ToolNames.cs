using System.Globalization;
using System.Text;
using PatternForge.Core.Reference;

namespace PatternForge.Rendering.Documents;

/// <summary>Adds to a needle or hook the names that it has elsewhere: "4 mm" is told as "4 mm (US 6, UK 8)".</summary>
internal static class ToolNames
{
    /// <summary>The words of a tool with the names added; unchanged where they are no tool, or say the names themselves.</summary>
    /// <param name="text">What the designer wrote.</param>
    /// <param name="isCrochet">True where a tool that is not told by its kind is a hook.</param>
    public static string Add(string text, bool isCrochet)
    {
        if (!ToolText.IsTool(text))
        {
            return text;
        }

        var isHook = ToolText.IsHook(text, isCrochet);
        var printed = new StringBuilder(text);
        foreach (var told in ToolText.Read(text).Reverse())
        {
            if (Names(told, isHook) is { Length: > 0 } names)
            {
                printed.Insert(told.Marks[^1].End, $" ({names})");
            }
        }

        return printed.ToString();
    }

    // One size told in one way: the others stand in brackets behind it. Who has written two of them has made a choice.
    private static string? Names(ToolTold told, bool isHook)
    {
        if (told.Marks.Length != 1)
        {
            return null;
        }

        var mark = told.Marks[0];
        if (mark.Scale == ToolScale.Millimetres)
        {
            return ToolSizes.Names(mark.Mm!.Value, isHook);
        }

        return mark.Scale is ToolScale.Us or ToolScale.Uk or ToolScale.Steel && ToolSizes.Of(mark, isHook) is [var only] ? string.Create(CultureInfo.InvariantCulture, $"{only} mm") : null;
    }
}
