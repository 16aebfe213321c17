using System.Collections.Immutable;
using PatternForge.Rendering.Documents;
using Scriban.Runtime;

namespace PatternForge.Rendering.Templates;

/// <summary>
/// What templates see of the view, name by name. A test compares these lists with the records, and the reference in the templates' own
/// README is made from both.
/// </summary>
internal static class ViewScript
{
    /// <summary>A named thing with a value.</summary>
    public static readonly ViewMembers<FactView> Fact = new() { { "name", v => v.Name }, { "value", v => v.Value }, { "note", v => v.Note } };

    /// <summary>An entry of the contents.</summary>
    public static readonly ViewMembers<EntryView> Entry = new() { { "text", v => v.Text }, { "id", v => v.Id }, { "has_rows", v => v.HasRows } };

    /// <summary>A photo.</summary>
    public static readonly ViewMembers<PhotoView> Photo = new() { { "address", v => v.Address }, { "width", v => v.Width }, { "height", v => v.Height }, { "alt", v => v.Alt }, { "caption", v => v.Caption } };

    /// <summary>Words that may lead somewhere.</summary>
    public static readonly ViewMembers<LinkView> Link = new() { { "text", v => v.Text }, { "address", v => v.Address } };

    /// <summary>An abbreviation.</summary>
    public static readonly ViewMembers<AbbreviationView> Abbreviation = new() { { "name", v => v.Name }, { "meaning", v => v.Meaning }, { "other_name", v => v.OtherName }, { "other_meaning", v => v.OtherMeaning } };

    /// <summary>A special stitch.</summary>
    public static readonly ViewMembers<SpecialStitchView> SpecialStitch = new() { { "name", v => v.Name }, { "full_name", v => v.FullName }, { "how", v => v.How }, { "counts", v => v.Counts } };

    /// <summary>A chart.</summary>
    public static readonly ViewMembers<ChartView> Chart = new() { { "name", v => v.Name }, { "width", v => v.Width } };

    /// <summary>A caution.</summary>
    public static readonly ViewMembers<CautionView> Caution = new() { { "name", v => v.Name }, { "text", v => v.Text } };

    /// <summary>A gauge.</summary>
    public static readonly ViewMembers<GaugeView> Gauge = new()
    {
        { "name", v => v.Name }, { "counts", v => v.Counts }, { "over", v => v.Over }, { "over_inches", v => v.OverInches },
        { "stitch", v => v.Stitch }, { "tool", v => v.Tool }, { "state", v => v.State }, { "sentence", v => v.Sentence },
    };

    /// <summary>A value of the sizes table.</summary>
    public static readonly ViewMembers<CellView> Cell = new() { { "metric", v => v.Metric }, { "imperial", v => v.Imperial } };

    /// <summary>A measurement.</summary>
    public static readonly ViewMembers<MeasureView> Measure = new()
    {
        { "kind", v => v.Kind }, { "name", v => v.Name }, { "metric_unit", v => v.MetricUnit }, { "imperial_unit", v => v.ImperialUnit },
        { "metric", v => v.Metric }, { "imperial", v => v.Imperial }, { "cells", (v, p) => List(v.Cells, Cell, p) },
    };

    /// <summary>A size with its measurements.</summary>
    public static readonly ViewMembers<SizeRowView> SizeRow = new() { { "size", v => v.Size }, { "cells", (v, p) => List(v.Cells, Cell, p) } };

    /// <summary>The sizes.</summary>
    public static readonly ViewMembers<SizesView> Sizes = new()
    {
        { "names", v => List(v.Names) }, { "list", v => v.List }, { "in_one", v => v.InOne }, { "marked", v => v.Marked }, { "sentences", v => List(v.Sentences) }, { "count", v => v.Count }, { "measures", (v, p) => List(v.Measures, Measure, p) },
        { "rows", (v, p) => List(v.Rows, SizeRow, p) }, { "ease", v => v.Ease }, { "sample", v => v.Sample }, { "shown", v => v.Shown }, { "notes", v => List(v.Notes) },
    };

    /// <summary>Another yarn.</summary>
    public static readonly ViewMembers<AlternativeView> Alternative = new() { { "name", v => v.Name }, { "note", v => v.Note }, { "put_up", v => v.PutUp }, { "grist", v => v.Grist }, { "needs", v => v.Needs } };

