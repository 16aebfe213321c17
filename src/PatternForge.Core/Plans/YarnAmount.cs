using System.Collections.Immutable;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Plans;

/// <summary>An amount of yarn with its likely error.</summary>
/// <param name="Metres">Metres; null where only the weight is known.</param>
/// <param name="Grams">Grams; null where only the length is known.</param>
/// <param name="LikelyError">How far it may be out, as a share: 0.1 is a tenth more or less.</param>
/// <param name="Source">Where the way of reckoning and its error come from.</param>
public sealed record YarnNeed(decimal? Metres, decimal? Grams, decimal LikelyError, Source Source)
{
    /// <summary>The same with a margin in per cent.</summary>
    public YarnNeed WithMargin(decimal percent) => Times(1 + (percent / 100));

    /// <summary>The same times a factor.</summary>
    public YarnNeed Times(decimal factor) => this with { Metres = Metres * factor, Grams = Grams * factor };

    /// <summary>The same with what is not known of length and weight filled in by the yarn's metres in 100 grams.</summary>
    public YarnNeed Filled(decimal metresPer100Grams) => !PlanLimits.IsMeasure(metresPer100Grams) ? this : this with
    {
        Metres = Metres ?? Grams * metresPer100Grams / 100,
        Grams = Grams ?? Metres * 100 / metresPer100Grams,
    };
}

/// <summary>What a stitch pattern takes beside stockinette of the same size.</summary>
/// <param name="Name">The kind of fabric.</param>
/// <param name="Least">The least factor.</param>
/// <param name="Usual">The usual factor.</param>
/// <param name="Most">The greatest factor.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record FabricFactor(string Name, decimal Least, decimal Usual, decimal Most, Source Source);

/// <summary>Yarn arithmetic: what a piece takes, and what that is in balls, in another yarn and in several strands.</summary>
/// <remarks>
/// The likely errors and the factors of fabrics are rules of thumb of the trade, set down from memory (<see cref="Sources.Remembered"/>): they are told with every amount and
/// judge nothing. A swatch that was washed, dried and weighed is the surest start.
/// </remarks>
public static class YarnAmount
{
    /// <summary>The likely error of an amount by stitches of the same fabric.</summary>
    public const decimal ErrorByStitches = 0.05m;

    /// <summary>The likely error of an amount by area of a weighed swatch.</summary>
    public const decimal ErrorBySwatch = 0.1m;

    /// <summary>The likely error of an amount from published figures.</summary>
    public const decimal ErrorRough = 0.3m;

    // A relaxed loop of plain knitting is 4.1 times as long as its stitch is wide, and rows are 1.3 times as close as stitches.
    private const decimal LoopInWidths = 4.1m;
    private const decimal RowsToStitches = 1.3m;

    /// <summary>Factors beside stockinette.</summary>
    public static ImmutableArray<FabricFactor> Factors { get; } =
    [
        new("stockinette", 1, 1, 1, Sources.CommonPractice),
        new("garter", 1, 1.1m, 1.25m, Sources.Remembered),
        new("ribbing", 1, 1.1m, 1.2m, Sources.Remembered),
        new("lace", 0.7m, 0.85m, 1, Sources.Remembered),
        new("cables", 1.1m, 1.25m, 1.4m, Sources.Remembered),
        new("stranded", 1.2m, 1.35m, 1.5m, Sources.Remembered),
        new("crochet", 1.2m, 1.3m, 1.5m, Sources.Remembered),
    ];

    /// <summary>By stitches: what a counted piece or swatch of the same fabric took for each, times the stitches; null without figures above 0.</summary>
    /// <remarks>Worked example: a swatch of 40 x 50 sts that took 24 m gives 12 m for every 1000 sts: 480 m for 40,000 (arithmetic).</remarks>
    public static YarnNeed? ByStitches(decimal stitches, decimal swatchStitches, decimal? swatchMetres, decimal? swatchGrams) =>
        Share(stitches, swatchStitches, swatchMetres, swatchGrams, ErrorByStitches);

    /// <summary>By area: a weighed or measured swatch against the area of the piece, in one unit.</summary>
    /// <remarks>Worked example: a body of 20 x 28 in twice and two sleeves of 8 to 15 in, 18 in long, are 1534 sq in (common practice); at 1 g for 6 sq in 256 g.</remarks>
    public static YarnNeed? ByArea(decimal area, decimal swatchArea, decimal? swatchMetres, decimal? swatchGrams) =>
        Share(area, swatchArea, swatchMetres, swatchGrams, ErrorBySwatch);

