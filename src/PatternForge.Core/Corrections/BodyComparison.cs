using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Core.Corrections;

/// <summary>Holds the bodies of two versions against each other: sections by their headings, rows by their labels and what they mean.</summary>
internal static class BodyComparison
{
    /// <summary>Adds what is different.</summary>
    public static void Compare(Versions versions)
    {
        var (old, now) = (Places(versions.Old), Places(versions.New));
        var (oldItems, newItems) = (RowItem.Of(versions.Old, s => s.Old, versions.Sizes), RowItem.Of(versions.New, s => s.New, versions.Sizes));
        var leavers = new List<(Place Section, RowItem Item)>();
        var comers = new List<(Place Section, RowItem Item)>();
        var matched = Matched(old, now, oldItems, newItems);
        Order(versions, now, matched);
        foreach (var place in now)
        {
            if (!matched.TryGetValue(place, out var before))
            {
                Whole(versions, null, place, newItems);
                continue;
            }

            if (before.Key != place.Key && Words.Key(Words.Of(before.Section.Heading)) != Words.Key(Words.Of(place.Section.Heading)))
            {
                versions.Add(new Correction
                {
                    Subject = CorrectionSubject.Section,
                    Weight = CorrectionWeight.Wording,
                    Section = place.Section.Heading,
                    Text = $"this section was called “{Words.OneLine(before.Section.Heading)}”",
                    OldLine = versions.Old.LineOf(before.Section.Origin),
                    NewLine = versions.New.LineOf(place.Section.Origin),
                });
            }

            var (gone, come) = (new List<RowItem>(), new List<RowItem>());
            Rows(versions, place, OutsideCharts(before, oldItems), OutsideCharts(place, newItems), gone.Add, come.Add);

            // Words to the maker are read as prose or as an instruction by how they are put: where the prose has changed they are told with it.
            if (gone.Concat(come).Any(i => i.IsRemark) && ProseComparison.KeyOf(before.Section) != ProseComparison.KeyOf(place.Section))
            {
                ProseComparison.Compare(versions, before.Section, place.Section, [.. gone.Where(i => i.IsRemark)], [.. come.Where(i => i.IsRemark)]);
                gone.RemoveAll(i => i.IsRemark);
                come.RemoveAll(i => i.IsRemark);
            }
            else
            {
                ProseComparison.Compare(versions, before.Section, place.Section, [], []);
            }

            leavers.AddRange(gone.Select(item => (before, item)));
            comers.AddRange(come.Select(item => (place, item)));
            ChartComparisons.Compare(versions, before.Section, place.Section);
        }

        foreach (var place in old.Where(p => !matched.ContainsValue(p)))
        {
            Whole(versions, place, null, oldItems);
        }

        Moved(versions, leavers, comers);
    }

    /// <summary>A section and its number in the body, from 0 as the lines count it.</summary>
    private sealed record Place(Section Section, int Number, string Key);

    // The rows of a chart are told by its squares.
    private static ImmutableArray<RowItem> OutsideCharts(Place place, ILookup<int, RowItem> items)
    {
        var charts = place.Section.Blocks.OfType<FencedBlock>().Where(b => b.Info.StartsWith(FencedBlock.Chart, StringComparison.OrdinalIgnoreCase)).ToArray();
        return [.. items[place.Number].Where(item => !Array.Exists(charts, c => c.Origin.Contains(item.Origin)))];
    }

