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
public sealed record ChartRow(int Number, FabricSide Side, ImmutableArray<ChartCell> Cells, TextSpan Origin)
{
    /// <summary>
    /// How many columns to the left of the chart's repeat that of this row begins (to the right where it is less than 0): a stitch of it would reach over the edge otherwise, as in woven cables.
    /// </summary>
    public int RepeatShift { get; init; }

    /// <summary>Its stitches in the order in which they are worked; squares without a stitch are left out.</summary>
    public ChartCell[] InWorkingOrder()
    {
        var cells = Cells.Where(c => c.Operation is not null).ToArray();
        if (Side == FabricSide.Wrong)
        {
            Array.Reverse(cells);
        }

        return cells;
    }

    /// <summary>True for stitches that are all knit or all purled, in one yarn: "knit", whatever their number.</summary>
    public static bool IsPlain(ChartCell[] cells) =>
        cells.Length > 0 && cells[0].Operation!.Id is "k" or "p" && cells.All(c => c.Operation!.Id == cells[0].Operation!.Id && c.Colour == cells[0].Colour);
}

/// <summary>The part of a chart that is worked again and again.</summary>
/// <param name="From">Its rightmost column.</param>
/// <param name="Columns">How many columns it has.</param>
/// <param name="Times">How often it is worked, one number a size; null where the chart does not tell.</param>
public sealed record ChartRepeat(int From, int Columns, PerSize<int?>? Times)
{
    /// <summary>The stitches of a row before the repeat, in it and behind it, in the order in which they are worked; behind it none where none is in it.</summary>
    public (ChartCell[] Before, ChartCell[] Within, ChartCell[] Behind) Part(ChartRow row)
    {
        var (cells, from) = (row.InWorkingOrder(), From + row.RepeatShift);
        bool IsWithin(ChartCell cell) => cell.Column >= from && cell.Column < from + Columns;
        var before = cells.TakeWhile(c => !IsWithin(c)).ToArray();
        var within = cells.Where(IsWithin).ToArray();
        return (before, within, cells[(before.Length + within.Length)..]);
    }
}

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

    /// <summary>True when the source holds it square by square and no words give the same rows.</summary>
    public bool StandsAlone => Block is { } block && Rows.Any(r => block.Contains(r.Origin));

    /// <summary>True when it is worked in rounds.</summary>
    public required bool IsRound { get; init; }

    /// <summary>Its rows from the bottom.</summary>
    public required ImmutableArray<ChartRow> Rows { get; init; }

    /// <summary>How many columns it has.</summary>
    public required int Columns { get; init; }

    /// <summary>What is repeated; null for nothing.</summary>
    public ChartRepeat? Repeat { get; init; }
}
