using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes the view of a compiled pattern: what stands on the page, worded and in its place.</summary>
public static class ViewBuilder
{
    private const string Draft = "Draft, not for release: counts, sizes and words may still be wrong";

    /// <summary>Builds the view.</summary>
    /// <param name="compilation">The compiled pattern.</param>
    /// <param name="draft">True to mark every page as a draft.</param>
    /// <param name="name">What the files of the release are called; null for the name of the source.</param>
    /// <param name="options">How it was compiled, for the other forms that a page may change to; the defaults when null.</param>
    public static PatternView Build(Compilation compilation, bool draft = false, string? name = null, CompileOptions? options = null) => Build(compilation, draft, name, options, null, new());

    private static PatternView Build(Compilation compilation, bool draft, string? name, CompileOptions? options, OwnSizes? written, DrawnDiagrams drawn)
    {
        var facts = compilation.Pattern.Facts;
        var own = new OwnSizes(compilation, options, written);
        var placed = SectionPlaces.Place(compilation.Pattern, new SectionBuilder(compilation, name ?? ReleaseName.Of(compilation.Source.Path), own, drawn));
        var units = compilation.Edition?.Units;
        var sizes = SizesBuilder.Build(facts, units);
        var page = PageWords.Of(compilation);
        var special = facts.Stitches.Select(s => s.Name).ToHashSet(StringComparer.Ordinal);
        var form = compilation.Edition;
        var view = new PatternView
        {
            Title = Wording.Said(facts.Title?.Value) ?? "Untitled pattern",
            Designer = Wording.Said(facts.Designer),
            Kind = Wording.Kind(facts.Craft),
            Version = Wording.Said(facts.Version),
            Date = Wording.Said(facts.Date),
            Edition = Wording.Edition(facts.Version, facts.Date),
            EditionNotes = new PageChoice(compilation).Notes(),
            LargePrint = form is { IsLargePrint: true },
            LowInk = form is { IsLowInk: true },
            ReadOut = form is { IsReadOut: true },
            OtherTerms = form is { HasBothTerms: true } ? Wording.Terms((facts.TermsInForce ?? Dialect.Us) == Dialect.Us ? Dialect.Uk : Dialect.Us) : null,
            Draft = draft,
            DraftNotice = draft ? Draft : null,
            Summary = Wording.Said(facts.Summary) is { } summary ? new ProseText(summary, facts.Sizes.Count) { In = i => own.Said(i, f => Wording.Said(f.Summary)) } : null,
            Opening = placed.Opening,
            Facts = Facts(facts, sizes, page, units),
            Level = facts.Level is { } level ? Wording.LevelName(level.Value) : null,
            LevelReason = Wording.Said(facts.LevelReason),
            Terms = Wording.Terms(facts.TermsInForce),
            Photos = form is { IsLowInk: true } ? [] : [.. facts.Photos.Select(p => Photo(p, null))],
            Own = own,
            Others = compilation.Edition is null ? new OtherForms(compilation, options, made => Build(made, draft, name, options, own, drawn)) : null,
            Reader = new ReaderView { Key = string.Join(", ", new[] { Wording.Said(facts.Title?.Value), Wording.Said(facts.Version) }.OfType<string>()) },
            Sizes = sizes is null ? null : sizes with { Marked = form?.MarkedSize is { } marked ? marked + 1 : 0 },
            Yarns = [.. facts.Yarns.Select(y => YarnBuilder.Build(y, facts.Sizes.Count, facts.YarnMargin ?? YarnEstimate.UsualMargin, units))],
            Amounts = YarnBuilder.Amounts(facts, units),
            Shares = SharesBuilder.Build(compilation),
            GaugeName = Wording.GaugeName(facts.TermsInForce),
            Gauges = [.. facts.Gauges.Select(g => GaugeBuilder.Build(g, page, units)).Where(g => g.Sentence.Length > 0)],
            GaugeRemark = Wording.Said(facts.GaugeRemark),
            Tools = [.. facts.Tools.Select(t => Item(t) with { Text = ToolNames.Add(t.Text.Trim(), facts.Craft != Craft.Knitting, compilation.Edition?.Readers) })],
            Notions = [.. facts.Notions.Select(Item)],
            Abbreviations = [.. compilation.Abbreviations
                .Where(a => !a.IsSpecial && !special.Contains(a.Name))
                .Select(a => Abbreviation(a, facts, form is { HasBothTerms: true }))],
            SpecialStitches = [.. facts.Stitches.Select(s => new SpecialStitchView { Name = s.Name, FullName = Wording.Said(s.FullName), How = s.How.Trim(), Counts = Counts(s, page) })],
            Charts = [.. facts.Charts.Select(c => Chart(c, facts.Sizes.Count, page))],
            Notes = [.. facts.Notes.Select(n => n.Value.Trim()).Where(n => n.Length > 0)],
            Remarks = placed.Remarks,
            About = placed.About,
            Before = placed.Before,
            Instructions = placed.Instructions,
            After = placed.After,
            Closing = placed.Closing,
            Care = [.. facts.Care.Select(Care)],
            CareNotes = placed.Care,
            Corrections = CorrectionsBuilder.Build(facts.Corrections),
            CorrectionNotes = placed.Corrections,
            Cautions = Cautions.Build(facts, compilation.Lines),
            Videos = [.. facts.Videos.Select(Link)],
            Links = [.. facts.Links.Select(Link)],
            Contact = Wording.Said(facts.Contact) is { } contact ? new LinkView { Text = contact, Address = SafeAddress.FromWords(contact) } : null,
            ContactNotes = placed.Contact,
        };
        view = view.ReadOut ? PlainSpeech.Page(view) : view;
        return view with { Contents = ContentsBuilder.Build(view) };
    }

