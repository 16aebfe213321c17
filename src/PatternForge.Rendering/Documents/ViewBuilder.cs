using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes the view of a compiled pattern: what stands on the page, worded and in its place.</summary>
public static class ViewBuilder
{
    private const string Draft = "Draft, not for release: counts, sizes and words may still be wrong";

    private static readonly string[] AboutRoles = ["about", "introduction", "description"];
    private static readonly string[] BeforeRoles = ["construction", "construction-overview", "overview", "notes", "pattern-notes", "before-you-begin", "fit", "techniques"];
    private static readonly string[] AfterRoles = ["care", "styling", "ways-to-wear", "wearing"];
    private static readonly string[] ClosingRoles =
        ["corrections", "errata", "versions", "safety", "cautions", "terms-of-use", "copyright", "commissions", "makers", "other-designs", "thanks", "acknowledgements"];

    /// <summary>Builds the view.</summary>
    /// <param name="compilation">The compiled pattern.</param>
    /// <param name="draft">True to mark every page as a draft.</param>
    /// <param name="photoAddress">Gives the address that a photo's file has in the release; without it relative paths are kept.</param>
    public static PatternView Build(Compilation compilation, bool draft = false, Func<string, string?>? photoAddress = null)
    {
        var facts = compilation.Pattern.Facts;
        var sections = new SectionBuilder(compilation);
        var placed = Place(compilation.Pattern, sections);
        var sizes = SizesBuilder.Build(facts);
        var special = facts.Stitches.Select(s => s.Name).ToHashSet(StringComparer.Ordinal);
        var view = new PatternView
        {
            Title = Wording.Said(facts.Title?.Value) ?? "Untitled pattern",
            Designer = Wording.Said(facts.Designer),
            Kind = Wording.Kind(facts.Craft),
            Version = Wording.Said(facts.Version),
            Date = Wording.Said(facts.Date),
            Edition = Wording.Edition(facts.Version, facts.Date),
            Draft = draft,
            DraftNotice = draft ? Draft : null,
            Summary = Wording.Said(facts.Summary) is { } summary ? new ProseText(summary) : null,
            Opening = placed.Opening,
            Facts = Facts(facts, sizes),
            Level = facts.Level is { } level ? Wording.LevelName(level.Value) : null,
            LevelReason = Wording.Said(facts.LevelReason),
            Terms = Wording.Terms(facts.Terms?.Value),
            Photos = [.. facts.Photos.Select(p => Photo(p, photoAddress))],
            Sizes = sizes,
            Yarns = [.. facts.Yarns.Select(y => YarnBuilder.Build(y, facts.Sizes.Count))],
            Amounts = YarnBuilder.Amounts(facts),
            GaugeName = Wording.GaugeName(facts.Terms?.Value),
            Gauges = [.. facts.Gauges.Select(GaugeBuilder.Build).Where(g => g.Sentence.Length > 0)],
            GaugeRemark = Wording.Said(facts.GaugeRemark),
            Tools = [.. facts.Tools.Select(Item)],
            Notions = [.. facts.Notions.Select(Item)],
            Abbreviations = [.. compilation.Abbreviations
                .Where(a => !a.IsSpecial && !special.Contains(a.Name))
                .Select(a => new AbbreviationView { Name = a.Name, Meaning = a.Meaning })],
            SpecialStitches = [.. facts.Stitches.Select(s => new SpecialStitchView { Name = s.Name, FullName = Wording.Said(s.FullName), How = s.How.Trim() })],
            Notes = [.. facts.Notes.Select(n => n.Value.Trim()).Where(n => n.Length > 0)],
            Remarks = placed.Remarks,
            About = placed.About,
            Before = placed.Before,
            Instructions = placed.Instructions,
            After = placed.After,
            Closing = placed.Closing,
            Cautions = Cautions.Build(facts),
            Videos = [.. facts.Videos.Select(Link)],
            Links = [.. facts.Links.Select(Link)],
            Contact = Wording.Said(facts.Contact) is { } contact ? new LinkView { Text = contact, Address = SafeAddress.FromWords(contact) } : null,
            ContactNotes = placed.Contact,
        };
        return view with { Contents = ContentsBuilder.Build(view) };
    }

    private static ImmutableArray<FactView> Facts(PatternFacts facts, SizesView? sizes)
    {
        var found = ImmutableArray.CreateBuilder<FactView>();
        Add("Level", facts.Level is { } level ? Wording.LevelName(level.Value) : null, Wording.Said(facts.LevelReason));
        Add("Sizes", sizes?.List);
        Add("Yarn", string.Join("; ", facts.Yarns.Select(y => Wording.Weight(y.WeightClass, y.Weight)).OfType<string>().Distinct(StringComparer.Ordinal)));
        Add(Wording.GaugeName(facts.Terms?.Value), facts.Gauges.IsEmpty ? null : Short(GaugeBuilder.Build(facts.Gauges[0])));
        Add("Terms", Wording.Terms(facts.Terms?.Value));
        return found.ToImmutable();

        void Add(string name, string? value, string? note = null)
        {
            if (Wording.Said(value) is { } said)
            {
                found.Add(new FactView { Name = name, Value = Wording.Capital(said), Note = note });
            }
        }
    }

