using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>Lays out shapings that go on at the same time: schedules add up, row by row, in every size (NOTATION 4).</summary>
internal static class ShapingTables
{
    private const int MostRows = 400;

    /// <summary>The table of a line; null where nothing goes on at the same time, or where the words do not tell in which rows.</summary>
    /// <param name="line">The line.</param>
    /// <param name="before">The line before it in its section, whose shaping goes on where this one begins with the words; null for none.</param>
    /// <param name="counts">Stitches when the first of them begins, one a size.</param>
    /// <param name="rowsPerCm">Rows in one centimetre, to place a shaping that begins at a length; null when the gauge does not tell.</param>
    public static ShapingTable? Of(BoundLine line, BoundLine? before, ImmutableArray<int?> counts, decimal? rowsPerCm)
    {
        var groups = Groups(line, before);
        if (groups.Count < 2)
        {
            return null;
        }

        var sizes = ImmutableArray.CreateBuilder<ImmutableArray<ShapingRow>>(counts.Length);
        for (var size = 0; size < counts.Length; size++)
        {
            if (counts[size] is not { } count)
            {
                sizes.Add([]);
                continue;
            }

            if (Rows(groups, size, count, rowsPerCm) is not { } rows)
            {
                return null;
            }

            sizes.Add(rows);
        }

        return new ShapingTable([.. groups.Select(g => g.Origin)], sizes.ToImmutable());
    }

    /// <summary>True when the line begins with the words: what goes on stands in the line before.</summary>
    public static bool GoesOn(BoundLine line) => line.Rows.Length > 0 && StepCounts.First(line.Rows[0].Steps) is TogetherStep;

    private sealed record Group(TogetherStep? Opening, List<ShapingStretch> Stretches, TextSpan Origin);

    private static List<Group> Groups(BoundLine line, BoundLine? before)
    {
        var steps = line.Rows.SelectMany(r => r.Steps).ToList();
        if (!steps.Exists(s => s is TogetherStep))
        {
            return [];
        }

        if (GoesOn(line))
        {
            steps.InsertRange(0, before?.Rows.SelectMany(r => r.Steps) ?? []);
        }

        var groups = new List<Group>();
        TogetherStep? opening = null;
        var open = false;
        foreach (var step in steps)
        {
            if (step is TogetherStep together)
            {
                (opening, open) = (together, false);
            }
            else if (step is ShapingStep { Stretches.Length: > 0 } shaping)
            {
                if (open)
                {
                    groups[^1] = groups[^1] with { Origin = groups[^1].Origin.Cover(shaping.Origin) };
                    groups[^1].Stretches.AddRange(shaping.Stretches);
                }
                else
                {
                    groups.Add(new Group(opening, [.. shaping.Stretches], shaping.Origin));
                    open = true;
                }
            }
            else if (step is RowsStep && groups.Count > 0 && open)
            {
                open = false; // worked even between: a shaping of its own
                return [];
            }
        }

        return groups;
    }

    private static ImmutableArray<ShapingRow>? Rows(List<Group> groups, int size, int count, decimal? rowsPerCm)
    {
        var changes = new SortedDictionary<int, int[]>();
        for (var g = 0; g < groups.Count; g++)
        {
            if (Start(groups[g].Opening, size, rowsPerCm) is not { } row)
            {
                return null;
            }

            foreach (var stretch in groups[g].Stretches)
            {
                if (stretch.Every?[size] is not (> 0 and var every) || stretch.ToCount is not null || stretch.Rows is null)
                {
                    return null;
                }

                var (times, change) = (stretch.Rows[size] ?? 0, stretch.Change[size] ?? 0);
                for (var i = 0; i < times; i++)
                {
                    row += i == 0 && stretch.BeginsNow ? 1 : every;
                    if (row > MostRows)
                    {
                        return null;
                    }

                    if (!changes.TryGetValue(row, out var each))
                    {
                        changes[row] = each = new int[groups.Count];
                    }

                    each[g] += change;
                }
            }
        }

        var rows = ImmutableArray.CreateBuilder<ShapingRow>(changes.Count);
        foreach (var (row, each) in changes)
        {
            count += each.Sum();
            rows.Add(new ShapingRow(row, [.. each], count));
        }

        return rows.ToImmutable();
    }

    /// <summary>The row after which a shaping begins; null where that is not told.</summary>
    private static int? Start(TogetherStep? opening, int size, decimal? rowsPerCm) =>
        opening is null or { BeginsLater: false } ? 0
        : opening.AfterLength?[size] is { } length && rowsPerCm is { } gauge && length * gauge < MostRows ? (int)Math.Round(length * gauge) / 2 * 2
        : null;
}
