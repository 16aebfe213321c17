using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Care that tumbles what must not be tumbled.</summary>
internal sealed class DryAgainstFibre : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF741", "dry-against-fibre", Area.Yarn, Severity.Warning,
        "The drying under `care` is more than the yarn bears.",
        "A tumble dryer felts wool that is not treated, and dulls silk. Flat in the air is safe for all knitted and crocheted pieces.")
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
              drying: tumble dry
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
              drying: dry flat
            ---
            """,
        Sources = [Sources.FibreCare, Sources.CareLabelling],
    };

    public override void Run(CheckContext context)
    {
        foreach (var clause in CareClause.Of(context.Facts).Where(c => !c.Forbids))
        {
            if (clause.Kind is CareKind.Drying && clause.Has("tumble") && FibresUsed.In(context.Facts).FirstOrDefault(f => f.Family.NoTumbling || (f.Family.Felts && !FibresUsed.IsTreated(context.Facts, f.Family))) is { Family: { } family, Yarn: { } yarn })
            {
                context.Bag.Add(Rule, clause.Origin, $"`{clause.Text}` spoils {FibresUsed.Named(family, yarn)}, by {FibreCare.Source}", "write `do not tumble dry` and `dry flat`; where the yarn is superwash, say so under its `fibre`");
                return;
            }
        }
    }
}
