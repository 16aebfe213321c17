using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>A turned heel.</summary>
/// <param name="Stitches">Stitches of the heel flap.</param>
/// <param name="Rows">The rows in notation, the first on the wrong side.</param>
/// <param name="Counts">Stitches after each row.</param>
/// <param name="LeftFirst">Stitches left unworked at the end of the first row and of the second.</param>
public sealed record HeelPlan(int Stitches, ImmutableArray<string> Rows, ImmutableArray<int> Counts, (int First, int Second) LeftFirst)
{
    /// <summary>Stitches after the heel is turned.</summary>
    public int End => Counts.IsEmpty ? Stitches : Counts[^1];

    /// <summary>The rows as lines of a pattern.</summary>
    public ImmutableArray<string> Lines() =>
        [.. Rows.Select((row, i) => string.Create(CultureInfo.InvariantCulture, $"Row {i + 1} ({(i % 2 == 0 ? "WS" : "RS")}): {PlanWords.Sentence(row)} ({PlanWords.Sts(Counts[i])})"))];
}

/// <summary>Socks: counts, heels and toes.</summary>
public static class Sock
{
    /// <summary>The widest flap that is turned row by row.</summary>
    private const int WidestHeel = 1000;

    /// <summary>A cast-on for a girth with its ease, to a multiple: negative ease is below 0.</summary>
    /// <remarks>Worked example: a foot of 8.5 in at 9.5 sts in 2 in is 40.4 sts; less a tenth 36.3; a multiple of 4: 36 (common practice).</remarks>
    public static int? CastOn(decimal girth, decimal gauge, decimal over, decimal easePercent, int multiple = 4) =>
        GaugeMath.Stitches(GaugeMath.WithEase(girth, easePercent), gauge, over) is { } exact ? GaugeMath.Fit(exact, multiple) : null;

    /// <summary>A heel flap: half of the stitches and as many rows, square when its edge stitches are slipped.</summary>
    /// <remarks>Worked example: 48 sts: 24 sts and 24 rows (common practice).</remarks>
    public static (int Stitches, int Rows) Flap(int castOn) => (castOn / 2, castOn / 2);

    /// <summary>Stitches on the first needle of a gusset: half of the turned heel and those picked up along the flap.</summary>
    public static int GussetNeedle(int heelLeft, int pickedUp) => heelLeft + pickedUp;

    /// <summary>A round heel: over half and so many past the middle, with one more stitch taken in each row.</summary>
    /// <remarks>Worked example: 32 sts, 2 past: p18, p2tog, p1, turn; sl 1, k5, k2tog, k1, turn; 11 left at each side, 18 at the end (common practice).</remarks>
    /// <param name="stitches">Stitches of the flap, an even number.</param>
    /// <param name="past">Stitches past the middle before the first decrease.</param>
    /// <param name="slipFirst">True to slip the first stitch of the first row, which is one of those before the decrease.</param>
    public static Planned<HeelPlan> RoundHeel(int stitches, int past = 2, bool slipFirst = false)
    {
        var before = (stitches / 2) + past;
        var left = stitches - before - 3;
        if (stitches is < 6 or > WidestHeel || stitches % 2 != 0 || past < 0 || left < 0 || before < 2)
        {
            return Planned.No<HeelPlan>(string.Create(CultureInfo.InvariantCulture, $"a heel of {stitches} sts cannot be turned {past} sts past its middle"), "an even number of stitches, and at least 3 behind the first turn");
        }

        // Each side has `left` stitches behind its gap; a row takes one of them with its decrease and one more behind it.
        var (rows, counts) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<int>());
        var middle = (2 * past) + 1;
        Span<int> sides = [left, left];
        for (var row = 0; row < 2 || sides[row % 2] > 0; row++)
        {
            var purl = row % 2 == 0;
            var (k, together) = purl ? ("p", "p2tog") : ("k", "k2tog");
            var plainBehind = row < 2 || sides[row % 2] > 1;
            var to = row == 0 ? (slipFirst ? $"sl 1, p{before - 1}" : $"p{before}") : $"sl 1, {k}{middle}";
            rows.Add(FormattableString.Invariant($"{to}, {together}{(plainBehind ? $", {k}1" : "")}, turn"));
            counts.Add(stitches - row - 1);
            if (row >= 2)
            {
                sides[row % 2] = Math.Max(0, sides[row % 2] - 2);
            }

            middle += row >= 1 && plainBehind ? 1 : 0;
        }

