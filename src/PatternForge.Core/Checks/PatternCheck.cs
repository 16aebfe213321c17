using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>What a check looks at: the pattern, its worked lines, and the bag for what it finds.</summary>
public sealed record CheckContext(Pattern Pattern, ImmutableArray<WorkedLine> Lines, SourceText Source, FindingBag Bag)
{
    private ImmutableArray<ShownTechnique>? _techniques;

    /// <summary>Abbreviations that the rows use, as the table prints them.</summary>
    public ImmutableArray<AbbreviationUse> Abbreviations { get; init; } = [];

    /// <summary>The words of the instruction lines as they are written, each once.</summary>
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>True when it has stitch patterns by name, of which charts are drawn without being asked for.</summary>
    public bool IsCharted { get; init; }

    /// <summary>How far figures may stand apart.</summary>
    public Tolerances Tolerances { get; init; } = Tolerances.Default;

    /// <summary>What the studio settles for all its patterns.</summary>
    public House House { get; init; } = House.None;

    /// <summary>Looks at a photo; null where nobody looks.</summary>
    public Func<string, PhotoFacts>? LookAtPhoto { get; init; }

    /// <summary>What became of addresses that were asked for over the network; empty when none was.</summary>
    public IReadOnlyDictionary<string, LinkAnswer> Answers { get; init; } = ImmutableDictionary<string, LinkAnswer>.Empty;

    /// <summary>The outlines of the pieces, made when they are first wanted.</summary>
    public Lazy<ImmutableArray<PieceOutline>> Outlines { get; init; } = new([]);

    /// <summary>What the stitches take of each yarn, worked out when it is first wanted.</summary>
    public Lazy<YarnEstimate> Yarn { get; init; } = new(() => new YarnEstimate([], YarnEstimate.UsualMargin, [], null));

    /// <summary>The techniques that the rows show, the most involved first.</summary>
    internal ImmutableArray<ShownTechnique> Techniques => _techniques ??= TechniquesShown.In(this);

    /// <summary>The header's facts.</summary>
    public PatternFacts Facts => Pattern.Facts;

    /// <summary>Where a part that the header lacks is missed: its opening line. Null when the file has no header, which is reported already.</summary>
    public TextSpan? HeaderPlace => Facts.HeaderOrigin;

    /// <summary>True when a part is left out on purpose, or its header key could not be made out and was reported already.</summary>
    public bool IsExcused(params ReadOnlySpan<string> parts)
    {
        foreach (var part in parts)
        {
            if (Facts.Omit.Contains(part, StringComparer.OrdinalIgnoreCase) || Facts.Unread.Contains(part, StringComparer.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>One check of a worked pattern: its rule, and how it looks for occurrences.</summary>
public abstract class PatternCheck
{
    /// <summary>What it finds.</summary>
    public abstract Rule Rule { get; }

    /// <summary>Looks through a pattern and adds what it finds to the bag.</summary>
    public abstract void Run(CheckContext context);
}
