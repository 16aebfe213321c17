using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>
/// Writes out "reversing shaping": the rows of the side that is mirrored, with left and right changed. A row is turned round stitch by stitch, its
/// decreases and increases leaning the other way; stitches bound off or cast on at a row's beginning, and shaping told in words, come one row later,
/// on the other side of the fabric (common practice).
/// </summary>
internal static class Mirrors
{
    private const int MostRows = 200;

    private static readonly Dictionary<string, string> Pairs = new(StringComparer.Ordinal)
    {
        ["k2tog"] = "ssk",
        ["ssk"] = "k2tog",
        ["skp"] = "k2tog",
        ["k2tog-tbl"] = "k2tog",
        ["p2tog"] = "p2tog tbl",
        ["p2tog-tbl"] = "p2tog",
        ["ssp"] = "p2tog",
        ["k3tog"] = "sssk",
        ["sssk"] = "k3tog",
        ["sk2p"] = "k3tog",
        ["m1l"] = "m1r",
        ["m1r"] = "m1l",
        ["m1pl"] = "m1pr",
        ["m1pr"] = "m1pl",
        ["lli"] = "rli",
        ["rli"] = "lli",
    };

    /// <summary>The rows that a line stands for when it says that shaping is reversed; empty for other lines.</summary>
    /// <param name="line">The line.</param>
    /// <param name="pieces">The pieces worked before it.</param>
    /// <param name="sidesFrom">The line after which the first of two sides begins; -1 for none.</param>
    /// <param name="source">The text.</param>
    public static ImmutableArray<MirroredRow> Of(BoundLine line, PieceBook pieces, int sidesFrom, SourceText source)
    {
        var rows = ImmutableArray.CreateBuilder<MirroredRow>();
        foreach (var step in line.Rows.SelectMany(r => r.Steps))
        {
            IReadOnlyList<PieceLine> lines = step switch
            {
                AsPieceStep { IsReversed: true } piece => pieces.Lines(piece),
                MatchSideStep { IsReversed: true } when sidesFrom >= 0 => UpToTheEnd(pieces.Since(line.Piece, sidesFrom)),
                _ => [],
            };
            foreach (var mirrored in lines.Take(MostRows))
            {
                rows.Add(Of(mirrored, source));
            }
        }

        return rows.ToImmutable();
    }

    // The first side ends where nothing is left of it.
    private static PieceLine[] UpToTheEnd(IReadOnlyList<PieceLine> lines)
    {
        var end = lines.ToList().FindIndex(l => l.After.All(a => a is 0 or null));
        return [.. lines.Take(end < 0 ? lines.Count : end + 1)];
    }

    private static MirroredRow Of(PieceLine line, SourceText source)
    {
        if (line.Line.Rows is [var row] && !row.HasUnread)
        {
            var steps = row.Steps.Where(s => s is not (RemarkStep or SentenceStep)).ToArray();
            if (steps.Length > 0 && Array.TrueForAll(steps, s => s is RowsStep or CastOnStep or BindOffStep or TurnStep))
            {
                return new MirroredRow(OtherSide(line.Line.Label), OtherSide(line.Line.Text), line.After, true);
            }

            if (steps is [BindOffStep { Stitches: { } bound }, RunStep { To.Extent: Extent.End, Operation.Id: "k" or "p" } rest])
            {
                return new MirroredRow(OtherSide(line.Line.Label), $"BO {Figures(bound, source)}, {(rest.Operation.Id == "k" ? "p" : "k")} to end.", line.After, true);
            }

            if (Reversed(steps, source) is { } text)
            {
                return new MirroredRow(line.Line.Label, text, line.After, true);
            }
        }

        return new MirroredRow(line.Line.Label, line.Line.Text, line.After, false);
    }

    /// <summary>RS and WS, left and right, and the hands that hold them change places.</summary>
    private static string OtherSide(string text)
    {
        var words = text.Split(' ');
        for (var i = 0; i < words.Length; i++)
        {
            foreach (var (one, other) in (ReadOnlySpan<(string, string)>)[("RS", "WS"), ("left", "right"), ("Left", "Right")])
            {
                var isOne = words[i].Contains(one, StringComparison.Ordinal);
                if (isOne || words[i].Contains(other, StringComparison.Ordinal))
                {
                    words[i] = isOne ? words[i].Replace(one, other, StringComparison.Ordinal) : words[i].Replace(other, one, StringComparison.Ordinal);
                    break;
                }
            }
        }

        return string.Join(' ', words);
    }

    /// <summary>The steps from the last to the first, each leaning the other way; null where that cannot be written without seeing the fabric.</summary>
    private static string? Reversed(Step[] steps, SourceText source)
    {
        var runs = steps.Count(s => s is RunStep or RepeatStep);
        if (runs > 1 || steps.Length == 0)
        {
            return null;
        }

        var words = new List<string>();
        for (var i = steps.Length - 1; i >= 0; i--)
        {
            var next = steps[i] switch
            {
                OperationStep operation when Name(operation.Operation) is { } name => Times(name, operation.Times, source),
                RunStep { To.Extent: Extent.End or Extent.LastStitches, Operation: { Takes: 1, Makes: 1 } plain } when Before(steps, i, source) is { } rest => rest.Length == 0 ? $"{plain.Id} to end" : $"{plain.Id} to last {rest} sts",
                _ => null,
            };
            if (next is null)
            {
                return null;
            }

            words.Add(next);
        }

        var text = string.Join(", ", words);
        return char.ToUpperInvariant(text[0]) + text[1..] + ".";
    }

    private static string? Name(Operation operation) => operation.Family == Family.Cable ? null
        : Pairs.GetValueOrDefault(operation.Id) ?? (operation.Lean is Lean.Left or Lean.Right ? null : operation.Id);

    private static string Times(string name, Amount? times, SourceText source)
    {
        if (times is null || (times.Values.IsShared && times.Values[0] == 1))
        {
            return name.Length == 1 ? name + "1" : name;
        }

        var number = Figures(times, source);
        return name.Length == 1 ? name + number : $"[{name}] {number} times";
    }

    /// <summary>A number as the source writes it, without the stitch in front of it ("2 (3, 4)" of "k2 (3, 4)").</summary>
    private static string Figures(Amount amount, SourceText source)
    {
        var words = source.ToString(amount.Origin);
        var first = words.AsSpan().IndexOfAnyInRange('0', '9');
        return first < 0 ? words : words[first..];
    }

    /// <summary>The stitches that stand before a run, and so behind it on the other side: "4", "4 (5, 6)"; null where they cannot be told.</summary>
    private static string? Before(Step[] steps, int run, SourceText source)
    {
        var sizes = 1;
        foreach (var step in steps[..run].OfType<OperationStep>())
        {
            sizes = Math.Max(sizes, step.Times?.Values.Values.Length ?? 1);
        }

        var sums = new int[sizes];
        foreach (var step in steps[..run])
        {
            if (step is not OperationStep operation)
            {
                return null;
            }

            for (var size = 0; size < sizes; size++)
            {
                sums[size] += operation.Operation.Takes * (operation.Times is null ? 1 : operation.Times[size] ?? 0);
            }
        }

        return sums.All(s => s == 0) ? "" : sums.All(s => s == sums[0]) ? sums[0].ToString(CultureInfo.InvariantCulture) : $"{sums[0]} ({string.Join(", ", sums[1..])})";
    }
}
