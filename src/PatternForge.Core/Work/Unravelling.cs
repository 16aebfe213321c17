namespace PatternForge.Core.Work;

/// <summary>A thread through the live stitches: how many changes had been made when it was put in, and the stitches on each needle.</summary>
internal readonly record struct Lifeline(int Changes, int LeftCount, int RightCount);

/// <summary>
/// The changes made to two needles since a lifeline was put in, to rip back to it. Nothing is noted while none is in. Trying a repeat once more costs so
/// by its steps; a copy of the needles for each pass would cost by their stitches.
/// </summary>
internal sealed class Unravelling
{
    private enum Kind : byte
    {
        Pushed,
        Replaced,
        Inserted,
        Removed,
        Exchanged,
        Reversed,
    }

    private readonly record struct Change(Kind Kind, bool IsLeft, int At, Run Before);

    private List<Change>? _changes;
    private int _lifelines;

    public Lifeline Begin(int leftCount, int rightCount)
    {
        _lifelines++;
        return new Lifeline((_changes ??= []).Count, leftCount, rightCount);
    }

    public void End()
    {
        if (--_lifelines == 0)
        {
            _changes!.Clear();
        }
    }

    public void Pushed(bool isLeft) => Note(Kind.Pushed, isLeft, 0, default);

    public void Replaced(bool isLeft, int at, Run before) => Note(Kind.Replaced, isLeft, at, before);

    public void Inserted(bool isLeft, int at) => Note(Kind.Inserted, isLeft, at, default);

    public void Removed(bool isLeft, int at, Run before) => Note(Kind.Removed, isLeft, at, before);

    public void Exchanged() => Note(Kind.Exchanged, false, 0, default);

    public void Reversed() => Note(Kind.Reversed, false, 0, default);

    /// <summary>Takes the changes back, the last one first.</summary>
    public void Undo(Lifeline to, ref List<Run> left, ref List<Run> right)
    {
        for (var i = _changes!.Count - 1; i >= to.Changes; i--)
        {
            var change = _changes[i];
            var needle = change.IsLeft ? left : right;
            switch (change.Kind)
            {
                case Kind.Pushed:
                    needle.RemoveAt(needle.Count - 1);
                    break;
                case Kind.Replaced:
                    needle[change.At] = change.Before;
                    break;
                case Kind.Inserted:
                    needle.RemoveAt(change.At);
                    break;
                case Kind.Removed:
                    needle.Insert(change.At, change.Before);
                    break;
                case Kind.Exchanged:
                    (left, right) = (right, left);
                    break;
                case Kind.Reversed:
                    right.Reverse();
                    break;
            }
        }

        _changes.RemoveRange(to.Changes, _changes.Count - to.Changes);
    }

    private void Note(Kind kind, bool isLeft, int at, Run before)
    {
        if (_lifelines > 0)
        {
            _changes!.Add(new Change(kind, isLeft, at, before));
        }
    }
}
