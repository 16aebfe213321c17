using System.Collections.Immutable;
using System.Runtime.CompilerServices;
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

/// <summary>
/// The two needles of one size: the left one (to be worked, next stitch last in the list) and the right one (worked, newest stitch last in the list).
/// Stitches are kept as runs, so a row costs by its steps and not by its stitches. Every change goes through the few methods at the end, which note it
/// while a lifeline is in.
/// </summary>
public sealed class Needles
{
    private readonly List<string> _names;
    private readonly Unravelling _changes = new();
    private List<Run> _left;
    private List<Run> _right;

    /// <summary>Empty needles.</summary>
    public Needles()
    {
        _left = [];
        _right = [];
        _names = [];
    }

    private Needles(Needles other)
    {
        _left = [.. other._left];
        _right = [.. other._right];
        _names = other._names;
        LeftCount = other.LeftCount;
        RightCount = other.RightCount;
    }

    /// <summary>Stitches still to be worked.</summary>
    public int LeftCount { get; private set; }

    /// <summary>Stitches worked in this row.</summary>
    public int RightCount { get; private set; }

    /// <summary>All live stitches.</summary>
    public int Count => LeftCount + RightCount;

    /// <summary>A copy: what is done to one of the two does not show in the other.</summary>
    public Needles Copy() => new(this);

    /// <summary>True when any mark of that kind is on either needle.</summary>
    public bool Has(PlaceMark mark) => _left.Exists(r => r.Mark == mark) || _right.Exists(r => r.Mark == mark);

    /// <summary>The sections between markers, in the order in which the next row meets them; empty where there is no marker.</summary>
    public ImmutableArray<MarkedSection> Sections()
    {
        if (RightCount > 0 || !Has(PlaceMark.Marker))
        {
            return [];
        }

        var sections = ImmutableArray.CreateBuilder<MarkedSection>();
        var stitches = 0;
        for (var i = _left.Count - 1; i >= 0; i--)
        {
            stitches += _left[i].Count;
            if (_left[i].Mark == PlaceMark.Marker)
            {
                sections.Add(new MarkedSection(stitches, _left[i].Name == 0 ? "" : _names[_left[i].Name - 1]));
                stitches = 0;
            }
        }

        sections.Add(new MarkedSection(stitches, null));
        return sections.ToImmutable();
    }

    /// <summary>Takes up to so many stitches off the left needle; marks met on the way are slipped. Returns how many there were.</summary>
    public int Take(int count)
    {
        var taken = 0;
        while (taken < count && _left.Count > 0)
        {
            var run = _left[^1];
            if (run.Mark != PlaceMark.None)
            {
                Pop(_left);
                if (run.Mark != PlaceMark.Gap)
                {
                    Push(_right, run);
                }

                continue;
            }

            var part = Math.Min(run.Count, count - taken);
            taken += part;
            Shorten(_left, _left.Count - 1, part);
        }

        LeftCount -= taken;
        return taken;
    }

    /// <summary>Puts stitches on the right needle.</summary>
    public void Put(StitchKind kind, int count)
    {
        if (count > 0)
        {
            Add(_right, kind, count);
            RightCount += count;
        }
    }

    /// <summary>Puts stitches on the left needle, to be worked next.</summary>
    public void PutLeft(StitchKind kind, int count)
    {
        if (count > 0)
        {
            Add(_left, kind, count);
            LeftCount += count;
        }
    }

    /// <summary>Takes up to so many of the newest stitches off the right needle. Returns how many there were.</summary>
    public int Drop(int count)
    {
        var dropped = 0;
        for (var i = _right.Count - 1; i >= 0 && dropped < count; i--)
        {
            if (_right[i].Mark == PlaceMark.None)
            {
                var part = Math.Min(_right[i].Count, count - dropped);
                dropped += part;
                Shorten(_right, i, part);
            }
        }

        RightCount -= dropped;
        return dropped;
    }

