using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>What a note of a crochet row says was done.</summary>
internal enum NoteKind
{
    /// <summary>Chains, not yet anchored.</summary>
    Chains,

    /// <summary>The chains made last became a ring.</summary>
    Ring,

    /// <summary>The chains made last are the foundation that the row goes into.</summary>
    Foundation,

    /// <summary>The chains made last became a space.</summary>
    Space,

    /// <summary>The chains made last became a picot.</summary>
    Picot,

    /// <summary>A stitch.</summary>
    Stitch,

    /// <summary>A slip stitch that makes no top.</summary>
    Slip,

    /// <summary>The turning chain.</summary>
    Turning,

    /// <summary>Foundation chains left out at the hook.</summary>
    Skipped,

    /// <summary>The round was closed.</summary>
    Join,

    /// <summary>The yarn was joined anew.</summary>
    NewYarn,
}

/// <summary>One note. Bases are places of the row below as it was met, or one of the signs of <see cref="CrochetNotes"/>.</summary>
internal readonly record struct CrochetNote(NoteKind Kind, Operation? Stitch, int Count, ImmutableArray<int> Bases)
{
    /// <summary>True for a turning chain that counts as a stitch.</summary>
    public bool Counts { get; init; }

    /// <summary>Which loop of the stitch below it goes into.</summary>
    public StitchLoop Loop { get; init; }
}

/// <summary>
/// Writes down, stitch by stitch, what a crochet row does and where each stitch goes. Nobody keeps such notes unless a diagram is drawn.
/// </summary>
internal sealed class CrochetNotes
{
    /// <summary>The most notes that a row of a diagram may have.</summary>
    public const int Most = 2_000;

    /// <summary>A base that is nothing that can be counted.</summary>
    public const int Nowhere = -1;

    /// <summary>A base that is the ring.</summary>
    public const int Ring = -2;

    /// <summary>A base that is the first stitch of the same round.</summary>
    public const int OwnFirst = -3;

    /// <summary>A base that is somewhere along an edge; the stitches stand side by side on it.</summary>
    public const int Edge = -4;

    /// <summary>The first of the bases that are chains made by the row itself: the n-th from the hook is n less.</summary>
    public const int OwnChain = -10;

    /// <summary>The first of the bases that are on the free side of the foundation: the n-th chain is n less.</summary>
    public const int FreeSide = -1_000_000;

    /// <summary>
    /// The places along the other side of a foundation: the chain that was turned round in is the last one, the one beside it comes next, and the first one that was worked into is the last again.
    /// </summary>
    public static ImmutableArray<int> FreeSideOf(ImmutableArray<int> chains, int first, int places)
    {
        var last = chains.Length - 1;
        return [.. Enumerable.Range(0, places).Select(i => last < 0 ? Nowhere : FreeSideOf(chains[Math.Clamp(last - 1 - i, Math.Min(first, last), last)]))];
    }

    /// <summary>The other side of a chain of the foundation; nowhere where it is not known.</summary>
    private static int FreeSideOf(int chain) => chain == Nowhere ? Nowhere : FreeSide - (chain <= OwnChain ? OwnChain - chain : chain);

    private readonly CrochetCursor _below;
    private readonly List<CrochetNote> _notes = [];
    private readonly List<int> _legs = [];
    private bool _intoFirst;
    private bool _alongEdge;

    public CrochetNotes(CrochetCursor below) => _below = below;

    /// <summary>Which loop the stitches that are made now go into.</summary>
    public StitchLoop Loop { get; set; }

    /// <summary>False when something was worked whose place a drawing cannot show.</summary>
    public bool IsWhole { get; private set; } = true;

    /// <summary>How many notes there are.</summary>
    public int Count => _notes.Count;

    /// <summary>The notes in the order of work.</summary>
    public ImmutableArray<CrochetNote> All => [.. _notes];

    /// <summary>Something that cannot be shown has been worked.</summary>
    public void Spoil() => IsWhole = false;

    /// <summary>Takes back what was noted after so many.</summary>
    public void Restore(int count)
    {
        _legs.Clear();
        _notes.RemoveRange(count, _notes.Count - count);
    }

    /// <summary>One leg of stitches worked together goes into the place worked into last.</summary>
    public void Leg() => _legs.Add(_below.SourceOf(_below.Last));

    /// <summary>The next stitch goes into the first one of its own round.</summary>
    public void IntoFirst() => _intoFirst = true;

    /// <summary>The next stitches go into an edge.</summary>
    public void AlongEdge() => _alongEdge = true;

    /// <summary>A turning chain takes the place of all before it but slip stitches.</summary>
    public void Turning(Operation stitch, int upright, bool counts, int place)
    {
        Add(new CrochetNote(NoteKind.Turning, stitch, upright, [BaseOf(place)]) { Counts = counts });
    }

    /// <summary>Stitches at a place, or over the legs noted just before.</summary>
    public void Stitch(Operation stitch, int count, int place)
    {
        ImmutableArray<int> bases = _intoFirst ? [OwnFirst] : _alongEdge ? [Edge] : _legs.Count > 1 ? [.. _legs] : [BaseOf(place)];
        IsWhole &= _intoFirst || stitch.Takes == 0 || bases.All(b => b != Nowhere);
        _legs.Clear();
        (_intoFirst, _alongEdge) = (false, false);
        for (var i = 0; i < Math.Min(count, Most); i++)
        {
            Add(new CrochetNote(NoteKind.Stitch, stitch, 0, bases) { Loop = Loop });
        }
    }

    /// <summary>A slip stitch, or new yarn, at the place worked into last.</summary>
    public void At(NoteKind kind) => Add(new CrochetNote(kind, null, 0, [BaseOf(_below.Last)]));

    /// <summary>What concerns a number of chains.</summary>
    public void Chains(NoteKind kind, int count) => Add(new CrochetNote(kind, null, count, []));

    /// <summary>The round is closed.</summary>
    public void Join() => Add(new CrochetNote(NoteKind.Join, null, 0, [OwnFirst]));

    private int BaseOf(int place) => _below.IsRing ? Ring : _below.SourceOf(place);

    private void Add(CrochetNote note)
    {
        if (_notes.Count >= Most)
        {
            Spoil();
            return;
        }

        _notes.Add(note);
    }
}

/// <summary>One crochet row with its notes.</summary>
/// <param name="Origin">Where it is written.</param>
/// <param name="Below">What it was worked over.</param>
/// <param name="Notes">What it did.</param>
/// <param name="Foundation">Chains of the foundation that it made itself.</param>
/// <param name="MadeRing">True when it made the ring.</param>
/// <param name="HasStitches">True when it made stitches, and not only chains.</param>
/// <param name="InTheRound">True for a round.</param>
/// <param name="IsTurned">True when the other side faces the maker after it.</param>
internal sealed record CrochetRow(Text.TextSpan Origin, RowBelow Below, CrochetNotes Notes, int Foundation, bool MadeRing, bool HasStitches, bool InTheRound, bool IsTurned);
