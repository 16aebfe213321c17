using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>Where everything of a crochet diagram stands.</summary>
internal sealed class DiagramLayout
{
    /// <summary>The marks in the order of work.</summary>
    public List<PlacedMark> Marks { get; } = [];

    /// <summary>The numbers of the rows.</summary>
    public List<RowNumber> Numbers { get; } = [];

    /// <summary>Chains of the foundation or the ring.</summary>
    public List<Oval> Start { get; } = [];

    /// <summary>The radius of a ring without chains; 0 for none.</summary>
    public double Ring { get; set; }

    // A stem may be so many times as long as its stitch is tall, and so much longer, before a drawing is no help any more.
    private const double LongStem = 3;
    private const double LongLean = 30;

    /// <summary>False where stems run across the drawing: then it is better left out.</summary>
    public bool IsClear => Marks.All(m => m.Stitch.Mark != DiagramMark.Stitch || m.Feet.All(f => f.DistanceTo(m.Head) <= (LongStem * DiagramMeasures.HeightOf(m.Stitch)) + LongLean));

    /// <summary>The layout of a diagram.</summary>
    public static DiagramLayout Of(CrochetDiagram diagram) => diagram.IsRound ? new RoundLayout(diagram).Make() : new FlatLayout(diagram).Make();

    /// <summary>Every point that has to be seen.</summary>
    public IEnumerable<Spot> Points => Marks.SelectMany(m => m.Feet.Append(m.Head).Concat(m.Ovals.Select(o => o.Centre))).Concat(Numbers.Select(n => n.At)).Concat(Start.Select(o => o.Centre)).Append(new Spot(Ring, Ring)).Append(new Spot(-Ring, -Ring));

    /// <summary>A picot: its chains in a small ring on top of the stitch before it.</summary>
    public static void Picot(PlacedMark mark, Spot on, double up)
    {
        var chains = Math.Max(2, mark.Stitch.Chains);
        var radius = Math.Max(4.5, chains * 6.5 / (2 * Math.PI));
        var centre = on + Spot.At(up, radius + 3);
        mark.Feet.Add(on);
        mark.Head = on + Spot.At(up, 2);
        for (var i = 0; i < chains; i++)
        {
            var angle = up + Math.PI + (2 * Math.PI * (i + 0.5) / chains);
            mark.Ovals.Add(new Oval(centre + Spot.At(angle, radius), angle + (Math.PI / 2)));
        }
    }

    /// <summary>Chains along a path, evenly by its length.</summary>
    /// <param name="mark">The chains.</param>
    /// <param name="path">The path, from 0 to 1.</param>
    public static void Along(PlacedMark mark, Func<double, Spot> path)
    {
        const int Steps = 60;
        var lengths = new double[Steps + 1];
        var last = path(0);
        for (var i = 1; i <= Steps; i++)
        {
            var here = path((double)i / Steps);
            lengths[i] = lengths[i - 1] + here.DistanceTo(last);
            last = here;
        }

        for (int i = 0, step = 0; i < mark.Stitch.Chains; i++)
        {
            var want = lengths[Steps] * (i + 0.5) / mark.Stitch.Chains;
            while (step < Steps - 1 && lengths[step + 1] < want)
            {
                step++;
            }

            var t = (step + ((want - lengths[step]) / Math.Max(1e-9, lengths[step + 1] - lengths[step]))) / Steps;
            mark.Ovals.Add(new Oval(path(t), (path(Math.Min(1, t + 0.01)) - path(Math.Max(0, t - 0.01))).Angle));
        }
    }

    /// <summary>How high chains rise in the middle of a chord that is too short for them: as a parabola of their length.</summary>
    public static double Rise(int chains, double chord)
    {
        var length = chains * DiagramMeasures.Chain;
        return chord <= 0 || length <= chord ? 0 : Math.Min(chord * Math.Sqrt(0.375 * ((length / chord) - 1)), length * 0.42);
    }
}
