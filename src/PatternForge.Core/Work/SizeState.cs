using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>One physical row that has been worked: its steps, to be worked again when a later line says so. Empty steps are a row that changes nothing.</summary>
internal sealed record WorkedRow(BoundRow Row, System.Collections.Immutable.ImmutableArray<Step> Steps);

/// <summary>The work of one size: what is on the needles, what is held, and which rows have been worked.</summary>
internal sealed class SizeState
{
    public SizeState(int size) => Size = size;

    public int Size { get; }

    public Needles Needles { get; set; } = new();

    /// <summary>Groups of held stitches, in the order they were put on hold.</summary>
    public List<int> Held { get; private set; } = [];

    /// <summary>False until the first count is known, and again after a row that could not be followed.</summary>
    public bool IsKnown { get; set; }

    /// <summary>True while the pattern's numbers leave this size out (a dash in the cast-on's list).</summary>
    public bool IsLeftOut { get; set; }

    /// <summary>True when a starting line stands after rows that were not worked: not all rows before it need be there.</summary>
    public bool StartsLate { get; set; }

    /// <summary>False when stitches are counted but the places of markers are not known any more.</summary>
    public bool KnowsPlaces { get; set; } = true;

    public bool InTheRound { get; set; }

    /// <summary>The side of the next row; null when not known.</summary>
    public FabricSide? NextSide { get; set; }

    /// <summary>Physical rows of this section, oldest first.</summary>
    public List<WorkedRow> History { get; } = [];

    /// <summary>Rows by number.</summary>
    public Dictionary<int, BoundRow> Numbered { get; } = [];

    /// <summary>Rows by name.</summary>
    public Dictionary<string, BoundRow> Named { get; } = new(StringComparer.Ordinal);

    /// <summary>Rows whose mistake has been told in this size.</summary>
    public HashSet<BoundRow> Failed { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>The last row number worked; null at the start of a part.</summary>
    public int? LastNumber { get; set; }

    /// <summary>True after rows without numbers: the next number need not follow the last.</summary>
    public bool NumbersAreLoose { get; set; }

    /// <summary>How much more the last wrong claim stated than was worked; 0 when none is open.</summary>
    public int Drift { get; set; }

    public int Count => Needles.Count;

    /// <summary>The row of a number: given itself, or by a rule for its parity ("Row 2 and all WS rows").</summary>
    public bool TryRow(int number, out BoundRow row)
    {
        if (Numbered.TryGetValue(number, out row!))
        {
            return true;
        }

        BoundRow? rule = null;
        foreach (var (first, candidate) in Numbered)
        {
            if (candidate.IsRule && first <= number && (number - first) % 2 == 0 && (rule is null || rule.Numbers[0] < first))
            {
                rule = candidate;
            }
        }

        row = rule!;
        return rule is not null;
    }

    /// <summary>A new piece: rows, names and numbers of the one before mean nothing any more.</summary>
    public void BeginSection()
    {
        Numbered.Clear();
        LastNumber = null;
        NextSide = null;
        Drift = 0;
    }

    /// <summary>The stitches alone, for trying a reading: rows and names are shared.</summary>
    public Snapshot Save() => new(Needles.Copy(), [.. Held], IsKnown, KnowsPlaces, InTheRound, NextSide, History.Count);

    public void Restore(Snapshot saved)
    {
        Needles = saved.Needles.Copy();
        Held = [.. saved.Held];
        IsKnown = saved.IsKnown;
        KnowsPlaces = saved.KnowsPlaces;
        InTheRound = saved.InTheRound;
        NextSide = saved.NextSide;
        History.RemoveRange(saved.HistoryCount, Math.Max(0, History.Count - saved.HistoryCount));
    }

    /// <summary>Sets the count alone, when a row could not be followed but what comes after it is known.</summary>
    public void SetCount(int count)
    {
        if (count == Count && Needles.LeftCount == count)
        {
            IsKnown = true;
            return;
        }

        Needles = new Needles();
        Needles.PutLeft(Stitches.StitchKind.InPattern, count);
        IsKnown = true;
        KnowsPlaces = false;
    }

    internal sealed record Snapshot(Needles Needles, IReadOnlyList<int> Held, bool IsKnown, bool KnowsPlaces, bool InTheRound, FabricSide? NextSide, int HistoryCount);
}
