using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Care that says two things at once.</summary>
internal sealed class CareContradiction : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF842", "care-contradiction", Area.Completeness, Severity.Warning,
        "The care allows and forbids the same treatment.",
        "A piece cannot be washed at 30 °C and not be washed; an iron of at most 110 °C is one without steam. A maker who reads both will trust neither.")
    {
        Bad = """
            ---
            title: Harbour hat
            care:
              washing: do not wash
              ironing: at most 110 °C, with steam
                       ^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            care:
              washing: do not wash
              ironing: at most 110 °C, no steam
            ---
            """,
        Sources = [Sources.CareLabelling],
    };

    public override void Run(CheckContext context)
    {
        var clauses = CareClause.Of(context.Facts);
        foreach (var kind in (CareKind[])[CareKind.Washing, CareKind.Bleaching, CareKind.Drying, CareKind.Ironing])
        {
            CareClause[] all = [.. clauses.Where(c => c.Kind == kind && Treatment(c) is not null)];
            foreach (var no in all.Where(c => c.Forbids))
            {
                if (Array.Find(all, c => !c.Forbids && Treatment(c) == Treatment(no)) is { } yes)
                {
                    context.Bag.Add(Rule, yes.Origin, $"the care says `{no.Text}` and `{yes.Text}`", "keep one of the two");
                    break;
                }
            }
        }

        CareClause[] irons = [.. clauses.Where(c => c.Kind is CareKind.Ironing)];
        if (Array.Find(irons, c => c.Celsius == 110) is { } cool && Array.Find(irons, c => c.Has("steam") && !c.Has("no") && !c.Has("without") && !c.Has("not") && !c.Has("never")) is { } steam)
        {
            context.Bag.Add(Rule, steam.Origin, $"the care says `{cool.Text}` and `{steam.Text}`, but the step of 110 °C is ironed without steam", "write `no steam`, or name the next step, 150 °C");
        }
    }

    // What is allowed or forbidden: tumbling and drying in the air are two things, and so are washing and wringing; a bleach of oxygen is no bleach of chlorine.
    private static string? Treatment(CareClause clause) => clause.Kind switch
    {
        CareKind.Washing when clause.Has("wash") && !clause.Has("machine") && !clause.Has("with") && (clause.Forbids ? clause.Words.Length <= 3 : true) => "wash",
        CareKind.Bleaching when !clause.Has("oxygen") && !clause.Has("non") && !clause.Has("chlorine") => "bleach",
        CareKind.Drying when clause.Has("tumble") => "tumble",
        CareKind.Ironing when clause.Has("iron") && (clause.Forbids ? clause.Words.Length <= 3 : true) => "iron",
        _ => null,
    };
}
