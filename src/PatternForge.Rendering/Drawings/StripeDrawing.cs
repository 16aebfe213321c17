using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Drawings;

/// <summary>
/// Draws the stripes of a piece as a bar, the first row at the bottom: a band for each stretch of rows in one yarn, with its letters, its rows and their number; what is worked
/// again stands once, in a bracket.
/// </summary>
public static class StripeDrawing
{
    private const double Left = 78;
    private const double Bar = 132;
    private const double Top = 10;
    private const double RowHeight = 7;
    private const double LeastBand = 21;
    private const double TallestBand = 84;

    // What stands on a sheet of A4 or Letter with its key.
    private const double TallestSheet = 860;

    private const double KeyLine = 30;

    /// <summary>The drawing of a sequence.</summary>
    /// <param name="sequence">The stripes.</param>
    /// <param name="id">Its identifier, not used by another drawing of the pattern.</param>
    /// <param name="sizes">The sizes of the pattern.</param>
    /// <param name="yarns">The yarns of the pattern.</param>
    public static Drawing Of(StripeSequence sequence, string id, SizeSet sizes, ImmutableArray<Yarn> yarns)
    {
        var inks = new YarnInks(yarns);
        var title = $"Stripes: {sequence.Name}{(sizes.Describe(sequence.Sizes) is { Length: > 0 } which ? $", {which}" : "")}";
        var words = Words(sequence);
        string[] labels = [.. sequence.Stripes.SelectMany(s => s.Yarns).Distinct(StringComparer.Ordinal).OrderBy(inks.Order)];
        var height = sequence.Stripes.Sum(Height);
        var width = Math.Max(WidthOf(sequence), 24 + (8.4 * title.Length));
        width = Math.Max(width, labels.Max(l => 60 + (6.6 * (l.Length + inks.Name(l).Length + 2))));
        var alone = new SvgPage(width, Top + height + 44 + (labels.Length * KeyLine), id, title, words, alone: true);
        alone.Words(12, 20, title, 14, "start", bold: true);
        alone.Begin(0, 26);
        Bands(alone, sequence, 0, sequence.Stripes.Length, inks);
        alone.End();
        for (var i = 0; i < labels.Length; i++)
        {
            var y = Top + height + 40 + (i * KeyLine);
            alone.Begin(12, y);
            Mark(alone, labels[i], inks);
            alone.End();
            alone.Words(12 + KnitMarks.Square + 10, y + 16, $"{labels[i]}: {inks.Name(labels[i])}", 12, "start");
        }

        return new Drawing
        {
            Id = id,
            Title = title,
            Description = words,
            Sheets = Sheets(sequence, id, title, words, inks),
            Alone = alone.Finish() + "\n",
            Width = (int)Math.Ceiling(WidthOf(sequence)),
            Key = [.. labels.Select(l => new KeyEntry(Picture(l, inks), l, inks.Name(l)))],
            Notes = Notes(sequence),
        };
    }

    /// <summary>The bar in sheets, the top one first.</summary>
    private static ImmutableArray<string> Sheets(StripeSequence sequence, string id, string title, string words, YarnInks inks)
    {
        var sheets = ImmutableArray.CreateBuilder<string>();
        for (var from = 0; from < sequence.Stripes.Length;)
        {
            var to = from;
            var height = 0.0;
            while (to < sequence.Stripes.Length && (to == from || height + Height(sequence.Stripes[to]) <= TallestSheet))
            {
                height += Height(sequence.Stripes[to++]);
            }

            var isWhole = from == 0 && to == sequence.Stripes.Length;
            var name = isWhole ? title : string.Create(CultureInfo.InvariantCulture, $"{title}, {Rows(sequence)} {sequence.Stripes[from].First} to {sequence.Stripes[to - 1].Last}");
            var page = new SvgPage(WidthOf(sequence), height + (2 * Top), isWhole ? id : string.Create(CultureInfo.InvariantCulture, $"{id}-{from}"), name, isWhole ? words : string.Join("; ", sequence.Stripes[from..to].Select(s => Band(s, sequence))));
            Bands(page, sequence, from, to, inks);
            sheets.Insert(0, page.Finish());
            from = to;
        }

        return sheets.ToImmutable();
    }

    private static double Height(Stripe stripe) => Math.Clamp(stripe.Rows * RowHeight, LeastBand, TallestBand);

    private static double WidthOf(StripeSequence sequence) => Left + Bar + 76 + (sequence.Repeat is null ? 0 : 92);

    private static string Rows(StripeSequence sequence) => sequence.IsRound ? "rounds" : "rows";

