using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>Chains at the start of a row: what they count as, and the place over which they stand.</summary>
internal sealed class TurningChains
{
    private readonly CrochetRun _run;
    private readonly TurningChainBook _book;
    private readonly Dialect _terms;

    public TurningChains(CrochetRun run, TurningChainBook book, Dialect terms)
    {
        _run = run;
        _book = book;
        _terms = terms;
    }

    /// <summary>The question that this row left open, and the answer it was worked with; null when the words answer it.</summary>
    public (int Height, bool Counts)? Open { get; private set; }

    /// <summary>True when chains made now are the row's turning chain: they come before any stitch, and there is something to work over.</summary>
    public bool IsDue => !_run.Tops.HasStitches && _run.Tops.Chains == 0 && (!_run.Below.IsEmpty || _run.Below.IsRing) && First(_run.Row.Steps) is not null;

    /// <summary>Makes the turning chain.</summary>
    public void Make(ChainStep chain)
    {
        var length = _run.In(chain.Chains);
        var stitch = First(_run.Row.Steps)!.Operation;
        var height = HeightOf(stitch);
        if (_run.InTheRound)
        {
            _run.Below.BeginHere();
        }

        var counts = Counts(chain, length, stitch, height);
        if (!counts && _run.InTheRound && First(_run.Row.Steps)!.Place?.Kind != PlaceKind.Same)
        {
            _run.Below.StepBack(); // the first stitch goes where the slip stitch led
        }

        var over = chain.Over ?? _book.Over(length, _run.InTheRound) ?? Math.Max(0, length - Math.Max(height, 1));
        if (chain.Throughout && chain.Counts is { } said)
        {
            _book.Say(length, _run.InTheRound, said, chain.Over);
        }

        if (counts && !_run.Below.IsRing && _run.Below.Last < 0)
        {
            _run.Below.First(new Thing(ThingKind.Stitch), 1); // it stands over the first stitch
        }

        _run.Tops.BeginWith(Plain(chain.As ?? stitch), length, counts, _run.Below.Last, counts ? length - Math.Min(over, length) : length);
        if (counts && over > 0)
        {
            _run.Tops.Chain(over);
        }
    }

    /// <summary>The first chains of a foundation row that are skipped: as tall as the stitch they count as one, taller they hold a space as well (NOTATION 3).</summary>
    public void Skipped(Place place, Operation stitch, int skipped)
    {
        var height = HeightOf(stitch);
        var counts = SkippedCounts(_run.Row.Steps) ?? (height >= 3 ? skipped >= height : height == 2 && skipped >= 2 && Choose(place.Origin, height, byDefault: false));
        _run.Tops.Notes?.Chains(NoteKind.Skipped, skipped);
        if (!counts || height < 2)
        {
            return;
        }

        _run.Tops.BeginWith(Plain(stitch), skipped, counts: true, 0, Math.Min(height, skipped));
        if (skipped - height >= 2)
        {
            _run.Tops.Chain((skipped - height) / 2); // mesh: the space, over as many base chains
        }
    }

    /// <summary>The order of evidence: the row's own words, the header, what stated counts have shown, the default, which stated counts may overrule.</summary>
    private bool Counts(ChainStep chain, int length, Operation stitch, int height)
    {
        if (chain.Counts is { } here)
        {
            return here;
        }

        if (_book.Said(length, _run.InTheRound, stitch, _terms) is { } said)
        {
            if (said || height > 1)
            {
                Note(said ? ReadingKind.TurningChainCountsSaid : ReadingKind.TurningChainSaid, chain.Origin);
            }

            return said;
        }

        if (height <= 1 || First(_run.Row.Steps) is { Operation: { Takes: > 1, Makes: 1 }, Place.Kind: PlaceKind.Same or PlaceKind.Ring })
        {
            return false; // the shortest stitch's chain counts only when said; "ch 3, dc2tog in same st" is a cluster whose first leg is the chain
        }

        if (height >= 3 && length >= height + 2)
        {
            return true; // far taller than the stitch: a stitch and a space
        }

        return Choose(chain.Origin, height, byDefault: height >= 3 && length >= height - 1);
    }

    private bool Choose(Text.TextSpan origin, int height, bool byDefault)
    {
        if (_book.Shown(height, _run.InTheRound) is { } shown)
        {
            Note(shown ? ReadingKind.TurningChainCountsShown : ReadingKind.TurningChainShown, origin);
            return shown;
        }

        var counts = (_run.Trial.Choices.Take(origin, ReadingKind.TurningChain) == 0) == byDefault;
        Open = (height, counts);
        Note(counts ? ReadingKind.TurningChainCounts : ReadingKind.TurningChain, origin);
        return counts;
    }

    private void Note(ReadingKind kind, Text.TextSpan origin) => _run.Trial.Outcome.Readings.Add(new Reading(kind, origin));

    /// <summary>The first stitch of the row that is no slip stitch, with the place of its group: the turning chain stands in for one of its height.</summary>
    public static CrochetStep? First(ImmutableArray<Step> steps)
    {
        foreach (var step in steps)
        {
            var found = step switch
            {
                CrochetStep { Operation.Id: not ("sl st" or "ch") } stitch => stitch,
                GroupStep group => First(group.Body),
                RepeatStep repeat => First(repeat.Body),
                ShellStep { Place.Kind: PlaceKind.Own } own => First(own.Body),
                ShellStep shell => First(shell.Body) is { } inner ? inner with { Place = shell.Place } : null,
                NamedIncreaseStep named => new CrochetStep(named.Origin, named.Stitch, null, null),
                _ => null,
            };
            if (found is not null)
            {
                return found;
            }
        }

        return null;
    }

    /// <summary>How many chains tall a stitch is; a special stitch is taken for the usual tall one, an increase or decrease that names none for the shortest.</summary>
    public static int HeightOf(Operation operation) => operation.Height ?? (operation.IsSpecial ? 3 : 1);

    private static Operation Plain(Operation stitch) => stitch.Id is "inc" or "dec" or "invdec" ? CrochetRun.SingleCrochet : CrochetNames.Plain(stitch);

    /// <summary>Whether skipped foundation chains count, as the words beside them say; null when they say nothing.</summary>
    private static bool? SkippedCounts(ImmutableArray<Step> steps) => steps.OfType<SkippedChainsStep>().FirstOrDefault()?.Counts;
}
