namespace PatternForge.Core.Reference;

/// <summary>Every source that a table or a rule names, declared once.</summary>
public static class Sources
{
    /// <summary>A fact of the trade that no single book owns.</summary>
    public static Source CommonPractice { get; } = new("common practice");

    /// <summary>Project levels: basic, easy, intermediate and complex.</summary>
    public static Source ProjectLevels { get; } = new("Craft Yarn Council, project levels (2018), as quoted in the trade");

    /// <summary>Inch, yard and ounce in metric units: exact.</summary>
    public static Source InternationalYard { get; } = new("International yard and pound agreement (1959)");

    /// <summary>Words for pictures.</summary>
    public static Source Wcag { get; } = new("W3C, Web Content Accessibility Guidelines 2.2 (2023), success criterion 1.1.1");
}
