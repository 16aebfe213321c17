using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Work;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes rows from worked lines: the designer's words, and the count at the side where it says something.</summary>
/// <param name="sizes">How many sizes the pattern has.</param>
/// <param name="page">How the page writes its own words.</param>
/// <param name="own">What each size alone has; null where it is not asked for.</param>
internal sealed class RowBuilder(int sizes, PageWords page, OwnSizes? own = null)
{
    /// <summary>A count longer than this stands under its row and not beside it.</summary>
    private const int LongCount = 24;

    /// <summary>A line that covers more rows than this gets one box; so many small ones would help nobody.</summary>
    private const int MostTicks = 60;

    private int _steps;

    /// <summary>One row.</summary>
    public RowView Build(WorkedLine line)
    {
        _steps++;
        var label = line.Label.Trim().TrimEnd(':').TrimEnd();
        var text = line.Text.Trim();
        var closing = Agrees(line) ? ClosingCount.Split(text, line.StatedFirst.IsDefaultOrEmpty ? Opening(line) : line.StatedFirst) : null;
        var counts = Counts(line);
        var only = Only(line);
        var worked = counts is null ? null : CountWording.Text(line, only.IsEmpty || !line.Kinds.IsDefaultOrEmpty ? counts.Value : [.. only.Select(i => counts.Value[i])]);
        var said = closing is not null || (counts is not null && ClosingCount.Says(text, Wording.TradeForm(Wording.Counts(counts.Value))));
        var count = (closing?.Count ?? (said ? null : worked)) is { } told ? page.Count(told) : null;
        if (closing is { } filled && text.LastIndexOf(filled.Count, StringComparison.Ordinal) is >= 0 and var place)
        {
            text = string.Concat(text.AsSpan(0, place), page.Count(filled.Count), text.AsSpan(place + filled.Count.Length));
        }

        return new RowView
        {
            Label = label,
            MarkedLabel = new SizedText(label, sizes) { In = own is null ? null : size => own.Row(line, size)?.Label },
            Name = label.Length > 0 ? label : string.Create(CultureInfo.InvariantCulture, $"Step {_steps}"),
            Text = text,
            Instruction = closing?.Instruction ?? text,
            Numbers = line.Numbers.Length is > 0 and <= MostTicks ? string.Join(' ', line.Numbers) : "",
            Without = own is null ? null : () => own.Without(line),
            MarkedInstruction = new SizedText(closing?.Instruction ?? text, sizes) { Only = only, In = own is null ? null : size => own.Row(line, size)?.Instruction },
            Count = count,
            MarkedCount = count is null ? null : new SizedText(count, sizes) { Only = only, In = own is null ? null : size => own.Row(line, size) is { } row ? row.Count ?? "" : null },
            CountIsSaid = said,
            Counts = worked is null ? [] : [.. CountWording.Each(line, counts!.Value).Select(page.Count)],
            CountIsLong = IsLong(count),
            Ticks = Ticks(line),
            TickName = line.Numbers.Length is > 1 and <= MostTicks ? TickName(label) : "",
        };
    }

    /// <summary>True for a count that would be broken over several lines beside its row.</summary>
    public static bool IsLong(string? count) => count?.Length > LongCount;

    /// <summary>The sizes that a line is for whose label says so; empty where it is for all.</summary>
    private static ImmutableArray<int> Only(WorkedLine line) =>
        line.Label.StartsWith("Size", StringComparison.OrdinalIgnoreCase) && line.Status == LineStatus.Checked && line.After.Any(a => a is null)
            ? [.. Enumerable.Range(0, line.After.Length).Where(i => line.After[i] is not null)]
            : [];

    /// <summary>
    /// True when what the line states is what it makes, as far as that is known: only then may its count stand at the side. A count that was
    /// filled in for the designer is no claim, and agrees by nature.
    /// </summary>
    private static bool Agrees(WorkedLine line)
    {
        if (line.Stated.IsDefaultOrEmpty || line.Status == LineStatus.Unread)
        {
            return line.Status == LineStatus.Checked;
        }

        for (var i = 0; i < line.Stated.Length; i++)
        {
            if (i < line.After.Length && line.After[i] is { } made && line.Stated[i] is { } stated && made != stated && line.Kinds.IsDefaultOrEmpty)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The count worth printing: known and checked, and either changed by this line or stated in it. An empty needle is no count.</summary>
    private static ImmutableArray<int?>? Counts(WorkedLine line)
    {
        if (line.Kind == "ch" && line.Stated.IsDefaultOrEmpty)
        {
            return null; // "Ch 31" says it, and a ring has no count
        }

        if (line.Status != LineStatus.Checked || line.After.IsDefaultOrEmpty || line.After.All(n => n is null or 0))
        {
            return null;
        }

        var stated = !line.Stated.IsDefaultOrEmpty;
        return stated || !line.After.SequenceEqual(line.Before) ? line.After : null;
    }

    // A count that was filled in by kind begins with the first kind's number.
    private static ImmutableArray<int?> Opening(WorkedLine line) => line.Kinds.IsDefaultOrEmpty ? line.After : CountWording.FirstKind(line);

    private static ImmutableArray<string> Ticks(WorkedLine line) =>
        line.Numbers.Length is > 1 and <= MostTicks ? [.. line.Numbers.Select(n => n.ToString(CultureInfo.InvariantCulture))] : [];

    private static string TickName(string label) => label.StartsWith("r", StringComparison.OrdinalIgnoreCase) && label.Contains("nd", StringComparison.OrdinalIgnoreCase) ? "Round" : "Row";
}
