using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>Rounds of crochet from a ring: circles, balls and tubes.</summary>
/// <param name="Stitch">The stitch, by its name in the pattern's terms.</param>
/// <param name="Counts">Stitches of each round.</param>
/// <param name="Rounds">The rounds in notation, without label.</param>
public sealed record CrochetRounds(string Stitch, ImmutableArray<int> Counts, ImmutableArray<string> Rounds)
{
    /// <summary>The rounds as lines of a pattern.</summary>
    public ImmutableArray<string> Lines() =>
        [.. Rounds.Select((round, i) => string.Create(CultureInfo.InvariantCulture, $"Rnd {i + 1}: {PlanWords.Sentence(round)} ({PlanWords.Sts(Counts[i])})"))];
}

/// <summary>Increases of circles and balls of crochet by the height of the stitch, and counts of squares and foundations.</summary>
public static class CrochetRound
{
    private const int MostRounds = 1000;

    /// <summary>
    /// Stitches that a flat circle grows by in each round (American names): 6 for single, 8 for half double, 12 for double crochet. Rules of thumb, which differ:
    /// 6 to 8, 8 to 10, 10 to 14 and more are told as well (common practice). Null for another stitch; <see cref="PerRound"/> knows it by the gauge.
    /// </summary>
    public static int? UsualPerRound(string stitch) => stitch switch
    {
        "sc" => 6,
        "hdc" => 8,
        "dc" => 12,
        _ => null,
    };

    /// <summary>Stitches that a flat circle grows by in each round at a gauge: each round is a row further out, so its girth is longer by the height of a row times 2 pi.</summary>
    /// <remarks>Worked example: 16 sts and 16 rows: 6.28, that is 6: geometry.</remarks>
    public static decimal? PerRound(decimal stitches, decimal rows) =>
        PlanLimits.IsMeasure(stitches) && PlanLimits.IsMeasure(rows) ? 2 * PlanLimits.Pi * stitches / rows : null;

    /// <summary>Plain stitches between two increases of a round: one fewer than the rounds before it.</summary>
    public static int PlainBetween(int round) => Math.Max(0, round - 2);

    /// <summary>A flat circle: so many stitches in a ring, so many more in each round.</summary>
    /// <remarks>Worked example: 6 sts, round 5: 3 plain stitches and an increase 6 times, 30 sts (common practice).</remarks>
    public static Planned<CrochetRounds> Circle(string stitch, int perRound, int rounds) =>
        perRound is < 3 or > 1000 || rounds is < 1 or > MostRounds ? Planned.No<CrochetRounds>(string.Create(CultureInfo.InvariantCulture, $"a circle of {rounds} rounds that grows by {perRound} cannot be planned"), "3 sts a round or more")
            : Between(stitch, [.. Enumerable.Range(1, rounds).Select(r => r * perRound)]);

    /// <summary>The usual ball of toys: it grows by so many in each round, goes on even, and closes through the same counts.</summary>
    /// <remarks>Worked example: 6, up 6 rounds, 6 even: 6, 12, 18, 24, 30, 36, six times 36, 30, 24, 18, 12, 6 (common practice).</remarks>
    public static Planned<CrochetRounds> Ball(string stitch, int perRound, int up, int even)
    {
        if (perRound is < 3 or > 1000 || up is < 1 or > MostRounds || even is < 0 or > MostRounds)
        {
            return Planned.No<CrochetRounds>(string.Create(CultureInfo.InvariantCulture, $"a ball that grows by {perRound} over {up} rounds cannot be planned"));
        }

        var growing = Enumerable.Range(1, up).Select(r => r * perRound).ToArray();
        return Between(stitch, [.. growing, .. Enumerable.Repeat(up * perRound, even), .. growing[..^1].Reverse()]);
    }

