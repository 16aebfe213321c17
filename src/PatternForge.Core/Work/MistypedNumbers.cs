using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>
/// Finds a row number that is a slip of the keys: 1, 2, 33, 4. The rows on both sides show which it should be, so one finding says so, and the row is worked,
/// referred to and counted under the number that is due.
/// </summary>
internal static class MistypedNumbers
{
    /// <summary>The lines with such numbers put right.</summary>
    public static ImmutableArray<BoundLine> Mend(ImmutableArray<BoundLine> lines, FindingBag bag)
    {
        ImmutableArray<BoundLine>.Builder? mended = null;
        (int Line, int Row)? first = null; // the last two rows, where each is a plain numbered one
        (int Line, int Row)? second = null;
        for (var line = 0; line < lines.Length; line++)
        {
            var bound = lines[line];
            if (line > 0 && bound.Section != lines[line - 1].Section)
            {
                (first, second) = (null, null);
            }

            for (var row = 0; row < bound.Rows.Length; row++)
            {
                var here = bound.Rows[row];
                if (here.StartsPart)
                {
                    (first, second) = (null, null);
                }

                if (here.Numbers.IsEmpty && here.Side is null && !here.IsLabelled && !here.Steps.Any(s => s is RowsStep or RepeatRowsStep))
                {
                    continue; // words between the rows
                }

                if (first is { } a && second is { } b && IsPlain(here) && Last(lines[a.Line].Rows[a.Row]) is { } before && here.Numbers[0] == before + 2)
                {
                    var wrong = lines[b.Line].Rows[b.Row];
                    if (wrong.Numbers[0] != before + 1)
                    {
                        Tell(wrong, before, here.Numbers[0], bag);
                        mended ??= lines.ToBuilder();
                        mended[b.Line] = mended[b.Line] with { Rows = mended[b.Line].Rows.SetItem(b.Row, wrong with { Numbers = [before + 1] }) };
                    }
                }

                (first, second) = (IsPlain(here) && here.Numbers.Length == 1 ? second : null, Last(here) is null ? null : (line, row));
                first = second is null ? null : first;
            }
        }

        return mended?.ToImmutable() ?? lines;
    }

    private static bool IsPlain(BoundRow row) => row is { Numbers.Length: > 0, IsRule: false, SpeaksForOthers: false, Count: null, Sizes.IsEmpty: true };

    private static int? Last(BoundRow row) => IsPlain(row) ? row.Numbers[^1] : null;

    private static void Tell(BoundRow wrong, int before, int after, FindingBag bag)
    {
        var said = wrong.Numbers[0];
        var word = wrong.IsRound == true ? "round" : "row";
        var figures = said.ToString(CultureInfo.InvariantCulture);
        var label = bag.Source.ToString(wrong.LabelOrigin);
        var at = label.IndexOf(figures, StringComparison.Ordinal);
        var rule = said > before ? WorkRules.NumberSkipped : WorkRules.NumberRepeated;
        bag.Add(new Finding(rule, bag.Source, wrong.LabelOrigin, $"{word} {said} stands where {word} {before + 1} is due: between {word}s {before} and {after}")
        {
            Help = $"correct the number to {before + 1}; it was worked as {word} {before + 1}",
            Fix = at >= 0 && label.IndexOf(figures, at + 1, StringComparison.Ordinal) < 0
                ? new Fix($"Number it {before + 1}", [new Edit(new TextSpan(wrong.LabelOrigin.Start + at, figures.Length), (before + 1).ToString(CultureInfo.InvariantCulture))])
                : null,
        });
    }
}
