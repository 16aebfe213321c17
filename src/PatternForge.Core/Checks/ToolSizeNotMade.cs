using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Finds needles and hooks of a size that none of the published tables has.</summary>
internal sealed class ToolSizeNotMade : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF709", "tool-size-not-made", Area.Yarn, Severity.Warning,
        "A needle or hook has a size that no published table has.",
        "Needles and hooks come in steps: from 1 mm in quarters to 4.5 mm, in halves to 8 mm, then in whole millimetres, and in the Japanese sizes between. A size beside all of them is mostly a slip of the keys.")
    {
        Bad = """
            ---
            title: Harbour hat
            tools: 4.35 mm circular needle
                   ^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            tools: 4.5 mm circular needle
            ---
            """,
        Sources = [Reference.Sources.ToolCharts],
    };

    public override void Run(CheckContext context)
    {
        var told = new HashSet<decimal>();
        foreach (var (tool, isHook, _, place) in Tools.Of(context))
        {
            if (tool.Mm is { } mm && !ToolSizes.IsMade(mm, isHook) && told.Add(mm))
            {
                var near = ToolSizes.Nearest(mm, isHook);
                context.Bag.Add(Rule, place, $"no table has a {(isHook ? "hook" : "needle")} of {mm} mm", $"the nearest is {near} mm");
            }
            else if (tool.Mm is null && tool.Marks[0] is { Scale: not (ToolScale.Bare or ToolScale.Letter or ToolScale.Japanese) } mark && ToolSizes.Of(mark, isHook).IsEmpty)
            {
                context.Bag.Add(Rule, place, $"no table has a {(isHook ? "hook" : "needle")} {Tools.Words(mark)}", "give the size in millimetres; the page adds the names");
            }
        }
    }
}
