using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>Shapings that go on at the same time, laid out row by row for each size.</summary>
/// <param name="Shapings">The words of each shaping, in the order of the line.</param>
/// <param name="Sizes">The rows of each size; empty for one that skips them.</param>
public sealed record ShapingTable(ImmutableArray<TextSpan> Shapings, ImmutableArray<ImmutableArray<ShapingRow>> Sizes);

/// <summary>A row in which something is shaped.</summary>
/// <param name="Row">Its number, counted from the first row of the line.</param>
/// <param name="Changes">What each shaping changes in it, in stitches; 0 for nothing.</param>
/// <param name="Count">Stitches after it.</param>
public sealed record ShapingRow(int Row, ImmutableArray<int> Changes, int Count);
