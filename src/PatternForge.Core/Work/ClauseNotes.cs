using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>
/// Writes down, while a line is worked in one size, what each clause uses and makes. Only the first time through a bracket is written out; the
/// others are counted. Nobody keeps notes unless they are asked for: rows are worked thousands of times.
/// </summary>
internal sealed class ClauseNotes
{
    private const int MostStretches = 200;
    private const int MostClauses = 400;

    private readonly List<WorkedStretch> _stretches = [];
    private readonly Stack<Open> _open = [];
    private List<WorkedClause> _clauses = [];
    private int _silent;
    private int _times = 1;
    private int _written;

    /// <summary>A clause that is being worked.</summary>
    private sealed class Open
    {
        public required Step Step { get; init; }

        public required int Left { get; init; }

        public required int Made { get; init; }

        public int Times { get; set; }

        /// <summary>Stitches worked in it that its words do not say.</summary>
        public int Unsaid { get; set; }

        public bool Turned { get; set; }

        public List<WorkedClause> Within { get; } = [];
    }

    /// <summary>What was worked so far.</summary>
    public ImmutableArray<WorkedStretch> Stretches => [.. _stretches];

    /// <summary>One row, or words for whole rows, has been worked.</summary>
    public void End(TextSpan origin, int? before, int? after, int rows)
    {
        if (_stretches.Count < MostStretches)
        {
            _stretches.Add(new WorkedStretch(origin, before, after) { Rows = rows, Times = _times, Clauses = [.. _clauses] });
        }

        (_clauses, _times) = ([], 1);
    }

    /// <summary>The row's words have been worked through so often.</summary>
    public void Through(int times) => _times = times;

    /// <summary>Nothing is written until <see cref="Speak"/>.</summary>
    public void Hush() => _silent++;

    /// <summary>Ends <see cref="Hush"/>.</summary>
    public void Speak() => _silent--;

    /// <summary>Steps begin: those of the row, of a bracket's next time through, or of an ending.</summary>
    public void Enter(ImmutableArray<Step> steps)
    {
        if (_silent > 0 || (_open.Count > 0 && IsLaterPass(_open.Peek(), steps)))
        {
            _silent++;
        }
    }

    /// <summary>They are done.</summary>
    public void Leave()
    {
        if (_silent > 0)
        {
            _silent--;
        }
    }

    /// <summary>The last time through was ripped back, and so many stitches are worked plain in its place, which the words do not say.</summary>
    public void RipBack(int plain)
    {
        if (_silent == 0 && _open.Count > 0)
        {
            _open.Peek().Times--;
            _open.Peek().Unsaid += plain;
        }
    }

    /// <summary>A clause begins.</summary>
    /// <param name="step">What it says.</param>
    /// <param name="left">Stitches still to be worked.</param>
    /// <param name="made">Stitches made so far.</param>
    public void Begin(Step step, int left, int made)
    {
        if (_silent == 0)
        {
            _open.Push(new Open { Step = step, Left = left, Made = made });
        }
    }

    /// <summary>The clause that began last is done.</summary>
    public void Finish(int left, int made)
    {
        if (_silent > 0 || _open.Count == 0)
        {
            return;
        }

        var clause = _open.Pop();
        var turned = clause.Turned || clause.Step is TurnStep or SlideStep;
        if (turned && _open.Count > 0)
        {
            _open.Peek().Turned = true;
        }

        if (clause.Step is RemarkStep or SentenceStep || ++_written > MostClauses)
        {
            return;
        }

        // Stitches cast on at the start of a row are made, and still to be worked.
        var used = clause.Left - left - clause.Unsaid;
        var more = made - clause.Made - clause.Unsaid + (clause.Step is CastOnStep or PickUpStep ? Math.Max(0, -used) : 0);
        (_open.Count > 0 ? _open.Peek().Within : _clauses).Add(new WorkedClause(clause.Step.Origin, turned ? null : Math.Max(0, used), turned ? null : more, left + clause.Unsaid)
        {
            Times = clause.Times,
            Within = [.. clause.Within],
        });
    }

    private static bool IsLaterPass(Open clause, ImmutableArray<Step> steps)
    {
        var body = clause.Step switch
        {
            GroupStep group => group.Body,
            RepeatStep repeat => repeat.Body,
            InOneStitchStep one => one.Body,
            _ => steps,
        };
        if (steps != body)
        {
            return false; // an ending, or the beginning of one more time
        }

        return ++clause.Times > 1;
    }
}
