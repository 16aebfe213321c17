using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds a list of corrections whose versions, or dates, do not run in one direction.</summary>
internal sealed class CorrectionsOutOfOrder : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF509", "corrections-out-of-order", Area.Abbreviations, Severity.Warning,
        "The versions or dates of the list of corrections do not run in one direction.",
        "The list may begin with the newest or with the oldest correction: the page always shows the newest first. Where versions or dates jump back and forth, one of them is most likely mistyped.")
    {
        Bad = """
            ---
            title: Harbour hat
            version: 1.3
            corrections:
              - {version: 1.1, text: Decrease 6 stitches in Rnd 14}
              - {version: 1.3, text: Cast on 96 stitches}
              - {version: 1.2, text: The needle of the brim is 3.5 mm}
                          ^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            version: 1.3
            corrections:
              - {version: 1.1, text: Decrease 6 stitches in Rnd 14}
              - {version: 1.2, text: The needle of the brim is 3.5 mm}
              - {version: 1.3, text: Cast on 96 stitches}
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        if (context.IsExcused("corrections"))
        {
            return;
        }

        var entries = context.Facts.Corrections;
        Run(context, [.. entries.Select(e => e.Version).OfType<Located<string>>()], ReleasedCorrection.CompareVersions, "version");
        Run(context, [.. entries.Select(e => e.Date).OfType<Located<string>>()], (a, b) => ReleasedCorrection.DayOf(a) is { } x && ReleasedCorrection.DayOf(b) is { } y ? x.CompareTo(y) : null, "date");
    }

    private void Run(CheckContext context, Located<string>[] said, Func<string, string, int?> compare, string what)
    {
        var direction = 0;
        for (var i = 1; i < said.Length; i++)
        {
            var step = Math.Sign(compare(said[i].Value, said[i - 1].Value) ?? 0);
            if (step == 0 || step == direction || direction == 0)
            {
                direction = step == 0 ? direction : step;
                continue;
            }

            context.Bag.Add(Rule, said[i].Origin, $"the {what} {said[i].Value} stands behind {said[i - 1].Value}, where the list {(direction > 0 ? "goes from the oldest to the newest" : "goes from the newest to the oldest")}", $"look over this {what}, or put the entry in its place");
            return;
        }
    }
}
