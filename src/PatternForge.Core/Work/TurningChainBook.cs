using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>
/// What a pattern's turning chains count as, found once for the whole pattern (NOTATION 3): the header's notes, then the rows' own words where they
/// speak for all, then what the stated counts show for each stitch height, rows and rounds apart.
/// </summary>
internal sealed class TurningChainBook
{
    private readonly TurningChainNotes _notes;
    private readonly Dictionary<(int Length, bool InTheRound), (bool Counts, int? Over)> _said = [];
    private readonly Dictionary<(int Height, bool InTheRound), bool> _shown = [];

    public TurningChainBook(TurningChainNotes notes) => _notes = notes;

    /// <summary>What words say of a chain of this length; null when none do.</summary>
    public bool? Said(int length, bool inTheRound, Operation stitch, Dialect terms) =>
        _notes.Counts(length, CrochetNames.Of(stitch, terms)) ?? (_said.TryGetValue((length, inTheRound), out var said) ? said.Counts : null);

    /// <summary>Chains beyond the stitch that a chain of this length counts as, by the words; null when they say nothing.</summary>
    public int? Over(int length, bool inTheRound) => _notes.Over(length) ?? (_said.TryGetValue((length, inTheRound), out var said) ? said.Over : null);

    /// <summary>A row's words speak for the rows to come.</summary>
    public void Say(int length, bool inTheRound, bool counts, int? over) => _said[(length, inTheRound)] = (counts, over);

    /// <summary>What stated counts have shown for a height; null while they have not.</summary>
    public bool? Shown(int height, bool inTheRound) => _shown.TryGetValue((height, inTheRound), out var counts) ? counts : null;

    /// <summary>Only one reading fitted the stated count of a row: it is what the pattern means from here on.</summary>
    public void Show(int height, bool inTheRound, bool counts) => _shown.TryAdd((height, inTheRound), counts);
}
