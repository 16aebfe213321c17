namespace PatternForge.Core.Model;

/// <summary>The paper that a release is printed on.</summary>
public enum Paper
{
    /// <summary>210 × 297 mm (ISO 216).</summary>
    A4,

    /// <summary>8½ × 11 inches (ANSI/ASME Y14.1).</summary>
    Letter,

    /// <summary>One document for each.</summary>
    Both,
}
