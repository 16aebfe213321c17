using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds body measurements that no size of the published tables comes near.</summary>
internal sealed class MeasurementOutsideTable : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF623", "measurement-outside-table", Area.Gauge, Severity.Warning,
        "A body measurement is far from every size that is published for the audience.",
        "With `audience` the pattern says whom it is made for, and the body measurements under `fits` are held against the published sizes. A value far outside all of them is mostly a slip: inches given as centimetres, a finished measurement among those of the body, a digit too many. The tables differ, heads most of all (16 or 19 in for a toddler); every reading is accepted, and fifteen in a hundred beside the table.")
    {
        Bad = """
            ---
            title: Harbour pullover
            audience: women
            sizes:
              names: S (M, L)
              fits: {bust: 32 (36, 40) cm}
                           ^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour pullover
            audience: women
            sizes:
              names: S (M, L)
              fits: {bust: 32 (36, 40) in}
            ---
            """,
        Sources = [Reference.Sources.BodySizes, Reference.Sources.BustSizes, Reference.Sources.ChildSizes, Reference.Sources.SockSizes, Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        foreach (var body in facts.Fits)
        {
            if (facts.Audience is null || BodyMeasures.Published(facts, body.Name) is not { } published)
            {
                continue;
            }

            var slack = context.Tolerances.Body;
            var wrong = BodyMeasures.Far(context, body);
            if (wrong.Length == 0 || MeasurementOutOfRun.Breaks(body.Values))
            {
                continue;
            }

            var said = body.Values[wrong[0]]!;
            var where = facts.Sizes.Count > 1 ? $" in size {facts.Sizes.Names[wrong[0]]}" : "";
            var wouldFit = said.Unit == Unit.Centimetre && said.Value * 2.54m >= published.LeastCm * (1 - slack) && said.Value * 2.54m <= published.MostCm * (1 + slack);
            context.Bag.Add(new Finding(Rule, context.Source, body.Origin,
                $"a `{body.Name}` of {said}{where} is far from the published sizes of {facts.Audience!.Value.ToString().ToLowerInvariant()}: {Told(published.LeastCm, said.Unit)} to {Told(published.MostCm, said.Unit)} ({published.Source})")
            {
                Sizes = wrong.Length == facts.Sizes.Count ? [] : [.. wrong],
                Help = wouldFit ? "are these inches? as inches they are within the table" : "check the number, its unit, and whom the pattern is for; if it is meant, accept this with a reason",
            });
        }
    }

    private static string Told(decimal cm, Unit unit) => string.Create(CultureInfo.InvariantCulture, $"{cm / unit.InBase:0.#} {unit.Symbol}");
}
