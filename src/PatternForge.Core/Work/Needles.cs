using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>What stands between stitches on a needle.</summary>
public enum PlaceMark
{
    /// <summary>Nothing: a run of stitches.</summary>
    None,

    /// <summary>A marker.</summary>
    Marker,

    /// <summary>A gap: a turn, a bind-off, a wrapped stitch.</summary>
    Gap,

    /// <summary>The end of a needle.</summary>
    NeedleEnd,
}

/// <summary>A run of equal stitches, or a mark between two stitches (then <see cref="Count"/> is 0).</summary>
public readonly record struct Run(StitchKind Kind, int Count, PlaceMark Mark, string? Name);

/// <summary>
/// The two needles of one size: the left one (to be worked, next stitch last in the list) and the right one (worked, newest stitch last in the list).
/// Stitches are kept as runs, so a row costs by its steps and not by its stitches.
/// </summary>
public sealed class Needles
{
    private List<Run> _left;
    private List<Run> _right;

    /// <summary>Empty needles.</summary>
    public Needles()
    {
        _left = [];
        _right = [];
    }

    private Needles(Needles other)
    {
        _left = [.. other._left];
        _right = [.. other._right];
        LeftCount = other.LeftCount;
        RightCount = other.RightCount;
    }

    /// <summary>Stitches still to be worked.</summary>
    public int LeftCount { get; private set; }

    /// <summary>Stitches worked in this row.</summary>
    public int RightCount { get; private set; }

    /// <summary>All live stitches.</summary>
    public int Count => LeftCount + RightCount;

    /// <summary>A copy that shares nothing.</summary>
    public Needles Copy() => new(this);

    /// <summary>True when a mark of that kind lies directly before the next stitch.</summary>
    public bool IsNext(PlaceMark mark) => _left.Count > 0 && _left[^1].Mark == mark;

    /// <summary>True when any mark of that kind is on either needle.</summary>
    public bool Has(PlaceMark mark) => _left.Exists(r => r.Mark == mark) || _right.Exists(r => r.Mark == mark);

    /// <summary>Takes up to so many stitches off the left needle; marks met on the way are slipped. Returns how many there were.</summary>
    public int Take(int count)
    {
        var taken = 0;
        while (taken < count && _left.Count > 0)
        {
            var run = _left[^1];
            _left.RemoveAt(_left.Count - 1);
            if (run.Mark != PlaceMark.None)
            {
                if (run.Mark != PlaceMark.Gap)
                {
                    _right.Add(run);
                }

                continue;
            }

            var part = Math.Min(run.Count, count - taken);
            taken += part;
            if (part < run.Count)
            {
                _left.Add(run with { Count = run.Count - part });
            }
        }

        LeftCount -= taken;
        return taken;
    }

    /// <summary>Puts stitches on the right needle.</summary>
    public void Put(StitchKind kind, int count)
    {
        if (count > 0)
        {
            Push(_right, kind, count);
            RightCount += count;
        }
    }

    /// <summary>Puts stitches on the left needle, to be worked next.</summary>
    public void PutLeft(StitchKind kind, int count)
    {
        if (count > 0)
        {
            Push(_left, kind, count);
            LeftCount += count;
        }
    }

    /// <summary>Takes up to so many of the newest stitches off the right needle. Returns how many there were.</summary>
    public int Drop(int count)
    {
        var dropped = 0;
        for (var i = _right.Count - 1; i >= 0 && dropped < count; i--)
        {
            if (_right[i].Mark != PlaceMark.None)
            {
                continue;
            }

            var part = Math.Min(_right[i].Count, count - dropped);
            dropped += part;
            if (part == _right[i].Count)
            {
                _right.RemoveAt(i);
            }
            else
            {
                _right[i] = _right[i] with { Count = _right[i].Count - part };
            }
        }

        RightCount -= dropped;
        return dropped;
    }

    /// <summary>Places a mark at the working place.</summary>
    public void Place(PlaceMark mark, string? name = null) => _right.Add(new Run(default, 0, mark, name));

    /// <summary>Places a mark so many stitches ahead on the left needle.</summary>
    public void PlaceAhead(PlaceMark mark, int stitches)
    {
        var at = _left.Count;
        var passed = 0;
        while (at > 0 && passed < stitches)
        {
            var run = _left[at - 1];
            if (passed + run.Count > stitches)
            {
                var part = stitches - passed;
                _left[at - 1] = run with { Count = run.Count - part };
                _left.Insert(at, run with { Count = part });
                break;
            }

            passed += run.Count;
            at--;
        }

        _left.Insert(at, new Run(default, 0, mark, null));
    }

