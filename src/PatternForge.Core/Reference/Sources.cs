namespace PatternForge.Core.Reference;

/// <summary>Every source that a table or a rule names, declared once.</summary>
public static class Sources
{
    /// <summary>A fact of the trade that no single book owns.</summary>
    public static Source CommonPractice { get; } = new("common practice");

    /// <summary>Project levels: basic, easy, intermediate and complex.</summary>
    public static Source ProjectLevels { get; } = new("Craft Yarn Council, project levels (2018), as quoted in the trade");
}
