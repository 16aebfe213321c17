namespace PatternForge.Core.Work;

/// <summary>A section of a row between markers: its stitches, and the name of the marker behind it.</summary>
/// <param name="Stitches">Stitches up to the next marker, or to the end of the row.</param>
/// <param name="Marker">The name of that marker in lower case; empty for one without a name, null at the end of the row.</param>
public readonly record struct MarkedSection(int Stitches, string? Marker);