    /// <summary>The area of a piece with two level edges, a rectangle or a sleeve: the mean of its widths times its length.</summary>
    public static decimal Area(decimal lower, decimal upper, decimal length) => (lower + upper) / 2 * length;

    /// <summary>The stitches of a piece whose count goes evenly from one to another over its rows.</summary>
    public static decimal Stitches(int first, int last, int rows) => (first + last) / 2m * rows;

    /// <summary>Roughly, by area in square centimetres and the gauge of stockinette over 10 cm; metres alone.</summary>
    /// <remarks>By <see cref="Sources.LoopLength"/>: a stitch takes 4.1 times its width. Worked example: 9900 sq cm at 22 sts and 30 rows in 10 cm: 1218 m.</remarks>
    public static YarnNeed? Rough(decimal squareCm, decimal stitches10Cm, decimal rows10Cm) =>
        PlanLimits.IsMeasure(squareCm) && PlanLimits.IsMeasure(stitches10Cm) && PlanLimits.IsMeasure(rows10Cm)
            ? new(squareCm * rows10Cm / 10 * LoopInWidths / 100, null, ErrorRough, Sources.LoopLength)
            : null;

    /// <summary>Roughly, by area and the class of the yarn, from its published gauge and lengths: the middle of both; null for the classes that are open at an end (0 and 7), where a swatch must tell.</summary>
    public static YarnNeed? Rough(decimal squareCm, int yarnClass)
    {
        if (YarnWeightRanges.All.FirstOrDefault(r => r.Class == yarnClass) is not { KnitStitches: { Least: { } few, Most: { } many }, MetresPer100Grams: { Least: { } heavy, Most: { } light } })
        {
            return null;
        }

        // The published gauge is over 4 in.
        var stitches10Cm = (few + many) / 2 / 1.016m;
        return Rough(squareCm, stitches10Cm, stitches10Cm * RowsToStitches)?.Filled((heavy + light) / 2);
    }

    /// <summary>Balls to buy: rounded up; null without figures above 0.</summary>
    /// <remarks>Worked example: 1150 m in balls of 200 m are 6 (common practice).</remarks>
    public static int? Balls(decimal need, decimal ball) =>
        PlanLimits.IsMeasure(need) && PlanLimits.IsMeasure(ball) && need / ball <= PlanLimits.MostStitches ? (int)decimal.Ceiling(need / ball) : null;

    /// <summary>Grams of a substitute: the same metres, by its own metres in 100 grams.</summary>
    /// <remarks>Worked example: 1150 m of a yarn with 230 m in 100 g weigh 500 g (arithmetic).</remarks>
    public static decimal? SubstituteGrams(decimal metres, decimal metresPer100Grams) =>
        PlanLimits.IsMeasure(metres) && PlanLimits.IsMeasure(metresPer100Grams) ? metres * 100 / metresPer100Grams : null;

    /// <summary>Strands held together: metres in 100 g of all of them as one.</summary>
    /// <remarks>Worked example: two strands of 400 m in 100 g are as one of 200 m (arithmetic).</remarks>
    public static decimal? HeldTogether(params ReadOnlySpan<decimal> metresPer100Grams)
    {
        var sum = 0m;
        foreach (var metres in metresPer100Grams)
        {
            if (!PlanLimits.IsMeasure(metres))
            {
                return null;
            }

            sum += 1 / metres;
        }

        return sum == 0 ? null : 1 / sum;
    }

    /// <summary>Metres of all strands together for a piece worked with several; of each strand it takes the metres of the piece.</summary>
    public static decimal MetresOfStrands(decimal metres, int strands) => metres * strands;

    private static YarnNeed? Share(decimal whole, decimal part, decimal? metres, decimal? grams, decimal error) =>
        PlanLimits.IsMeasure(whole) && PlanLimits.IsMeasure(part) && (metres is not null || grams is not null) && (metres ?? 1) > 0 && (grams ?? 1) > 0
            ? new(metres * whole / part, grams * whole / part, error, Sources.Remembered)
            : null;
}
