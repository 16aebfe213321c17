using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Looks for sections of the body by what they are for.</summary>
internal static class Sections
{
    /// <summary>True when a section of one of these roles stands in the body.</summary>
    public static bool Has(CheckContext context, params ReadOnlySpan<string> roles)
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

    /// <summary>The prose of the sections of these roles; of the whole body when none is named.</summary>
    public static IEnumerable<string> Prose(CheckContext context, params string[] roles) =>
        context.Pattern.Sections.Where(s => roles.Length == 0 || roles.Contains(s.Role, StringComparer.Ordinal)).SelectMany(s => s.Blocks).OfType<ProseBlock>().Select(b => b.Markdown);

    /// <summary>True when one of the texts has one of the words, or the beginning of one.</summary>
    public static bool Says(IEnumerable<string?> texts, params string[] words) =>
        texts.Any(t => t is not null && Array.Exists(words, w => t.Contains(w, StringComparison.OrdinalIgnoreCase)));
}
