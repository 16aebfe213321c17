using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// Rows on top of each other, each stitch over the place that it is worked into: first rows from right to left, the next back. A stitch's head is as high
/// over its foot as the stitch is tall, so that rows of mixed heights fit into each other as in the fabric.
/// </summary>
internal sealed class FlatLayout
{
    private const double Clear = 8;

    private readonly CrochetDiagram _diagram;
    private readonly DiagramLayout _layout = new();
    private readonly List<Spot> _ridge = [];
    private Spot[] _tops = [];

    public FlatLayout(CrochetDiagram diagram) => _diagram = diagram;

    public DiagramLayout Make()
    {
        Start();
        for (var r = 0; r < _diagram.Rows.Length; r++)
        {
            Row(_diagram.Rows[r], r);
        }

        return _layout;
    }

    private void Start()
    {
        _tops = new Spot[_diagram.Start == DiagramStart.Nothing ? 0 : _diagram.StartCount];
        for (var i = 0; i < _tops.Length; i++)
        {
            var way = _diagram.Rows[0].IsFront ? -1 : 1; // counted as the first row meets them
            var at = new Spot(way * i * DiagramMeasures.Pitch, 0);
            _tops[i] = at + new Spot(0, 3.5);
            if (i >= _diagram.Lifted)
            {
                _layout.Start.Add(new Oval(at, 0));
            }
        }
    }

    private void Row(DiagramRow row, int number)
    {
        var marks = new DiagramRowMarks(row, number);
        marks.Fan(isRound: false);
        var way = row.IsFront ? -1.0 : 1.0;
        var heads = marks.Heads;
        var wanted = new double[heads.Count];
        for (var i = 0; i < heads.Count; i++)
        {
            wanted[i] = IsPastChain(heads[i]) ? (_tops[_diagram.Lifted].X * way) - DiagramMeasures.Pitch : heads[i].IsBeside || Below(heads[i]).Count == 0 ? double.NaN : Below(heads[i]).Average(s => s.X * way) + heads[i].Fan;
        }

        for (var i = heads.Count - 1; i >= 0; i--)
        {
            wanted[i] = !double.IsNaN(wanted[i]) ? wanted[i] : i + 1 < heads.Count ? wanted[i + 1] - heads[i + 1].GapBefore : double.NaN;
        }

        for (var i = 0; i < heads.Count; i++)
        {
            wanted[i] = !double.IsNaN(wanted[i]) ? wanted[i] : i > 0 ? wanted[i - 1] + heads[i].GapBefore : 0;
        }

        var at = DiagramMeasures.Spread(wanted, [.. heads.Select(h => h.GapBefore)]);
        var tops = new Spot[row.Tops];
        for (var i = 0; i < heads.Count; i++)
        {
            Place(heads[i], at[i] * way, i + 1 < heads.Count ? heads[i + 1] : heads[i], tops);
        }

        foreach (var (mark, before, after) in marks.Spaces)
        {
            if (before is not null && after < heads.Count)
            {
                Arc(mark, before.Mark, heads[after].Mark, way, tops);
            }
        }

        foreach (var (mark, before) in marks.OnTop)
        {
            var on = mark.Stitch.Bases is [{ Kind: DiagramPlace.Below } below] ? _tops[below.Top] : before?.Mark.Head ?? (_tops.Length > 0 ? _tops[0] : default);
            if (mark.Stitch.Mark == DiagramMark.Picot)
            {
                DiagramLayout.Picot(mark, on, Math.PI / 2);
            }
            else
            {
                mark.Feet.Add(on);
                mark.Head = on + new Spot(0, 3);
            }
        }

        _layout.Marks.AddRange(marks.All);
        var first = heads.FirstOrDefault()?.Mark;
        if (row.Number is { } said && first is not null)
        {
            var edge = heads.Min(h => Math.Min(h.Mark.Head.X * way, h.Mark.Feet.Min(f => f.X * way)));
            _layout.Numbers.Add(new RowNumber(new Spot((edge - 16) * way, (first.Head.Y + first.Feet[0].Y) / 2), said.ToString(CultureInfo.InvariantCulture), number));
        }

        _tops = tops;
        _ridge.RemoveAll(p => p.Y < tops.Min(t => t.Y) - 120);
        _ridge.AddRange(tops);
    }

    /// <summary>Foundation chains that count as a stitch stand beside those that lie.</summary>
    private bool IsPastChain(DiagramHead head) =>
        head.Mark is { Row: 0, Stitch: { Mark: DiagramMark.TurningChain, Counts: true, Bases: [{ Kind: DiagramPlace.Nothing }] } } && _diagram.Start == DiagramStart.Chain && _diagram.Lifted < _tops.Length;

    private List<Spot> Below(DiagramHead head) => [.. head.Mark.Stitch.Bases.Where(b => b.Kind == DiagramPlace.Below && b.Top >= 0 && b.Top < _tops.Length).Select(b => _tops[b.Top])];

    private void Place(DiagramHead head, double x, DiagramHead next, Spot[] tops)
    {
        var mark = head.Mark;
        var below = Below(head);
        if (head.IsBeside || below.Count == 0)
        {
            var floor = below.Count > 0 ? below[0].Y : Below(next) is { Count: > 0 } beside ? beside[0].Y : _diagram.Start == DiagramStart.Chain && mark.Row == 0 ? 3.5 : 0;
            below = [new Spot(x, floor)];
        }

        mark.Feet.AddRange(below);
        mark.Head = new Spot(x, below.Max(f => f.Y) + DiagramMeasures.HeightOf(mark.Stitch));
        if (mark.Stitch.Mark is DiagramMark.TurningChain or DiagramMark.SkippedChains)
        {
            DiagramMeasures.Upright(mark);
        }

        if (mark.Stitch.Top >= 0)
        {
            tops[mark.Stitch.Top] = mark.Head;
        }
    }

    private void Arc(PlacedMark mark, PlacedMark before, PlacedMark after, double way, Spot[] tops)
    {
        var step = Math.Min(6, Math.Abs(after.Head.X - before.Head.X) * 0.28);
        var (a, b) = (before.Head + new Spot(step * way, 0), after.Head - new Spot(step * way, 0));
        var rise = DiagramLayout.Rise(mark.Stitch.Chains, a.DistanceTo(b));
        foreach (var point in _ridge)
        {
            var t = (point.X - a.X) / (b.X - a.X);
            if (t is > 0.12 and < 0.88)
            {
                rise = Math.Max(rise, (point.Y + Clear - (a.Y + ((b.Y - a.Y) * t))) / (4 * t * (1 - t)));
            }
        }

        Spot Path(double t) => new(a.X + ((b.X - a.X) * t), a.Y + ((b.Y - a.Y) * t) + (4 * rise * t * (1 - t)));
        DiagramLayout.Along(mark, Path);
        mark.Feet.Add(a);
        mark.Head = Path(0.5);
        tops[mark.Stitch.Top] = mark.Head + new Spot(0, 3.5);
    }
}
