using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>Words how the stitches of each part are shared out among the yarns.</summary>
internal static class SharesBuilder
{
    private const string AllSizes = "All sizes";

    /// <summary>The tables, one a part; none where nothing is known.</summary>
    public static ImmutableArray<SharesView> Build(Compilation compilation)
    {
        var facts = compilation.Pattern.Facts;
        var parts = compilation.Shares;
        return
        [
            .. parts.Select(part =>
            {
                var rows = Rows(part, facts.Sizes, compilation.Edition?.Units);
                return new SharesView
                {
                    Part = parts.Length == 1 && compilation.Lines.All(l => l.Piece == part.Name) ? null : Wording.Said(part.Name),
                    Yarns = part.Yarns,
                    Rows = rows,
                    Sentences = [.. rows.Select(r => Sentence(part.Yarns, r, isOnly: rows.Length == 1))],
                    Reading = part.Amounts.Any(a => !a.IsEmpty) ? Wording.Spelled("All colours are one yarn: beside each share stands what it comes to of the whole amount.", facts.TermsInForce) : null,
                };
            }),
        ];
    }

    // "Size S: A 26 %, 20 m, 12 g; B 74 %, 57 m, 34 g."
    private static string Sentence(ImmutableArray<string> yarns, AmountRowView row, bool isOnly) =>
        (isOnly ? row.Size is AllSizes ? AllSizes + ": " : "" : $"Size {row.Size}: ") + string.Join("; ", yarns.Zip(row.Cells, (yarn, cell) => $"{yarn} {(cell == Wording.None ? "not known" : cell.Replace("< 1", "less than 1", StringComparison.Ordinal))}")) + ".";

    private static ImmutableArray<AmountRowView> Rows(YarnShares part, SizeSet sizes, UnitSystem? units)
    {
        AmountRowView[] rows = [.. Enumerable.Range(0, sizes.Count).Select(size => new AmountRowView
        {
            Size = SizesBuilder.NameOf(sizes, size),
            Cells = Cells(part, size, units),
        })];
        return rows.Length > 1 && rows.All(r => r.Cells.SequenceEqual(rows[0].Cells)) ? [rows[0] with { Size = AllSizes }] : [.. rows];
    }

    /// <summary>Whole hundredths that come to a hundred: what rounding leaves goes to those that lose most by it.</summary>
    private static ImmutableArray<string> Cells(YarnShares part, int size, UnitSystem? units)
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

        return [.. whole.Select((w, y) => (w == 0 && shares[y] > 0 ? "< 1 %" : string.Create(CultureInfo.InvariantCulture, $"{w} %")) + Amount(part, size, y, units))];
    }

    /// <summary>", 24 m, 14 g": what a share comes to, in yards and ounces in an edition of these; empty where that is not known.</summary>
    private static string Amount(YarnShares part, int size, int yarn, UnitSystem? units)
    {
        if (size >= part.Amounts.Length || part.Amounts[size].IsEmpty)
        {
            return "";
        }

        var (metres, grams) = part.Amounts[size][yarn];
        if (units == UnitSystem.Imperial)
        {
            return One(metres / Unit.Yard.InBase, "yd") + (grams is { } mass ? $", {TradeSteps.Number(new Quantity(mass, Unit.Gram), Unit.Ounce)} oz" : "");
        }

        return One(metres, "m") + One(grams, "g");

        static string One(decimal? amount, string unit) => amount is not { } value ? "" : value < 1 ? $", < 1 {unit}" : string.Create(CultureInfo.InvariantCulture, $", {Math.Round(value, MidpointRounding.AwayFromZero)} {unit}");
    }
}
