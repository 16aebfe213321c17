using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>What one physical row takes, for amounts of yarn.</summary>
/// <param name="Row">The row as it is written.</param>
/// <param name="Before">Live stitches before it.</param>
/// <param name="Stitches">Stitches that it works, those cast on among them.</param>
/// <param name="Weight">The same in the shortest stitches of the craft, by the yarn that each takes.</param>
internal readonly record struct RowTally(BoundRow Row, int Before, decimal Stitches, decimal Weight);

/// <summary>Keeps what each row of a size takes while it is worked. Nobody keeps it unless amounts of yarn are asked for.</summary>
internal sealed class RowTallies
{
    private readonly List<RowTally> _rows = [];
    private (int Before, decimal Stitches, decimal Weight)? _made;

    /// <summary>How many rows there are.</summary>
    public int Count => _rows.Count;

    /// <summary>Stitches have been worked; the row that they belong to is told when it ends.</summary>
    public void Worked(int before, decimal stitches, decimal weight) => _made = (before, stitches, weight);

    /// <summary>Crochet: the tops of a row that has just been made, with the chains that it made besides.</summary>
    public void Worked(int before, CrochetRun run, RowBelow made)
    {
        var (stitches, weight) = Of(made);
        Worked(before, stitches + run.Foundation, weight + (run.Foundation * StitchYarn.Chain)); // chains at its end are the next row's turning chain
    }

    /// <summary>A physical row ends. One that is told by its number alone works what there is.</summary>
    public void End(BoundRow row, ILiveWork live)
    {
        var (stitches, weight) = live.Below is { } below ? Of(below) : (live.Count, live.Count);
        _rows.Add(_made is { } made ? new(row, made.Before, made.Stitches, made.Weight) : new(row, live.Count, stitches, weight));
        _made = null;
    }

    /// <summary>Stitches are cast on or bound off between rows.</summary>
    public void Edge(BoundRow row, int stitches)
    {
        if (stitches > 0)
        {
            _rows.Add(new(row, 0, stitches, stitches));
        }
    }

    /// <summary>Goes back to where a try began.</summary>
    public void Restore(int count)
    {
        _rows.RemoveRange(count, Math.Max(0, _rows.Count - count));
        _made = null;
    }

    /// <summary>The rows since the last time that they were taken.</summary>
    public RowTally[] Take()
    {
        RowTally[] rows = [.. _rows];
        _rows.Clear();
        _made = null;
        return rows;
    }

    private static (decimal Stitches, decimal Weight) Of(RowBelow row)
    {
        var (stitches, weight) = (0m, row.Picots * StitchYarn.Picot);
        foreach (var top in row.Tops)
        {
            stitches += top.Counts ? 1 : 0;
            weight += top.Kind switch
            {
                TopKind.Stitch => top.Stitch is { } stitch ? StitchYarn.Of(stitch) : 1,
                TopKind.Chain => StitchYarn.Chain,
                _ => top.Length * StitchYarn.Chain,
            };
        }

        return (stitches, weight);
    }
}
