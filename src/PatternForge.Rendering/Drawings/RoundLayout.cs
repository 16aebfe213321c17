using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// Rounds round their centre, anticlockwise as a right-handed maker works them: plain rounds with their stitches evenly spaced, others with each stitch over its
/// place, and motifs with corners on polygons.
/// </summary>
internal sealed class RoundLayout
{
    private const double ChainEdge = 3.5;

    private readonly CrochetDiagram _diagram;
    public DiagramLayout Layout { get; } = new();
    public double[][] Corners { get; }
    public List<Spot> Ridge { get; set; } = [];
    public Spot[] Tops { get; set; } = [];
    public double FirstFloor { get; private set; }
    public bool WasCircle { get; set; } = true;

    /// <summary>The free side of the foundation chain of an oval.</summary>
    public Spot[] Free { get; private set; } = [];

    /// <summary>Half the length of that chain; 0 for all that is no oval.</summary>
    public double Half { get; private set; }

    /// <summary>How far out a point is.</summary>
    public double LevelOf(Spot point) => Half > 0 ? RoundOval.LevelOf(point, Half) : point.Length;

    /// <summary>The way out at a point.</summary>
    public double OutwardAt(Spot point) => Half > 0 ? RoundOval.Outward(point, Half).Angle : point.Angle;

    /// <summary>The point under another one, as far out as the level says.</summary>
    public Spot Under(Spot point, double level) => Half > 0 ? point - (RoundOval.Outward(point, Half) * (LevelOf(point) - level)) : point * (level / point.Length);

    public RoundLayout(CrochetDiagram diagram)
    {
        _diagram = diagram with { Rows = [.. diagram.Rows.Select((r, i) => i == 0 ? r : Joined(r, diagram.Rows[i - 1]))] };
        Corners = diagram.Start == DiagramStart.BothSides ? [.. diagram.Rows.Select(_ => Array.Empty<double>())] : RoundCorners.Of(_diagram);
    }

    public DiagramLayout Make()
    {
        Centre();
        for (var r = 0; r < _diagram.Rows.Length; r++)
        {
            new RoundRow(this, _diagram.Rows[r], r).Make();
        }

        return Layout;
    }

    /// <summary>A stitch that closed the round below is one with the space before it.</summary>
    private static DiagramRow Joined(DiagramRow row, DiagramRow below)
    {
        var closing = below.Stitches.FirstOrDefault(s => s is { Mark: DiagramMark.Stitch, Top: > 0, Bases: [{ Kind: DiagramPlace.OwnFirst }] });
        if (closing is null || !below.Stitches.Any(s => s.Mark == DiagramMark.Chains && s.Top == closing.Top - 1))
        {
            return row;
        }

        var merged = new DiagramBase(DiagramPlace.Below, closing.Top - 1);
        return row with { Stitches = [.. row.Stitches.Select(s => s with { Bases = [.. s.Bases.Select(b => b.Kind == DiagramPlace.Below && b.Top == closing.Top ? merged : b)] })] };
    }

    private void Centre()
    {
        switch (_diagram.Start)
        {
            case DiagramStart.ChainRing:
                var radius = Math.Max(10.5, _diagram.StartCount * (DiagramMeasures.Chain + 0.5) / (2 * Math.PI));
                for (var i = 0; i < _diagram.StartCount; i++)
                {
                    var angle = 2 * Math.PI * (i + 0.5) / _diagram.StartCount;
                    Layout.Start.Add(new Oval(Spot.At(angle, radius), angle + (Math.PI / 2)));
                }

                FirstFloor = radius + 4;
                break;
            case DiagramStart.BothSides:
                BothSides();
                break;
            case DiagramStart.OneChain:
                Layout.Start.Add(new Oval(default, 0));
                FirstFloor = 7;
                break;
            default:
                Layout.Ring = 8;
                FirstFloor = 11;
                break;
        }
    }

    /// <summary>The chain lies in the middle; the first round goes along it from right to left, round its end, and back on the other side.</summary>
    private void BothSides()
    {
        var first = Math.Max(_diagram.Lifted, _diagram.Rows[0].Stitches.Where(s => s.Mark == DiagramMark.SkippedChains).Sum(s => s.Chains));
        var count = Math.Max(2, _diagram.StartCount - first);
        Half = (count - 1) * DiagramMeasures.Pitch / 2;
        (Tops, Free) = (new Spot[first + count], new Spot[first + count]);
        for (var i = 0; i < Tops.Length; i++)
        {
            var x = Half - (Math.Max(0, i - first) * DiagramMeasures.Pitch);
            (Tops[i], Free[i]) = i == Tops.Length - 1 ? (new Spot(x - ChainEdge, 0), new Spot(x - ChainEdge, 0)) : (new Spot(x, ChainEdge), new Spot(x, -ChainEdge));
            if (i >= first)
            {
                Layout.Start.Add(new Oval(new Spot(x, 0), 0));
            }
        }

        FirstFloor = ChainEdge;
    }

    public void Turn(double by)
    {
        Layout.Marks.ForEach(m => m.Turn(by));
        Tops = [.. Tops.Select(t => t.Turned(by))];
        Ridge = [.. Ridge.Select(t => t.Turned(by))];
        for (var i = 0; i < Layout.Numbers.Count; i++)
        {
            Layout.Numbers[i] = Layout.Numbers[i] with { At = Layout.Numbers[i].At.Turned(by) };
        }
    }
}
