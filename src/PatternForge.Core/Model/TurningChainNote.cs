namespace PatternForge.Core.Model;

/// <summary>One note: a chain of a length (null for any) counts as a stitch (null for any), or does not.</summary>
public sealed record TurningChainNote(int? Length, bool Counts, string? Stitch, int? Over);
