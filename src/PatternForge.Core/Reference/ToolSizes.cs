using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Reference;

/// <summary>In which way a size of tool is told.</summary>
public enum ToolScale
{
    /// <summary>In millimetres.</summary>
    Millimetres,

    /// <summary>By an American number ("US 7").</summary>
    Us,

    /// <summary>By an American letter, perhaps with its number ("H-8").</summary>
    Letter,

    /// <summary>By an old British number ("UK 8").</summary>
    Uk,

    /// <summary>By the American number of a steel hook ("steel 7").</summary>
    Steel,

    /// <summary>By a Japanese number ("JP 8").</summary>
    Japanese,

    /// <summary>By a number alone ("size 8").</summary>
    Bare,
}

/// <summary>One size in a text: its scale, what it says in plain form, its diameter where it is told in millimetres, and its place.</summary>
public readonly record struct ToolMark(ToolScale Scale, string Said, decimal? Mm, int Start, int End);

/// <summary>Sizes in a text that stand together and so tell one tool: "US 7 (4.5 mm)".</summary>
public sealed record ToolTold(ImmutableArray<ToolMark> Marks)
{
    /// <summary>The diameter in millimetres; null where it is not told so.</summary>
    public decimal? Mm => Marks.FirstOrDefault(m => m.Scale == ToolScale.Millimetres).Mm;

    /// <summary>The first mark of a scale; null where there is none.</summary>
    public ToolMark? In(ToolScale scale)
    {
        foreach (var mark in Marks)
        {
            if (mark.Scale == scale)
            {
                return mark;
            }
        }

        return null;
    }
}

/// <summary>What the tables of needles and hooks say of a size.</summary>
public static class ToolSizes
{
    // Above the tables, needles and hooks are made in whole millimetres (common practice).
    private const decimal LargestTold = 19;
    private const decimal Largest = 50;

    /// <summary>The diameters that a name can mean, nearest to the usual first; empty where no table has the name.</summary>
    public static ImmutableArray<decimal> Of(ToolMark mark, bool isHook) => mark.Scale switch
    {
        ToolScale.Millimetres => mark.Mm is { } mm ? [mm] : [],
        ToolScale.Steel => [.. HookSizes.Steel.Where(s => s.Number == mark.Said).SelectMany(s => s.Mm)],
        ToolScale.Japanese => int.TryParse(mark.Said, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && !isHook && NeedleSizes.JapaneseMm(number) is { } mm ? [mm] : [],
        ToolScale.Uk when isHook => [.. HookSizes.All.Where(h => h.Uk == mark.Said).Concat(HookSizes.All.Where(h => h.OtherUk.Contains(mark.Said, StringComparer.Ordinal))).Select(h => h.Mm)],
        ToolScale.Uk => [.. NeedleSizes.All.Where(n => n.Uk == mark.Said).Concat(NeedleSizes.All.Where(n => n.OtherUk.Contains(mark.Said, StringComparer.Ordinal))).Select(n => n.Mm)],
        _ when isHook => [.. HookSizes.All.Where(h => IsUsual(h, mark.Said)).Concat(HookSizes.All.Where(h => IsOther(h, mark.Said))).Select(h => h.Mm)],
        _ => [.. NeedleSizes.All.Where(n => n.Us == mark.Said).Concat(NeedleSizes.All.Where(n => n.OtherUs.Contains(mark.Said, StringComparer.Ordinal))).Select(n => n.Mm)],
    };

    /// <summary>The diameters that most charts give to an American name: several where the makers themselves differ (hook P, needle 17).</summary>
    public static ImmutableArray<decimal> Usual(ToolMark mark, bool isHook) => mark.Scale is not (ToolScale.Us or ToolScale.Letter) ? []
        : isHook ? [.. HookSizes.All.Where(h => IsUsual(h, mark.Said)).Select(h => h.Mm)] : [.. NeedleSizes.All.Where(n => n.Us == mark.Said).Select(n => n.Mm)];

    /// <summary>The diameters that most charts give to a name of either side; empty where none has it.</summary>
    public static ImmutableArray<decimal> InUsualCharts(ToolMark mark, bool isHook) => mark.Scale != ToolScale.Uk ? Usual(mark, isHook)
        : isHook ? [.. HookSizes.All.Where(h => h.Uk == mark.Said).Select(h => h.Mm)] : [.. NeedleSizes.All.Where(n => n.Uk == mark.Said).Select(n => n.Mm)];

    /// <summary>True when a tool of that diameter is made, as far as the tables know.</summary>
    public static bool IsMade(decimal mm, bool isHook) =>
        NeedleSizes.All.Any(n => n.Mm == mm) || HookSizes.All.Any(h => h.Mm == mm) || (mm > LargestTold && mm <= Largest && mm == decimal.Truncate(mm))
        || (mm is > 9 and <= 19 && mm == decimal.Truncate(mm)) || HookSizes.Japanese.Contains(mm)
        || (isHook ? HookSizes.Steel.Any(s => s.Mm.Contains(mm)) : mm >= 2.1m && mm <= 6.6m && (mm - 2.1m) % 0.3m == 0);

    /// <summary>The diameter in the tables that is nearest to a given one.</summary>
    public static decimal Nearest(decimal mm, bool isHook) =>
        (isHook ? HookSizes.All.Select(h => h.Mm) : NeedleSizes.All.Where(n => n.Us is not null || n.Uk is not null).Select(n => n.Mm)).OrderBy(m => Math.Abs(m - mm)).First();

    /// <summary>The American and old British names of a diameter, "US 6, UK 8"; empty where it has none.</summary>
    public static string Names(decimal mm, bool isHook) => string.Join(", ", new[] { NameIn(mm, isHook, isUk: false), NameIn(mm, isHook, isUk: true) }.OfType<string>());

    /// <summary>The name of a diameter to one side, "US 6" or "UK 8"; null where it has none there.</summary>
    public static string? NameIn(decimal mm, bool isHook, bool isUk)
    {
        var (us, uk) = isHook
            ? HookSizes.All.FirstOrDefault(h => h.Mm == mm) is { } hook ? (Letters(hook), hook.Uk) : (SteelName(mm), null)
            : NeedleSizes.All.FirstOrDefault(n => n.Mm == mm) is { } needle ? (needle.Us, needle.Uk) : (null, null);
        return isUk ? (uk is null ? null : "UK " + uk) : us is null ? null : "US " + Printed(us);
    }

    /// <summary>A number of the tables as the trade prints it: 10.5 is 10½.</summary>
    public static string Printed(string number) => number.Replace(".5", "½", StringComparison.Ordinal).Replace(".75", "¾", StringComparison.Ordinal);

    private static string? Letters(HookSize hook) => (hook.Letter, hook.Number) switch
    {
        (null, var number) => number,
        (var letter, null) => letter,
        var (letter, number) => $"{letter}-{number}",
    };

    private static string? SteelName(decimal mm) => HookSizes.Steel.FirstOrDefault(s => s.Mm[0] == mm) is { } steel ? "steel " + steel.Number : null;

    private static bool IsUsual(HookSize hook, string said) => hook.Number == said || (hook.Letter is { } letter && (letter == said || letter.Split('/').Contains(said, StringComparer.Ordinal)));

    private static bool IsOther(HookSize hook, string said) => hook.OtherUs.Contains(said, StringComparer.Ordinal);
}
