using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>
/// One crochet row while it is worked in one size: the cursor over the row below, the tops made, and what is to be remembered until its end.
/// Goes on after a mistake as well as it can, so that the message can say how many stitches the row needs.
/// </summary>
internal sealed class CrochetRun
{
    public CrochetRun(Trial trial, RowTask row, RowBelow below, bool inTheRound, bool isTunisian)
    {
        IsTunisian = isTunisian;
        Trial = trial;
        Row = row;
        var draws = trial.State.Drawn is not null;
        Below = new CrochetCursor(below, draws) { MayWrap = inTheRound && !below.IsFoundation, SpacesUnseen = below.IsCountOnly && CrochetSteps.GoesToSpaces(row.Steps) };
        Tops = new CrochetTops(trial.Budget.MostStitches) { Notes = draws ? new CrochetNotes(Below) : null };
        InTheRound = inTheRound;
    }

    public Trial Trial { get; }

    public RowTask Row { get; }

    public CrochetCursor Below { get; }

    public CrochetTops Tops { get; }

    public bool InTheRound { get; }

    /// <summary>True for Tunisian crochet: the loop on the hook is the first stitch of every row, and the work is not turned.</summary>
    public bool IsTunisian { get; }

    /// <summary>True when all loops have been bound off.</summary>
    public bool BoundOff { get; set; }

    /// <summary>The stitch made last: what "inc" and "2 in next st" mean.</summary>
    public Operation LastStitch { get; set; } = SingleCrochet;

    /// <summary>The first repeat or run that did not fit; null for none.</summary>
    public Problem? Misfit { get; set; }

    /// <summary>True when stitches may be left unworked: the words say so, or the row goes along an edge.</summary>
    public bool MayLeave { get; set; }

    /// <summary>The stitch worked up to spaces that cannot be seen: what stands between them is worked in it; null for none.</summary>
    public Operation? ToUnseen { get; set; }

    /// <summary>True where stitches are counted back from a space ("to 2 sts before next ch-2 sp"): then it matters where a starting line has its spaces, and it does not say.</summary>
    public bool BeforeSpaces { get; set; }

    /// <summary>How deep in brackets and repeats the work is; 1 for the row itself.</summary>
    public int Depth { get; set; }

    /// <summary>True while nothing has been worked since places were passed over.</summary>
    public bool Skipped { get; set; }

    /// <summary>Stitches that slip stitches passed before the row began; 0 for none.</summary>
    public int BeganAt { get; set; }

    /// <summary>Stitches that the chains which closed the round pass over without a word; 0 for none.</summary>
    public int Overhang { get; set; }

    /// <summary>True when chains and a tall stitch in the first one closed the round: together they are its last space.</summary>
    public bool ClosedWithStitch { get; set; }

    /// <summary>True when the round has been closed.</summary>
    public bool Closed { get; set; }

    /// <summary>True when chains were made after the round was closed: they belong to the next one.</summary>
    public bool ChainsAfterClosing { get; set; }

    /// <summary>Chains of the foundation that this row itself made; 0 for none.</summary>
    public int Foundation { get; set; }

    /// <summary>True while the yarn has been joined at a place and nothing has been worked into it yet.</summary>
    public bool JoinedAt { get; set; }

    /// <summary>True when the row says so.</summary>
    public bool HasSpread { get; set; }

    /// <summary>Stitches more (or fewer, below none) that the row makes somewhere ("inc 4 sts evenly", "dec 1 sc at end").</summary>
    public int Spread { get; set; }

    /// <summary>True when stitches have been worked into stitches.</summary>
    public bool WorkedStitches { get; set; }

    /// <summary>True when something cannot be known from here.</summary>
    public bool NotKnown { get; set; }

    /// <summary>True when a ring has been made that is still to be worked into.</summary>
    public bool MadeRing { get; set; }

    /// <summary>The shortest plain stitch, in both dialects' tables the same entry.</summary>
    public static Operation SingleCrochet { get; } = OperationTable.Find(Craft.Crochet, Dialect.Us, "sc") ?? throw new InvalidOperationException("The stitch table lacks sc.");

    /// <summary>The number that an amount has in this size; a null amount is one, a size that skips the step is none.</summary>
    public int In(Amount? amount) => amount is null ? 1 : Math.Max(0, amount[Trial.State.Size] ?? 0);

    /// <summary>Spends one step of work; false when the row has cost too much, or asks for far more than there is.</summary>
    public bool Go() => Trial.Budget.Spend() && !Tops.IsTooMany && Below.Missing <= Trial.Budget.MostStitches;

    public void Report(Problem problem) => Trial.Outcome.Problems.Add(problem);

    public void Read(ReadingKind kind, Step at) => Trial.Outcome.Readings.Add(new Reading(kind, at.Origin));

    /// <summary>So many, as a place's number.</summary>
    public static Amount Number(int value, Place place) => new(PerSize.Shared<int?>(value), place.Origin);
}
