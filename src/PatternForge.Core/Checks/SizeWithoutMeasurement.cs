using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Finds sizes that have a name and no measurement.</summary>
internal sealed class SizeWithoutMeasurement : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF609", "size-without-measurement", Area.Gauge, Severity.Warning,
        "A size has a name but no measurement.",
        "One maker's M is another's L. Only a measurement, of the body it fits or of the finished piece, lets a maker choose.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: S (M, L)
            ^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            sizes:
              names: S (M, L)
              finished:
                circumference: 48 (52, 56) cm
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        if (facts.SizesOrigin is not { } place || facts.Sizes.Count < 2 || context.IsExcused("sizes", "fits", "finished", "sizes.fits", "sizes.finished"))
        {
            return;
        }

        var measured = facts.Fits.AddRange(facts.Finished);
        int[] bare = [.. Enumerable.Range(0, facts.Sizes.Count).Where(size => measured.All(m => m.Values[size] is null))];
        if (bare.Length > 0)
        {
            var which = facts.Sizes.Describe(bare);
            context.Bag.Add(new Finding(Rule, context.Source, place, which.Length == 0 ? "the sizes have names but no measurements" : $"{which} {(bare.Length == 1 ? "has" : "have")} no measurement")
            {
                Sizes = [.. bare],
                Help = "add `finished` or `fits` under `sizes`, with a line such as `bust: 91 (102, 112) cm`",
            });
        }
    }
}
