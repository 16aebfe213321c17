namespace PatternForge.Core.Reference;

/// <summary>Every source that a table or a rule names, declared once.</summary>
public static class Sources
{
    /// <summary>A fact of the trade that no single book owns.</summary>
    public static Source CommonPractice { get; } = new("common practice");

    /// <summary>A fact of the trade that was set down from memory.</summary>
    public static Source Remembered { get; } = new("common practice", IsFromMemory: true);

    /// <summary>Needles and hooks with their American and British numbers: charts of makers and shops, which differ in places.</summary>
    public static Source ToolCharts { get; } = new("charts of needle and hook makers and shops, taken together (common practice)");

    /// <summary>Care labels in words: washing, bleaching, drying, ironing, professional care.</summary>
    public static Source CareLabelling { get; } = new("ISO 3758:2023 and ASTM D5489-18, care labelling");

    /// <summary>What fibres bear.</summary>
    public static Source FibreCare { get; } = new("common practice of textile care", IsFromMemory: true);

    /// <summary>Project levels: basic, easy, intermediate and complex.</summary>
    public static Source ProjectLevels { get; } = new("Craft Yarn Council, project levels (2018), as quoted in the trade");

    /// <summary>Inch, yard and ounce in metric units: exact.</summary>
    public static Source InternationalYard { get; } = new("International yard and pound agreement (1959)");

    /// <summary>Words for pictures.</summary>
    public static Source Wcag { get; } = new("W3C, Web Content Accessibility Guidelines 2.2 (2023), success criterion 1.1.1");

    /// <summary>Weight classes with the gauges of crochet and the hooks.</summary>
    public static Source YarnWeights { get; } = new("Craft Yarn Council, Standard Yarn Weight System, as printed in Crochet World, October 2018, p. 64");

    /// <summary>Weight classes with the gauges of knitting and the needles, and readings of other printings.</summary>
    public static Source YarnWeightsQuoted { get; } = new("Craft Yarn Council, Standard Yarn Weight System, as quoted in the trade");

    /// <summary>The edition of the weight classes before there was a class 7, with lengths to the pound.</summary>
    public static Source YarnWeightsOlder { get; } = new("Spin Off magazine, Yarn Standards");

    /// <summary>Lengths to the hundred grams by name: several charts of dyers and shops, which differ; their union is taken.</summary>
    public static Source YarnLengths { get; } = new("charts of yarn dyers and shops, taken together (common practice)");

    /// <summary>Body sizes of babies, children, women and men.</summary>
    public static Source BodySizes { get; } = new("Craft Yarn Council, Standards and Guidelines for Crochet and Knitting, body sizes", IsFromMemory: true);

    /// <summary>Heads from preemies to men.</summary>
    public static Source HeadSizes { get; } = new("Craft Yarn Council, head circumference, as quoted in the trade", IsFromMemory: true);

    /// <summary>Lengths and widths of children and youths.</summary>
    public static Source ChildSizes { get; } = new("Craft Yarn Council, child and youth sizes, as quoted in the trade");

    /// <summary>Women's busts.</summary>
    public static Source BustSizes { get; } = new("Craft Yarn Council, women's sizes, as quoted in the trade");

    /// <summary>The usual girth of finished socks.</summary>
    public static Source SockSizes { get; } = new("How to Knit Socks, chapter 3");

    /// <summary>Feet by the European sizes of shoes.</summary>
    public static Source ShoeSizes { get; } = new("the Paris point of shoemakers, two thirds of a centimetre a size, and common practice for what a shoe is longer than its foot", IsFromMemory: true);

    /// <summary>Ease by fit, in inches.</summary>
    public static Source FitChart { get; } = new("Craft Yarn Council, fit chart, as quoted in the trade");

    /// <summary>How long the loop of a stitch is beside its width and height.</summary>
    public static Source LoopLength { get; } = new("D. L. Munden, The geometry and dimensional properties of plain-knit fabrics, Journal of the Textile Institute, 1959", IsFromMemory: true);
}
