using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>One row as it was worked, stitch by stitch.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Side">The side that faced the maker; the right side in rounds.</param>
/// <param name="Stitches">The operations in the order in which they were worked.</param>
/// <param name="RepeatAt">How many of them came before the first repeat; null where nothing is repeated.</param>
/// <param name="Origin">Where it is written.</param>
public sealed record FabricRow(int Number, FabricSide Side, ImmutableArray<Operation> Stitches, int? RepeatAt, TextSpan Origin)
{
    /// <summary>The letters of the yarn of each operation; null where the row does not say.</summary>
    public required ImmutableArray<string?> Colours { get; init; }
}

/// <summary>A piece of fabric, row by row from the bottom.</summary>
/// <param name="Rows">Its rows.</param>
/// <param name="Before">Stitches on the needle before the first row.</param>
/// <param name="IsRound">True when it is worked in rounds.</param>
public sealed record Fabric(ImmutableArray<FabricRow> Rows, int Before, bool IsRound);
