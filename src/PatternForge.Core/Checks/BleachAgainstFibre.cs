using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Care that bleaches what bleach destroys.</summary>
internal sealed class BleachAgainstFibre : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF742", "bleach-against-fibre", Area.Yarn, Severity.Warning,
        "The bleaching under `care` destroys the yarn.",
        "Chlorine bleach dissolves wool and silk and yellows nylon. Labels of such yarns say: do not bleach.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Yarn
              fibre: 100% wool
              put-up: 100 g = 200 m
              needs: 150 m
            care:
              bleaching: any bleach
                         ^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              name: Quayside Yarn
              fibre: 100% wool
              put-up: 100 g = 200 m
              needs: 150 m
            care:
              bleaching: do not bleach
            ---
            """,
        Sources = [Sources.FibreCare, Sources.CareLabelling],
    };

    public override void Run(CheckContext context)
    {
        foreach (var clause in CareClause.Of(context.Facts).Where(c => !c.Forbids))
        {
            if (clause.Kind is CareKind.Bleaching && !clause.Has("oxygen") && !clause.Has("non") && FibresUsed.In(context.Facts).FirstOrDefault(f => f.Family.NoChlorine) is { Family: { } family, Yarn: { } yarn })
            {
                context.Bag.Add(Rule, clause.Origin, $"`{clause.Text}` destroys {FibresUsed.Named(family, yarn)}, by {FibreCare.Source}", "write `do not bleach`");
                return;
            }
        }
    }
}
