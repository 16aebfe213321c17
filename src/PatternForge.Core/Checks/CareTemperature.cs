using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>A temperature that is no step of care labels.</summary>
internal sealed class CareTemperature : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF841", "care-temperature", Area.Completeness, Severity.Note,
        "A temperature under `care` is no step of care labels.",
        "Labels, machines and irons have fixed steps: washing at most 30, 40, 50, 60, 70 or 95 °C, ironing at most 110, 150 or 200 °C. Between two of them a maker does not know which to take.")
    {
        Bad = """
            ---
            title: Harbour hat
            care:
              washing: machine wash at 45 °C
                       ^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            care:
              washing: machine wash at 40 °C
            ---
            """,
        Sources = [Sources.CareLabelling],
    };

    public override void Run(CheckContext context)
    {
        foreach (var clause in CareClause.Of(context.Facts))
        {
            var steps = clause.Kind switch { CareKind.Washing => CareLabelling.WashingCelsius, CareKind.Ironing => CareLabelling.IroningCelsius, _ => [] };
            if (clause.Celsius is { } celsius && !clause.IsFahrenheit && !steps.IsEmpty && celsius >= steps[0] && !steps.Contains(celsius))
            {
                var lower = steps.Last(s => s < celsius);
                var what = clause.Kind is CareKind.Washing ? "washing" : "ironing";
                context.Bag.Add(Rule, clause.Origin, $"{celsius} °C is no step of {what} that labels have", $"the steps are {string.Join(", ", steps)} °C; the safe one is {lower} °C");
            }
        }
    }
}
