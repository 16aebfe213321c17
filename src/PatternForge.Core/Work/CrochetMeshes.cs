using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>Works filet: a mesh spans two chains or stitches of the row below and the stitch after them. Rows told in meshes are counted in meshes.</summary>
internal sealed class CrochetMeshes
{
    private const int Wide = 2;

    private static readonly Operation Double = OperationTable.Find(Craft.Crochet, Dialect.Us, "dc") ?? throw new InvalidOperationException("The stitch table lacks dc.");

    private readonly CrochetRun _run;

    public CrochetMeshes(CrochetRun run) => _run = run;

    private CrochetCursor Below => _run.Below;

    public void Work(MeshStep step)
    {
        var count = _run.In(step.Meshes);
        if (Below.IsRing || Below.IsFoundation || Below.Row.IsCountOnly)
        {
            _run.NotKnown = true;
            return;
        }

        if (!step.IsOpen || _run.Tops.TurningChain is null)
        {
            _run.Tops.Notes?.Spoil(); // where they go is told in squares
        }

        _run.WorkedStitches = true;
        _run.Depth = Math.Max(1, _run.Depth);
        if (Below.Row.Tops.Any(t => t.Stitch is { IsSpecial: true, Id: "meshes" } mesh && t.Counts))
        {
            Units(step, count);
            return;
        }

        if (!_run.Tops.HasStitches)
        {
            // The turning chain that begins the row, or its first stitch where none is told.
            _run.Tops.TakeChains();
            Below.First(new Thing(ThingKind.Stitch), 1);
            _run.Tops.Make(Double, 1, Below.Last);
        }

        for (var i = 0; i < count && _run.Go(); i++)
        {
            One(step);
        }
    }

    private void Units(MeshStep step, int count)
    {
        _run.Tops.TakeChains();
        var mesh = Below.Row.Tops.First(t => t.Counts).Stitch!;
        for (var i = 0; i < count && _run.Go(); i++)
        {
            Below.Next(new Place(PlaceKind.Next, new Thing(ThingKind.Stitch), step.Origin));
            _run.Tops.Make(mesh, 1, Below.Last);
        }
    }

    private void One(MeshStep step)
    {
        var stitch = new Place(PlaceKind.Next, new Thing(ThingKind.Stitch), step.Origin);
        if (!Below.IsAtSpace)
        {
            for (var i = 0; i < Wide; i++)
            {
                Below.Next(stitch);
            }
        }

        Below.Next(stitch);
        if (step.IsOpen)
        {
            _run.Tops.Chain(Wide);
            _run.Tops.Make(Double, 1, Below.Last);
        }
        else
        {
            _run.Tops.Make(Double, Wide + 1, Below.Last);
        }
    }
}