    /// <summary>A yarn.</summary>
    public static readonly ViewMembers<YarnView> Yarn = new()
    {
        { "label", v => v.Label }, { "name", v => v.Name }, { "fibre", v => v.Fibre }, { "weight", v => v.Weight }, { "put_up", v => v.PutUp },
        { "grist", v => v.Grist }, { "needs", v => v.Needs }, { "strands", v => v.Strands }, { "estimate", v => v.Estimate }, { "colours", v => List(v.Colours) }, { "alternatives", (v, p) => List(v.Alternatives, Alternative, p) },
    };

    /// <summary>A yarn over columns.</summary>
    public static readonly ViewMembers<AmountYarnView> AmountYarn = new() { { "name", v => v.Name }, { "columns", v => v.Columns } };

    /// <summary>A size's amounts.</summary>
    public static readonly ViewMembers<AmountRowView> AmountRow = new() { { "size", v => v.Size }, { "cells", v => List(v.Cells) } };

    /// <summary>The amounts.</summary>
    public static readonly ViewMembers<AmountsView> Amounts = new()
    {
        { "yarns", (v, p) => List(v.Yarns, AmountYarn, p) }, { "units", v => List(v.Units) }, { "rows", (v, p) => List(v.Rows, AmountRow, p) }, { "sentences", v => List(v.Sentences) },
    };

    /// <summary>The shares of a part.</summary>
    public static readonly ViewMembers<SharesView> Shares = new() { { "part", v => v.Part }, { "yarns", v => List(v.Yarns) }, { "rows", (v, p) => List(v.Rows, AmountRow, p) }, { "sentences", v => List(v.Sentences) }, { "reading", v => v.Reading } };

    /// <summary>A row.</summary>
    public static readonly ViewMembers<RowView> Row = new()
    {
        { "id", v => v.Id }, { "numbers", v => v.Numbers }, { "not_in", v => v.NotIn }, { "label", v => v.Label }, { "name", v => v.Name }, { "text", v => v.Text }, { "instruction", v => v.Instruction },
        { "count", v => v.Count }, { "count_is_said", v => v.CountIsSaid }, { "counts", v => List(v.Counts) },
        { "count_is_long", v => v.CountIsLong }, { "marked_label", (v, p) => Landed(v.MarkedLabel, p) }, { "marked_instruction", (v, p) => Landed(v.MarkedInstruction, p) }, { "marked_count", (v, p) => Landed(v.MarkedCount, p) },
        { "ticks", v => List(v.Ticks) }, { "tick_name", v => v.TickName },
    };

    /// <summary>A line of a key.</summary>
    public static readonly ViewMembers<KeyView> Key = new() { { "picture", (v, p) => new Ready(p.Picture(v.Picture)) }, { "name", v => v.Name }, { "meaning", v => v.Meaning } };

    /// <summary>A drawing.</summary>
    public static readonly ViewMembers<DrawingView> Drawing = new()
    {
        { "id", v => v.Id }, { "title", v => v.Title }, { "description", v => v.Description }, { "address", v => v.Address }, { "pictures", (v, p) => new ScriptArray(v.Pictures.Select(picture => new Ready(p.Picture(picture)))) },
        { "key", (v, p) => List(v.Key, Key, p) }, { "notes", v => List(v.Notes) }, { "sizes", v => v.Sizes }, { "bands", v => List(v.Bands) },
    };

    /// <summary>A block.</summary>
    public static readonly ViewMembers<BlockView> Block = new()
    {
        { "kind", v => v.Kind }, { "prose", (v, p) => Landed(v.Prose, p) }, { "rows", (v, p) => List(v.Rows, Row, p) }, { "text", v => v.Text },
        { "drawing", (v, p) => v.Drawing is { } drawing ? new ViewObject<DrawingView>(drawing, Drawing, p) : null },
    };

    /// <summary>A part of a section.</summary>
    public static readonly ViewMembers<PartView> Part = new() { { "heading", v => v.Heading }, { "rank", v => v.Rank }, { "blocks", (v, p) => List(v.Blocks, Block, p) } };

    /// <summary>A section.</summary>
    public static readonly ViewMembers<SectionView> Section = new()
    {
        { "id", v => v.Id }, { "heading", v => v.Heading }, { "role", v => v.Role }, { "has_rows", v => v.HasRows }, { "parts", (v, p) => List(v.Parts, Part, p) },
    };

    /// <summary>The designer's own words on generated parts.</summary>
    public static readonly ViewMembers<RemarksView> Remarks = new()
    {
        { "sizes", (v, p) => List(v.Sizes, Block, p) }, { "yarn", (v, p) => List(v.Yarn, Block, p) }, { "tools", (v, p) => List(v.Tools, Block, p) },
        { "gauge", (v, p) => List(v.Gauge, Block, p) }, { "abbreviations", (v, p) => List(v.Abbreviations, Block, p) },
        { "photos", (v, p) => List(v.Photos, Block, p) }, { "videos", (v, p) => List(v.Videos, Block, p) },
    };