    private static string? Short(GaugeView gauge) =>
        gauge.Counts is null ? null : gauge.Over is null ? gauge.Counts : $"{gauge.Counts} to {gauge.Over}";

    private static PhotoView Photo(Photo photo, Func<string, string?>? photoAddress) => new()
    {
        Address = SafeAddress.ForImage(photo.File) is not { } file ? null : photoAddress is null ? SafeAddress.OfFile(file) : photoAddress(file),
        Alt = photo.Alt?.Trim() ?? "",
        Caption = Wording.Said(photo.Caption),
    };

    private static LinkView Item(Item item) => new() { Text = item.Text.Trim(), Address = SafeAddress.ForLink(item.Link) };

    private static LinkView Link(Link link) =>
        new() { Text = Wording.Said(link.Title) ?? link.Address.Trim(), Address = SafeAddress.ForLink(link.Address) };

    private sealed class Placed
    {
        public ImmutableArray<BlockView> Opening { get; set; } = [];

        public ImmutableArray<BlockView> Contact { get; set; } = [];

        public RemarksView Remarks { get; set; } = new();

        public ImmutableArray<SectionView> About { get; set; } = [];

        public ImmutableArray<SectionView> Before { get; set; } = [];

        public ImmutableArray<SectionView> Instructions { get; set; } = [];

        public ImmutableArray<SectionView> After { get; set; } = [];

        public ImmutableArray<SectionView> Closing { get; set; } = [];
    }

    /// <summary>Puts every section in its place by its role. One that holds rows stays among the instructions, in the order of the source.</summary>
    private static Placed Place(Pattern pattern, SectionBuilder builder)
    {
        var placed = new Placed();
        var ranked = new List<(int Group, int Rank, SectionView View)>();
        foreach (var group in SectionBuilder.Groups(pattern.Sections))
        {
            var first = group[0];
            var hasRows = group.Any(s => s.HasInstructions);
            var isTitle = first.Level <= 1 && (first.Heading.Length == 0 || string.Equals(first.Heading.Trim(), pattern.Facts.Title?.Value.Trim(), StringComparison.OrdinalIgnoreCase));
            if (!hasRows && group.Length == 1 && (isTitle || TakeRemarks(placed, first, builder)))
            {
                placed.Opening = isTitle ? placed.Opening.AddRange(builder.Blocks(first)) : placed.Opening;
                continue;
            }

            if (builder.Build(group) is { } view)
            {
                var (place, rank) = hasRows ? (2, 0) : PlaceOf(first.Role);
                ranked.Add((place, rank, view));
            }
        }

        ImmutableArray<SectionView> Of(int place) => [.. ranked.Where(r => r.Group == place).OrderBy(r => r.Rank).Select(r => r.View)];
        placed.About = Of(0);
        placed.Before = Of(1);
        placed.Instructions = Of(2);
        placed.After = Of(3);
        placed.Closing = Of(4);
        return placed;
    }

    private static (int Place, int Rank) PlaceOf(string role)
    {
        string[][] places = [AboutRoles, BeforeRoles, [], AfterRoles, ClosingRoles];
        for (var place = 0; place < places.Length; place++)
        {
            var rank = Array.IndexOf(places[place], role);
            if (rank >= 0)
            {
                return (place, rank);
            }
        }

        return (2, 0);
    }

    /// <summary>Words under a heading that the page has anyway go there, so that no heading comes twice.</summary>
    private static bool TakeRemarks(Placed placed, Section section, SectionBuilder builder)
    {
        switch (section.Role)
        {
            case "sizes" or "size" or "measurements" or "finished-measurements":
                placed.Remarks = placed.Remarks with { Sizes = placed.Remarks.Sizes.AddRange(builder.Blocks(section)) };
                return true;
            case "yarn" or "yarns":
                placed.Remarks = placed.Remarks with { Yarn = placed.Remarks.Yarn.AddRange(builder.Blocks(section)) };
                return true;
            case "tools" or "notions" or "materials" or "needles" or "hook" or "hooks" or "tools-and-notions":
                placed.Remarks = placed.Remarks with { Tools = placed.Remarks.Tools.AddRange(builder.Blocks(section)) };
                return true;
            case "gauge" or "tension":
                placed.Remarks = placed.Remarks with { Gauge = placed.Remarks.Gauge.AddRange(builder.Blocks(section)) };
                return true;
            case "abbreviations" or "special-stitches" or "stitches":
                placed.Remarks = placed.Remarks with { Abbreviations = placed.Remarks.Abbreviations.AddRange(builder.Blocks(section)) };
                return true;
            case "contact" or "help" or "questions":
                placed.Contact = placed.Contact.AddRange(builder.Blocks(section));
                return true;
            default:
                return false;
        }
    }
}
