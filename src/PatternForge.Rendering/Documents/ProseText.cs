namespace PatternForge.Rendering.Documents;

/// <summary>Markdown that a designer wrote. Each format decides how it lands; templates print it as it comes.</summary>
/// <param name="Markdown">The Markdown text.</param>
/// <param name="Sizes">How many sizes the pattern has: lists of so many numbers stand for the sizes.</param>
public readonly record struct ProseText(string Markdown, int Sizes = 1)
{
    /// <summary>The Markdown as the edition of one size has it, by the size from 0; null for a size whose edition has none such. Null where nothing is known but the lists. No matter of templates.</summary>
    internal Func<int, string?>? In { get; init; }
}
