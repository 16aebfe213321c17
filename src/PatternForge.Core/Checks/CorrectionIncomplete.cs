using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Finds entries of the list of corrections that do not say what was corrected, or in which version.</summary>
internal sealed class CorrectionIncomplete : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF508", "correction-incomplete", Area.Abbreviations, Severity.Warning,
        "A correction does not say what was corrected, or in which version.",
        "A maker compares the version on the own copy with the list and reads what came after it. An entry without a version or date cannot be placed, and one without a text says nothing.")
    {
        Bad = """
            ---
            title: Harbour hat
            version: 1.1
            corrections:
              - {date: 2025-03-01, rows: Rnd 14, sizes: [L]}
                ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            version: 1.1
            corrections:
              - {version: 1.1, date: 2025-03-01, rows: Rnd 14, text: Decrease 6 stitches}
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        if (context.IsExcused("corrections"))
        {
            return;
        }

        // A single text ("None so far.") is no entry of a list that goes by versions.
        var entries = context.Facts.Corrections;
        if (entries is [{ Version: null, Date: null, Rows: null, Sizes.IsEmpty: true, Text: not null }])
        {
            return;
        }

        foreach (var entry in entries)
        {
            if (string.IsNullOrWhiteSpace(entry.Text))
            {
                context.Bag.Add(Rule, entry.Origin, "this correction does not say what was corrected", "say it under `text`");
            }
            else if (entry.Version is null && entry.Date is null)
            {
                context.Bag.Add(Rule, entry.Origin, "this correction does not say in which version it was made", "give it the `version` that has it, and the `date`");
            }
        }
    }
}