    /// <summary>Slips the mark before the next stitch; false when there is none.</summary>
    public bool SlipMark(PlaceMark mark, bool keep)
    {
        for (var i = _left.Count - 1; i >= 0 && _left[i].Mark != PlaceMark.None; i--)
        {
            if (_left[i].Mark == mark)
            {
                var run = _left[i];
                _left.RemoveAt(i);
                if (keep)
                {
                    _right.Add(run);
                }

                return true;
            }
        }

        return false;
    }

    /// <summary>Stitches up to the first mark that is at least <paramref name="before"/> stitches away, and not right here; null when there is none.</summary>
    public int? DistanceTo(PlaceMark mark, int before, string? name)
    {
        var passed = 0;
        for (var i = _left.Count - 1; i >= 0; i--)
        {
            if (_left[i].Mark == mark && passed >= Math.Max(before, 1) && (name is null || _left[i].Name == name))
            {
                return passed;
            }

            passed += _left[i].Count;
        }

        return null;
    }

    /// <summary>Stitches up to the last mark of that kind; null when there is none ahead.</summary>
    public int? DistanceToLast(PlaceMark mark)
    {
        var passed = 0;
        int? last = null;
        for (var i = _left.Count - 1; i >= 0; i--)
        {
            if (_left[i].Mark == mark)
            {
                last = passed;
            }

            passed += _left[i].Count;
        }

        return last;
    }

    /// <summary>Stitches up to the next mark of any kind; the mark right here is passed over.</summary>
    public int DistanceToMark()
    {
        var passed = 0;
        for (var i = _left.Count - 1; i >= 0; i--)
        {
            if (_left[i].Mark != PlaceMark.None && passed > 0)
            {
                return passed;
            }

            passed += _left[i].Count;
        }

        return Math.Max(passed, 1);
    }

    /// <summary>Stitches worked since the last gap on the right needle: those after a bind-off.</summary>
    public int SinceGap()
    {
        var since = 0;
        for (var i = _right.Count - 1; i >= 0 && _right[i].Mark != PlaceMark.Gap; i--)
        {
            since += _right[i].Count;
        }

        return since;
    }

    /// <summary>How many marks of a kind are still ahead.</summary>
    public int MarksAhead(PlaceMark mark) => _left.Count(r => r.Mark == mark);

    /// <summary>The work is turned: the needles change places. A mark shows where when stitches were left.</summary>
    public void Turn()
    {
        var isShort = LeftCount > 0 && RightCount > 0;
        (_left, _right) = (_right, _left);
        (LeftCount, RightCount) = (RightCount, LeftCount);
        if (isShort)
        {
            _right.Add(new Run(default, 0, PlaceMark.Gap, null));
        }
    }

    /// <summary>The round ends, or the row is slid back: the right needle is worked again in the same order.</summary>
    public void Restart()
    {
        while (_left.Count > 0)
        {
            var run = _left[^1];
            _left.RemoveAt(_left.Count - 1);
            _right.Add(run);
        }

        _right.Reverse();
        (_left, _right) = (_right, _left);
        LeftCount += RightCount;
        RightCount = 0;
    }

    /// <summary>In a ring, the stitches after the left needle's last are the right needle's first: brings up to so many of them round.</summary>
    public void BringRound(int count)
    {
        var first = _right.FindIndex(r => r.Mark == PlaceMark.None);
        if (first < 0)
        {
            return;
        }

        var run = _right[first];
        var part = Math.Min(run.Count, count);
        _right.RemoveRange(0, first);
        if (part == run.Count)
        {
            _right.RemoveAt(0);
        }
        else
        {
            _right[0] = run with { Count = run.Count - part };
        }

        _left.Insert(0, run with { Count = part });
        LeftCount += part;
        RightCount -= part;
    }

    /// <summary>All stitches and marks leave the needles.</summary>
    public void Clear()
    {
        _left.Clear();
        _right.Clear();
        LeftCount = RightCount = 0;
    }

    private static void Push(List<Run> needle, StitchKind kind, int count)
    {
        if (needle.Count > 0 && needle[^1] is { Mark: PlaceMark.None } top && top.Kind == kind)
        {
            needle[^1] = top with { Count = top.Count + count };
        }
        else
        {
            needle.Add(new Run(kind, count, PlaceMark.None, null));
        }
    }
}
