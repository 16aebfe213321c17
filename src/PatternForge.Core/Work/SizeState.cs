using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>One physical row that has been worked: its steps, to be worked again when a later line says so. Empty steps are a row that changes nothing.</summary>
internal sealed record WorkedRow(BoundRow Row, System.Collections.Immutable.ImmutableArray<Step> Steps);

/// <summary>The work of one size: what is on the needles, what is held, and which rows have been worked.</summary>
internal sealed class SizeState
{
    public SizeState(int size, ILiveWork live)
    {
        Size = size;
        Live = live;
    }

    public int Size { get; }

    /// <summary>The live stitches, as the craft keeps them.</summary>
    public ILiveWork Live { get; private set; }

    /// <summary>False until the first count is known, and again after a row that could not be followed.</summary>
    public bool IsKnown { get; set; }

    /// <summary>True while the pattern's numbers leave this size out (a dash in the cast-on's list).</summary>
    public bool IsLeftOut { get; set; }

    /// <summary>True when a starting line stands after rows that were not worked: not all rows before it need be there.</summary>
    public bool StartsLate { get; set; }

    public bool InTheRound { get; set; }

    /// <summary>The side of the next row; null when not known.</summary>
    public FabricSide? NextSide { get; set; }

    /// <summary>Physical rows of this section, oldest first.</summary>
    public List<WorkedRow> History { get; } = [];

    /// <summary>Crochet: each row stitch by stitch, for a diagram; null where nobody asked.</summary>
    public List<CrochetRow>? Drawn { get; init; }

    /// <summary>Each physical row with the stitches after it, for patterns in several yarns; null where nobody asked.</summary>
    public List<LoggedRow>? Log { get; init; }

    /// <summary>Rows by number.</summary>
    public Dictionary<int, BoundRow> Numbered { get; } = [];

    /// <summary>The row that stands for all those not given themselves ("All WS rows: Purl."); null for none.</summary>
    public BoundRow? Others { get; set; }

    /// <summary>Rows by name.</summary>
    public Dictionary<string, BoundRow> Named { get; } = new(StringComparer.Ordinal);

    /// <summary>The rows of the stitch patterns.</summary>
    public PatternBook Patterns { get; init; } = PatternBook.Empty;

    /// <summary>The pieces worked so far.</summary>
    public PieceBook Pieces { get; init; } = new();

    /// <summary>The stitches that the side worked first began with, while the others are held; null where there is no such side.</summary>
    public int? FirstSide { get; set; }

    /// <summary>Rows whose mistake has been told in this size.</summary>
    public HashSet<BoundRow> Failed { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>The last row number worked; null at the start of a part.</summary>
    public int? LastNumber { get; set; }

    /// <summary>True after rows without numbers: the next number need not follow the last.</summary>
    public bool NumbersAreLoose { get; set; }

    /// <summary>How much more the last wrong claim stated than was worked; 0 when none is open.</summary>
    public int Drift { get; set; }

    /// <summary>The count that the last wrong claim stated; null when none is open.</summary>
    public int? DriftStated { get; private set; }

    /// <summary>How many stitches fewer and more would have made a repeat fit that did not: what may have gone wrong before it. Null when no repeat has been told to be wrong.</summary>
    public (int Fewer, int More)? Suspected { get; set; }

    /// <summary>True once a stated count agreed or a repeat came out in this piece: what does not fit after that is the row's own fault.</summary>
    public bool IsBorneOut { get; set; }

    public int Count => Live.Count;

    /// <summary>A claim differs: what follows from it is not told again.</summary>
    public void Drifts(int stated, int made) => (Drift, DriftStated) = (stated - made, stated);

    /// <summary>A claim agrees with what was worked, or the work goes on from it.</summary>
    public void Agrees() => (Drift, DriftStated, Suspected) = (0, null, null);

    /// <summary>True when a wrong count goes on from one told before: by the same difference, in the same proportion (rows that multiply), or by what a repeat lacked.</summary>
    public bool GoesOn(int stated, int made) =>
        (Drift != 0 && (Drift == stated - made || (DriftStated is { } before && (long)stated * (before - Drift) == (long)made * before)))
        || (Drift == 0 && Suspected is var (fewer, more) && (stated - made == -fewer || stated - made == more));

    /// <summary>True when so many stitches more than there are would be explained by a count told before to be wrong.</summary>
    public bool Explains(Func<int, bool> more) =>
        (Drift != 0 && more(Drift)) || (Suspected is var (fewer, plus) && (more(-fewer) || more(plus)));

    /// <summary>The other side faces the maker next.</summary>
    public void TurnSide() => NextSide = NextSide switch
    {
        FabricSide.Right => FabricSide.Wrong,
        FabricSide.Wrong => FabricSide.Right,
        _ => null,
    };

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

        row = (rule ?? Others)!;
        return row is not null;
    }

    /// <summary>A new piece: rows, names and numbers of the one before mean nothing any more.</summary>
    public void BeginSection()
    {
        Numbered.Clear();
        Others = null;
        LastNumber = null;
        NextSide = null;
        Agrees();
        IsBorneOut = false;
    }

    /// <summary>Forgets the oldest of very many rows: no line can repeat more than <paramref name="most"/>.</summary>
    public void ForgetOldRows(int most)
    {
        if (History.Count > 4 * most)
        {
            History.RemoveRange(0, History.Count - (2 * most));
        }
    }

    /// <summary>The stitches alone, for trying a reading: rows and names are shared.</summary>
    public Snapshot Save() => new(Live.Copy(), IsKnown, InTheRound, NextSide, History.Count, Drawn?.Count ?? 0, Log?.Count ?? 0);

    public void Restore(Snapshot saved)
    {
        Live = saved.Live.Copy();
        IsKnown = saved.IsKnown;
        InTheRound = saved.InTheRound;
        NextSide = saved.NextSide;
        History.RemoveRange(saved.HistoryCount, Math.Max(0, History.Count - saved.HistoryCount));
        Log?.RemoveRange(saved.LogCount, Math.Max(0, Log.Count - saved.LogCount));
        Drawn?.RemoveRange(saved.DrawnCount, Math.Max(0, Drawn.Count - saved.DrawnCount));
    }

    /// <summary>A piece begins here: nothing is live yet.</summary>
    public void Begin()
    {
        Live.Begin();
        IsKnown = true;
    }

    /// <summary>Sets the count alone, when a row could not be followed but what comes after it is known.</summary>
    public void SetCount(int count)
    {
        Live.Set(count);
        IsKnown = true;
    }

    internal sealed record Snapshot(ILiveWork Live, bool IsKnown, bool InTheRound, FabricSide? NextSide, int HistoryCount, int DrawnCount, int LogCount);
}
