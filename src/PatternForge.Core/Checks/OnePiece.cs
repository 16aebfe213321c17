using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>
/// Patterns that are one piece from the cast-on to the end, so that it is plain which stitches make the width or the circumference. Where anything
/// leaves a doubt (a second piece, a stitch that is not the gauge's, ribbing, a width that changes), nothing is said.
/// </summary>
internal static class OnePiece
{
    // A piece is even where no count lies further from the widest.
    private const decimal Even = 0.1m;

    /// <summary>The circumference, width and length of a pattern of one piece.</summary>
    public static IEnumerable<PieceMeasure> Of(CheckContext context)
    {
        var (facts, lines) = (context.Facts, context.Lines);
        if (!IsOne(lines) || GaugeFor(context, lines) is not { } gauge)
        {
            yield break;
        }

        var sizes = Enumerable.Range(0, facts.Sizes.Count).ToArray();
        var rows = lines[1..];
        var isRound = rows.All(l => l.InTheRound == true);
        var isFlat = lines.All(l => l.InTheRound == false);
        var isEven = isFlat && sizes.All(size => IsEven(lines, size));
        var across = isRound ? Called(facts, "around") ?? Called(facts, "head") : isEven ? Called(facts, "width") : null;
        if (across is not null)
        {
            yield return new PieceMeasure(across, false, [.. sizes.Select(size => Plateau(lines, size) is var (count, line) ? PieceWidth.Across(facts, gauge, count, line) : null)], gauge, false) { Lines = lines };
        }

        if (isEven && Called(facts, "length") is { } length)
        {
            yield return new PieceMeasure(length, true, [.. sizes.Select(size => PieceWidth.Along(gauge, lines, size))], gauge, false);
        }
    }

    /// <summary>The most stitches that are worked even for more than one row, and a line that does; null where a piece has no such stretch at its widest.</summary>
    public static (int Count, WorkedLine Line)? Plateau(ImmutableArray<WorkedLine> lines, int size)
    {
        if (PieceWidth.Widest(lines, size) is not var (most, _))
        {
            return null;
        }

        var rows = 0;
        WorkedLine? there = null;
        foreach (var line in lines)
        {
            if (line.After[size] == most && line.Before[size] == most)
            {
                rows += line.Numbers.Length == 1 ? 1 : 2;
                there ??= line;
            }
        }

        return rows >= 2 && there is not null ? (most, there) : null;
    }

    /// <summary>Every count that is worked even for more than one row.</summary>
    public static IEnumerable<int> Plateaus(ImmutableArray<WorkedLine> lines, int size) =>
        lines.Where(l => l.After[size] is > 0 && l.Before[size] == l.After[size])
            .GroupBy(l => l.After[size]!.Value, l => l.Numbers.Length == 1 ? 1 : 2)
            .Where(g => g.Sum() >= 2)
            .Select(g => g.Key);

    /// <summary>The gauge, where the lines are worked in its stitch beyond doubt; null otherwise.</summary>
    public static Gauge? GaugeFor(CheckContext context, ImmutableArray<WorkedLine> lines)
    {
        var headings = lines.Select(l => l.Piece).Distinct(StringComparer.Ordinal).ToArray();
        Gauge?[] gauges = [.. headings.Select(h => PieceWidth.GaugeOf(context, null, h)).Distinct()];
        var gauge = gauges.Length == 1 ? gauges[0] : null;
        if (gauge?.Stitch is not { } stitch || stitch.Contains("rib", StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        WorkedLine[] even = [.. lines.Where(l => l.Before.SequenceEqual(l.After) && l.Before.Any(b => b is > 0))];
        var fits = context.Facts.Craft switch
        {
            Craft.Crochet => IsOneStitch(lines, stitch),
            Craft.Knitting when IsStockinette(stitch) => context.Facts.Yarns.Length < 2 && even.All(IsSmooth) && IsWorkedPlain(even),
            Craft.Knitting when stitch.Contains("garter", StringComparison.OrdinalIgnoreCase) => even.Any(l => Only(l, "k")) && even.All(l => l.InTheRound == false && (l.Operations.IsEmpty || Only(l, "k"))),
            Craft.Knitting => context.Facts.Gauges.Length == 1,
            _ => false,
        };
        return fits ? gauge : null;
    }

    private static bool IsStockinette(string stitch) =>
        stitch.Contains("stockinette", StringComparison.OrdinalIgnoreCase) || stitch.Contains("stocking", StringComparison.OrdinalIgnoreCase) || stitch.Contains("st st", StringComparison.OrdinalIgnoreCase);

    // Cables draw in, yarn overs and slipped stitches change the width: the gauge in stockinette does not hold for them.
    private static bool IsSmooth(WorkedLine line) => !line.Operations.Any(o => o.Family is Family.YarnOver or Family.Slip or Family.Cable or Family.Brioche or Family.Special);

    private static bool IsWorkedPlain(WorkedLine[] lines)
    {
        var (knit, purled) = (0, 0);
        foreach (var line in lines)
        {
            var weight = line.Numbers.Length == 1 ? 1 : 2;
            if (line.Operations.IsEmpty && IsStockinette(line.Text))
            {
                (knit, purled) = (knit + 2, purled + 2);
            }
            else if (Only(line, "k"))
            {
                (knit, purled) = (knit + weight, line.InTheRound == true ? purled + weight : purled);
            }
            else if (Only(line, "p"))
            {
                (knit, purled) = (line.InTheRound == true ? knit - weight : knit, purled + weight);
            }
        }

        return knit >= 1 && purled >= 1 && knit + purled >= 2;
    }

    private static bool Only(WorkedLine line, string operation) => line.Operations is [{ } only] && only.Id == operation;

    private static bool IsOneStitch(ImmutableArray<WorkedLine> lines, string stitch)
    {
        string[] kinds = [.. lines.Select(l => l.Kind).OfType<string>().Where(k => k != "ch").Distinct(StringComparer.Ordinal)];
        if (kinds.Length != 1 || lines.Any(l => !l.Kinds.IsEmpty))
        {
            return false;
        }

        var named = lines.SelectMany(l => l.Operations).FirstOrDefault(o => o.Names.Any(n => n.Text == kinds[0]));
        return stitch.Split(' ', ',', '(', ')').Contains(kinds[0], StringComparer.OrdinalIgnoreCase) || (named is not null && stitch.Contains(named.Spoken, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>True when every line goes on with the stitches that the line before it left, from one cast-on.</summary>
    private static bool IsOne(ImmutableArray<WorkedLine> lines)
    {
        if (lines.Length < 3 || !lines[0].Before.All(b => b is 0))
        {
            return false;
        }

        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].Status == LineStatus.Unread || (i > 0 && (!lines[i].Before.SequenceEqual(lines[i - 1].After) || lines[i].Before.Any(b => b is null or 0))))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsEven(ImmutableArray<WorkedLine> lines, int size)
    {
        int[] counts = [.. lines.Where((l, i) => i < lines.Length - 1 || l.After[size] is not 0).Select(l => l.After[size]).OfType<int>()];
        return counts.Length > 1 && counts.Min() >= counts.Max() * (1 - Even);
    }

    private static Measurement? Called(PatternFacts facts, string plain) => facts.Finished.FirstOrDefault(m => MeasureNames.Plain(m.Name) == plain);
}
