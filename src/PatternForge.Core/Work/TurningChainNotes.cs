using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>What the header's notes say of turning chains ("Ch 3 counts as dc throughout"): read once for the pattern.</summary>
public sealed class TurningChainNotes
{
    /// <summary>Nothing is said.</summary>
    public static TurningChainNotes None { get; } = new([]);

    private readonly ImmutableArray<TurningChainNote> _notes;

    /// <summary>Holds the notes.</summary>
    public TurningChainNotes(ImmutableArray<TurningChainNote> notes) => _notes = notes;

    /// <summary>The notes of a header.</summary>
    public static TurningChainNotes Of(PatternFacts facts) => new(facts.TurningChains);

    /// <summary>Whether a chain of that length counts as a stitch; null when no note says so.</summary>
    public bool? Counts(int length, string stitch)
    {
        foreach (var note in _notes)
        {
            if ((note.Length is null || note.Length == length) && (note.Stitch is null || string.Equals(note.Stitch, stitch, StringComparison.OrdinalIgnoreCase) || !note.Counts))
            {
                return note.Counts;
            }
        }

        return null;
    }

    /// <summary>Chains beyond the stitch that a chain of that length counts as; null when no note says so.</summary>
    public int? Over(int length)
    {
        foreach (var note in _notes)
        {
            if (note.Length == length && note.Counts)
            {
                return note.Over ?? 0;
            }
        }

        return null;
    }
}
