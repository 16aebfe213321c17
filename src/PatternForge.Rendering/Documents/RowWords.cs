namespace PatternForge.Rendering.Documents;

/// <summary>What a row says in one size.</summary>
/// <param name="Label">Its label; empty where it has none.</param>
/// <param name="Instruction">Its instruction without the count at its end.</param>
/// <param name="Count">The count beside it; null where there is none.</param>
internal sealed record RowWords(string Label, string Instruction, string? Count);
