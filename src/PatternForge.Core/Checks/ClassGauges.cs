using System.Buffers;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Checks;

/// <summary>A gauge in a plain stitch with the one yarn it is worked in, and what is published for the yarn's class.</summary>
/// <param name="Gauge">The gauge.</param>
/// <param name="Yarn">The yarn.</param>
/// <param name="Range">What is published for its class.</param>
/// <param name="IsHook">True in crochet.</param>
internal sealed record ClassGauge(Gauge Gauge, Yarn Yarn, YarnWeightRange Range, bool IsHook)
{
    /// <summary>Stitches over four inches, as the tables count them; null where the gauge does not say.</summary>
    public decimal? Stitches => Gauge.StitchesPerCm is { } perCm ? perCm * 10.16m : null;

    /// <summary>The published stitches over four inches.</summary>
    public FigureSpan Published => IsHook ? Range.CrochetStitches : Range.KnitStitches;

    /// <summary>The published tools in millimetres.</summary>
    public FigureSpan Tools => IsHook ? Range.Hooks : Range.Needles;
}

/// <summary>Finds the gauges that the published ranges of a weight class can be held against: plain stitches, one strand, one yarn.</summary>
internal static class ClassGauges
{
    private static readonly SearchValues<string> Doubled = SearchValues.Create(["double strand", "held double", "two strands", "2 strands", "three strands", "held together", "strands together", "doubled", "held tog", "stranded double", "strands of"], StringComparison.OrdinalIgnoreCase);

    /// <summary>The gauges that can be compared.</summary>
    public static IEnumerable<ClassGauge> Of(CheckContext context)
    {
        var facts = context.Facts;
        var classes = facts.Yarns.Select(y => y.WeightClass).Distinct().ToArray();
        if (classes is not [{ } only] || IsDoubled(context) || IsToy(facts))
        {
            yield break;
        }

        foreach (var gauge in facts.Gauges)
        {
            if (gauge.Stitch is { } stitch && IsPlain(stitch, facts, only))
            {
                yield return new ClassGauge(gauge, facts.Yarns[0], YarnWeightRanges.All[only], facts.Craft != Craft.Knitting);
            }
        }
    }

    // The tables count stockinette in knitting and single crochet (American) in crochet; for lace yarn double crochet.
    private static bool IsPlain(string stitch, PatternFacts facts, int weightClass)
    {
        var said = stitch.ToLowerInvariant();
        if (facts.Craft == Craft.Knitting)
        {
            return said is "stockinette" or "stockinette stitch" or "stocking stitch" or "st st" or "stst" or "stockinette st" || said.StartsWith("stockinette", StringComparison.Ordinal) || said.StartsWith("stocking stitch", StringComparison.Ordinal);
        }

        var isBritish = facts.TermsInForce == Dialect.Uk;
        return facts.Craft == Craft.Crochet && weightClass > 0
            && (isBritish ? said is "dc" or "double crochet" || said.StartsWith("double crochet", StringComparison.Ordinal) : said is "sc" or "single crochet" || said.StartsWith("single crochet", StringComparison.Ordinal));
    }

    // What is stuffed is worked much tighter than a garment.
    private static bool IsToy(PatternFacts facts) =>
        facts.Notions.Any(n => n.Text.Contains("stuffing", StringComparison.OrdinalIgnoreCase) || n.Text.Contains("fibrefill", StringComparison.OrdinalIgnoreCase) || n.Text.Contains("fiberfill", StringComparison.OrdinalIgnoreCase) || n.Text.Contains("toy", StringComparison.OrdinalIgnoreCase))
        || facts.Gauges.Any(g => g.Stitch?.Contains("spiral", StringComparison.OrdinalIgnoreCase) == true || g.Stitch?.Contains("amigurumi", StringComparison.OrdinalIgnoreCase) == true);

    private static bool IsDoubled(CheckContext context)
    {
        var facts = context.Facts;
        return facts.Gauges.Any(g => Says(g.Stitch) || Says(g.Tool) || Says(g.Name)) || facts.Yarns.Any(y => Says(y.Name) || Says(y.Weight)) || facts.Notes.Any(n => Says(n.Value))
            || Says(facts.Summary) || context.Pattern.Sections.SelectMany(s => s.Blocks).OfType<ProseBlock>().Any(b => Says(b.Markdown)) || context.Lines.Any(l => Says(l.Text));
    }

    private static bool Says(string? text) => text is not null && text.AsSpan().ContainsAny(Doubled);
}
