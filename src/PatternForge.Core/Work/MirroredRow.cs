using System.Collections.Immutable;

namespace PatternForge.Core.Work;

/// <summary>A row of the other side, left and right changed.</summary>
/// <param name="Label">Its label, with the side that faces the maker where the words name one.</param>
/// <param name="Text">What to work.</param>
/// <param name="After">Stitches after it, one a size, as on the side that it mirrors; null where not known.</param>
/// <param name="IsWrittenOut">False where the row is given as it stands there, because it cannot be turned round without the maker's eye.</param>
public sealed record MirroredRow(string Label, string Text, ImmutableArray<int?> After, bool IsWrittenOut);
