using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Buttonholes along a row of stitches.</summary>
/// <param name="Stitches">Stitches of the row.</param>
/// <param name="Before">Stitches before the first hole.</param>
/// <param name="After">Stitches behind the last hole.</param>
/// <param name="HoleStitches">Stitches of a hole.</param>
/// <param name="Spaces">Stitches between the holes.</param>
public sealed record ButtonholePlan(int Stitches, int Before, int After, int HoleStitches, ImmutableArray<int> Spaces)
{
    /// <summary>How many holes.</summary>
    public int Holes => Spaces.Length + 1;

    /// <summary>The plan in a sentence.</summary>
    public string Words() => string.Create(CultureInfo.InvariantCulture, $"{PlanWords.Counted(Holes, "hole")} of {PlanWords.Sts(HoleStitches)} over {PlanWords.Sts(Stitches)}: {Before} before{(Spaces.IsEmpty ? "" : $", {PlanWords.Sizes(Spaces)} between")}, {After} after");

    /// <summary>The rows in notation: the holes bound off, and cast on again in the next row. Holes of 2 sts may be a yarn over and k2tog in one row: <see cref="EyeletRow"/>.</summary>
    public ImmutableArray<string> Rows() => [Row("BO", "k", inTwo: false), Row("CO", "p", inTwo: false)];

    /// <summary>Eyelets in one row, in notation; null where a hole is not of 2 sts.</summary>
    public string? EyeletRow() => HoleStitches == 2 ? Text("yo, k2tog", s => Plain("k", s), inTwo: false) : null;

    /// <summary>The rows as lines of a pattern: one row of eyelets where the holes are of 2 sts, else two rows.</summary>
    /// <param name="inTwo">True to have the longer spaces together and then the shorter ones, as `0 times` where there are none: rows of several sizes are then alike.</param>
    public ImmutableArray<string> Lines(bool inTwo = false) => HoleStitches == 2 ? [$"Buttonhole Row (RS): {PlanWords.Sentence(Text("yo, k2tog", s => Plain("k", s), inTwo))} ({PlanWords.Sts(Stitches)})"] :
    [
        $"Buttonhole Row 1 (RS): {PlanWords.Sentence(Row("BO", "k", inTwo))} ({PlanWords.Sts(Stitches - (Holes * HoleStitches))})",
        $"Buttonhole Row 2 (WS): {PlanWords.Sentence(Row("CO", "p", inTwo))} ({PlanWords.Sts(Stitches)})",
    ];

    /// <summary>The rows in crochet: a chain over each hole, and a row over it.</summary>
    /// <param name="stitch">The stitch of the band.</param>
    /// <param name="inTwo">As in <see cref="Lines"/>.</param>
    public ImmutableArray<string> Crocheted(string stitch, bool inTwo = false)
    {
        var hole = string.Create(CultureInfo.InvariantCulture, $"ch {HoleStitches}, skip next {(HoleStitches == 1 ? "st" : $"{HoleStitches} sts")}");
        var row = Text(hole, s => string.Create(CultureInfo.InvariantCulture, $"{stitch} in next {(s == 1 ? "st" : $"{s} sts")}"), inTwo);
        return
        [
            $"Buttonhole Row 1 (RS): {PlanWords.Capital(CrochetWords.Turn(stitch))}, {row}. ({PlanWords.Sts(Stitches)})",
            $"Buttonhole Row 2 (WS): {PlanWords.Capital(CrochetWords.Turn(stitch))}, {stitch} in each st and in each ch across. ({PlanWords.Sts(Stitches)})",
        ];
    }

    private string Row(string hole, string plain, bool inTwo) => Text(string.Create(CultureInfo.InvariantCulture, $"{hole} {PlanWords.Sts(HoleStitches)}"), s => Plain(plain, s), inTwo);

    private string Text(string hole, Func<int, string> plain, bool inTwo)
    {
        var (before, after) = (Before > 0 ? plain(Before) : "", After > 0 ? plain(After) : "");
        if (!inTwo || Spaces.IsEmpty)
        {
            return PlanWords.Row([before, .. Spaces.Select(s => $"{hole}, {plain(s)}"), hole, after]);
        }

        var (longer, shorter) = (Spaces.Max(), Spaces.Min());
        var times = Spaces.Count(s => s == longer);
        string[] clauses = [before, $"({hole}, {plain(longer)}) {PlanWords.Times(times)}", $"({hole}, {plain(shorter)}) {PlanWords.Times(Spaces.Length - times)}", hole, after];
        return string.Join(", ", clauses.Where(c => c.Length > 0));
    }

    private static string Plain(string plain, int stitches) => string.Create(CultureInfo.InvariantCulture, $"{plain}{stitches}");
}

/// <summary>Buttonhole spacing: the stitches between the holes differ by one at most.</summary>
/// <remarks>Worked example: 100 sts, 3 at each edge, 7 holes of 4 sts: 66 sts are left for 6 spaces of 11 (common practice).</remarks>
public static class Buttonholes
{
    /// <summary>So many holes over so many stitches (or rows: the arithmetic is the same).</summary>
    public static Planned<ButtonholePlan> Plan(int stitches, int holes, int holeStitches, int edge)
    {
        if (!PlanLimits.IsCount(stitches) || holes is < 1 or > PlanLimits.MostTimes || holeStitches is < 1 or > 1000 || edge < 0 || edge > stitches)
        {
            return Planned.No<ButtonholePlan>(string.Create(CultureInfo.InvariantCulture, $"{holes} holes of {holeStitches} sts over {stitches} sts with {edge} at each edge cannot be spaced"));
        }

        var left = stitches - (2 * edge) - (holes * holeStitches);
        if (holes == 1 ? left < 0 : left < holes - 1)
        {
            return Planned.No<ButtonholePlan>(
                string.Create(CultureInfo.InvariantCulture, $"{holes} holes of {holeStitches} sts and {edge} sts at each edge take {(2 * edge) + (holes * holeStitches)} sts and one between each two; there are {stitches}"),
                "fewer holes, smaller holes, or more stitches");
        }

        // A single hole stands in the middle.
        return Planned.Of(holes == 1
            ? new ButtonholePlan(stitches, edge + (left / 2), edge + left - (left / 2), holeStitches, [])
            : new ButtonholePlan(stitches, edge, edge, holeStitches, EvenShare.Parts(left, holes - 1, ShareOrder.Centred)));
    }
}
