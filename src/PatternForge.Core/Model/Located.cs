using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>A fact and the place in the source that it was read from.</summary>
public sealed record Located<T>(T Value, TextSpan Origin);
