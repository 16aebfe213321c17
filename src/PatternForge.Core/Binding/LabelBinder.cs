using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Gives a row the meaning of its label: numbers, name, side, rows or rounds.</summary>
internal static class LabelBinder
{
    private const int MostNumbers = 2_000;

    public static BoundRow Bind(BoundRow row, LabelNode label, RowContext context)
    {
        var numbers = ImmutableArray.CreateBuilder<int>();
        Amount? count = label.NextCount is { } said ? context.AmountOf(said) : label.NextCountName is { } name ? context.Named(name) : null;
        foreach (var range in label.Numbers)
        {
            var from = First(range.From);
            var named = range.ToName is { } called ? context.Named(called) : null;
            var to = named is not null ? Bounded(named.Values.Values.FirstOrDefault(v => v is not null)) : range.To is null ? from : First(range.To);
            for (var n = from; n <= to && numbers.Count < MostNumbers; n++)
            {
                numbers.Add(n);
            }

            if (to < from)
            {
                numbers.Add(from);
            }

            if ((named is { Values.IsShared: false } ? named : range.To is { IsList: true } list && context.Spread(list) is { } each ? new Amount(each, list.Span) : null) is { } lasts)
            {
                // "Rows 2-5 (7, 8, 11)": the sizes work different numbers of rows.
                count = lasts with { Values = lasts.Values.Map(last => last - from + 1) };
            }
        }

        var isRange = numbers.Count > 1;
        for (var i = 1; i < numbers.Count; i++)
        {
            isRange &= numbers[i] == numbers[i - 1] + 1;
        }

        return row with
        {
            LabelOrigin = label.Span,
            Numbers = numbers.ToImmutable(),
            IsRange = isRange,
            IsRule = label.Rule == RowRule.SameParity,
            SpeaksForOthers = label.Rule == RowRule.NotGiven,
            Count = count,
            Name = label.Name is null ? null : RowNames.Key(label.Name),
            SaidRows = label.CountOfRows is { IsList: false } rows ? First(rows) : null,
            Side = label.Side switch
            {
                Syntax.Side.Right => FabricSide.Right,
                Syntax.Side.Wrong => FabricSide.Wrong,
                _ => null,
            },
            IsRound = label.Word switch
            {
                RowWord.Round => true,
                RowWord.Row when label.Name?.Contains("short", StringComparison.OrdinalIgnoreCase) != true => false, // a short row may stand in a ring
                _ => null,
            },
            IsLabelled = !label.IsTitle && (label.Word != RowWord.None),
            StartsPart = label.IsTitle || label.StartsPart,
        };
    }

    private static int First(SizedNumber number) => Bounded(number.Values[0] ?? number.Values.FirstOrDefault(v => v is not null));

    private static int Bounded(decimal? number) => (int)Math.Clamp(number ?? 0, 0, 1_000_000);
}
