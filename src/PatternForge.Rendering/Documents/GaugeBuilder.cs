using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes the gauges.</summary>
internal static class GaugeBuilder
{
    /// <summary>One gauge.</summary>
    public static GaugeView Build(Gauge gauge, PageWords? page = null, UnitSystem? only = null)
    {
        var counts = Counts(gauge) is { } told ? page?.Count(told) ?? told : null;
        var over = Over(gauge, u => only is { } system ? TradeSteps.In(system, u) : Measures.Metric(u));
        var inches = only is null ? Over(gauge, u => Measures.Imperial(u) ?? u) : null;
        var state = gauge.Blocked switch { true => "after blocking", false => "before blocking", null => null };
        var stitch = Wording.Said(gauge.Stitch);
        var tool = Wording.Said(gauge.Tool);
        var sentence = counts ?? "";
        // "4 × 4 in in stockinette" is nothing to read.
        var spelled = stitch is not null && inches is null && over is not null && over.EndsWith(" in", StringComparison.Ordinal) ? over + "ches" : over;
        sentence += over is null ? "" : $" = {spelled}" + (inches is null ? "" : $" ({inches})");
        sentence += stitch is null ? "" : $" in {stitch}";
        sentence += tool is null ? "" : $" on {tool}";
        sentence += state is null ? "" : $", {state}";
        return new GaugeView
        {
            Name = Wording.Said(gauge.Name),
            Counts = counts,
            Over = over,
            OverInches = inches,
            Stitch = stitch,
            Tool = tool,
            State = state,
            Sentence = sentence.TrimStart(' ', ',', '='),
        };
    }

    private static string? Counts(Gauge gauge)
    {
        var stitches = gauge.Stitches is { } s ? $"{Wording.Number(s)} {(s == 1 ? "st" : "sts")}" : null;
        var noun = (gauge.RowsAreRounds, gauge.Rows == 1) switch
        {
            (true, true) => "round",
            (true, false) => "rounds",
            (false, true) => "row",
            (false, false) => "rows",
        };
        var rows = gauge.Rows is { } r ? $"{Wording.Number(r)} {noun}" : null;
        return stitches is null ? rows : rows is null ? stitches : $"{stitches} and {rows}";
    }

    /// <summary>"10 × 10 cm", or one side where only one is measured over.</summary>
    private static string? Over(Gauge gauge, Func<Unit, Unit> told)
    {
        var width = gauge.Stitches is null && gauge.Rows is not null ? null : gauge.Width;
        var height = gauge.Rows is null && gauge.Stitches is not null ? null : gauge.Height;
        return (width, height) switch
        {
            (null, null) => null,
            ({ } w, null) => Measures.Text(w, told(w.Unit)),
            (null, { } h) => Measures.Text(h, told(h.Unit)),
            ({ } w, { } h) when told(w.Unit) == told(h.Unit) => $"{Measures.Number(w, told(w.Unit))} × {Measures.Text(h, told(h.Unit))}",
            ({ } w, { } h) => $"{Measures.Text(w, told(w.Unit))} × {Measures.Text(h, told(h.Unit))}",
        };
    }
}
