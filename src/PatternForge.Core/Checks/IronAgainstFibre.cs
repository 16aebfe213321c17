using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Care that irons hotter than the fibre bears.</summary>
internal sealed class IronAgainstFibre : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF743", "iron-against-fibre", Area.Yarn, Severity.Warning,
        "The ironing under `care` is hotter than the yarn bears.",
        "A hot iron melts acrylic and nylon and scorches wool, silk and viscose: at most 110 °C for the first, 150 °C for the others. Cotton and linen bear 200 °C.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Yarn
              fibre: 100% acrylic
              put-up: 100 g = 200 m
              needs: 150 m
            care:
              ironing: iron at most 200 °C
                       ^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Yarn
              fibre: 100% acrylic
              put-up: 100 g = 200 m
              needs: 150 m
            care:
              ironing: iron at most 110 °C, no steam
            ---
            """,
        Sources = [Sources.FibreCare, Sources.CareLabelling],
    };

    public override void Run(CheckContext context)
    {
        foreach (var clause in CareClause.Of(context.Facts).Where(c => !c.Forbids))
        {
            if (clause.Kind is not CareKind.Ironing)
            {
                continue;
            }

            int? celsius = clause.Celsius ?? (clause.Has("hot") ? 200 : clause.Has("medium") ? 150 : null);
            (FibreFamily Family, Yarn Yarn)[] families = [.. FibresUsed.In(context.Facts).Where(f => f.Family.IronCelsius < celsius && !(celsius == 135 && f.Family.IronCelsius == 110))];
            if (families.Length > 0)
            {
                var (family, yarn) = families.MinBy(f => f.Family.IronCelsius);
                context.Bag.Add(Rule, clause.Origin, $"`{clause.Text}` is hotter than {FibresUsed.Named(family, yarn)} bears: at most {family.IronCelsius} °C, by {FibreCare.Source}", $"write `iron at most {family.IronCelsius} °C`, or `do not iron`");
                return;
            }
        }
    }
}
