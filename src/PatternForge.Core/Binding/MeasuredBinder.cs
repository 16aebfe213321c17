using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads what ties the pieces to the measurements: which piece measures what, seams, bands, and the ease as a length.</summary>
internal static class MeasuredBinder
{
    private static readonly KeySet Keys = new("measured", "over|pieces|piece", "gauge");

    /// <summary>Reads `measured`: a measurement and the pieces that make it.</summary>
    public static ImmutableArray<MeasuredPieces> Measured(HeaderContext context, HeaderNode node)
    {
        var measured = ImmutableArray.CreateBuilder<MeasuredPieces>();
        if (context.Map(node, "measured", "`bust: Body` or `width: Back + Front` under it") is not { } map)
        {
            return [];
        }

        foreach (var entry in map.Entries)
        {
            var (over, gauge) = (entry.Value as HeaderScalar, (string?)null);
            if (entry.Value is HeaderMap parts)
            {
                foreach (var (key, part) in context.Known(parts, Keys))
                {
                    if (key == "gauge")
                    {
                        gauge = context.Text(part.Value, "measured.gauge");
                    }
                    else
                    {
                        over = context.Scalar(part.Value, "measured.over");
                    }
                }
            }
            else if (over is null)
            {
                context.WrongKind(entry.Value, "measured", "pieces by their headings", "`bust: Back + Front`");
            }

            if (over is { IsBlank: false } text)
            {
                measured.Add(Pieces(entry.Name.Trim(), text.Text.Trim(), gauge, context.FirstLine(entry.Value.Span)));
            }
        }

        return measured.ToImmutable();
    }

    // "Body", "Back + Front", "2 x Back", "rows of Body", "Body after Rnd 6".
    private static MeasuredPieces Pieces(string name, string said, string? gauge, Text.TextSpan origin)
    {
        var text = said;
        var byRows = false;
        foreach (var lead in (ReadOnlySpan<string>)["rows of ", "rounds of ", "rnds of "])
        {
            if (text.StartsWith(lead, StringComparison.OrdinalIgnoreCase))
            {
                (text, byRows) = (text[lead.Length..], true);
            }
        }

        var pieces = ImmutableArray.CreateBuilder<PieceShare>();
        foreach (var part in text.Split('+', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var (piece, times, after) = (part, 1, (string?)null);
            if (part.IndexOf(" after ", StringComparison.OrdinalIgnoreCase) is > 0 and var at)
            {
                (piece, after) = (part[..at].Trim(), part[(at + 7)..].Trim().TrimEnd(':'));
            }

            if (piece.IndexOfAny(['x', '×']) is > 0 and var cross && int.TryParse(piece[..cross].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is > 0 and <= 100)
            {
                (piece, times) = (piece[(cross + 1)..].Trim(), number);
            }

            pieces.Add(new PieceShare(piece, times, after));
        }

        return new MeasuredPieces(name, pieces.ToImmutable(), byRows, gauge, said, origin);
    }

    /// <summary>Reads `seam`: `1 st each edge`, `none`.</summary>
    public static decimal? Seam(HeaderContext context, HeaderNode node)
    {
        if (context.Scalar(node, "seam") is not { IsBlank: false } scalar)
        {
            return null;
        }

        var text = scalar.Text.Trim();
        if (text.StartsWith("no", StringComparison.OrdinalIgnoreCase))
        {
            return 0;
        }

        var at = 0;
        if (NumberReader.TryRead(text, ref at, out var number) && number <= 20)
        {
            return number;
        }

        context.GiveUp("seam");
        context.Report(HeaderRules.UnreadableNumber, scalar.Span, $"`seam` wants the stitches that an edge loses in a seam, but says `{HeaderContext.Short(text)}`", "write it as `1 st each edge`, or `none`");
        return null;
    }

    /// <summary>The length that words on the ease tell, negative where they say so; null where they tell none, or more than one.</summary>
    public static PerSize<Quantity?>? EaseBy(HeaderContext context, string? said)
    {
        if (said is null || !context.SizesKnown)
        {
            return null;
        }

        var isNegative = said.Contains("negative", StringComparison.OrdinalIgnoreCase) || said.Contains("smaller", StringComparison.OrdinalIgnoreCase) || said.Contains("minus", StringComparison.OrdinalIgnoreCase) || said.TrimStart()[..1] is "-" or "−" or "–";
        if (isNegative && (said.Contains("positive", StringComparison.OrdinalIgnoreCase) || said.Contains("larger", StringComparison.OrdinalIgnoreCase)))
        {
            return null;
        }

        var at = said.AsSpan().IndexOfAnyInRange('0', '9');
        if (at < 0 || ValueListReader.Read(said, at, context.Sizes.Count) is not { HasUnit: true } list || list.Values.Any(v => v.Unit is not { Dimension: Dimension.Length }) || (list.Values.Length != 1 && list.Values.Length != context.Sizes.Count))
        {
            return null;
        }

        // A second figure, that is not the same in other units, makes it uncertain which holds.
        if (said.AsSpan(list.End).IndexOfAnyInRange('0', '9') is >= 0 and var more && (ValueListReader.Read(said, list.End + more, context.Sizes.Count) is not { HasUnit: true } again || !IsSame(list, again)))
        {
            return null;
        }

        ImmutableArray<Quantity?> values = [.. list.Values.Select(v => v.Number is { } n ? Signed(new Quantity(n, v.Unit!) { UpTo = v.UpTo }, isNegative) : null)];
        return values.Length == 1 ? PerSize.Shared(values[0]) : PerSize.Each(values);
    }

    private static bool IsSame(ValueList one, ValueList other) =>
        one.Values.Length == other.Values.Length && one.Values[0] is { Number: { } a, Unit: { } u } && other.Values[0] is { Number: { } b, Unit: { } v } && u != v && Math.Abs((a * u.InBase) - (b * v.InBase)) <= 1m;

    private static Quantity Signed(Quantity said, bool isNegative) => !isNegative ? said : said.UpTo is { } upTo ? new Quantity(-upTo, said.Unit) { UpTo = -said.Value } : new Quantity(-said.Value, said.Unit);
}
