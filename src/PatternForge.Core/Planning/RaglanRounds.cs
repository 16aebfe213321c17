using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>
/// The rounds of a raglan yoke from the neck down, body and sleeves each at its own pace. Two rounds make a pair, in which each of them grows twice, once or not at all: what has more increases than
/// pairs begins with increases in every round, what has fewer ends with increases in every fourth. So the yoke is worked in few stretches, the fast ones first, which are the same in all sizes but for
/// how often they are worked; a size leaves out those that it does not need.
/// </summary>
internal static class RaglanRounds
{
    private const string Grown = "K1, M1L, k to 1 st before m, M1R, k1, sm";
    private const string Plain = "k to m, sm";

    // How fast a part grows along a stretch; a lower one comes first.
    private enum Pace
    {
        EveryRound,
        EveryOther,
        EveryFourth,
        None,
    }

    /// <summary>The rounds in one size.</summary>
    /// <param name="bodyFrom">Stitches of the back, and of the front, at the neck.</param>
    /// <param name="bodyTo">Those at the underarm.</param>
    /// <param name="sleeveFrom">Stitches of each sleeve at the neck.</param>
    /// <param name="sleeveTo">Those at the underarm.</param>
    /// <param name="rounds">Rounds of the yoke.</param>
    public static PlanLines Of(int bodyFrom, int bodyTo, int sleeveFrom, int sleeveTo, int rounds)
    {
        if (bodyTo < bodyFrom || sleeveTo < sleeveFrom)
        {
            return new([], "a raglan from the neck down grows, and has fewer stitches at the underarm than at the neck", "exchange `from` and `to`");
        }

        var planned = Raglan.Plan(bodyFrom, bodyTo, sleeveFrom, sleeveTo, rounds - (rounds % 2), ShapedRows.Any);
        if (!planned.IsPlanned)
        {
            return new([], planned.Reason, planned.Help);
        }

        var pairs = rounds / 2;
        var (body, sleeve) = (Part(planned.Plan.Body.Times, pairs), Part(planned.Plan.Sleeve.Times, pairs));
        var (lines, ranks) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<int>());
        var total = 2 * (bodyFrom + sleeveFrom);
        for (var at = 0; at < pairs;)
        {
            var end = at + 1;
            while (end < pairs && body[end].Pace == body[at].Pace && sleeve[end].Pace == sleeve[at].Pace)
            {
                end++;
            }

            var paces = (Body: body[at].Pace, Sleeve: sleeve[at].Pace);
            var rank = (20 * ((int)paces.Body + (int)paces.Sleeve)) + (2 * (int)paces.Body);
            var period = paces.Body == Pace.EveryFourth || paces.Sleeve == Pace.EveryFourth ? 2 : 1;
            while (at < end)
            {
                // A pair that is left over is worked by itself.
                period = Math.Min(period, end - at);
                var times = (end - at) / period;
                var cell = Enumerable.Range(at, period).SelectMany(p => Rounds(body[p].Times, sleeve[p].Times)).ToArray();
                total += times * cell.Sum(r => (r.Body ? 4 : 0) + (r.Sleeve ? 4 : 0));
                var before = lines.Count;
                Stretch(lines, cell, times, total);
                ranks.AddRange(Enumerable.Repeat(rank, lines.Count - before));
                at += times * period;
                rank++;
            }
        }

        if (rounds % 2 > 0)
        {
            lines.Add("Next rnd: Knit.");
            ranks.Add(int.MaxValue);
        }

        return new(lines.ToImmutable(), null, null) { Ranks = ranks.ToImmutable() };
    }

    /// <summary>How often a part grows in each pair of rounds, and the pace that this belongs to.</summary>
    private static (int Times, Pace Pace)[] Part(int increases, int pairs)
    {
        var twice = Math.Max(0, increases - pairs);
        var fourth = Math.Min(increases, Math.Max(0, pairs - increases));
        var other = increases - (2 * twice) - fourth;
        return
        [
            .. Enumerable.Repeat((2, Pace.EveryRound), twice),
            .. Enumerable.Repeat((1, Pace.EveryOther), other),
            .. Enumerable.Range(0, 2 * fourth).Select(i => (1 - (i % 2), Pace.EveryFourth)),
            .. Enumerable.Repeat((0, Pace.None), pairs - twice - other - (2 * fourth)),
        ];
    }

    private static (bool Body, bool Sleeve)[] Rounds(int body, int sleeve) => [(body > 0, sleeve > 0), (body > 1, sleeve > 1)];

    private static void Stretch(ImmutableArray<string>.Builder lines, (bool Body, bool Sleeve)[] cell, int times, int total)
    {
        if (Array.TrueForAll(cell, r => r == cell[0]))
        {
            (cell, times) = ([cell[0]], cell.Length * times);
        }

        if (cell is [(false, false)])
        {
            lines.Add(Knitted(times));
            return;
        }

        for (var i = 0; i < cell.Length; i++)
        {
            if (Round(cell[i].Body, cell[i].Sleeve) is { } row)
            {
                lines.Add(row);
                continue;
            }

            var plain = cell.Skip(i).TakeWhile(r => r == (false, false)).Count();
            lines.Add(Knitted(plain));
            i += plain - 1;
        }

        if (times > 1)
        {
            lines.Add(FormattableString.Invariant($"Rep last {(cell.Length == 1 ? "rnd" : $"{cell.Length} rnds")} {PlanWords.Times(times - 1)} more. ({PlanWords.Sts(total)})"));
        }
    }

    private static string Knitted(int rounds) => rounds == 1 ? "Next rnd: Knit." : FormattableString.Invariant($"Next {rounds} rnds: Knit.");

    private static string? Round(bool body, bool sleeve) => (body, sleeve) switch
    {
        (true, true) => $"Full Inc Rnd: ({Grown}) 4 times. (8 sts inc'd)",
        (true, false) => $"Body Inc Rnd: ({Grown}, {Plain}) twice. (4 sts inc'd)",
        (false, true) => $"Sleeve Inc Rnd: ({PlanWords.Capital(Plain)}, {char.ToLowerInvariant(Grown[0])}{Grown[1..]}) twice. (4 sts inc'd)",
        _ => null,
    };
}