    private static Place[] Places(Compilation compilation)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        return
        [
            .. compilation.Pattern.Sections.Select((section, i) =>
            {
                var key = Words.Key(Words.Of(section.Heading));
                seen[key] = seen.GetValueOrDefault(key) + 1;
                return new Place(section, NumberOf(compilation, section, i), $"{key}#{seen[key].ToString(CultureInfo.InvariantCulture)}");
            }),
        ];
    }

    // The lines know their section by its number; which count that is, the first line of the section tells.
    private static int NumberOf(Compilation compilation, Section section, int place) =>
        section.Blocks.OfType<InstructionBlock>().Select(b => compilation.BoundLines.FirstOrDefault(l => l.Index == b.Index)?.Section).FirstOrDefault(n => n is not null) ?? -1 - place;

    private static Dictionary<Place, Place> Matched(Place[] old, Place[] now, ILookup<int, RowItem> oldItems, ILookup<int, RowItem> newItems)
    {
        var byKey = old.ToDictionary(p => p.Key, StringComparer.Ordinal);
        var matched = new Dictionary<Place, Place>();
        foreach (var place in now)
        {
            if (byKey.TryGetValue(place.Key, out var before))
            {
                matched[place] = before;
            }
        }

        // A section with another heading is the same one where at least half of its rows are.
        var free = old.Where(p => !matched.ContainsValue(p)).ToList();
        foreach (var place in now.Where(p => !matched.ContainsKey(p)))
        {
            var keys = newItems[place.Number].Select(i => i.Key).ToHashSet(StringComparer.Ordinal);
            var words = ProseComparison.KeyOf(place.Section);
            var before = free.Find(p => keys.Count > 0
                ? oldItems[p.Number].Count(i => keys.Contains(i.Key)) * 2 >= Math.Max(oldItems[p.Number].Count(), newItems[place.Number].Count()) && oldItems[p.Number].Any()
                : words.Length > 0 && ProseComparison.KeyOf(p.Section) == words);
            if (before is not null)
            {
                matched[place] = before;
                free.Remove(before);
            }
        }

        return matched;
    }

    private static void Order(Versions versions, Place[] now, Dictionary<Place, Place> matched)
    {
        var both = now.Where(matched.ContainsKey).ToArray();
        string[] was = [.. both.Select(p => matched[p]).OrderBy(p => p.Section.Origin.Start).Select(p => p.Key)];
        string[] isNow = [.. both.Select(p => matched[p].Key)];
        var kept = Alignment.Pairs(was, isNow).Select(p => p.New).ToHashSet();
        for (var i = 0; i < both.Length; i++)
        {
            if (!kept.Contains(i))
            {
                versions.Add(new Correction
                {
                    Subject = CorrectionSubject.Section,
                    Weight = both[i].Section.HasInstructions ? CorrectionWeight.AtWork : CorrectionWeight.Wording,
                    Section = both[i].Section.Heading,
                    Text = i == 0 ? "this section now comes first" : $"this section now comes after “{Words.OneLine(both[i - 1].Section.Heading)}”",
                    OldLine = versions.Old.LineOf(matched[both[i]].Section.Origin),
                    NewLine = versions.New.LineOf(both[i].Section.Origin),
                });
            }
        }
    }

    private static void Whole(Versions versions, Place? old, Place? now, ILookup<int, RowItem> items)
    {
        var place = (now ?? old)!;
        var rows = items[place.Number].Count();
        if (rows == 0 && ProseComparison.KeyOf(place.Section).Length == 0)
        {
            return;
        }

        var text = now is null ? "this section is gone" : "this section is new";
        versions.Add(new Correction
        {
            Subject = CorrectionSubject.Section,
            Weight = rows > 0 ? CorrectionWeight.AtWork : CorrectionWeight.Wording,
            Section = place.Section.Heading,
            Text = rows == 0 ? text : $"{text} ({rows.ToString(CultureInfo.InvariantCulture)} {(rows == 1 ? "line" : "lines")} of instructions)",
            OldLine = old is null ? null : versions.Old.LineOf(old.Section.Origin),
            NewLine = now is null ? null : versions.New.LineOf(now.Section.Origin),
        });
    }

    private static void Rows(Versions versions, Place place, ImmutableArray<RowItem> old, ImmutableArray<RowItem> now, Action<RowItem> gone, Action<RowItem> come)
    {
        var pairs = Aligned(old, now);
        var (leaves, comes) = (Enumerable.Range(0, old.Length).ToHashSet(), Enumerable.Range(0, now.Length).ToHashSet());
        var renumbered = new List<(RowItem Old, RowItem New)>();
        foreach (var (i, j) in pairs)
        {
            leaves.Remove(i);
            comes.Remove(j);
            RowDifference.Tell(versions, place.Section.Heading, old[i], now[j]);
            if (old[i].LabelKey != now[j].LabelKey && old[i].LabelKey.Length > 0 && now[j].LabelKey.Length > 0 && old[i].Row.IsRound == now[j].Row.IsRound && old[i].Row.Numbers.Length == now[j].Row.Numbers.Length)
            {
                renumbered.Add((old[i], now[j]));
            }
        }

        foreach (var i in leaves.Order())
        {
            gone(old[i]);
        }

        foreach (var j in comes.Order())
        {
            come(now[j]);
        }

        if (renumbered.Count > 0)
        {
            var (was, isNow) = renumbered[0];
            versions.Add(RowDifference.At(versions, place.Section.Heading, was, isNow, CorrectionWeight.Wording, renumbered.Count == 1
                ? $"this was {was.Label}"
                : $"this was {was.Label}, and {(renumbered.Count - 1).ToString(CultureInfo.InvariantCulture)} more {(renumbered.Count == 2 ? "row has another number" : "rows have other numbers")}"));
        }
    }

    /// <summary>The rows of both versions that are the same ones: alike in label and meaning, then in meaning, then in label; of what is left between them, line by line where none has a label.</summary>
    private static List<(int Old, int New)> Aligned(ImmutableArray<RowItem> old, ImmutableArray<RowItem> now)
    {
        var pairs = Within(Alignment.Pairs([.. old.Select(i => (string?)$"{i.LabelKey}\n{i.Key}")], [.. now.Select(i => (string?)$"{i.LabelKey}\n{i.Key}")]), i => i.Key);

        // Where rows were put in, those behind them have other numbers: the numbers then matter less than what is worked.
        var byMeaning = Alignment.Pairs([.. old.Select(i => (string?)i.Key)], [.. now.Select(i => (string?)i.Key)]);
        pairs = byMeaning.Count > pairs.Count ? byMeaning : pairs;
        pairs = Within(pairs, i => i.LabelKey.Length > 0 ? i.LabelKey : null);
        foreach (var (a, b) in Alignment.Gaps(pairs, old.Length, now.Length).ToArray())
        {
            var (from, to) = (a.GetOffsetAndLength(old.Length), b.GetOffsetAndLength(now.Length));
            if (from.Length == to.Length)
            {
                pairs.AddRange(Enumerable.Range(0, from.Length).Select(i => (from.Offset + i, to.Offset + i)).Where(p => old[p.Item1].LabelKey == now[p.Item2].LabelKey));
            }
        }

        pairs.Sort();
        AddNumbered(pairs, old, now);

        pairs.Sort();
        return pairs;

        List<(int, int)> Within(List<(int Old, int New)> found, Func<RowItem, string?> by)
        {
            var more = new List<(int, int)>(found);
            foreach (var (a, b) in Alignment.Gaps(found, old.Length, now.Length))
            {
                var (from, to) = (a.GetOffsetAndLength(old.Length), b.GetOffsetAndLength(now.Length));
                if (from.Length > 0 && to.Length > 0)
                {
                    more.AddRange(Alignment.Pairs([.. old.Skip(from.Offset).Take(from.Length).Select(by)], [.. now.Skip(to.Offset).Take(to.Length).Select(by)]).Select(p => (from.Offset + p.Old, to.Offset + p.New)));
                }
            }

            more.Sort();
            return more;
        }
    }

    /// <summary>Rows that changed and got other numbers as well: "Rnds 1-12" is "Rnds 1-14" now, and "Rnd 5" behind a round that was put in is "Rnd 6".</summary>
    private static void AddNumbered(List<(int Old, int New)> pairs, ImmutableArray<RowItem> old, ImmutableArray<RowItem> now)
    {
        var (isOld, isNow) = (pairs.Select(p => p.Old).ToHashSet(), pairs.Select(p => p.New).ToHashSet());
        var known = pairs.ToDictionary(p => p.Old, p => p.New);
        var (shift, behind) = (0, 0);
        for (var i = 0; i < old.Length; i++)
        {
            if (known.TryGetValue(i, out var j))
            {
                behind = j + 1;
                shift = First(old[i]) is { } was && First(now[j]) is { } fresh ? fresh - was : shift;
                continue;
            }

            if (isOld.Contains(i) || First(old[i]) is not { } number)
            {
                continue;
            }

            for (var to = behind; to < now.Length && !isNow.Contains(to); to++)
            {
                if (First(now[to]) == number + shift && now[to].Row.IsRound == old[i].Row.IsRound)
                {
                    pairs.Add((i, to));
                    isNow.Add(to);
                    behind = to + 1;
                    break;
                }
            }
        }

        static int? First(RowItem item) => item.Row.Numbers.IsDefaultOrEmpty ? null : item.Row.Numbers[0];
    }

    /// <summary>Rows that are gone from one place and have come at another have moved; the others are gone, or new.</summary>
    private static void Moved(Versions versions, List<(Place Section, RowItem Item)> gone, List<(Place Section, RowItem Item)> come)
    {
        foreach (var (section, item) in come)
        {
            var from = gone.FindIndex(g => g.Item.Key == item.Key && g.Item.LabelKey == item.LabelKey);
            if (from >= 0)
            {
                var old = gone[from];
                gone.RemoveAt(from);
                versions.Add(RowDifference.At(versions, section.Section.Heading, old.Item, item, CorrectionWeight.AtWork, old.Section.Key == section.Key ? "this line has moved" : $"this line has moved here from “{Words.OneLine(old.Section.Section.Heading)}”") with { Now = item.Text });
            }
            else
            {
                versions.Add(RowDifference.At(versions, section.Section.Heading, null, item, CorrectionWeight.AtWork, item.Label.Length > 0 ? "this row is new" : "this line is new") with { Now = item.Text });
            }
        }

        foreach (var (section, item) in gone)
        {
            versions.Add(RowDifference.At(versions, section.Section.Heading, item, null, CorrectionWeight.AtWork, item.Label.Length > 0 ? "this row is gone" : "this line is gone") with { Was = item.Text });
        }
    }
}
