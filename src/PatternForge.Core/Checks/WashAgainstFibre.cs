using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Care that washes hotter, or harder, than the fibre bears.</summary>
internal sealed class WashAgainstFibre : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF740", "wash-against-fibre", Area.Yarn, Severity.Warning,
        "The washing under `care` is more than the yarn bears.",
        "Wool and silk felt, shrink or lose their gloss in hot water, wool in a machine as well unless it is treated (superwash); acrylic loses its shape. The label of the yarn has the last word.")
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
              washing: machine wash, at most 60 °C
                       ^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
              washing: hand wash, at most 30 °C
            ---
            """,
        Sources = [Sources.FibreCare, Sources.CareLabelling],
    };

    public override void Run(CheckContext context)
    {
        var clauses = CareClause.Of(context.Facts);
        foreach (var clause in clauses.Where(c => !c.Forbids))
        {
            if (clause.Kind is not CareKind.Washing)
            {
                continue;
            }

            // By any reading of the words, hot is over 40 °C.
            int? celsius = clause.Celsius ?? (clause.Has("boil") ? 95 : clause.Has("hot") ? 50 : null);
            var (families, isHeat) = (FibresUsed.In(context.Facts).Where(f => f.Family.WashCelsius < celsius).ToArray(), true);
            if (families.Length == 0 && clause.Has("machine") && !clauses.Any(c => c.Origin == clause.Origin && IsGentle(c)))
            {
                (families, isHeat) = ([.. FibresUsed.In(context.Facts).Where(f => f.Family.Felts && !FibresUsed.IsTreated(context.Facts, f.Family))], false);
            }

            if (families.Length > 0)
            {
                var (family, yarn) = families.MinBy(f => f.Family.WashCelsius);
                context.Bag.Add(
                    Rule,
                    clause.Origin,
                    isHeat
                        ? $"`{clause.Text}` is hotter than {FibresUsed.Named(family, yarn)} bears: at most {family.WashCelsius} °C ({FibreCare.Source})"
                        : $"`{clause.Text}` felts {FibresUsed.Named(family, yarn)} that is not treated against it ({FibreCare.Source})",
                    isHeat ? $"write `at most {family.WashCelsius} °C`, or what the label of the yarn allows" : "write `hand wash`, or the gentle programme; where the yarn is superwash, say so under its `fibre`");
                return;
            }
        }
    }

    private static bool IsGentle(CareClause clause) =>
        clause.Has("wool") || clause.Has("gentle") || clause.Has("delicate") || clause.Has("delicates") || clause.Has("mild") || clause.Has("label") || clause.Has("washable") || clause.Has("cold") || clause.Has("if") || clause.Has("hand");
}
