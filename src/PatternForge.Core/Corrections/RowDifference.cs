using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Corrections;

/// <summary>Tells what is different in a row that both versions have.</summary>
internal static class RowDifference
{
    private const int LongestThing = 48;

    /// <summary>Adds what is different; nothing where both mean the same.</summary>
    public static void Tell(Versions versions, string section, RowItem old, RowItem now)
    {
        var (oldSizes, newSizes) = (versions.Old.Pattern.Facts.Sizes.Count, versions.New.Pattern.Facts.Sizes.Count);
        var said = new string?[versions.Sizes.Length];
        var counted = new string?[versions.Sizes.Length];
        var wordsAlone = false;
        var stated = false;
        var isInOtherTerms = versions.InNewTerms(old.Text) is var told && told != old.Text && Words.Key(Words.Of(told)) == Words.Key(Words.Of(now.Text));
        for (var i = 0; i < versions.Sizes.Length; i++)
        {
            var size = versions.Sizes[i];
            var differs = !SameSteps(old, now, i) && !(isInOtherTerms && (old.Rows[i], old.Before[i], old.After[i]) == (now.Rows[i], now.Before[i], now.After[i]));
            var (was, isNow) = (old.StatedIn(size.Old, i), now.StatedIn(size.New, i));
            if (differs)
            {
                said[i] = Said(versions, old, now, i, size, oldSizes, newSizes);
            }
            else if (was != isNow && was.Length > 0 && isNow.Length > 0)
            {
                counted[i] = Told(was) is { } a && Told(isNow) is { } b ? $"{Stitches(b)}, not {a}" : $"the counts are {Plain(isNow)}, not {Plain(was)}";
            }
            else if (was != isNow)
            {
                stated = true;
            }
        }

        if (old.Row.Side is { } side && now.Row.Side is { } other && side != other && old.Label.Length > 0)
        {
            versions.Add(At(versions, section, old, now, CorrectionWeight.AtWork, $"worked on the {(other == FabricSide.Right ? "right" : "wrong")} side, not on the {(side == FabricSide.Right ? "right" : "wrong")} side"));
        }

        if (old.Row.IsRound is { } round && now.Row.IsRound is { } flat && round != flat && old.Label.Length > 0)
        {
            versions.Add(At(versions, section, old, now, CorrectionWeight.AtWork, flat ? "a round, not a row" : "a row, not a round"));
        }

        versions.AddBySize(said, () => Whole(versions, old, now), text => At(versions, section, old, now, CorrectionWeight.AtWork, text) with { Was = Beside(old, now), Now = Beside(now, old), Why = WhyOf(versions.Old, old) }, sizes => After(old, now, sizes));
        versions.AddBySize(
            counted,
            () => "the counts told at its end are other ones",
            text => At(versions, section, old, now, CorrectionWeight.AtWork, text) with { Was = old.Text, Now = now.Text, Why = WhyOf(versions.Old, old) ?? (Comes(versions, old, now) ? "it is worked as before: the count follows from the rows before it" : "the stitches are worked as before: only the count told was another one") });
        if (Array.TrueForAll(said, s => s is null) && Array.TrueForAll(counted, c => c is null))
        {
            wordsAlone = old.Wording != now.Wording && old.Keys.SequenceEqual(now.Keys) && !isInOtherTerms;
            if (stated || wordsAlone)
            {
                var isNew = Enumerable.Range(0, versions.Sizes.Length).Any(i => now.StatedIn(versions.Sizes[i].New, i).Length > 0);
                versions.Add(At(versions, section, old, now, CorrectionWeight.Wording, wordsAlone ? "told in other words" : isNew ? "the count is told as well" : "the count is no longer told") with { Was = old.Text, Now = now.Text });
            }
        }
    }

    // What both say in the same words, its label aside, is not told twice.
    private static string? Beside(RowItem item, RowItem other) => item.Text == other.Text ? null : item.Text;

    // The row comes after other rows than before: its count is another one for that reason.
    private static bool Comes(Versions versions, RowItem old, RowItem now) =>
        Enumerable.Range(0, versions.Sizes.Length).All(i => old.After[i] is null || now.After[i] is null || old.Before[i] != now.Before[i] || old.After[i] == now.After[i])
        && Enumerable.Range(0, versions.Sizes.Length).Any(i => old.Before[i] is { } was && now.Before[i] is { } isNow && was != isNow);

    /// <summary>True where both ask for the same stitches of a size, however they say it.</summary>
    public static bool SameSteps(RowItem old, RowItem now, int place)
    {
        if (old.Keys[place] == now.Keys[place])
        {
            return true;
        }

        return old.Rows[place] == now.Rows[place] && old.Keys[place] != "-" && now.Keys[place] != "-"
            && (old.Before[place] == now.Before[place])
            && StepToken.Unrolled(old.Steps[place], old.Before[place]) is { Length: > 0 } a && a == StepToken.Unrolled(now.Steps[place], now.Before[place]);
    }

    /// <summary>A difference of a row at its places in both files.</summary>
    public static Correction At(Versions versions, string section, RowItem? old, RowItem? now, CorrectionWeight weight, string text) => new()
    {
        Subject = CorrectionSubject.Row,
        Weight = weight,
        Section = section,
        Label = (now ?? old)!.Label,
        Text = text,
        OldLine = old is null ? null : versions.Old.LineOf(old.Origin),
        NewLine = now is null ? null : versions.New.LineOf(now.Origin),
    };

