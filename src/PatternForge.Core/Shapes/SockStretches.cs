using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Shapes;

/// <summary>The parts of a sock, one after the other in the order of work: how far each has come after each of its lines, and with how many stitches. In one size.</summary>
internal sealed class SockStretches
{
    private readonly ImmutableArray<ShapedLine> _lines;
    private readonly int _size;
    private readonly Gauge _gauge;
    private readonly LineHeights _heights;

    public SockStretches(ImmutableArray<ShapedLine> lines, int size, int sizes, Gauge gauge)
    {
        (_lines, _size, _gauge) = (lines, size, gauge);
        _heights = new LineHeights(gauge, size, sizes) { IsFoot = true };
    }

    /// <summary>Why a part came to no end, as the end of a sentence.</summary>
    public string? Reason { get; private set; }

    /// <summary>A place for each line, as if all were worked on and on.</summary>
    public List<OutlineLevel> Levels { get; } = [];

    /// <summary>How far the parts before have come, in centimetres.</summary>
    public decimal Done { get; private set; }

    /// <summary>The places after the lines of a part, with its beginning; null, with a reason, where one is not known.</summary>
    /// <param name="from">The first line.</param>
    /// <param name="to">The line behind the last.</param>
    /// <param name="cm">How far it is worked already: lengths are measured from there, or from where the part begins.</param>
    /// <param name="stitches">The stitches before it; 0 where its first line tells them.</param>
    /// <param name="isRound">True for rounds, which lie flat with half of them in front.</param>
    public List<(decimal Cm, int Stitches)>? Of(int from, int to, decimal cm, int stitches, bool isRound)
    {
        var places = new List<(decimal Cm, int Stitches)>();
        var start = cm;
        void Place(ShapedLine line, int count)
        {
            var half = (_gauge.Across(count) ?? 0) / (isRound ? 4 : 2);
            places.Add((cm, count));
            Levels.Add(new OutlineLevel(line.Worked.Index, Done + cm - start, -half, half, count));
        }

        if (stitches > 0)
        {
            Place(_lines[from], stitches);
        }

        for (var i = from; i < to; i++)
        {
            var (line, worked) = (_lines[i], _lines[i].Worked);
            if (line.IsForOthers(_size))
            {
                Levels.Add(Levels[^1]); // as many places in every size
                continue;
            }

            if (IsSilent(line) || worked.After[_size] is 0)
            {
                continue; // grafted, gathered up, ends woven in
            }

            if (worked.Status != LineStatus.Checked || worked.After[_size] is not { } after)
            {
                Reason = $"{line.Words} is not understood";
                return null;
            }

            if (_heights.After(line, cm, start, null) is not { } next || next < cm)
            {
                Reason = $"it is not known how many rows there are at {line.Words}";
                return null;
            }

            if (places.Count == 0)
            {
                Place(line, after);
            }

            cm = next;
            Place(line, after);
        }

        if (places.Count < 2)
        {
            Reason = $"it is not known how many rows there are at {_lines[from].Words}";
            return null;
        }

        Done += cm - start;
        return places;
    }

    /// <summary>True for a word to the maker, with no stitches before or after it that anybody could count.</summary>
    public static bool IsSilent(ShapedLine line) => line.Worked.After.All(a => a is null or 0) && line.Worked.Before.All(b => b is null or 0);
}