    /// <summary>A part of the listing.</summary>
    public static readonly ViewMembers<ListingPartView> ListingPart = new() { { "name", v => v.Name }, { "lines", v => List(v.Lines) } };

    /// <summary>The listing.</summary>
    public static readonly ViewMembers<ListingView> Listing = new() { { "summary", (v, p) => Landed(v.Summary, p) }, { "parts", (v, p) => List(v.Parts, ListingPart, p) } };

    /// <summary>One thing to choose.</summary>
    public static readonly ViewMembers<ChoiceView> Choice = new() { { "value", v => v.Value }, { "name", v => v.Name } };

    /// <summary>What the reader may choose.</summary>
    public static readonly ViewMembers<ReaderView> Reader = new()
    {
        { "key", v => v.Key }, { "leaves_out", v => v.LeavesOut }, { "terms", (v, p) => List(v.Terms, Choice, p) }, { "units", (v, p) => List(v.Units, Choice, p) },
    };

    /// <summary>What a version corrected.</summary>
    public static readonly ViewMembers<CorrectionsView> Corrections = new() { { "heading", v => v.Heading }, { "items", (v, p) => List(v.Items, Fact, p) } };

    /// <summary>A number that is asked for.</summary>
    public static readonly ViewMembers<AskView> Ask = new() { { "key", v => v.Key }, { "field", v => v.Field }, { "name", v => v.Name }, { "told", v => v.Told }, { "unit", v => v.Unit } };

    /// <summary>A question.</summary>
    public static readonly ViewMembers<QuestionView> Question = new() { { "key", v => v.Key }, { "text", v => v.Text }, { "hint", v => v.Hint } };

    /// <summary>The sheet of a test maker.</summary>
    public static readonly ViewMembers<TestSheetView> TestSheet = new()
    {
        { "title", v => v.Title }, { "designer", v => v.Designer }, { "version", v => v.Version }, { "edition", v => v.Edition }, { "size", v => v.Size }, { "file", v => v.File }, { "level", v => v.Level },
        { "contact", (v, p) => v.Contact is { } contact ? new ViewObject<LinkView>(contact, Link, p) : null }, { "tools", v => List(v.Tools) },
        { "gauges", (v, p) => List(v.Gauges, Ask, p) }, { "yarns", (v, p) => List(v.Yarns, Ask, p) }, { "measures", (v, p) => List(v.Measures, Ask, p) }, { "sections", v => List(v.Sections) },
        { "questions", (v, p) => List(v.Questions, Question, p) }, { "script", (v, _) => new Ready(v.Script) }, { "script_hash", v => v.ScriptHash },
    };

    /// <summary>A design of the shelf.</summary>
    public static readonly ViewMembers<DesignView> Design = new()
    {
        { "title", v => v.Title }, { "designer", v => v.Designer }, { "kind", v => v.Kind }, { "address", v => v.Address }, { "level", v => v.Level }, { "sizes", v => v.Sizes }, { "yarn", v => v.Yarn },
        { "edition", v => v.Edition }, { "draft", v => v.Draft }, { "photo", (v, p) => v.Photo is { } photo ? new ViewObject<PhotoView>(photo, Photo, p) : null },
    };

    /// <summary>The shelf.</summary>
    public static readonly ViewMembers<ShelfView> Shelf = new() { { "title", v => v.Title }, { "designer", v => v.Designer }, { "designs", (v, p) => List(v.Designs, Design, p) } };