    /// <summary>A ball by its geometry: the girth at the middle of each round, to the nearest stitch; it closes through the counts by which it grew.</summary>
    /// <param name="stitch">The stitch.</param>
    /// <param name="diameter">The diameter of the ball.</param>
    /// <param name="stitches">Stitches of the gauge.</param>
    /// <param name="rows">Rows of the gauge.</param>
    /// <param name="over">Over how much, in the unit of the diameter.</param>
    public static Planned<CrochetRounds> Sphere(string stitch, decimal diameter, decimal stitches, decimal rows, decimal over)
    {
        if (GaugeMath.Stitches(diameter, stitches, over) is not { } wide || GaugeMath.Rows(diameter, rows, over) is not { } high || wide > 10_000 || high > MostRounds / 2)
        {
            return Planned.No<CrochetRounds>("a ball needs a diameter and a gauge of stitches and rounds");
        }

        var rounds = (int)decimal.Round(high * PlanLimits.Pi / 2, MidpointRounding.AwayFromZero);
        var counts = Enumerable.Range(1, rounds).Select(r => Math.Max(3, (int)Math.Round(Math.PI * (double)wide * Math.Sin(Math.PI * (r - 0.5) / rounds), MidpointRounding.AwayFromZero))).ToArray();

        // A round at most doubles: the first ones of a ball in tall stitches would ask for more.
        for (var i = 1; i < counts.Length; i++)
        {
            counts[i] = Math.Min(counts[i], 2 * counts[i - 1]);
            counts[^(i + 1)] = Math.Min(counts[^(i + 1)], 2 * counts[^i]);
        }

        return rounds < 3 ? Planned.No<CrochetRounds>("so small a ball has fewer than three rounds at this gauge") : Between(stitch, [.. counts]);
    }

    /// <summary>Rounds through given counts, the first of them in a ring; increases and decreases spread evenly.</summary>
    public static Planned<CrochetRounds> Between(string stitch, ImmutableArray<int> counts)
    {
        if (counts.IsDefaultOrEmpty || counts.Length > MostRounds || counts.Any(c => c is < 1 or > 10_000))
        {
            return Planned.No<CrochetRounds>("rounds of crochet have from 1 to 10000 stitches");
        }

        var rounds = ImmutableArray.CreateBuilder<string>(counts.Length);
        rounds.Add(string.Create(CultureInfo.InvariantCulture, $"{counts[0]} {stitch} in magic ring"));
        for (var i = 1; i < counts.Length; i++)
        {
            var (from, to) = (counts[i - 1], counts[i]);
            if (from == to)
            {
                rounds.Add($"{stitch} in each st around");
            }
            else if (to == 2 * from)
            {
                rounds.Add($"2 {stitch} in each st around");
            }
            else if (Spread.FromTo(from, to, SpreadEnds.Round, crochet: stitch) is { IsPlanned: true } round)
            {
                rounds.Add(round.Plan.Row());
            }
            else
            {
                return Planned.No<CrochetRounds>(string.Create(CultureInfo.InvariantCulture, $"from {from} to {to} sts in one round is more than 2 in each stitch, or 2 together all round"), "more rounds between");
            }
        }

        return Planned.Of(new CrochetRounds(stitch, counts, rounds.MoveToImmutable()));
    }

    /// <summary>A granny square of groups of 3: groups, stitches, corner spaces and spaces at the sides after so many rounds.</summary>
    /// <remarks>Worked example: round 5: 20 groups, 60 sts, 4 corners, 16 spaces at the sides (common practice).</remarks>
    public static (int Groups, int Stitches, int Corners, int SideSpaces) Granny(int round) => (4 * round, 12 * round, 4, 4 * (round - 1));

    /// <summary>A solid square: 3 sts a side at first, 4 more a side with each round.</summary>
    /// <remarks>Worked example: round 1 has 12, round 2 has 28 (common practice).</remarks>
    public static int SolidSquare(int round) => 12 + (16 * (round - 1));

    /// <summary>A motif with so many sides of so many stitches.</summary>
    public static int Around(int perSide, int sides = 4) => perSide * sides;

    /// <summary>Filet over so many squares: the positions, and the chain for a first square that is solid (3 more less one) or open.</summary>
    /// <remarks>Worked example: 10 squares: 31 positions, chain 33 or 35 (common practice).</remarks>
    public static (int Positions, int ChainSolid, int ChainOpen) Filet(int squares) => ((3 * squares) + 1, (3 * squares) + 3, (3 * squares) + 5);

    /// <summary>A foundation chain for a row of a stitch whose turning chain counts as a stitch: skipped chains, of which all together are the first stitch.</summary>
    /// <remarks>Worked example: 39 dc, 3 chains skipped: chain 41; with 4 skipped 42 (common practice).</remarks>
    public static int Foundation(int stitches, int skipped) => stitches - 1 + skipped;

    /// <summary>Stitches over a chain of single crochet: one fewer.</summary>
    public static int OverChain(int chain, int skipped = 1) => chain - skipped;
}
