using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>Words how the stitches of each part are shared out among the yarns.</summary>
internal static class SharesBuilder
{
    /// <summary>The tables, one a part; none where nothing is known.</summary>
    public static ImmutableArray<SharesView> Build(Compilation compilation)
    {
        var sizes = compilation.Pattern.Facts.Sizes;
        var parts = compilation.Shares;
        return [.. parts.Select(part => new SharesView
        {
            Part = parts.Length == 1 && compilation.Lines.All(l => l.Piece == part.Name) ? null : Wording.Said(part.Name),
            Yarns = part.Yarns,
            Rows = Rows(part, sizes),
            Reading = part.Amounts.Any(a => !a.IsEmpty) ? "All colours are one yarn: beside each share stands what it comes to of the whole amount." : null,
        })];
    }

    private static ImmutableArray<AmountRowView> Rows(YarnShares part, SizeSet sizes)
    {
        AmountRowView[] rows = [.. Enumerable.Range(0, sizes.Count).Select(size => new AmountRowView
        {
            Size = SizesBuilder.NameOf(sizes, size),
            Cells = Cells(part, size),
        })];
        return rows.Length > 1 && rows.All(r => r.Cells.SequenceEqual(rows[0].Cells)) ? [rows[0] with { Size = "All sizes" }] : [.. rows];
    }

    /// <summary>Whole hundredths that come to a hundred: what rounding leaves goes to those that lose most by it.</summary>
    private static ImmutableArray<string> Cells(YarnShares part, int size)
    {
        decimal?[] shares = [.. Enumerable.Range(0, part.Yarns.Length).Select(y => part.Of(y, size) * 100)];
        if (shares.Any(s => s is null))
        {
            return [.. shares.Select(_ => Wording.None)];
        }

        int[] whole = [.. shares.Select(s => (int)decimal.Floor(s!.Value))];
        foreach (var yarn in Enumerable.Range(0, whole.Length).OrderByDescending(y => shares[y]!.Value - whole[y]).Take(100 - whole.Sum()))
        {
            whole[yarn]++;
        }

        return [.. whole.Select((w, y) => (w == 0 && shares[y] > 0 ? "< 1 %" : string.Create(CultureInfo.InvariantCulture, $"{w} %")) + Amount(part, size, y))];
    }

    /// <summary>", 24 m, 14 g": what a share comes to; empty where that is not known.</summary>
    private static string Amount(YarnShares part, int size, int yarn)
    {
        if (size >= part.Amounts.Length || part.Amounts[size].IsEmpty)
        {
            return "";
        }

        var (metres, grams) = part.Amounts[size][yarn];
        return One(metres, "m") + One(grams, "g");

        static string One(decimal? amount, string unit) => amount is not { } value ? "" : value < 1 ? $", < 1 {unit}" : string.Create(CultureInfo.InvariantCulture, $", {Math.Round(value, MidpointRounding.AwayFromZero)} {unit}");
    }
}
