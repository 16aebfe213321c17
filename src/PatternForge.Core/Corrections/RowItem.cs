using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Core.Corrections;

/// <summary>A row, or a sentence of a line without a label, as both versions can be compared by it.</summary>
internal sealed record RowItem
{
    /// <summary>Its label as it is printed; empty for none.</summary>
    public required string Label { get; init; }

    /// <summary>What its label means, however it is spelt; empty for none.</summary>
    public required string LabelKey { get; init; }

    /// <summary>What is printed behind the label.</summary>
    public required string Text { get; init; }

    /// <summary>Where it stands in the text as it was read.</summary>
    public required TextSpan Origin { get; init; }

    /// <summary>The instruction line that it is part of.</summary>
    public required WorkedLine Line { get; init; }

    /// <summary>The row that it is, or is part of.</summary>
    public required BoundRow Row { get; init; }

    /// <summary>Its steps in each shared size; empty for a size that does not work it.</summary>
    public required ImmutableArray<ImmutableArray<StepToken>> Steps { get; init; }

    /// <summary>How many rows it stands for, in each shared size.</summary>
    public required ImmutableArray<int> Rows { get; init; }

    /// <summary>What it is compared by in each shared size.</summary>
    public required ImmutableArray<string> Keys { get; init; }

    /// <summary>Its words, where they do not tell other stitches.</summary>
    public required string Wording { get; init; }

    /// <summary>True where the counts that the row states belong to it.</summary>
    public required bool EndsRow { get; init; }

    /// <summary>Stitches before it, in each shared size; null where not known.</summary>
    public required ImmutableArray<int?> Before { get; init; }

    /// <summary>Stitches after it.</summary>
    public required ImmutableArray<int?> After { get; init; }

    /// <summary>True for words to the maker without a label, which may as well be prose.</summary>
    public bool IsRemark => Label.Length == 0 && Row.Steps.All(s => s is RemarkStep or SentenceStep) && Row.Claims.IsEmpty;

    /// <summary>What it is compared by in all of them.</summary>
    public string Key => string.Join('|', Keys);

    /// <summary>The items of each section of a version, by the number of the section in the body.</summary>
    public static ILookup<int, RowItem> Of(Compilation compilation, Func<SharedSize, int> sizeOf, ImmutableArray<SharedSize> shared)
    {
        var facts = compilation.Pattern.Facts;
        var terms = facts.TermsInForce ?? Dialect.Us;
        StepReader[] readers = [.. shared.Select(s => new StepReader(compilation.Text.Text, terms, sizeOf(s), facts.Sizes.Count))];
        int[] sizes = [.. shared.Select(sizeOf)];
        return compilation.BoundLines
            .Where(line => line.Index < compilation.Lines.Length)
            .SelectMany(line => OfLine(compilation, line, readers, sizes).Select(item => (line.Section, Item: item)))
            .ToLookup(pair => pair.Section, pair => pair.Item);
    }

    private static RowItem[] OfLine(Compilation compilation, BoundLine line, StepReader[] readers, int[] sizes)
    {
        var worked = compilation.Lines[line.Index];
        var source = compilation.Text.Text;
        var parts = line.Rows.SelectMany(row => PartsOf(row).Select((steps, i) => (Row: row, Steps: steps, IsFirst: i == 0))).ToArray();
        var items = new RowItem[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            var (row, steps, isFirst) = parts[i];
            var (isStart, isEnd) = (i == 0, i == parts.Length - 1);
            var origin = steps.IsEmpty ? row.Origin : TextSpan.FromBounds(steps.Min(s => s.Origin.Start), steps.Max(s => s.Origin.End));
            var label = isFirst && row.IsLabelled ? parts.Length == 1 && worked.Label.Length > 0 ? worked.Label : Words.OneLine(source.ToString(row.LabelOrigin)).TrimEnd(':', '.', ' ') : "";
            ImmutableArray<ImmutableArray<StepToken>> tokens = [.. readers.Select((r, s) => IsFor(row, sizes[s]) ? r.Of(steps) : [])];
            ImmutableArray<int> rows = [.. sizes.Select(s => isFirst ? RowsIn(row, s) : 1)];
            var words = Words.Of(source, origin, sizes.Length > 0 ? sizes[0] : 0, compilation.Pattern.Facts.Sizes.Count);
            items[i] = new RowItem
            {
                Label = label,
                LabelKey = label.Length == 0 ? "" : row.Numbers.IsEmpty ? Words.Key(Words.Of(row.Name ?? label)) : $"{(row.IsRound == true ? "rnd" : "row")} {string.Join(',', row.Numbers)}",
                Text = parts.Length == 1 ? Words.OneLine(worked.Text) : Words.OneLine(source.ToString(origin)),
                Origin = parts.Length == 1 ? worked.Origin : origin,
                Line = worked,
                Row = row,
                Steps = tokens,
                Rows = rows,
                Keys = [.. sizes.Select((s, n) => !IsFor(row, s) ? "-" : $"{rows[n]} {(isFirst && (row.IsRule || row.SpeaksForOthers) ? "and others" : "")} {StepToken.KeyOf(tokens[n])}")],
                Wording = tokens.Length == 0 ? Words.Key(words) : StepToken.WordingOf(tokens[0]),
                EndsRow = i == parts.Length - 1 || parts[i + 1].Row != row,
                Before = [.. sizes.Select(s => isStart && s < worked.Before.Length ? worked.Before[s] : null)],
                After = [.. sizes.Select(s => isEnd && s < worked.After.Length ? worked.After[s] : null)],
            };
        }

        return items;
    }

    /// <summary>A row's steps, cut where whole rows are told and, without a label, after each sentence.</summary>
    private static List<ImmutableArray<Step>> PartsOf(BoundRow row)
    {
        var parts = new List<ImmutableArray<Step>>();
        var part = new List<Step>();
        foreach (var step in row.Steps)
        {
            if (step is RowsStep)
            {
                Close();
                parts.Add([step]);
            }
            else if (step is SentenceStep)
            {
                if (!row.IsLabelled)
                {
                    Close();
                }
            }
            else
            {
                part.Add(step);
            }
        }

        Close();
        if (parts.Count == 0 && (row.IsLabelled || !row.Claims.IsEmpty))
        {
            parts.Add([]);
        }

        return parts;

        void Close()
        {
            if (part.Count > 0)
            {
                parts.Add([.. part]);
                part.Clear();
            }
        }
    }

    private static bool IsFor(BoundRow row, int size) => !row.IsForNoSize && (row.Sizes.IsEmpty || row.Sizes.Contains(size));

    private static int RowsIn(BoundRow row, int size)
    {
        var rows = row.IsRange ? Math.Max(1, row.Numbers.Length) : 1;
        return row.Count is { } count ? count[count.Values.IsShared ? 0 : Math.Min(size, count.Values.Values.Length - 1)] ?? 0 : rows;
    }

    /// <summary>The counts that it states in a size, in words; empty for none.</summary>
    public string StatedIn(int size, int place)
    {
        if (!EndsRow)
        {
            return "";
        }

        if (Row.StatedIn(size) is { } total)
        {
            return Number(total);
        }

        if (Row.WantsCount)
        {
            return After[place] is { } after ? Number(after) : "";
        }

        return string.Join(", ", Row.Claims.Where(c => c.IsTrusted && c.Values[c.Values.IsShared ? 0 : size] is not null).Select(c =>
            $"{c.Kind} {c.Values[c.Values.IsShared ? 0 : size]} {c.Of?.Stitch?.Id ?? c.Of?.Name.ToLowerInvariant()}{c.Of?.Length}"));
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
