using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>The designer's sections in their places on the page: to decide by, to read first, to make, to use, around it.</summary>
internal sealed record SectionPlaces
{
    private static readonly string[][] Roles =
    [
        ["about", "introduction", "description"],
        ["construction", "construction-overview", "overview", "notes", "note", "pattern-notes", "before-you-begin", "fit", "sizing", "techniques", "stitches-used"],
        [],
        ["care", "styling", "ways-to-wear", "wearing"],
        [
            "corrections", "errata", "versions", "safety", "cautions", "terms-of-use", "terms", "license", "licence", "copyright", "commissions", "makers",
            "links", "other-designs", "more-designs", "designs", "thanks", "acknowledgements", "acknowledgments",
        ],
    ];

    private const int Making = 2;

    public ImmutableArray<BlockView> Opening { get; private init; } = [];

    public ImmutableArray<BlockView> Contact { get; private init; } = [];

    public ImmutableArray<BlockView> Care { get; private init; } = [];

    public ImmutableArray<BlockView> Corrections { get; private init; } = [];

    public RemarksView Remarks { get; private init; } = new();

    public ImmutableArray<SectionView> About { get; private init; } = [];

    public ImmutableArray<SectionView> Before { get; private init; } = [];

    public ImmutableArray<SectionView> Instructions { get; private init; } = [];

    public ImmutableArray<SectionView> After { get; private init; } = [];

    public ImmutableArray<SectionView> Closing { get; private init; } = [];

    /// <summary>Puts every section in its place by its role. One that holds rows stays among the instructions, in the order of the source.</summary>
    public static SectionPlaces Place(Pattern pattern, SectionBuilder builder)
    {
        var placed = new SectionPlaces();
        var ranked = new List<(int Place, int Rank, SectionView View)>();
        foreach (var group in SectionBuilder.Groups(pattern.Sections))
        {
            var first = group[0];
            var hasRows = group.Any(s => s.HasInstructions);
            if (!hasRows && group.Length == 1 && IsTitle(first, pattern))
            {
                placed = placed with { Opening = placed.Opening.AddRange(builder.Blocks(first)) };
            }
            else if (!hasRows && first.Role == "care" && !pattern.Facts.Care.IsEmpty)
            {
                placed = placed with { Care = placed.Care.AddRange(builder.Remarks(group)) };
            }
            else if (!hasRows && first.Role is "corrections" or "errata" or "versions" && !pattern.Facts.Corrections.IsEmpty)
            {
                placed = placed with { Corrections = placed.Corrections.AddRange(builder.Remarks(group)) };
            }
            else if (!hasRows && placed.WithRemarks(group, builder) is { } taken)
            {
                placed = taken;
            }
            else if (builder.Build(group) is { } view)
            {
                var (place, rank) = hasRows ? (Making, 0) : PlaceOf(first.Role);
                ranked.Add((place, rank, view));
            }
        }

        if (builder.Schematics() is { } schematics)
        {
            ranked.Add((Making, 1, schematics));
        }

        ImmutableArray<SectionView> Of(int place) => [.. ranked.Where(r => r.Place == place).OrderBy(r => r.Rank).Select(r => r.View)];
        return placed with { About = Of(0), Before = Of(1), Instructions = Of(Making), After = Of(3), Closing = Of(4) };
    }

    private static bool IsTitle(Section section, Pattern pattern) => section.Level <= 1
        && (section.Heading.Length == 0 || string.Equals(section.Heading.Trim(), pattern.Facts.Title?.Value.Trim(), StringComparison.OrdinalIgnoreCase));

    private static (int Place, int Rank) PlaceOf(string role)
    {
        for (var place = 0; place < Roles.Length; place++)
        {
            var rank = Array.IndexOf(Roles[place], role);
            if (rank >= 0)
            {
                return (place, rank);
            }
        }

        return (Making, 0);
    }

    /// <summary>Words under a heading that the page has anyway go there, so that no heading comes twice; null where the page has none such.</summary>
    private SectionPlaces? WithRemarks(ImmutableArray<Section> group, SectionBuilder builder)
    {
        ImmutableArray<BlockView> Blocks(ImmutableArray<BlockView> before) => before.AddRange(builder.Remarks(group));
        return group[0].Role switch
        {
            "sizes" or "size" or "measurements" or "finished-measurements" => this with { Remarks = Remarks with { Sizes = Blocks(Remarks.Sizes) } },
            "yarn" or "yarns" => this with { Remarks = Remarks with { Yarn = Blocks(Remarks.Yarn) } },
            "tools" or "notions" or "materials" or "needles" or "hook" or "hooks" or "tools-and-notions" => this with { Remarks = Remarks with { Tools = Blocks(Remarks.Tools) } },
            "gauge" or "tension" => this with { Remarks = Remarks with { Gauge = Blocks(Remarks.Gauge) } },
            "abbreviations" or "special-stitches" or "stitches" => this with { Remarks = Remarks with { Abbreviations = Blocks(Remarks.Abbreviations) } },
            "photos" => this with { Remarks = Remarks with { Photos = Blocks(Remarks.Photos) } },
            "videos" => this with { Remarks = Remarks with { Videos = Blocks(Remarks.Videos) } },
            "contact" or "help" or "questions" => this with { Contact = Blocks(Contact) },
            _ => null,
        };
    }
}
