namespace PatternForge.Core.Plans;

/// <summary>Yarn counts. Null for a figure that is not above 0.</summary>
/// <remarks>
/// tex is grams in 1000 m, denier grams in 9000 m, Nm metres in a gram; the cotton and the worsted count are hanks of 840 and of 560 yards in a pound (ISO 1144 and common
/// practice; the constants follow from the pound of 453.59237 g and the yard of 0.9144 m). Worked examples: Ne 30 is 19.68 tex; 400 m in 100 g are Nm 4 and 250 tex; 1000 yards
/// in a pound are 201.6 m in 100 g.
/// </remarks>
public static class YarnCount
{
    /// <summary>tex times the cotton count: 590.54.</summary>
    public const decimal TexTimesCotton = 453.59237m * 1000 / (840 * 0.9144m);

    /// <summary>tex times the worsted count: 885.81.</summary>
    public const decimal TexTimesWorsted = 453.59237m * 1000 / (560 * 0.9144m);

    /// <summary>tex from the cotton count.</summary>
    public static decimal? TexOfCotton(decimal count) => PlanLimits.IsMeasure(count) ? TexTimesCotton / count : null;

    /// <summary>tex from the worsted count.</summary>
    public static decimal? TexOfWorsted(decimal count) => PlanLimits.IsMeasure(count) ? TexTimesWorsted / count : null;

    /// <summary>denier from tex.</summary>
    public static decimal Denier(decimal tex) => 9 * tex;

    /// <summary>The metric count, metres in a gram.</summary>
    public static decimal Metric(decimal metresPer100Grams) => metresPer100Grams / 100;

    /// <summary>tex from metres in 100 g.</summary>
    public static decimal? Tex(decimal metresPer100Grams) => PlanLimits.IsMeasure(metresPer100Grams) ? 100_000 / metresPer100Grams : null;

    /// <summary>Metres in 100 g from tex.</summary>
    public static decimal? MetresPer100Grams(decimal tex) => PlanLimits.IsMeasure(tex) ? 100_000 / tex : null;

    /// <summary>The resultant count of so many ends of a folded yarn: 3 ends of 2/30 are 5.</summary>
    public static decimal? Resultant(decimal count, int folds, int ends) => PlanLimits.IsMeasure(count) && folds > 0 && ends > 0 ? count / folds / ends : null;

    /// <summary>Metres in 100 g from yards in a pound.</summary>
    public static decimal OfYardsPerPound(decimal yards) => yards * 0.9144m / 4.5359237m;
}
