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
    public ImmutableArray<string> Rows() => [Row("BO", "k"), Row("CO", "p")];

    /// <summary>Eyelets in one row, in notation; null where a hole is not of 2 sts.</summary>
    public string? EyeletRow() => HoleStitches == 2 ? PlanWords.Row([.. Clauses("yo, k2tog", "k")]) : null;

    /// <summary>The rows as lines of a pattern: one row of eyelets where the holes are of 2 sts, else two rows.</summary>
    public ImmutableArray<string> Lines()
    {
        var rows = Rows();
        return EyeletRow() is { } eyelets ? [$"Buttonhole Row (RS): {PlanWords.Sentence(eyelets)} ({PlanWords.Sts(Stitches)})"] :
        [
            $"Buttonhole Row 1 (RS): {PlanWords.Sentence(rows[0])} ({PlanWords.Sts(Stitches - (Holes * HoleStitches))})",
            $"Buttonhole Row 2 (WS): {PlanWords.Sentence(rows[1])} ({PlanWords.Sts(Stitches)})",
        ];
    }

    private string Row(string hole, string plain) => PlanWords.Row([.. Clauses(string.Create(CultureInfo.InvariantCulture, $"{hole} {PlanWords.Sts(HoleStitches)}"), plain)]);

    private IEnumerable<string> Clauses(string hole, string plain)
    {
        if (Before > 0)
        {
            yield return Plain(plain, Before);
        }

        foreach (var space in Spaces)
        {
            yield return $"{hole}, {Plain(plain, space)}";
        }

        yield return hole;
        if (After > 0)
        {
            yield return Plain(plain, After);
        }
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