    private static string Said(Versions versions, RowItem old, RowItem now, int place, SharedSize size, int oldSizes, int newSizes)
    {
        if (old.Keys[place] == "-")
        {
            return "worked in this size as well";
        }

        if (now.Keys[place] == "-")
        {
            return "not worked in this size";
        }

        var parts = new List<string>();
        if (old.Rows[place] != now.Rows[place])
        {
            parts.Add($"{Number(now.Rows[place])} {(now.Row.IsRound == true ? "rounds" : "rows")}, not {Number(old.Rows[place])}");
        }

        var (before, after, oldBefore, oldAfter) = (now.Before[place], now.After[place], old.Before[place], old.After[place]);
        var hasChange = before > 0 && oldBefore > 0 && after - before is { } change && oldAfter - oldBefore is { } oldChange && change != oldChange;
        if (hasChange)
        {
            parts.Add(ChangeOf(after!.Value - before!.Value, oldAfter!.Value - oldBefore!.Value));
        }

        if (OneStep(old.Steps[place], now.Steps[place]) is { } step)
        {
            parts.Add(step);
        }
        else if (parts.Count == 0 && Words.NumbersOnly(Words.Of(versions.Old.Text.Text, old.Origin, size.Old, oldSizes), Words.Of(versions.New.Text.Text, now.Origin, size.New, newSizes)) is { } numbers && !hasChange)
        {
            parts.Add(numbers);
        }

        if (parts.Count == 0)
        {
            parts.Add(old.Row.HasUnread || now.Row.HasUnread ? "other words, which were not understood" : "worked otherwise");
        }

        return string.Join("; ", parts);
    }

    // "decrease 6 stitches, not 4"
    private static string ChangeOf(int now, int old) => now == 0 ? $"the count stays (was: {Verb(old)} {Number(Math.Abs(old))})"
        : old == 0 ? $"{Verb(now)} {Stitches(Number(Math.Abs(now)))} (was: no change)"
        : Math.Sign(now) == Math.Sign(old) ? $"{Verb(now)} {Stitches(Number(Math.Abs(now)))}, not {Number(Math.Abs(old))}"
        : $"{Verb(now)} {Stitches(Number(Math.Abs(now)))}, where it was to {Verb(old)} {Number(Math.Abs(old))}";

    private static string Verb(int change) => change < 0 ? "decrease" : "increase";

    /// <summary>"k12, not k10" where one step alone is another; null otherwise.</summary>
    private static string? OneStep(ImmutableArray<StepToken> old, ImmutableArray<StepToken> now)
    {
        if (old.Length != now.Length)
        {
            return null;
        }

        var at = -1;
        for (var i = 0; i < old.Length; i++)
        {
            if (old[i].Key == now[i].Key)
            {
                continue;
            }

            if (at >= 0)
            {
                return null;
            }

            at = i;
        }

        if (at < 0)
        {
            return null;
        }

        var (a, b) = (old[at], now[at]);
        if (!a.Body.IsEmpty && !b.Body.IsEmpty)
        {
            return a.Thing == b.Thing && a.Left is null && b.Left is null ? $"work the repeat {Times(b.Times)}, not {Number(a.Times)}"
                : a.Left == b.Left && a.Times == b.Times && OneStep(a.Body, b.Body) is { } inner ? $"in the repeat {inner}"
                : null;
        }

        return a.Words.Length > LongestThing || b.Words.Length > LongestThing || a.Words == b.Words || a.Unit.Contains(':', StringComparison.Ordinal) ? null : $"{b.Words}, not {a.Words}";
    }

    private static string Whole(Versions versions, RowItem old, RowItem now)
    {
        var changed = Enumerable.Range(0, versions.Sizes.Length).Where(i => !SameSteps(old, now, i)).ToArray();
        return string.Join("; ", new[] { "other numbers", After(old, now, changed) }.OfType<string>());
    }

    // "73 (81, 89) stitches (was 74 (82, 90))", where the row itself leads to it.
    private static string? After(RowItem old, RowItem now, int[] places)
    {
        if (Array.Exists(places, i => old.After[i] is null || now.After[i] is null || old.Before[i] is null or 0 || now.Before[i] is null or 0)
            || Array.TrueForAll(places, i => now.After[i] - now.Before[i] == old.After[i] - old.Before[i] || now.After[i] == old.After[i]))
        {
            return null;
        }

        var isNow = Versions.List([.. places.Select(i => Number(now.After[i]!.Value))]);
        return $"{Stitches(isNow)} (was {Versions.List([.. places.Select(i => Number(old.After[i]!.Value))])})";
    }

    /// <summary>What was wrong with the row as it was.</summary>
    private static string? WhyOf(Compilation compilation, RowItem item)
    {
        var place = compilation.Text.ToSource(item.Line.Origin);
        return compilation.Findings.FirstOrDefault(f => f is { Severity: Severity.Error, Accepted: null } && place.Contains(f.Span)) is { } error ? $"as it was, {error.Message}" : null;
    }

    private static string? Told(string stated) => stated.Length > 0 && stated.All(char.IsAsciiDigit) ? stated : null;

    private static string Plain(string stated) => stated.Replace("Total ", "", StringComparison.Ordinal).Replace("Change ", "change ", StringComparison.Ordinal).Trim();

    private static string Stitches(string number) => number == "1" ? "1 stitch" : $"{number} stitches";

    private static string Times(int times) => times == 1 ? "once" : times == 2 ? "twice" : $"{Number(times)} times";

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
