using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>One pattern writes the same thing in two forms, and no style sheet says which it should be.</summary>
internal sealed class StyleMixed : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF421", "style-mixed", Area.Terms, Severity.Note,
        "The same thing is written in two forms in one pattern.",
        "\"Rnd 3\" here and \"Round 4\" there mean the same, and yet a maker stops to look for the difference. The form that the pattern uses most is offered; a `style` in the project file settles it for all patterns.")
    {
        Bad = """
            Row 1: K to last 2 sts, k2tog.

            Row 2: K to last 2 sts, k2tog.

            Row 3: K to last 2 stitches, k2tog.
                               ^^^^^^^^
            """,
        Good = """
            Row 1: K to last 2 sts, k2tog.

            Row 2: K to last 2 sts, k2tog.

            Row 3: K to last 2 sts, k2tog.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        foreach (var matter in StyleUses.Divided(context).GroupBy(u => u.Matter))
        {
            if (context.House.Style.FormOf(matter.Key) is not null)
            {
                continue;
            }

            // The form used most; of equals the one used first.
            var forms = matter.GroupBy(u => u.Form).OrderByDescending(g => g.Count()).ToArray();
            if (forms.Length < 2)
            {
                continue;
            }

            var (right, most) = (forms[0].Key, forms[0].Count());
            var wrong = matter.Where(u => u.Form != right).ToList();
            context.Bag.Add(StyleUses.Finding(
                Rule, context.Source, wrong, right,
                $"{matter.Key.About}: {StyleUses.Shown(matter.Key, wrong[0].Form)} {Times(wrong.Count)}, {StyleUses.Shown(matter.Key, right)} {Times(most)}",
                isExact: most > wrong.Count));
        }

        static string Times(int count) => count == 1 ? "once" : $"{count} times";
    }
}
