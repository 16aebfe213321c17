using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>One clause of a row as it was worked in one size ("k to last 4 sts", a repeat, a turn).</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Used">Stitches it used of the needle or the row below; null where the work was turned within it.</param>
/// <param name="Made">Stitches it made; null where the work was turned within it.</param>
/// <param name="Left">Stitches still to be worked after it.</param>
public sealed record WorkedClause(TextSpan Origin, int? Used, int? Made, int Left)
{
    /// <summary>How often a bracket or a repeat was worked; 0 for a clause that is neither.</summary>
    public int Times { get; init; }

    /// <summary>The clauses of a bracket or repeat the first time through, and those of its ending; empty for none.</summary>
    public ImmutableArray<WorkedClause> Within { get; init; } = [];
}

/// <summary>A part of a line as it was worked in one size: one row with its clauses, or words that stand for whole rows.</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Before">Live stitches before it; null where not known.</param>
/// <param name="After">Live stitches after it; null where not known.</param>
public sealed record WorkedStretch(TextSpan Origin, int? Before, int? After)
{
    /// <summary>How many rows were worked: several where the words stand for whole rows, 0 for what is done between rows.</summary>
    public int Rows { get; init; } = 1;

    /// <summary>How often the row's words were worked through, where they do not say that they are repeated; 1 as a rule.</summary>
    public int Times { get; init; } = 1;

    /// <summary>The row's clauses in order; empty for words that stand for whole rows.</summary>
    public ImmutableArray<WorkedClause> Clauses { get; init; } = [];
}
