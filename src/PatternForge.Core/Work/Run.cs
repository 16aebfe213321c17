using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>A run of equal stitches, or a mark between two stitches (then <see cref="Count"/> is 0). Small and without references, because needles are copied often.</summary>
internal readonly record struct Run
{
    private readonly byte _kind;
    private readonly byte _mark;
    private readonly ushort _name;

    /// <summary>So many stitches of a kind.</summary>
    public Run(StitchKind kind, int count)
    {
        _kind = (byte)kind;
        Count = count;
    }

    /// <summary>A mark; markers with names have the number of theirs, all else 0.</summary>
    public Run(PlaceMark mark, int name)
    {
        _mark = (byte)mark;
        _name = (ushort)Math.Min(name, ushort.MaxValue);
    }

    public int Count { get; init; }

    public StitchKind Kind => (StitchKind)_kind;

    public PlaceMark Mark => (PlaceMark)_mark;

    public int Name => _name;
}