    /// <summary>The pattern.</summary>
    public static readonly ViewMembers<PatternView> Pattern = new()
    {
        { "model_version", v => v.ModelVersion }, { "title", v => v.Title }, { "designer", v => v.Designer }, { "kind", v => v.Kind },
        { "version", v => v.Version }, { "date", v => v.Date }, { "edition", v => v.Edition }, { "edition_notes", v => List(v.EditionNotes) }, { "large_print", v => v.LargePrint }, { "low_ink", v => v.LowInk }, { "read_out", v => v.ReadOut }, { "draft", v => v.Draft }, { "draft_notice", v => v.DraftNotice }, { "paper", v => v.Paper },
        { "summary", (v, p) => Landed(v.Summary, p) }, { "opening", (v, p) => List(v.Opening, Block, p) }, { "facts", (v, p) => List(v.Facts, Fact, p) },
        { "level", v => v.Level }, { "level_reason", v => v.LevelReason }, { "terms", v => v.Terms }, { "other_terms", v => v.OtherTerms }, { "contents", (v, p) => List(v.Contents, Entry, p) }, { "photos", (v, p) => List(v.Photos, Photo, p) },
        { "reader", (v, p) => new ViewObject<ReaderView>(v.Reader, Reader, p) },
        { "sizes", (v, p) => v.Sizes is { } sizes ? new ViewObject<SizesView>(sizes, Sizes, p) : null }, { "yarns", (v, p) => List(v.Yarns, Yarn, p) },
        { "amounts", (v, p) => v.Amounts is { } amounts ? new ViewObject<AmountsView>(amounts, Amounts, p) : null },
        { "shares", (v, p) => List(v.Shares, Shares, p) }, { "gauge_name", v => v.GaugeName }, { "gauges", (v, p) => List(v.Gauges, Gauge, p) }, { "gauge_remark", v => v.GaugeRemark }, { "tools", (v, p) => List(v.Tools, Link, p) }, { "notions", (v, p) => List(v.Notions, Link, p) },
        { "abbreviations", (v, p) => List(v.Abbreviations, Abbreviation, p) }, { "special_stitches", (v, p) => List(v.SpecialStitches, SpecialStitch, p) },
        { "charts", (v, p) => List(v.Charts, Chart, p) }, { "notes", v => List(v.Notes) }, { "remarks", (v, p) => new ViewObject<RemarksView>(v.Remarks, Remarks, p) },
        { "about", (v, p) => List(v.About, Section, p) }, { "before", (v, p) => List(v.Before, Section, p) }, { "instructions", (v, p) => List(v.Instructions, Section, p) },
        { "after", (v, p) => List(v.After, Section, p) }, { "closing", (v, p) => List(v.Closing, Section, p) }, { "care", (v, p) => List(v.Care, Fact, p) }, { "care_notes", (v, p) => List(v.CareNotes, Block, p) }, { "corrections", (v, p) => List(v.Corrections, Corrections, p) }, { "correction_notes", (v, p) => List(v.CorrectionNotes, Block, p) }, { "cautions", (v, p) => List(v.Cautions, Caution, p) },
        { "videos", (v, p) => List(v.Videos, Link, p) }, { "links", (v, p) => List(v.Links, Link, p) },
        { "contact", (v, p) => v.Contact is { } contact ? new ViewObject<LinkView>(contact, Link, p) : null }, { "contact_notes", (v, p) => List(v.ContactNotes, Block, p) },
        { "other_designs", (v, p) => List(v.OtherDesigns, Design, p) }, { "all_designs", v => v.AllDesigns },
        { "listing", (v, p) => v.Listing is { } listing ? new ViewObject<ListingView>(listing, Listing, p) : null },
    };

    /// <summary>A shelf as a template sees it.</summary>
    /// <param name="view">The view.</param>
    /// <param name="landing">How texts land in the format that is being written.</param>
    public static IScriptObject Of(TestSheetView view, Landing landing) => new ViewObject<TestSheetView>(view, TestSheet, landing);

    /// <summary>A shelf as a template sees it.</summary>
    /// <param name="view">The view.</param>
    /// <param name="landing">How texts land in the format that is being written.</param>
    public static IScriptObject Of(ShelfView view, Landing landing) => new ViewObject<ShelfView>(view, Shelf, landing);

    /// <summary>A pattern as a template sees it.</summary>
    /// <param name="view">The view.</param>
    /// <param name="landing">How texts land in the format that is being written.</param>
    public static IScriptObject Of(PatternView view, Landing landing) => new ViewObject<PatternView>(view, Pattern, landing);

    private static Ready? Landed(ProseText? prose, Landing landing) => prose is { } text ? new Ready(landing.Prose(text)) : null;

    private static Ready? Landed(SizedText? sized, Landing landing) => sized is { } text ? new Ready(landing.Sized(text)) : null;

    private static ScriptArray List<T>(ImmutableArray<T> views, ViewMembers<T> members, Landing landing)
    {
        var list = new ScriptArray(views.Length);
        foreach (var view in views)
        {
            list.Add(new ViewObject<T>(view, members, landing));
        }

        return list;
    }

    private static ScriptArray List(ImmutableArray<string> words)
    {
        var list = new ScriptArray(words.Length);
        foreach (var word in words)
        {
            list.Add(word);
        }

        return list;
    }
}