        return Planned.Of(new HeelPlan(stitches, rows.ToImmutable(), counts.ToImmutable(), (left, left)));
    }

    /// <summary>A square heel: a middle of so many stitches keeps its width while the sides are taken in.</summary>
    /// <remarks>Worked example: 30 sts with a middle of 10: p19, p2tog, turn; 9 left at each side, 10 at the end (common practice).</remarks>
    public static Planned<HeelPlan> SquareHeel(int stitches, int middle)
    {
        var side = (stitches - middle) / 2;
        if (stitches is < 4 or > WidestHeel || middle < 2 || side < 1 || (stitches - middle) % 2 != 0)
        {
            return Planned.No<HeelPlan>(string.Create(CultureInfo.InvariantCulture, $"a heel of {stitches} sts has no middle of {middle} with the same at each side"));
        }

        var (rows, counts) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<int>());
        for (var row = 0; row < 2 * side; row++)
        {
            var (k, together) = row % 2 == 0 ? ("p", "p2tog") : ("k", "k2tog");
            rows.Add(FormattableString.Invariant($"{(row == 0 ? $"p{side + middle - 1}" : $"sl 1, {k}{middle - 2}")}, {together}, turn").Replace(", k0", "", StringComparison.Ordinal).Replace(", p0", "", StringComparison.Ordinal));
            counts.Add(stitches - row - 1);
        }

        return Planned.Of(new HeelPlan(stitches, rows.ToImmutable(), counts.ToImmutable(), (side - 1, side - 1)));
    }

    /// <summary>A wedge toe: 4 sts a decrease round; every other round to the half, then every round (common practice).</summary>
    /// <param name="stitches">Stitches of the foot, a multiple of 4.</param>
    /// <param name="leave">Stitches that are grafted.</param>
    /// <remarks>Worked example: 64 sts to 16: 8 times every other round to 32, then 4 times every round: 20 rounds (common practice).</remarks>
    public static Planned<ShapingPlan> Toe(int stitches, int leave)
    {
        var fast = Math.Max(leave, stitches / 2);
        if (!PlanLimits.IsCount(stitches) || stitches % 4 != 0 || leave % 4 != 0 || leave < 4 || leave >= stitches)
        {
            return Planned.No<ShapingPlan>(string.Create(CultureInfo.InvariantCulture, $"a toe from {stitches} to {leave} sts does not go by four"), "both counts a multiple of 4");
        }

        fast += (stitches - fast) % 4;
        var (slow, quick) = ((stitches - fast) / 4, (fast - leave) / 4);
        var ask = new ShapingAsk(stitches, leave, (2 * slow) + quick) { PerTime = 4, On = ShapedRows.Any, InRound = true };
        return Planned.Of(slow == 0 ? new ShapingPlan(ask, new(1, quick), default, 0) : new ShapingPlan(ask, new(2, slow), quick == 0 ? default : new(1, quick), 0));
    }

    /// <summary>The decrease round of a wedge toe, a marker at its half, in notation.</summary>
    public static string ToeRound() => "k1, ssk, k to 3 sts before m, k2tog, k1, sm, k1, ssk, k to last 3 sts, k2tog, k1";

    /// <summary>Girth at the gusset and the way round heel and instep, from the girth of the foot: a tenth more, and about 1.35 times the foot or 1.25 times the gusset.</summary>
    /// <remarks>Worked example: a foot of 8 in: gusset 8.8 in, heel 10.8 or 11.0 in (common practice; the two rules differ by 2 per cent).</remarks>
    public static (decimal Gusset, decimal HeelByFoot, decimal HeelByGusset) Heel(decimal foot) => (foot * 1.1m, foot * 1.35m, foot * 1.1m * 1.25m);
}
