namespace PatternForge.Rendering.Documents;

/// <summary>Markdown that a designer wrote. Each format decides how it lands; templates print it as it comes.</summary>
/// <param name="Markdown">The Markdown text.</param>
public readonly record struct ProseText(string Markdown);
