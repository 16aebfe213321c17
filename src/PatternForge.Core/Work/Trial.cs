using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>What one line came to in one size.</summary>
internal sealed class RowOutcome
{
    public List<Problem> Problems { get; } = [];

    public List<Reading> Readings { get; } = [];

    /// <summary>True when something is wrong, and not only unknown.</summary>
    public bool IsWrong
    {
        get
        {
            foreach (var problem in Problems)
            {
                if (problem.Kind != ProblemKind.Unknown)
                {
                    return true;
                }
            }

            return false;
        }
    }

    public int? Before { get; set; }

    public int? After { get; set; }

    /// <summary>Crochet: the row that it made; null in other crafts.</summary>
    public RowBelow? Made { get; set; }

    /// <summary>What each clause did; null where nobody asked.</summary>
    public ClauseNotes? Notes { get; set; }

    /// <summary>Rows that the label names and rows that the words make, where they differ.</summary>
    public (int Label, int Made)? LabelRows { get; set; }
}

/// <summary>One try of a line in one size: the size's state, the readings that are tried, what it may cost, and what it comes to.</summary>
internal sealed record Trial(SizeState State, Choices Choices, Budget Budget, RowOutcome Outcome)
{
    /// <summary>What each clause does, written down; null where nobody asked.</summary>
    public ClauseNotes? Notes { get; init; }

    /// <summary>Each stitch as it is worked, for a chart; null where nobody asked.</summary>
    public StitchNotes? Stitches { get; init; }

    /// <summary>The number that an amount has in this size; null where there is none.</summary>
    public int? In(Amount? amount) => amount?[State.Size];

    /// <summary>Something is wrong, and from here the work cannot be followed any further.</summary>
    public void Lose(Problem problem)
    {
        Outcome.Problems.Add(problem);
        State.IsKnown = false;
    }
}
