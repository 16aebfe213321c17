using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes the contents out of the parts that a page has.</summary>
internal static class ContentsBuilder
{
    /// <summary>The entries, in the order of the built-in page.</summary>
    public static ImmutableArray<EntryView> Build(PatternView view)
    {
        var remarks = view.Remarks;
        var entries = ImmutableArray.CreateBuilder<EntryView>();
        Sections(view.About);
        Part(view.Sizes is { List: "" } ? "Measurements" : "Sizes", "sizes", view.Sizes is not null || !remarks.Sizes.IsEmpty);
        Part("Yarn", "yarn", !view.Yarns.IsEmpty || !remarks.Yarn.IsEmpty);
        Part("Tools", "tools", !view.Tools.IsEmpty || !view.Notions.IsEmpty || !remarks.Tools.IsEmpty);
        Part(view.GaugeName, "gauge", !view.Gauges.IsEmpty || view.GaugeRemark is not null || !remarks.Gauge.IsEmpty);
        Part("Abbreviations", "abbreviations", !view.Abbreviations.IsEmpty || !view.SpecialStitches.IsEmpty || !view.Charts.IsEmpty || !view.Notes.IsEmpty || !remarks.Abbreviations.IsEmpty);
        Sections(view.Before);
        Part("Videos", "videos", !view.Videos.IsEmpty || !remarks.Videos.IsEmpty);
        Sections(view.Instructions);
        Part("Care", "care", !view.Care.IsEmpty);
        Sections(view.After);
        Part("Cautions", "cautions", !view.Cautions.IsEmpty);
        Part("Corrections", "corrections", !view.Corrections.IsEmpty);
        return entries.ToImmutable();

        void Part(string text, string id, bool stands)
        {
            if (stands)
            {
                entries.Add(new EntryView { Text = text, Id = id });
            }
        }

        void Sections(ImmutableArray<SectionView> sections) =>
            entries.AddRange(sections.Select(s => new EntryView { Text = s.Heading, Id = s.Id, HasRows = s.HasRows }));
    }
}