    private static string One(StripeSequence sequence) => sequence.IsRound ? "round" : "row";

    private static void Bands(SvgPage page, StripeSequence sequence, int from, int to, YarnInks inks)
    {
        var y = Top + sequence.Stripes[from..to].Sum(Height);
        (double? top, double? bottom) = (null, null);
        for (var i = from; i < to; i++)
        {
            var stripe = sequence.Stripes[i];
            var height = Height(stripe);
            bottom = IsRepeated(sequence, i) ? bottom ?? y : bottom;
            y -= height;
            top = IsRepeated(sequence, i) ? y : top;
            for (var yarn = 0; yarn < stripe.Yarns.Length; yarn++)
            {
                inks.Band(page, stripe.Yarns[yarn], Left + (yarn * Bar / stripe.Yarns.Length), y, Bar / stripe.Yarns.Length, height);
            }

            page.Box(Left, y, Bar, height, "none", 0.9);
            var middle = y + (height / 2) + 4.2;
            page.Words(Left - 8, middle, stripe.Rows == 1 ? Number(stripe.First) : $"{Number(stripe.First)}–{Number(stripe.Last)}", 12, "end");
            page.Words(Left + Bar + 8, middle, $"{Number(stripe.Rows)} {(stripe.Rows == 1 ? One(sequence) : Rows(sequence))}", 12, "start");
        }

        page.Box(Left, Top, Bar, sequence.Stripes[from..to].Sum(Height), "none", 1.4);
        if (top is { } high && bottom is { } low && sequence.Repeat is { } repeat)
        {
            var x = Left + Bar + 82;
            page.Line($"M{SvgPage.Number(x - 6)} {SvgPage.Number(high + 2)}H{SvgPage.Number(x)}V{SvgPage.Number(low - 2)}H{SvgPage.Number(x - 6)}", 1.6);
            page.Words(x + 7, ((high + low) / 2) - 2, "repeat:", 12, "start");
            page.Words(x + 7, ((high + low) / 2) + 13, $"{Number(repeat.Times)} times in all", 10.5, "start");
        }
    }

    private static bool IsRepeated(StripeSequence sequence, int stripe) => sequence.Repeat is { } repeat && stripe >= repeat.From && stripe < repeat.From + repeat.Stripes;

    private static string Picture(string label, YarnInks inks)
    {
        var page = new SvgPage(KnitMarks.Square + 2, KnitMarks.Square + 2);
        page.Begin(1, 1);
        Mark(page, label, inks);
        page.End();
        return page.Finish();
    }

    private static void Mark(SvgPage page, string label, YarnInks inks)
    {
        inks.Draw(page, label, 1, withLetters: true);
        page.Box(0, 0, KnitMarks.Square, KnitMarks.Square, "none", 0.8);
    }

    private static string Words(StripeSequence sequence)
    {
        string Each(int from, int to) => string.Join("; ", sequence.Stripes[from..to].Select(s => Band(s, sequence)));
        if (sequence.Repeat is not { } repeat)
        {
            return Each(0, sequence.Stripes.Length) + ".";
        }

        var (from, to) = (repeat.From, repeat.From + repeat.Stripes);
        var before = from > 0 ? Each(0, from) + "; " : "";
        var after = to < sequence.Stripes.Length ? "; then " + Each(to, sequence.Stripes.Length) : "";
        return $"{before}{Number(repeat.Times)} times these {Number(repeat.Rows)} {Rows(sequence)}: {Each(from, to)}{after}.";
    }

    private static string Band(Stripe stripe, StripeSequence sequence) =>
        $"{(stripe.Rows == 1 ? $"{One(sequence)} {Number(stripe.First)}" : $"{Rows(sequence)} {Number(stripe.First)} to {Number(stripe.Last)}")} in {string.Join(" and ", stripe.Yarns)}";

    private static ImmutableArray<string> Notes(StripeSequence sequence)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        notes.Add($"Read from the bottom up. {(sequence.IsRound ? "Rounds" : "Rows")} are counted from the beginning of this part, {Number(sequence.Rows)} in all; high bands are drawn shorter than they are.");
        if (sequence.Stripes.All(s => s.Rows * RowHeight <= TallestBand))
        {
            notes[0] = $"Read from the bottom up. {(sequence.IsRound ? "Rounds" : "Rows")} are counted from the beginning of this part, {Number(sequence.Rows)} in all.";
        }

        if (sequence.Repeat is { } repeat)
        {
            notes.Add($"The {Number(repeat.Rows)} {Rows(sequence)} in the bracket are worked {Number(repeat.Times)} times in all.");
        }

        return notes.ToImmutable();
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
