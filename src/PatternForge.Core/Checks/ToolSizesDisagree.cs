using PatternForge.Core.Findings;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>Goes through the needles and hooks of a pattern, those of the gauges included.</summary>
internal static class Tools
{
    /// <summary>Each size of a tool, whether it is a hook, the text that it stands in, and its place.</summary>
    public static IEnumerable<(ToolTold Told, bool IsHook, string Text, TextSpan Place)> Of(CheckContext context)
    {
        var facts = context.Facts;
        var isCrochet = facts.Craft != Craft.Knitting;
        var texts = facts.Tools.Where(t => ToolText.IsTool(t.Text)).Select(t => (t.Text, t.Origin)).Concat(facts.Gauges.Where(g => g.Tool is not null).Select(g => (g.Tool!, g.Origin)));
        return from text in texts from told in ToolText.Read(text.Item1) select (told, ToolText.IsHook(text.Item1, isCrochet), text.Item1, text.Item2);
    }

    /// <summary>How a mark is told in a message: "US 7", "4 mm", "steel 7".</summary>
    public static string Words(ToolMark mark) => mark.Scale switch
    {
        ToolScale.Millimetres => $"{mark.Said} mm",
        ToolScale.Us or ToolScale.Letter => $"US {ToolSizes.Printed(mark.Said)}",
        ToolScale.Uk => $"UK {mark.Said}",
        ToolScale.Steel => $"steel {mark.Said}",
        ToolScale.Japanese => $"Japanese {mark.Said}",
        _ => $"size {ToolSizes.Printed(mark.Said)}",
    };
}

/// <summary>Finds tools whose millimetres and number do not belong together.</summary>
internal sealed class ToolSizesDisagree : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF708", "tool-sizes-disagree", Area.Yarn, Severity.Warning,
        "A needle or hook is told in two ways that do not mean the same size.",
        "One of the two is wrong, and half of the makers will take it. Charts differ in places (US 1 is 2.25 or 2.5 mm, US 17 is 12 or 12.75, hook G is 4 or 4.25): every published reading is accepted. It is enough to give the millimetres; the page adds the American and the old British names.")
    {
        Bad = """
            ---
            title: Harbour hat
            tools: US 7 (5 mm) circular needle
                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            tools: US 7 (4.5 mm) circular needle
            ---
            """,
        Sources = [Reference.Sources.ToolCharts],
    };

    public override void Run(CheckContext context)
    {
        var told = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (tool, isHook, _, place) in Tools.Of(context))
        {
            if (tool.Mm is not { } mm)
            {
                continue;
            }

            foreach (var mark in tool.Marks)
            {
                var sizes = mark.Scale is ToolScale.Millimetres or ToolScale.Bare ? [] : ToolSizes.Of(mark, isHook);
                if (!sizes.IsEmpty && !sizes.Contains(mm) && told.Add($"{mark.Said} {mm}"))
                {
                    var names = ToolSizes.Names(mm, isHook);
                    context.Bag.Add(Rule, place, $"{Tools.Words(mark)} is {string.Join(" or ", sizes.Distinct())} mm, not {mm} mm", names.Length > 0 ? $"{mm} mm is {names}; the millimetres are enough, the page adds the names" : "check both; the millimetres are enough, the page adds the names");
                }
            }
        }
    }
}
