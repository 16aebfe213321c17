using System.Collections.Frozen;

namespace PatternForge.Core.Syntax;

/// <summary>What a section is for, by its heading: some hold words about the work and never rows.</summary>
public static class SectionRoles
{
    private static readonly FrozenSet<string> Prose = new[]
    {
        "about", "introduction", "construction", "overview", "notes", "note", "pattern-notes", "care", "styling", "terms-of-use", "terms", "copyright", "thanks", "acknowledgements", "commissions", "other-designs", "contact", "links",
        "videos", "photos", "materials", "yarn", "gauge", "tension", "sizes", "sizing", "abbreviations", "special-stitches", "stitches-used", "techniques", "tools", "errata", "corrections", "versions", "safety", "schematic", "measurements",
    }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>True for a role whose section holds no rows.</summary>
    public static bool IsProse(string role) => Prose.Contains(role);

    /// <summary>A heading as a role: lower case, blanks and signs to hyphens.</summary>
    public static string Slug(string heading)
    {
        Span<char> slug = heading.Length <= 128 ? stackalloc char[heading.Length] : new char[heading.Length];
        var length = 0;
        foreach (var c in heading)
        {
            if (char.IsLetterOrDigit(c))
            {
                slug[length++] = char.ToLowerInvariant(c);
            }
            else if (length > 0 && slug[length - 1] != '-')
            {
                slug[length++] = '-';
            }
        }

        return slug[..length].Trim('-').ToString();
    }
}
