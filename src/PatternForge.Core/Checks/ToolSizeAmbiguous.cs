using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Asks about needles and hooks whose size can be read in several ways.</summary>
internal sealed class ToolSizeAmbiguous : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF710", "tool-size-ambiguous", Area.Yarn, Severity.Warning,
        "The size of a needle or hook can be read in more than one way.",
        "Size 8 is 5 mm in American sizes, 4 mm in old British ones and 4.5 mm in Japanese ones, and a steel hook of 8 is another thing again. Letters of hooks differ by maker: G is 4 or 4.25 mm, P anything from 10 to 15. Millimetres are the same everywhere; the page adds the other names.")
    {
        Bad = """
            ---
            title: Harbour hat
            tools: size 8 needles
                   ^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            tools: 5 mm needles
            ---
            """,
        Sources = [Reference.Sources.ToolCharts],
    };

    public override void Run(CheckContext context)
    {
        foreach (var (tool, isHook, text, place) in Tools.Of(context))
        {
            if (tool.Marks.Length > 1 || tool.Mm is not null || ToolText.Read(text).Any(t => t.Mm is not null))
            {
                continue;
            }

            var mark = tool.Marks[0];
            var sizes = Readings(mark, isHook);
            if (sizes.Length > 1 && (mark.Scale != ToolScale.Letter || isHook))
            {
                context.Bag.Add(Rule, place, $"{Tools.Words(mark)} can be {string.Join(", ", sizes[..^1])} or {sizes[^1]}", "give the millimetres; the page adds the names");
            }
        }
    }

    private static string[] Readings(ToolMark mark, bool isHook)
    {
        if (mark.Scale != ToolScale.Bare)
        {
            return [.. ToolSizes.Usual(mark, isHook).Distinct().Select(mm => $"{mm} mm")];
        }

        var scales = isHook ? (ReadOnlySpan<ToolScale>)[ToolScale.Us, ToolScale.Uk, ToolScale.Steel] : [ToolScale.Us, ToolScale.Uk, ToolScale.Japanese];
        var readings = new List<(decimal Mm, string Words)>();
        foreach (var scale in scales)
        {
            var read = mark with { Scale = scale };
            if (ToolSizes.Of(read, isHook) is [var mm, ..] && !readings.Exists(r => r.Mm == mm))
            {
                readings.Add((mm, $"{mm} mm ({(scale == ToolScale.Us ? "American" : scale == ToolScale.Uk ? "old British" : scale == ToolScale.Steel ? "steel" : "Japanese")})"));
            }
        }

        // The Japanese number alone makes no doubt: 7 is 4.5 mm in the West.
        return readings.Count(r => !r.Words.EndsWith("(Japanese)", StringComparison.Ordinal)) < 2 ? [] : [.. readings.Select(r => r.Words)];
    }
}
