using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Holds body, ease and finished measurement together.</summary>
internal sealed class EaseDiffers : PatternCheck
{
    // Half an inch: bodies, ease and pieces are each rounded (common practice).
    private const decimal LeastCm = 1.3m;

    public override Rule Rule { get; } = new(
        "PF622", "ease-differs", Area.Gauge, Severity.Warning,
        "Body and ease do not make the finished measurement.",
        "The finished piece is the body plus the ease, or less the negative ease. Where the pattern gives all three, a maker who chooses by one of them must come to the same size by the others. Rounding is allowed: half an inch, and a little more for large sizes.")
    {
        Bad = """
            ---
            title: Harbour pullover
            sizes:
              names: S (M, L)
              fits: {bust: 86 (96, 106) cm}
              finished: {bust: 91 (111, 111) cm}
                               ^^^^^^^^^^^^^^^^
              ease: 5 cm of positive ease
            ---
            """,
        Good = """
            ---
            title: Harbour pullover
            sizes:
              names: S (M, L)
              fits: {bust: 86 (96, 106) cm}
              finished: {bust: 91 (101, 111) cm}
              ease: 5 cm of positive ease
            ---
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        if (facts.EaseBy is not { } ease || Pair(facts) is not var (body, finished) || IsToldAlready(context, body, finished))
        {
            return;
        }

        int[] wrong = [.. Enumerable.Range(0, facts.Sizes.Count).Where(size => Differs(context, body, ease, finished, size))];
        if (wrong.Length == 0)
        {
            return;
        }

        var first = wrong[0];
        var (worn, more, made) = (body.Values[first]!, ease[first]!, finished.Values[first]!);
        var sum = new Quantity((worn.InBase + more.InBase) / made.Unit.InBase, made.Unit) { UpTo = worn.UpTo is null && more.UpTo is null ? null : ((worn.UpTo * worn.Unit.InBase ?? worn.InBase) + (more.UpTo * more.Unit.InBase ?? more.InBase)) / made.Unit.InBase };
        var where = facts.Sizes.Count > 1 ? $" in size {facts.Sizes.Names[first]}" : "";
        var word = more.Value < 0 ? "less" : "and";
        var amount = new Quantity(Math.Abs(more.Value), more.Unit);
        context.Bag.Add(new Finding(Rule, context.Source, finished.Origin, $"`{finished.Name}` is {made}{where}, but a body of {worn} {word} {amount} of ease makes {sum}")
        {
            Sizes = wrong.Length == facts.Sizes.Count ? [] : [.. wrong],
            Labels = [new Label(body.Origin, "the body")],
            Help = wrong.Length < facts.Sizes.Count ? "the other sizes agree; check the values of this size" : "check the ease, and whether it is positive or negative",
        });
    }

    // A value that breaks its run, or is not what the stitches make, or is no body, is one mistake and told as that.
    private static bool IsToldAlready(CheckContext context, Measurement body, Measurement finished) =>
        MeasurementOutOfRun.Breaks(body.Values) || MeasurementOutOfRun.Breaks(finished.Values) || BodyMeasures.Far(context, body).Length > 0 || context.Bag.HasAt("PF618", finished.Origin);

    /// <summary>The one body measurement that has its finished one: of the same name, or a head and a circumference.</summary>
    private static (Measurement Body, Measurement Finished)? Pair(PatternFacts facts)
    {
        var pairs = (from body in facts.Fits
                     from finished in facts.Finished
                     where MeasureNames.AreSame(body.Name, finished.Name) || (MeasureNames.Plain(finished.Name) == "around" && MeasureNames.Plain(body.Name) is "head" or "bust" or "hand" or "foot")
                     select (body, finished)).Take(3).ToArray();

        // Ease is told of the bust where there are several; of any other pair only where it is the only one.
        var bust = Array.FindIndex(pairs, p => MeasureNames.Plain(p.body.Name) == "bust");
        return bust >= 0 ? pairs[bust] : pairs.Length == 1 ? pairs[0] : null;
    }

    private static bool Differs(CheckContext context, Measurement body, PerSize<Quantity?> ease, Measurement finished, int size)
    {
        if (MeasureNames.Cm(body.Values, size) is not var (least, most) || MeasureNames.Cm(ease, size) is not var (easeLeast, easeMost) || MeasureNames.Cm(finished.Values, size) is not var (from, to))
        {
            return false;
        }

        var slack = Math.Max(LeastCm, context.Tolerances.Ease * to);
        return to < least + Math.Min(easeLeast, easeMost) - slack || from > most + Math.Max(easeLeast, easeMost) + slack;
    }
}
