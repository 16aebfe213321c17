using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>One value of a list: its number (null where the size has none), the upper end of a range, its place and its unit.</summary>
internal sealed record ListedValue(decimal? Number, decimal? UpTo, int Start, int End, Unit? Unit)
{
    /// <summary>Where the unit stands; null when none does.</summary>
    public (int Start, int Length)? UnitPlace { get; init; }
}

/// <summary>Values for the sizes as they were written in one text: <c>91 (102, 112) cm</c>, <c>60/66/72</c>, <c>3 [4, –, 6]</c>.</summary>
/// <param name="Values">In order; at least one.</param>
/// <param name="Start">Where the list begins in the text.</param>
/// <param name="End">Where it ends, its unit included.</param>
internal sealed record ValueList(ImmutableArray<ListedValue> Values, int Start, int End)
{
    /// <summary>True when at least one value has its unit.</summary>
    public bool HasUnit => Values.Any(v => v.Unit is not null);
}

/// <summary>Reads lists of values in the trade's form.</summary>
internal static class ValueListReader
{
    private enum Mark
    {
        Value,
        Dash,
        Separator,
        Open,
        Close,
    }

    private sealed record Piece(Mark Mark, int Start, int End, decimal Number = 0, Unit? Unit = null, (int Start, int Length)? UnitPlace = null);

    /// <summary>The unit of a word: one of the units of measure, or a ball, skein, stitch and the like.</summary>
    public static Unit? UnitOf(string word) => Unit.Find(word) ?? (CountWords.Contains(word, StringComparer.OrdinalIgnoreCase) ? new Unit(word, Dimension.Count, 1m) : null);

    private static ImmutableArray<string> CountWords { get; } =
    [
        "ball", "balls", "skein", "skeins", "hank", "hanks", "cone", "cones", "cake", "cakes", "spool", "spools", "pc", "pcs", "piece", "pieces", "st", "sts",
        "stitch", "stitches", "row", "rows", "rnd", "rnds", "round", "rounds", "time", "times", "repeat", "repeats", "rep", "reps", "loop", "loops",
    ];

    /// <summary>Reads the list that begins at <paramref name="start"/>; null where no value stands there.</summary>
    /// <param name="text">The text.</param>
    /// <param name="start">Where to begin; blanks are passed over.</param>
    /// <param name="sizes">How many sizes there are, to tell 54-58 (a range, or two sizes); 0 when not known.</param>
    public static ValueList? Read(string text, int start, int sizes)
    {
        var pieces = Pieces(text, start, out var end);
        if (!pieces.Exists(p => p.Mark == Mark.Value))
        {
            return null;
        }

        var hasSeparators = pieces.Exists(p => p.Mark == Mark.Separator);
        var asRanges = Values(pieces, dashParts: false);
        var values = asRanges;
        if (!hasSeparators && pieces.Exists(p => p.Mark == Mark.Dash))
        {
            var asSizes = Values(pieces, dashParts: true);
            var fits = sizes == 0 ? asSizes.Length > 2 : asSizes.Length == sizes;
            values = fits || (asRanges.Length != sizes && asRanges.Length != 1) ? asSizes : asRanges;
        }

        values = SpreadUnits(WithoutSecondSystem(values));
        var first = pieces.First(p => p.Mark is Mark.Value or Mark.Dash or Mark.Open).Start;
        return new ValueList(values, first, end);
    }

    private static List<Piece> Pieces(string text, int start, out int end)
    {
        var pieces = new List<Piece>();
        var (at, depth, complete) = (start, 0, false);
        var (closed, hasUnit) = (false, false);
        end = start;
        while (at < text.Length)
        {
            var c = text[at];
            var from = at;
            if (char.IsWhiteSpace(c))
            {
                at++;
                continue;
            }

            if (NumberReader.TryRead(text, ref at, out var number))
            {
                if (complete)
                {
                    return pieces;
                }

                pieces.Add(new Piece(Mark.Value, from, at, number));
            }
            else if (WordAt(text, at) is { Length: > 0 } word)
            {
                if (UnitOf(word) is not { } unit || pieces.Count == 0 || !PutUnit(pieces, unit, at, word.Length))
                {
                    return pieces;
                }

                at += word.Length;
                at += EndsWithStop(text, at) ? 1 : 0;
                complete = depth == 0 && closed;
                hasUnit = true;
            }
            else if (c is '(' or '[' or '{')
            {
                if (complete)
                {
                    return pieces;
                }

                depth++;
                at++;
                pieces.Add(new Piece(Mark.Open, from, at));
                continue;
            }
            else if (c is ')' or ']' or '}' && depth > 0)
            {
                depth--;
                closed = true;
                at++;
                pieces.Add(new Piece(Mark.Close, from, at));
            }
            else if (c is ',' or ';' or ':' or '/' && pieces.Count > 0 && (depth > 0 || (!hasUnit && NumberFollows(text, at + 1))))
            {
                at++;
                pieces.Add(new Piece(Mark.Separator, from, at));
                continue;
            }
            else if (c is '-' or '–' or '—' or '−' && (depth > 0 || DashCounts(text, at + 1)))
            {
                at++;
                pieces.Add(new Piece(Mark.Dash, from, at));
            }
            else
            {
                return pieces;
            }

            end = at;
        }

        return pieces;
    }