    /// <summary>Places a mark at the working place.</summary>
    public void Place(PlaceMark mark, string? name = null) => Push(_right, new Run(mark, NumberOf(name)));

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
                Replace(_left, at - 1, run with { Count = run.Count - part });
                Insert(_left, at, run with { Count = part });
                break;
            }

            passed += run.Count;
            at--;
        }

        Insert(_left, at, new Run(mark, 0));
    }

    /// <summary>Slips the mark before the next stitch; false when there is none.</summary>
    public bool SlipMark(PlaceMark mark, bool keep)
    {
        for (var i = _left.Count - 1; i >= 0 && _left[i].Mark != PlaceMark.None; i--)
        {
            if (_left[i].Mark == mark)
            {
                var run = _left[i];
                Remove(_left, i);
                if (keep)
                {
                    Push(_right, run);
                }

                return true;
            }
        }

        return false;
    }

    /// <summary>Stitches up to the first mark that is at least <paramref name="before"/> stitches away, and not right here; null when there is none.</summary>
    public int? DistanceTo(PlaceMark mark, int before, string? name)
    {
        var number = name is null ? 0 : _names.IndexOf(name) + 1;
        if (name is not null && number == 0)
        {
            return null;
        }

        var passed = 0;
        for (var i = _left.Count - 1; i >= 0; i--)
        {
            if (_left[i].Mark == mark && passed >= Math.Max(before, 1) && (name is null || _left[i].Name == number))
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

    /// <summary>Stitches up to the next mark of any kind, the mark right here passed over; at least <paramref name="enough"/> where it is that far or farther.</summary>
    public int DistanceToMark(int enough)
    {
        var passed = 0;
        for (var i = _left.Count - 1; i >= 0 && passed < enough; i--)
        {
            if (_left[i].Mark != PlaceMark.None && passed > 0)
            {
                return passed;
            }

            passed += _left[i].Count;
        }

        return Math.Max(passed, 1);
    }

    /// <summary>Stitches before the next mark of any kind, 0 where one is right here; at least <paramref name="enough"/> where there are so many.</summary>
    internal int PlainAhead(int enough)
    {
        var plain = 0;
        for (var i = _left.Count - 1; i >= 0 && plain < enough && _left[i].Mark == PlaceMark.None; i--)
        {
            plain += _left[i].Count;
        }

        return plain;
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

    /// <summary>The work is turned: the needles change places. A mark shows where when stitches were left.</summary>
    public void Turn()
    {
        var isShort = LeftCount > 0 && RightCount > 0;
        Exchange();
        (LeftCount, RightCount) = (RightCount, LeftCount);
        if (isShort)
        {
            Push(_right, new Run(PlaceMark.Gap, 0));
        }
    }

    /// <summary>The round ends, or the row is slid back: the right needle is worked again in the same order.</summary>
    public void Restart()
    {
        while (_left.Count > 0)
        {
            var run = _left[^1];
            Pop(_left);
            Push(_right, run);
        }

        Reverse();
        Exchange();
        LeftCount += RightCount;
        RightCount = 0;
    }

    /// <summary>In a ring, the stitches after the left needle's last are the right needle's first: brings up to so many of them round. Marks passed on the way are lost.</summary>
    public void BringRound(int count)
    {
        var brought = new List<Run>();
        var (wanted, passed) = (Math.Min(count, RightCount), 0);
        count = wanted;
        while (wanted > 0)
        {
            var run = _right[passed];
            var part = Math.Min(run.Count, wanted);
            wanted -= part;
            if (run.Mark == PlaceMark.None)
            {
                brought.Add(run with { Count = part });
            }

            if (part == run.Count)
            {
                passed++;
            }
            else
            {
                Replace(_right, passed, run with { Count = run.Count - part });
            }
        }

        RemoveFirst(_right, passed);
        brought.Reverse();
        InsertFirst(_left, brought);
        LeftCount += count;
        RightCount -= count;
    }

    /// <summary>All stitches and marks leave the needles.</summary>
    public void Clear()
    {
        while (_left.Count > 0)
        {
            Pop(_left);
        }

        while (_right.Count > 0)
        {
            Pop(_right);
        }

        LeftCount = RightCount = 0;
    }

    /// <summary>A thread through all live stitches, to rip back to. It stays in until it is taken out; the last one put in goes first.</summary>
    internal Lifeline PutLifeline() => _changes.Begin(LeftCount, RightCount);

    /// <summary>Rips back to a lifeline, which stays in.</summary>
    internal void RipBackTo(Lifeline lifeline)
    {
        _changes.Undo(lifeline, ref _left, ref _right);
        (LeftCount, RightCount) = (lifeline.LeftCount, lifeline.RightCount);
    }

    /// <summary>Takes out the lifeline that was put in last.</summary>
    internal void TakeOutLifeline() => _changes.End();

    private int NumberOf(string? name)
    {
        if (name is null)
        {
            return 0;
        }

        if (!_names.Contains(name))
        {
            _names.Add(name);
        }

        return _names.IndexOf(name) + 1;
    }

    private void Add(List<Run> needle, StitchKind kind, int count)
    {
        if (needle.Count > 0 && needle[^1] is { Mark: PlaceMark.None } top && top.Kind == kind)
        {
            Replace(needle, needle.Count - 1, top with { Count = top.Count + count });
        }
        else
        {
            Push(needle, new Run(kind, count));
        }
    }

    /// <summary>So many stitches of a run are gone; with the last of them the run is.</summary>
    private void Shorten(List<Run> needle, int at, int by)
    {
        var run = needle[at];
        if (by < run.Count)
        {
            Replace(needle, at, run with { Count = run.Count - by });
        }
        else
        {
            Remove(needle, at);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Push(List<Run> needle, Run run)
    {
        _changes.Pushed(needle == _left);
        needle.Add(run);
    }

    private void Pop(List<Run> needle) => Remove(needle, needle.Count - 1);

    private void Replace(List<Run> needle, int at, Run run)
    {
        _changes.Replaced(needle == _left, at, needle[at]);
        needle[at] = run;
    }

    private void Insert(List<Run> needle, int at, Run run)
    {
        _changes.Inserted(needle == _left, at);
        needle.Insert(at, run);
    }

    private void Remove(List<Run> needle, int at)
    {
        _changes.Removed(needle == _left, at, needle[at]);
        needle.RemoveAt(at);
    }

    private void RemoveFirst(List<Run> needle, int count)
    {
        for (var i = 0; i < count; i++)
        {
            _changes.Removed(needle == _left, 0, needle[i]);
        }

        needle.RemoveRange(0, count);
    }

    private void InsertFirst(List<Run> needle, List<Run> runs)
    {
        for (var i = 0; i < runs.Count; i++)
        {
            _changes.Inserted(needle == _left, 0);
        }

        needle.InsertRange(0, runs);
    }

    private void Exchange()
    {
        _changes.Exchanged();
        (_left, _right) = (_right, _left);
    }

    private void Reverse()
    {
        _changes.Reversed();
        _right.Reverse();
    }
}
