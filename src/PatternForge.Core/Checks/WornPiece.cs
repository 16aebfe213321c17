using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>What kind of piece a pattern makes, as far as its header shows: not every part suits every piece.</summary>
internal static class WornPiece
{
    private static readonly string[] BodyWords =
        ["bust", "chest", "waist", "hip", "head", "foot", "hand", "wrist", "calf", "leg", "arm", "neck", "sleeve", "shoulder", "circumference"];

    private static readonly string[] LongWords = ["bust", "chest", "waist", "hip", "foot", "leg", "arm", "sleeve", "head"];

    /// <summary>True for a thing that is made to fit a body: sizes then need the body, and the ease.</summary>
    public static bool IsFitted(PatternFacts facts) => !facts.Fits.IsEmpty || Named(facts, BodyWords);

    /// <summary>True for a thing whose length a maker may want to change to her own.</summary>
    public static bool HasLength(PatternFacts facts) => facts.Sizes.Count > 1 && Named(facts, LongWords);

    /// <summary>True for a garment of the body, which is drawn with its measurements.</summary>
    public static bool IsGarment(PatternFacts facts) => Named(facts, ["bust", "chest"]);

    private static bool Named(PatternFacts facts, string[] words) =>
        facts.Fits.Concat(facts.Finished).Any(m => Array.Exists(words, w => m.Name.Contains(w, StringComparison.OrdinalIgnoreCase)) && !m.Name.Contains("around the body", StringComparison.OrdinalIgnoreCase));
}
