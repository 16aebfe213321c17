using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Lists the parts of a released pattern that this one does not have yet.</summary>
internal sealed class PartsNotSaid : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF805", "parts-not-said", Area.Completeness, Severity.Note,
        "Parts that a released pattern has are still missing.",
        "A maker decides by the summary, the level and the photos, and comes back to the care, the terms of use and the contact. Any part may be left out on purpose: name it under `omit`, and nobody asks again.")
    {
        Bad = """
            ---
            ^^^
            title: Harbour hat
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            omit: [designer, version, summary, level, photos, contact, care, terms-of-use]
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        if (context.HeaderPlace is not { } place)
        {
            return;
        }

        var facts = context.Facts;
        (string Part, bool IsSaid)[] parts =
        [
            ("designer", facts.Designer is not null),
            ("version", facts.Version is not null),
            ("summary", facts.Summary is not null || HasSection(context, "about", "summary")),
            ("level", facts.Level is not null),
            ("photos", !facts.Photos.IsEmpty),
            ("contact", facts.Contact is not null || HasSection(context, "contact")),
            ("care", HasSection(context, "care")),
            ("terms-of-use", HasSection(context, "terms-of-use")),
        ];
        string[] missing = [.. parts.Where(p => !p.IsSaid && !context.IsExcused(p.Part)).Select(p => p.Part)];
        if (missing.Length > 0)
        {
            context.Bag.Add(Rule, place, $"not said yet: {string.Join(", ", missing)}", "add them, or list those that you leave out on purpose under `omit`");
        }
    }

    private static bool HasSection(CheckContext context, params ReadOnlySpan<string> roles)
    {
        foreach (var section in context.Pattern.Sections)
        {
            if (roles.Contains(section.Role))
            {
                return true;
            }
        }

        return false;
    }
}
