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
        CareClause[] clauses = [.. CareClause.Of(context.Facts).Where(c => c.Kind is CareKind.Washing && !c.Forbids)];
        foreach (var clause in clauses)
        {
            // By any reading of the words, hot is over 40 °C.
            int? celsius = clause.Celsius ?? (clause.Has("boil") ? 95 : clause.Has("hot") ? 50 : null);
            (FibreFamily Family, Yarn Yarn)[] families = [.. FibresUsed.In(context.Facts).Where(f => f.Family.WashCelsius < celsius)];
            if (families.Length > 0)
            {
                var (family, yarn) = families.MinBy(f => f.Family.WashCelsius);
                context.Bag.Add(Rule, clause.Origin, $"`{clause.Text}` is hotter than {FibresUsed.Named(family, yarn)} bears: at most {family.WashCelsius} °C, by {FibreCare.Source}", $"write `at most {family.WashCelsius} °C`, or what the label of the yarn allows");
                return;
            }
        }

        if (Array.Find(clauses, c => c.Has("machine") && !clauses.Any(o => o.Origin == c.Origin && IsGentle(o))) is { } machine
            && FibresUsed.In(context.Facts).FirstOrDefault(f => f.Family.Felts && !FibresUsed.IsTreated(context.Facts, f.Family)) is { Family: { } felts, Yarn: { } felted })
        {
            context.Bag.Add(Rule, machine.Origin, $"`{machine.Text}` felts {FibresUsed.Named(felts, felted)} that is not treated against it, by {FibreCare.Source}", "write `hand wash`, or the gentle programme; where the yarn is superwash, say so under its `fibre`");
        }
    }

    private static bool IsGentle(CareClause clause) =>
        clause.Has("wool") || clause.Has("gentle") || clause.Has("delicate") || clause.Has("delicates") || clause.Has("mild") || clause.Has("label") || clause.Has("washable") || clause.Has("cold") || clause.Has("if") || clause.Has("hand");
}
