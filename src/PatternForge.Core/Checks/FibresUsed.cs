using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Checks;

/// <summary>Which families of fibres the yarns are of, by the words of their fibre content.</summary>
internal static class FibresUsed
{
    /// <summary>The families with the yarn that has each, once a family; a word that no family has is not judged.</summary>
    public static IEnumerable<(FibreFamily Family, Yarn Yarn)> In(PatternFacts facts)
    {
        foreach (var family in FibreCare.All)
        {
            foreach (var yarn in facts.Yarns)
            {
                if (yarn.Fibre is { } fibre && Words(fibre).Any(w => family.Words.Contains(w, StringComparer.Ordinal)))
                {
                    yield return (family, yarn);
                    break;
                }
            }
        }
    }

    /// <summary>True when every yarn of the family is treated so that a machine does not felt it.</summary>
    public static bool IsTreated(PatternFacts facts, FibreFamily family) =>
        facts.Yarns.Where(y => y.Fibre is { } fibre && Words(fibre).Any(w => family.Words.Contains(w, StringComparer.Ordinal)))
            .All(y => Sections.Says([y.Fibre, y.Name], "superwash", "super wash", "machine wash", "machine-wash", "washable"));

    /// <summary>"wool", with the yarn's name where it has one: "wool (Quayside Wool)".</summary>
    public static string Named(FibreFamily family, Yarn yarn) => yarn.Name is { } name ? $"{family.Name} ({name})" : family.Name;

    private static string[] Words(string fibre) =>
        fibre.ToLowerInvariant().Split([' ', ',', '.', '/', ';', '%', '(', ')', '-', '&', '+'], StringSplitOptions.RemoveEmptyEntries);
}