    /// <summary>The same view with pictures as they stand in the release.</summary>
    /// <param name="view">The view.</param>
    /// <param name="compilation">What it was made from.</param>
    /// <param name="picture">Gives the picture in the release by its file.</param>
    public static PatternView WithPictures(PatternView view, Compilation compilation, Func<string, ReleasedPicture?> picture) =>
        view with { Photos = compilation.Edition is { IsLowInk: true } ? [] : [.. compilation.Pattern.Facts.Photos.Select(p => Photo(p, picture))], Picture = picture };

    /// <summary>The same view with the other designs of a shelf, unless the pattern tells of them itself or wishes none (<c>omit: designs</c>).</summary>
    /// <param name="view">The view.</param>
    /// <param name="compilation">What it was made from.</param>
    /// <param name="others">The other designs.</param>
    /// <param name="shelf">The address of the page with all of them; null where it is not linked to.</param>
    public static PatternView WithDesigns(PatternView view, Compilation compilation, ImmutableArray<DesignView> others, string? shelf) =>
        others.IsEmpty || compilation.Pattern.Facts.Omit.Contains("designs", StringComparer.OrdinalIgnoreCase) || view.Closing.Any(s => s.Role is "other-designs" or "more-designs" or "designs") ? view
            : view with { OtherDesigns = others, AllDesigns = shelf };

    private static ImmutableArray<FactView> Facts(PatternFacts facts, SizesView? sizes, PageWords page, UnitSystem? units)
    {
        var found = ImmutableArray.CreateBuilder<FactView>();
        Add("Level", facts.Level is { } level ? Wording.LevelName(level.Value) : null, Wording.Said(facts.LevelReason));
        Add("Techniques", string.Join("; ", facts.Techniques.Select(t => t.Value.Trim())));
        Add("For", Wording.Audience(facts.Audience?.Value));
        Add("Sizes", sizes?.List);
        Add("Yarn", string.Join("; ", facts.Yarns.Select(y => Wording.Weight(y.WeightClass, y.Weight)).OfType<string>().Distinct(StringComparer.Ordinal)));
        Add(Wording.GaugeName(facts.TermsInForce), facts.Gauges.IsEmpty ? null : Short(GaugeBuilder.Build(facts.Gauges[0], page, units)));
        Add("Terms", Wording.Terms(facts.TermsInForce));
        return found.ToImmutable();

        void Add(string name, string? value, string? note = null)
        {
            if (Wording.Said(value) is { } said)
            {
                found.Add(new FactView { Name = name, Value = Wording.Capital(said), Note = note });
            }
        }
    }

    private static AbbreviationView Abbreviation(AbbreviationUse use, PatternFacts facts, bool both)
    {
        var (name, meaning) = both ? OtherTerms.Of(facts, use.Name, use.Meaning) : (null, null);
        return new AbbreviationView { Name = use.Name, Meaning = use.Meaning, OtherName = name, OtherMeaning = meaning };
    }

    private static string? Short(GaugeView gauge) =>
        gauge.Counts is null ? null : gauge.Over is null ? gauge.Counts : $"{gauge.Counts} to {gauge.Over}";

    private static PhotoView Photo(Photo photo, Func<string, ReleasedPicture?>? picture)
    {
        var shown = SafeAddress.ForImage(photo.File) is not { } file ? null : picture is null ? new(SafeAddress.OfFile(file)) : picture(file);
        return new()
        {
            Address = shown?.Address,
            Width = shown?.Width,
            Height = shown?.Height,
            Alt = photo.Alt?.Trim() ?? "",
            Caption = Wording.Said(photo.Caption),
        };
    }

    /// <summary>Care in the designer's words, under the name of its treatment.</summary>
    private static FactView Care(CareEntry entry) => new() { Name = entry.Kind is { } kind ? Wording.CareName(kind) : "", Value = Wording.Capital(entry.Text.Trim()) };

    private static LinkView Item(Item item) => new() { Text = item.Text.Trim(), Address = SafeAddress.ForLink(item.Link) };

    private static LinkView Link(Link link) =>
        new() { Text = Wording.Said(link.Title) ?? link.Address.Trim(), Address = SafeAddress.ForLink(link.Address) };

    /// <summary>"uses 1 st, makes 5 sts", as far as the header says.</summary>
    private static string? Counts(StitchDefinition stitch, PageWords page)
    {
        string?[] parts = [Counted("uses", stitch.Takes), Counted("makes", stitch.Makes)];
        return Wording.Said(page.Count(string.Join(", ", parts.OfType<string>())));

        static string? Counted(string verb, int? count) => count is { } n ? string.Create(CultureInfo.InvariantCulture, $"{verb} {n} {(n == 1 ? "st" : "sts")}") : null;
    }

    private static ChartView Chart(NamedNumber chart, int sizes, PageWords page)
    {
        var widths = Enumerable.Range(0, sizes).Select(i => SizesBuilder.At(chart.Values, i)).ToArray();
        return new ChartView
        {
            Name = chart.Name,
            Width = widths.All(w => w is null) ? null : page.Count($"{Wording.TradeForm([.. widths.Select(w => w is null ? Wording.None : Wording.Number(w.Value))])} {(widths.All(w => w is null or { Value: 1 }) ? "st" : "sts")} wide"),
        };
    }
}