    // Outside brackets a comma goes on with the list only while no unit has closed it and a number follows.
    private static bool NumberFollows(string text, int at)
    {
        while (at < text.Length && char.IsWhiteSpace(text[at]))
        {
            at++;
        }

        return at < text.Length && (char.IsAsciiDigit(text[at]) || NumberReader.Vulgar(text[at]) is not null);
    }

    // "36 in.": the full stop of a shortened unit.
    private static bool EndsWithStop(string text, int at) =>
        at < text.Length && text[at] == '.' && (at + 1 == text.Length || char.IsWhiteSpace(text[at + 1]) || text[at + 1] is ')' or ']' or ',');

    private static bool DashCounts(string text, int at)
    {
        while (at < text.Length && char.IsWhiteSpace(text[at]))
        {
            at++;
        }

        return at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] is '(' or '[' or '{' || NumberReader.Vulgar(text[at]) is not null);
    }

    private static bool PutUnit(List<Piece> pieces, Unit unit, int start, int length)
    {
        var index = pieces.FindLastIndex(p => p.Mark is Mark.Value);
        if (index < 0 || pieces[index].Unit is not null)
        {
            return false;
        }

        pieces[index] = pieces[index] with { Unit = unit, UnitPlace = (start, length), End = pieces[^1].Mark == Mark.Value ? start + length : pieces[index].End };
        return true;
    }

    /// <summary>The word of letters, or the inch sign, that begins at an offset; empty when none does.</summary>
    public static string WordAt(string text, int at)
    {
        if (at < text.Length && text[at] is '"' or '″' or '”')
        {
            return text[at].ToString();
        }

        if (at + 1 < text.Length && text[at] is '\'' or '’' && text[at + 1] == text[at])
        {
            return text.Substring(at, 2);
        }

        var end = at;
        while (end < text.Length && char.IsLetter(text[end]))
        {
            end++;
        }

        return text[at..end];
    }

    private static ImmutableArray<ListedValue> Values(List<Piece> pieces, bool dashParts)
    {
        var values = ImmutableArray.CreateBuilder<ListedValue>();
        ListedValue? slot = null;
        var (range, inGroup) = (false, 0);
        void Close(bool force, int at)
        {
            if (slot is not null || force)
            {
                values.Add(slot ?? new ListedValue(null, null, at, at, null));
            }

            (slot, range) = (null, false);
        }

        for (var i = 0; i < pieces.Count; i++)
        {
            var piece = pieces[i];
            switch (piece.Mark)
            {
                case Mark.Value when slot is { Number: not null } && range:
                    slot = slot with { UpTo = piece.Number, End = piece.End, Unit = piece.Unit ?? slot.Unit, UnitPlace = piece.UnitPlace ?? slot.UnitPlace };
                    range = false;
                    break;
                case Mark.Value:
                    Close(force: false, piece.Start);
                    slot = new ListedValue(piece.Number, null, piece.Start, piece.End, piece.Unit) { UnitPlace = piece.UnitPlace };
                    break;
                case Mark.Dash:
                    var between = slot is { Number: not null, UpTo: null } && i + 1 < pieces.Count && pieces[i + 1].Mark == Mark.Value;
                    if (between && !dashParts)
                    {
                        range = true;
                    }
                    else if (!between)
                    {
                        Close(force: false, piece.Start);
                        slot = new ListedValue(null, null, piece.Start, piece.End, null);
                    }

                    break;
                case Mark.Separator:
                    Close(force: inGroup > 0 || slot is not null, piece.Start);
                    if (inGroup > 0 && i + 1 < pieces.Count && pieces[i + 1].Mark == Mark.Close)
                    {
                        Close(force: true, piece.End);
                    }

                    break;
                case Mark.Open:
                    Close(force: false, piece.Start);
                    inGroup++;
                    break;
                default:
                    Close(force: false, piece.Start);
                    inGroup--;
                    break;
            }
        }

        Close(force: false, 0);
        return values.ToImmutable();
    }

    // "10 cm (4 in)": what follows in another unit says the same once more.
    private static ImmutableArray<ListedValue> WithoutSecondSystem(ImmutableArray<ListedValue> values) =>
        values.Length > 1 && values[0].Unit is { } first && values[1..].Any(v => v.Unit is { } other && other.Dimension == first.Dimension && other != first)
            ? [.. values.TakeWhile(v => v.Unit is null || v.Unit == first)]
            : values;

    // A unit holds for the values before it that have none of their own; the last one also for those after it.
    private static ImmutableArray<ListedValue> SpreadUnits(ImmutableArray<ListedValue> values)
    {
        var spread = values.ToBuilder();
        Unit? unit = values.LastOrDefault(v => v.Unit is not null)?.Unit;
        for (var i = spread.Count - 1; i >= 0; i--)
        {
            unit = spread[i].Unit ?? unit;
            spread[i] = spread[i] with { Unit = unit };
        }

        return spread.ToImmutable();
    }
}
