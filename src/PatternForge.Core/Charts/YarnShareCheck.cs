using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Charts;

/// <summary>Holds the amounts of yarn that the header states against the stitches that are worked with each yarn.</summary>
public static class YarnShareCheck
{
    // A yarn with fewer stitches than this share needs its ends and its rounding more than its stitches.
    private const decimal LeastShare = 0.15m;

    /// <summary>PF325.</summary>
    public static Rule Rule { get; } = new(
        "PF325", "yarn-share-unlikely", Area.Counts, Severity.Note,
        "The amount of one yarn is far smaller than its part of the stitches.",
        "Where yarns of one weight share the rows of a piece, each needs about as much as it has stitches. Taller stitches take more than short ones, so only a large difference is told, and nothing is said of amounts in whole balls or where a piece is made several times. `tolerances` in the project file set how many times too small it may be.")
    {
        Bad = """
            ---
            title: Harbour scarf
            sizes: one size
            yarn:
              - {label: A, name: Quayside Wool, weight: DK, put-up: 50 g = 120 m, needs: 130 m}
                                                                                         ^^^^^
              - {label: B, name: Quayside Wool, weight: DK, put-up: 50 g = 120 m, needs: 1100 m}
            ---

            ## Scarf

            With A, CO 40 sts.

            Row 1: With A, knit.

            Row 2: Knit.

            Row 3: With B, knit.

            Row 4: Knit.

            Rows 5-8: Rep Rows 1-4.
            """,
        Good = """
            ---
            title: Harbour scarf
            sizes: one size
            yarn:
              - {label: A, name: Quayside Wool, weight: DK, put-up: 50 g = 120 m, needs: 230 m}
              - {label: B, name: Quayside Wool, weight: DK, put-up: 50 g = 120 m, needs: 220 m}
            ---

            ## Scarf

            With A, CO 40 sts.

            Row 1: With A, knit.

            Row 2: Knit.

            Row 3: With B, knit.

            Row 4: Knit.

            Rows 5-8: Rep Rows 1-4.
            """,
        Sources = [Sources.CommonPractice],
    };

    /// <summary>Looks at a pattern of one piece in yarns of one weight.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="shares">How its stitches are shared out.</param>
    /// <param name="lines">Its lines.</param>
    /// <param name="most">How many times too small an amount may be.</param>
    /// <param name="bag">Where to report.</param>
    internal static void Report(Pattern pattern, ImmutableArray<YarnShares> shares, ImmutableArray<BoundLine> lines, decimal most, FindingBag bag)
    {
        // Several parts may be made several times each; of one, nobody asks how often where no words say "make".
        if (shares is not [var share] || lines.Any(l => l.Section != share.Section) || SaysMake(pattern, lines))
        {
            return;
        }

        // Where the sample was weighed yarn by yarn, the amounts of all sizes are held against it: one mistake is told once.
        if (pattern.Facts is { Sample.UsedBy.IsEmpty: false, Sizes.Count: > 1 })
        {
            return;
        }

        Yarn[] yarns = [.. share.Yarns.Select(label => pattern.Facts.Yarns.First(y => y.Label == label))];
        if (yarns[0].WeightClass is null || yarns.Any(y => y.WeightClass != yarns[0].WeightClass || y.NeedsOrigin is null))
        {
            return;
        }

        var sizes = pattern.Facts.Sizes;
        for (var yarn = 0; yarn < yarns.Length; yarn++)
        {
            var found = new List<(int Size, decimal Stitches, decimal Amount)>();
            for (var size = 0; size < sizes.Count; size++)
            {
                decimal?[] metres = [.. yarns.Select(y => ColourAmounts.MetresOf(y, size))];
                if (metres.All(m => m > 0) && share.Of(yarn, size) is { } part && part >= LeastShare && metres[yarn]!.Value / metres.Sum()!.Value is var amount && amount * most < part)
                {
                    found.Add((size, part, amount));
                }
            }

            if (found.Count > 0)
            {
                var worst = found.MaxBy(f => f.Stitches / f.Amount);
                bag.Add(new Finding(Rule, bag.Source, yarns[yarn].NeedsOrigin!.Value, string.Create(CultureInfo.InvariantCulture,
                    $"{share.Yarns[yarn]} has {worst.Stitches * 100:0} % of the stitches and {worst.Amount * 100:0} % of the yarn"))
                {
                    Sizes = found.Count == sizes.Count ? [] : [.. found.Select(f => f.Size)],
                    Help = "check the amounts, and which yarn each row names",
                });
            }
        }
    }

    private static bool SaysMake(Pattern pattern, ImmutableArray<BoundLine> lines) =>
        pattern.Sections.Select(s => s.Heading).Concat(pattern.Sections.SelectMany(s => s.Blocks).OfType<ProseBlock>().Select(p => p.Markdown)).Concat(lines.Select(l => l.Text))
            .Any(t => t.Contains("make", StringComparison.OrdinalIgnoreCase) || t.Contains("motif", StringComparison.OrdinalIgnoreCase));
}
