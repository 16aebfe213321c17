using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>What the photos show: the size of the piece, and the ease it is worn with there. Null = not said.</summary>
/// <param name="Size">The size, as written.</param>
/// <param name="Ease">The ease, as written.</param>
/// <param name="Origin">Where it stands.</param>
public sealed record Shown(string? Size, string? Ease, TextSpan Origin);
