using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Compares a count told by sections with the stitches between the markers.</summary>
internal static class SectionMessages
{
    /// <summary>Reports a claim whose whole is right and whose sections are not, or do not add up to it.</summary>
    public static void Report(Claim claim, int[] active, SizeState[] states, SizeSet sizes, FindingBag bag)
    {
        var wrong = new List<(int Size, int[] Said, int[]? There)>();
        foreach (var size in active)
        {
            if (claim.Values[size] is not { } whole || claim.Sections.Any(s => s[size] is null))
            {
                continue;
            }

            int[] said = [.. claim.Sections.Select(s => s[size]!.Value)];
            if (said.Sum(n => (long)n) != whole)
            {
                wrong.Add((size, said, null));
            }
            else if (states[size] is { IsKnown: true } state && state.Count == whole && Other(said, [.. state.Live.Sections.Select(s => s.Stitches)]) is { } there)
            {
                wrong.Add((size, said, there));
            }
        }

        if (wrong is not [var first, ..])
        {
            return;
        }

        var inSize = sizes.Describe([.. wrong.Select(w => w.Size)]) is { Length: > 0 } words ? $" in {words}" : "";
        var message = first.There is { } between
            ? $"the sections are stated as {List(first.Said)}{inSize}, but between the markers there are {List(between)}"
            : $"the sections add up to {first.Said.Sum(n => (long)n)}{inSize}, but the whole is stated as {claim.Values[first.Size]}";
        bag.Add(new Finding(WorkRules.SectionsDiffer, bag.Source, claim.Origin, message)
        {
            Sizes = wrong.Count == sizes.Count ? [] : [.. wrong.Select(w => w.Size)],
            Help = first.There is null ? "check the sections and the whole" : "check the numbers stated, and on which side of its marker each stitch is added or taken away",
        });
    }

    /// <summary>What lies between the markers where there are as many sections as said and not the same; null where they agree or cannot be matched. The row may begin within a section.</summary>
    private static int[]? Other(int[] said, int[] there)
    {
        int[][] ways = there.Length > 2 ? [[.. there.Where(n => n > 0)], [there[0] + there[^1], .. there[1..^1].Where(n => n > 0)]] : [[.. there.Where(n => n > 0)]];
        int[][] fit = [.. ways.Where(w => w.Length == said.Length)];
        return fit.Length == 0 || fit.Any(w => w.Order().SequenceEqual(said.Order())) ? null : fit[0];
    }

    private static string List(int[] counts) => string.Join(", ", counts.Select(n => n.ToString(CultureInfo.InvariantCulture)));
}
