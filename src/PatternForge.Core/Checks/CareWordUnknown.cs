using PatternForge.Core.Findings;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Care that no label speaks of.</summary>
internal sealed class CareWordUnknown : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF840", "care-word-unknown", Area.Completeness, Severity.Warning,
        "A treatment under `care` is none that care labels know.",
        "Care labels speak of washing, bleaching, drying, ironing and professional care, in a few words that every maker finds on the yarn's label as well: hand wash, at most 40 °C, do not bleach, dry flat, iron at most 110 °C. Words beside them are welcome; alone they leave the maker guessing.")
    {
        Bad = """
            ---
            title: Harbour hat
            care:
              washing: hand wash, at most 30 °C
              drying: tmble dri
                      ^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            care:
              washing: hand wash, at most 30 °C
              drying: tumble dry, low
            ---
            """,
        Sources = [Sources.CareLabelling],
    };

    public override void Run(CheckContext context)
    {
        foreach (var entry in context.Facts.Care)
        {
            var clauses = CareClause.Of(context.Facts with { Care = [entry] });
            if (clauses.IsEmpty || clauses.Any(c => c.IsKnown))
            {
                continue;
            }

            var near = Suggest.Nearest(clauses[0].Text, CareLabelling.Words, 1);
            if (near.Count == 0)
            {
                near = [.. clauses[0].Words.SelectMany(w => w.Length > 3 ? Suggest.Nearest(w, CareLabelling.Words.Where(k => !k.Contains(' ', StringComparison.Ordinal)).Append("tumble"), 1) : []).Take(1)];
            }

            // Free words that resemble nothing are the designer's own, and say what they say.
            if (entry.Kind is not null || near.Count > 0)
            {
                context.Bag.Add(Rule, entry.Origin, $"`{entry.Text}` says nothing that a care label knows", near.Count > 0 ? $"did you mean `{near[0]}`?" : "labels speak of washing, bleaching, drying, ironing and professional care: `hand wash, at most 30 °C`");
            }
        }
    }
}
