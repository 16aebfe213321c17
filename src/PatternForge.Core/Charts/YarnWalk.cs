using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>One physical row and the stitches that each yarn has in it.</summary>
/// <param name="Yarns">The letters: one, or several for a row whose yarn changes from stitch to stitch.</param>
/// <param name="Stitches">Stitches in each of them, in the same order.</param>
internal sealed record YarnRow(ImmutableArray<string> Yarns, ImmutableArray<int> Stitches);

/// <summary>
/// Goes through the worked rows of a pattern and finds the yarn of each: the one that the row names, else the one in hand. In doubt a part has no rows.
/// </summary>
internal sealed class YarnWalk
{
    private readonly Pattern _pattern;
    private readonly FabricWorker _fabrics;
    private readonly ImmutableArray<string> _labels;
    private readonly int _size;
    private readonly Dictionary<int, BoundLine> _lines;
    private readonly ImmutableArray<WorkedLine> _worked;
    private string? _inHand;

    private YarnWalk(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, FabricWorker fabrics, int size)
    {
        (_pattern, _worked, _fabrics, _size) = (pattern, worked, fabrics, size);
        _labels = YarnMention.Labels(pattern.Facts);
        _lines = lines.ToDictionary(l => l.Index);
    }

    /// <summary>The rows of each section in one size, by the section's number from 1; a section whose yarns are not all known is left out.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="lines">Its lines.</param>
    /// <param name="worked">The same lines, worked.</param>
    /// <param name="fabrics">Works rows in several yarns stitch by stitch.</param>
    /// <param name="size">The size.</param>
    public static SortedDictionary<int, ImmutableArray<YarnRow>> Of(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, FabricWorker fabrics, int size)
    {
        var walk = new YarnWalk(pattern, lines, worked, fabrics, size);
        var sections = new SortedDictionary<int, ImmutableArray<YarnRow>>();
        for (var number = 1; number <= pattern.Sections.Length; number++)
        {
            if (walk.Section(pattern.Sections[number - 1]) is { IsEmpty: false } rows)
            {
                sections[number] = rows;
            }
        }

        return sections;
    }

    /// <summary>The rows of a section; empty where there are none or one of them is in doubt.</summary>
    private ImmutableArray<YarnRow> Section(Section section)
    {
        var rows = ImmutableArray.CreateBuilder<YarnRow>();
        var isSure = true;
        var isFirst = true;
        foreach (var block in section.Blocks)
        {
            switch (block)
            {
                case InstructionBlock { Index: var index } when _lines.TryGetValue(index, out var line) && line.Pattern is null:
                    var worked = _worked[index];
                    if (isFirst && (line.Rows.Any(r => r.Steps.Any(s => s is CastOnStep)) || _size >= worked.Before.Length || worked.Before[_size] is null or 0))
                    {
                        _inHand = null; // a new piece: which yarn it begins with is for its own words to say
                    }

                    isFirst = false;
                    isSure &= Line(line, worked, rows);
                    break;
                case ProseBlock prose when !isFirst || section.HasInstructions:
                    foreach (var mention in YarnMention.In(prose.Markdown, _labels).Where(m => m.Said != YarnSaid.Off))
                    {
                        _inHand = mention.Said == YarnSaid.Beside ? null : mention.Label;
                    }

                    break;
            }
        }

        return isSure ? rows.ToImmutable() : [];
    }

    private bool Line(BoundLine line, WorkedLine worked, ImmutableArray<YarnRow>.Builder rows)
    {
        if (worked.Log.Length <= _size || line.Rows.Any(r => r.HasUnread || r.Yarns is { IsSure: false } || r.Steps.Any(s => IsUncounted(s, r))))
        {
            return false;
        }

        var log = worked.Log[_size];
        var from = 0;
        while (from < line.Rows.Length && !log.Any(l => l.Row.Origin == line.Rows[from].Origin))
        {
            Take(line.Rows[from].Yarns);
            from++;
        }

        var before = worked.Before[_size];
        foreach (var logged in log)
        {
            if (logged.Row.Yarns is { HasStitches: false })
            {
                Take(logged.Row.Yarns); // a ring, a foundation, words on the yarn
                before = logged.Count;
                continue;
            }

            if (Row(logged, before) is not { } row)
            {
                return false;
            }

            rows.Add(row);
            before = logged.Count;
        }

        foreach (var row in line.Rows.Skip(Math.Max(from, 1)).Where(r => !log.Any(l => l.Row.Origin == r.Origin)))
        {
            Take(row.Yarns);
        }

        return log.Length < LoggedRow.Most;
    }

    private void Take(RowYarns? yarns) => _inHand = yarns?.Last ?? yarns?.First ?? _inHand;

    /// <summary>Rows of which nobody can say how many there are, or what is worked in each.</summary>
    private static bool IsUncounted(Step step, BoundRow row) => step switch
    {
        EvenRowsStep even => even.Rows is null,
        RepeatRowsStep repeat => repeat.Grows || repeat.WithPlainRows || repeat.Until == RowsUntil.Length || (repeat.Until == RowsUntil.Open && !row.IsRange), // "Rows 5-8: Rep Rows 1-4" says how many
        StartStep => false,
        RowsStep or UncountedStep => true,
        _ => false,
    };

    private YarnRow? Row(LoggedRow logged, int? before)
    {
        if (logged.Count is not { } count || (count == 0 && before is null) || logged.Row.HasUnread || logged.Row.Yarns is { IsSure: false })
        {
            return null;
        }

        var yarns = logged.Row.Yarns;
        var hand = _inHand;
        _inHand = yarns?.Last ?? yarns?.First ?? hand;
        var stitches = count > 0 ? count : before!.Value; // a row that binds all off works all of them
        if (yarns is null or { Names.IsEmpty: true } && !Slips(logged.Row.Steps))
        {
            return (yarns?.First ?? hand) is { } yarn ? new YarnRow([yarn], [stitches]) : null;
        }

        // Stitch by stitch: the yarn changes, or some of them are slipped and stay as they are.
        if (before is not { } there || _pattern.Facts.Craft != Craft.Knitting || _fabrics.One(logged.Row, there, _size) is not var (row, _))
        {
            return null;
        }

        var start = yarns?.First ?? hand;
        var each = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < row.Stitches.Length; i++)
        {
            if ((row.Colours[i] ?? start) is not { } yarn)
            {
                return null;
            }

            each[yarn] = each.GetValueOrDefault(yarn) + (row.Stitches[i].Family == Family.Slip ? 0 : Math.Max(1, row.Stitches[i].Makes));
        }

        ImmutableArray<string> names = [.. _labels.Where(each.ContainsKey)];
        return new YarnRow(names, [.. names.Select(n => each[n])]);
    }

    private static bool Slips(ImmutableArray<Step> steps) => steps.Any(s => s switch
    {
        GroupStep group => Slips(group.Body),
        RepeatStep repeat => Slips(repeat.Body) || Slips(repeat.Ending),
        OperationStep { Operation.Family: Family.Slip } or RunStep { Operation.Family: Family.Slip } => true,
        _ => false,
    });
}
