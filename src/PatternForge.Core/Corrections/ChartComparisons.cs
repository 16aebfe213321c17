using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Core.Corrections;

/// <summary>Holds the blocks of a section against each other: charts square by square, others by their lines.</summary>
internal static class ChartComparisons
{
    private const int MostTold = 3;

    /// <summary>Adds what is different in the charts and other blocks of a section.</summary>
    public static void Compare(Versions versions, Section old, Section now)
    {
        var (a, b) = (old.Blocks.OfType<FencedBlock>().ToArray(), now.Blocks.OfType<FencedBlock>().ToArray());
        var pairs = Alignment.Pairs([.. a.Select(Key)], [.. b.Select(Key)]);
        foreach (var (from, to) in Alignment.Gaps(pairs, a.Length, b.Length))
        {
            var (left, right) = (a[from], b[to]);
            for (var i = 0; i < Math.Max(left.Length, right.Length); i++)
            {
                One(versions, now.Heading, i < left.Length ? left[i] : null, i < right.Length ? right[i] : null);
            }
        }
    }

    private static string? Key(FencedBlock block) => block.Info.ToLowerInvariant() + "\n" + Words.OneLine(block.Text);

    private static void One(Versions versions, string section, FencedBlock? old, FencedBlock? now)
    {
        var isChart = (now ?? old)!.Info.StartsWith(FencedBlock.Chart, StringComparison.OrdinalIgnoreCase);
        var whole = new Correction
        {
            Subject = isChart ? CorrectionSubject.Chart : CorrectionSubject.Words,
            Weight = isChart ? CorrectionWeight.AtWork : CorrectionWeight.Wording,
            Section = section,
            Label = isChart ? "Chart" : "",
            Text = old is null ? "this is new" : now is null ? "this is gone" : "this has changed",
            OldLine = old is null ? null : versions.Old.LineOf(old.Origin),
            NewLine = now is null ? null : versions.New.LineOf(now.Origin),
        };
        if (!isChart || old is null || now is null || ChartOf(versions.Old, old) is not { } was || ChartOf(versions.New, now) is not { } isNow)
        {
            versions.Add(whole);
            return;
        }

        var differs = false;
        foreach (var number in was.Rows.Concat(isNow.Rows).Select(r => r.Number).Distinct().Order())
        {
            if (Row(was.Rows.FirstOrDefault(r => r.Number == number), isNow.Rows.FirstOrDefault(r => r.Number == number)) is { } text)
            {
                differs = true;
                versions.Add(whole with { Label = $"Chart {isNow.Name}, {(isNow.IsRound ? "round" : "row")} {number.ToString(CultureInfo.InvariantCulture)}", Text = text });
            }
        }

        if (!differs && was.Repeat is var a && isNow.Repeat is var b && ((a?.From, a?.Columns) != (b?.From, b?.Columns) || !was.Rows.Select(r => r.RepeatShift).SequenceEqual(isNow.Rows.Select(r => r.RepeatShift))))
        {
            versions.Add(whole with { Label = $"Chart {isNow.Name}", Text = "the repeat is another one" });
        }
    }

    private static Chart? ChartOf(Compilation compilation, FencedBlock block) => compilation.Charts.FirstOrDefault(c => c.Block == block.Origin);

    private static string? Row(ChartRow? old, ChartRow? now)
    {
        if (old is null || now is null)
        {
            return old is null ? "this row is new" : "this row is gone";
        }

        if (old.Side != now.Side)
        {
            return $"worked on the {(now.Side == FabricSide.Right ? "right" : "wrong")} side";
        }

        var (a, b) = (old.InWorkingOrder(), now.InWorkingOrder());
        var told = new List<string>();
        for (var i = 0; i < Math.Min(a.Length, b.Length); i++)
        {
            if (Name(a[i]) != Name(b[i]))
            {
                told.Add($"stitch {(i + 1).ToString(CultureInfo.InvariantCulture)} is {Name(b[i])}, not {Name(a[i])}");
            }
        }

        return a.Length != b.Length ? $"{b.Length.ToString(CultureInfo.InvariantCulture)} squares are worked, not {a.Length.ToString(CultureInfo.InvariantCulture)}"
            : told.Count > MostTold ? $"{string.Join("; ", told.Take(MostTold))}; and {(told.Count - MostTold).ToString(CultureInfo.InvariantCulture)} more"
            : told.Count > 0 ? string.Join("; ", told)
            : null;
    }

    private static string Name(ChartCell cell) => cell.Operation!.Names.FirstOrDefault()?.Text + (cell.Colour is { } colour ? $" in {colour}" : "");
}
