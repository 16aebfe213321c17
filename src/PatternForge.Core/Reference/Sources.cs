namespace PatternForge.Core.Reference;

/// <summary>Every source that a table or a rule names, declared once.</summary>
public static class Sources
{
    /// <summary>A fact of the trade that no single book owns.</summary>
    public static Source CommonPractice { get; } = new("common practice");

    /// <summary>Care labels in words: washing, bleaching, drying, ironing, professional care.</summary>
    public static Source CareLabelling { get; } = new("ISO 3758:2023 and ASTM D5489-18, care labelling");

    /// <summary>What fibres bear.</summary>
    public static Source FibreCare { get; } = new("common practice of textile care", IsFromMemory: true);

    /// <summary>Project levels: basic, easy, intermediate and complex.</summary>
    public static Source ProjectLevels { get; } = new("Craft Yarn Council, project levels (2018), as quoted in the trade");
}
