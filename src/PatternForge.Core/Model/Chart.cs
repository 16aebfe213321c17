using System.Collections.Immutable;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>One stitch of a chart, or a square without one. Columns count from the right as the right side shows, from 0.</summary>
/// <param name="Operation">What is worked; null for a square where there is no stitch.</param>
/// <param name="Column">Its rightmost column.</param>
/// <param name="Span">How many columns it covers: as many as it makes stitches, and at least one.</param>
public sealed record ChartCell(Operation? Operation, int Column, int Span)
{
    /// <summary>The letters of the yarn; null where the row does not say.</summary>
    public string? Colour { get; init; }
}

/// <summary>One row of a chart.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Side">The side that faces the maker; the right side in rounds.</param>
/// <param name="Cells">Its squares from right to left, without gaps: they cover every column of the chart.</param>
/// <param name="Origin">Where the row is written.</param>
public sealed record ChartRow(int Number, FabricSide Side, ImmutableArray<ChartCell> Cells, TextSpan Origin);

/// <summary>The part of a chart that is worked again and again.</summary>
/// <param name="From">Its rightmost column.</param>
/// <param name="Columns">How many columns it has.</param>
/// <param name="Times">How often it is worked, one number a size; null where the chart does not tell.</param>
public sealed record ChartRepeat(int From, int Columns, PerSize<int?>? Times);

/// <summary>A chart that the source itself holds, square by square.</summary>
/// <param name="Section">The number of its section in the body, from 1.</param>
/// <param name="Block">The block that holds it.</param>
/// <param name="Rows">Its rows, as they are worked.</param>
/// <param name="StandsAlone">True when no words give the same rows: then its rows are those of the pattern.</param>
public sealed record ChartSource(int Section, TextSpan Block, ImmutableArray<BoundRow> Rows, bool StandsAlone);

/// <summary>A knitting chart: rows of squares, as the fabric looks on its right side.</summary>
public sealed record Chart
{
    /// <summary>What it shows, as a heading: "Lace panel", "Body, rounds 1 to 8".</summary>
    public required string Name { get; init; }

    /// <summary>The number of the section in the body, from 1, that it is drawn in.</summary>
    public required int Section { get; init; }

    /// <summary>The block that asks for it; null where it stands at the end of its section by itself.</summary>
    public TextSpan? Block { get; init; }

    /// <summary>The sizes that it is for; empty for all.</summary>
    public ImmutableArray<int> Sizes { get; init; } = [];

    /// <summary>True when it is worked in rounds.</summary>
    public required bool IsRound { get; init; }

    /// <summary>Its rows from the bottom.</summary>
    public required ImmutableArray<ChartRow> Rows { get; init; }

    /// <summary>How many columns it has.</summary>
    public required int Columns { get; init; }

    /// <summary>What is repeated; null for nothing.</summary>
    public ChartRepeat? Repeat { get; init; }
}
