using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Finds sizes whose name stands for another body in the published tables.</summary>
internal sealed class SizeNameDiffers : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF624", "size-name-differs", Area.Gauge, Severity.Note,
        "A size fits a body that the published tables call by another name.",
        "A size by name alone means little, and designers grade by their own tables; but a maker who is an M elsewhere will begin with the M. Told only where the bust or chest lies two sizes or more from that of the name. XL and 1X are the same women's size.")
    {
        Bad = """
            ---
            title: Harbour pullover
            audience: women
            sizes:
              names: S (M, L)
              fits: {bust: 112 (122, 132) cm}
                           ^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour pullover
            audience: women
            sizes:
              names: S (M, L)
              fits: {bust: 84 (94, 104) cm}
            ---
            """,
        Sources = [Reference.Sources.BustSizes, Reference.Sources.BodySizes],
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        if (facts.Fits.FirstOrDefault(m => MeasureNames.Plain(m.Name) == "bust") is not { } bust || BodyMeasures.Far(context, bust).Length > 0 || MeasurementOutOfRun.Breaks(bust.Values))
        {
            return;
        }

        var wrong = new List<int>();
        (BodyTable Table, int Size, int Near)? first = null;
        for (var size = 0; size < facts.Sizes.Count; size++)
        {
            if (BodyMeasures.Named(facts, bust.Name, size) is var (table, at) && MeasureNames.Cm(bust.Values, size) is var (least, most) && Near(table, (least + most) / 2) is var near && Math.Abs(near - at) >= 2)
            {
                wrong.Add(size);
                first ??= (table, at, near);
            }
        }

        if (first is not var (published, named, nearest))
        {
            return;
        }

        var names = BodySizes.Names(published.Group);
        var range = published.Sizes[named];
        context.Bag.Add(new Finding(Rule, context.Source, bust.Origin,
            string.Create(CultureInfo.InvariantCulture, $"size {facts.Sizes.Names[wrong[0]]} fits a `{bust.Name}` of {bust.Values[wrong[0]]}; the published {names[named]} is {range.LeastCm:0.#} to {range.MostCm:0.#} cm, and this body a {names[nearest]} ({published.Source})"))
        {
            Sizes = wrong.Count == facts.Sizes.Count ? [] : [.. wrong],
            Help = "say the body in the size table beside the name, as you do, or take the usual names",
        });
    }

    private static int Near(BodyTable table, decimal cm)
    {
        var nearest = 0;
        for (var i = 1; i < table.Sizes.Length; i++)
        {
            nearest = Away(table.Sizes[i], cm) < Away(table.Sizes[nearest], cm) ? i : nearest;
        }

        return nearest;
    }

    private static decimal Away(BodyRange range, decimal cm) => cm < range.LeastCm ? range.LeastCm - cm : cm > range.MostCm ? cm - range.MostCm : 0;
}
