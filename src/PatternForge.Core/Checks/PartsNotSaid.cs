using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>Lists the parts of a released pattern that this one does not have yet.</summary>
internal sealed class PartsNotSaid : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF805", "parts-not-said", Area.Completeness, Severity.Note,
        "Parts that a released pattern has are still missing.",
        "A maker decides by the summary, the level and the photos, gathers what is listed, and comes back to the care, the terms of use and the contact. Parts that would make no sense for a piece are not asked for: a scarf has no ease, a toy is not blocked. Any part may be left out on purpose: name it under `omit`, and nobody asks again.")
    {
        Bad = """
            ---
            ^^^
            title: Harbour hat
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            designer: Ilsa Merrowby
            version: 1.0
            summary: A plain hat.
            level: basic
            level-reason: knit stitches alone
            techniques: [knitting in the round]
            notions: [tapestry needle]
            care: [wash as the label of the yarn says]
            contact: hello@example.com
            omit: [photos, construction, blocking, finishing, styling, corrections, terms-of-use, thanks, commissions, designs, videos]
            ---
            """,
    };

    public override void Run(CheckContext context)
    {
        // Behind a remark or a block that is never closed, nobody knows what would have stood.
        if (context.HeaderPlace is not { } place || context.Bag.Has(BodyRules.RemarkNotClosed) || context.Bag.Has(BodyRules.BlockNotClosed))
        {
            return;
        }

        var groups = new List<string>();
        foreach (var (group, parts) in Groups(context, Hazards.Of(context.Facts, context.Lines)))
        {
            string[] missing = [.. parts.Where(p => p.IsWanted && !context.IsExcused(p.Part)).Select(p => p.Part)];
            if (missing.Length > 0)
            {
                groups.Add($"{group}: {string.Join(", ", missing)}");
            }
        }

        if (groups.Count > 0)
        {
            context.Bag.Add(Rule, place, $"not said yet: {string.Join("; ", groups)}", "add them, or list those that you leave out on purpose under `omit`");
        }
    }

    // Where every line is understood and the gauge is whole, schematics are drawn by themselves; to make them here would cost more than all checks together.
    private static bool IsDrawn(CheckContext context) =>
        context.Lines.All(l => l.Status == LineStatus.Checked) && context.Facts.Gauges.Any(g => g is { StitchesPerCm: > 0, RowsPerCm: > 0 });

    // Title, sizes, gauge, yarn, tools and rows have findings of their own: without them a maker cannot go on.
    private static (string Group, (string Part, bool IsWanted)[] Parts)[] Groups(CheckContext context, Hazards hazards)
    {
        var facts = context.Facts;
        var isFitted = WornPiece.IsFitted(facts) && !hazards.IsToy;
        var isBlocked = !hazards.IsToy && !facts.Gauges.Any(g => g.Blocked == false);
        var chart = context.Pattern.Sections.SelectMany(s => s.Blocks).OfType<FencedBlock>().Any(b => b.Info == FencedBlock.Chart) || context.IsCharted;
        return
        [
            ("to decide by",
            [
                ("designer", facts.Designer is null),
                ("summary", facts.Summary is null && !Sections.Has(context, "about", "summary", "introduction", "description")),
                ("level", facts.Level is null),
                ("techniques", facts.Techniques.IsEmpty && !Sections.Has(context, "techniques")),
                ("photos", facts.Photos.IsEmpty && !Sections.Has(context, "photos")),
                ("fits", isFitted && facts.Sizes.Count > 1 && facts.Fits.IsEmpty),
                ("ease", isFitted && !facts.Fits.IsEmpty && facts.Ease is null && facts.Shown?.Ease is null),
                ("shown", !facts.Photos.IsEmpty && facts.Sizes.Count > 1 && facts.Shown?.Size is null && facts.Sample?.Size is null),
            ]),
            ("to gather",
            [
                ("alternatives", !facts.Yarns.IsEmpty && facts.Yarns.All(y => y.Alternatives.IsEmpty) && !Sections.Has(context, "yarn", "materials")),
                ("notions", facts.Notions.IsEmpty && !Sections.Has(context, "notions", "materials", "tools-and-notions")),
            ]),
            ("to prepare",
            [
                ("construction", !Sections.Has(context, "construction", "construction-overview", "overview", "about")),
                ("lengthening", !hazards.IsToy && WornPiece.HasLength(facts) && !Sections.Says(Sections.Prose(context), "longer", "shorter", "lengthen", "shorten", "length")),
            ]),
            ("to make",
            [
                ("charts", !chart && !context.IsExcused("charts", "chart") && facts.Charts.IsEmpty && context.Techniques.Any(t => t.Technique.Name is "lace" or "cables" or "colour work within a row" or "filet")),
                ("schematic", WornPiece.IsGarment(facts) && !Sections.Has(context, "schematic") && !context.Pattern.Sections.SelectMany(s => s.Blocks).OfType<FencedBlock>().Any(b => b.Info == "schematic") && !IsDrawn(context)),
                ("videos", facts.Videos.IsEmpty && facts.Links.IsEmpty && !Sections.Has(context, "videos", "links")),
            ]),
            ("to finish and use",
            [
                ("blocking", isBlocked && !Sections.Has(context, "blocking") && !Sections.Says(Sections.Prose(context), "block", "soak", "steam", "pin it", "pin out", "wet the", "press", "dry flat", "to size")),
                ("finishing", !Sections.Has(context, "finishing", "making-up", "assembly", "joining", "sewing-up", "to-finish") && !Sections.Says(Sections.Prose(context), "weave in", "sew", "finish") && !context.Lines.Any(l => l.Text.Contains("weave in", StringComparison.OrdinalIgnoreCase))),
                ("care", facts.Care.IsEmpty && !Sections.Has(context, "care")),
                ("styling", !Sections.Has(context, "styling", "ways-to-wear", "wearing")),
            ]),
            ("around it",
            [
                ("version", facts.Version is null),
                ("corrections", facts.Corrections.IsEmpty && !Sections.Has(context, "corrections", "errata", "versions")),
                ("terms-of-use", !Sections.Has(context, "terms-of-use", "terms", "license", "licence", "copyright")),
                ("contact", facts.Contact is null && !Sections.Has(context, "contact", "help", "questions")),
                ("thanks", !Sections.Has(context, "thanks", "acknowledgements", "acknowledgments")),
                ("commissions", !Sections.Has(context, "commissions", "makers")),
                ("designs", !Sections.Has(context, "other-designs", "more-designs", "designs")),
            ]),
        ];
    }
}
