using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>A row to be worked: its steps, its place in the source, the count that it states (null for none), and the first bracket that names no number of times (null for none).</summary>
internal sealed record RowTask(ImmutableArray<Step> Steps, TextSpan Origin, int? Stated, TextSpan? BareGroup);

/// <summary>
/// The live stitches of one size, as its craft keeps them. Lines, repeated rows, shaping, claims and readings know the work only through this;
/// what a row does to the stitches is the craft's business.
/// </summary>
internal interface ILiveWork
{
    /// <summary>All live stitches.</summary>
    int Count { get; }

    /// <summary>Crochet: what the next row is worked into; null where stitches live on needles.</summary>
    RowBelow? Below { get; }

    /// <summary>The sections between markers, as the next row meets them; empty where there are none, or where their places are not known.</summary>
    ImmutableArray<MarkedSection> Sections => [];

    /// <summary>Crochet: the side worked first, the other stitches left unworked, where its yarn is fastened off; null for none.</summary>
    FirstOfTwo? FirstSide => null;

    /// <summary>The second side of crochet has been worked as the first, and ends as that did.</summary>
    void EndAs(FirstOfTwo side)
    {
    }

    /// <summary>A copy that shares nothing, to try a reading on.</summary>
    ILiveWork Copy();

    /// <summary>A piece begins: nothing is live yet, and everything about it is known.</summary>
    void Begin();

    /// <summary>True when these steps need nothing before them: a foundation chain, a ring.</summary>
    bool BeginsPiece(ImmutableArray<Step> steps);

    /// <summary>True when the last row was worked under a reading that belongs to the whole pattern and is not yet settled.</summary>
    bool HasOpenQuestion { get; }

    /// <summary>Only the reading that the last row was worked under fits: it holds for the whole pattern from here on.</summary>
    void Confirm();

    /// <summary>So many stitches are live, and nothing else is known of them.</summary>
    void Set(int count);

    /// <summary>A starting line sets the state.</summary>
    void Start(StartStep start, int count, SizeState state);

    /// <summary>The section works stitches and none are live: stitches held earlier come back, if there are any.</summary>
    void TakeUpHeld();

    /// <summary>So many stitches more or fewer, wherever they are; there are enough of them.</summary>
    void Change(int change);

    /// <summary>Plain rows over everything: whatever a short row left is taken up again.</summary>
    void Settle();

    /// <summary>The places between stitches are not known any more.</summary>
    void ForgetPlaces();

    /// <summary>Works one row to its end.</summary>
    void WorkRow(RowTask row, Trial trial);

    /// <summary>Carries out a step that stands between rows: stitches cast on or bound off, a ring joined, a marker placed.</summary>
    void Between(Step step, Trial trial);

    /// <summary>The change in the count that the steps of a row make; null where that depends on places.</summary>
    int? ChangeOf(ImmutableArray<Step> steps, Trial trial);
}
