using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Finds long strands on the back of rows worked in several colours.</summary>
public static class FloatCheck
{
    /// <summary>PF324.</summary>
    public static Rule Rule { get; } = new(
        "PF324", "long-float", Area.Counts, Severity.Note,
        "A yarn is carried over many stitches on the back.",
        "A long strand catches on fingers and buttons and draws the fabric in. Makers twist the yarns behind the work where it is longer than about five stitches; the pattern says so, or the motif is broken up. `tolerances` in the project file set another length.")
    {
        Bad = """
            ---
            title: Harbour cowl
            yarn:
              - {label: A, name: Quayside Wool}
              - {label: B, name: Quayside Wool}
            ---

            ## Cowl

            CO 20 sts with A. Join to work in the round.

            Rnd 1: *K9 A, k1 B; rep from * around.
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            """,
        Good = """
            ---
            title: Harbour cowl
            yarn:
              - {label: A, name: Quayside Wool}
              - {label: B, name: Quayside Wool}
            ---

            ## Cowl

            CO 20 sts with A. Join to work in the round.

            Rnd 1: *K4 A, k1 B; rep from * around.
            """,
        Sources = [Sources.CommonPractice],
    };

    /// <summary>Reports rows with a strand over more stitches than the studio allows, with the sizes in which it is that long.</summary>
    internal static void Report(ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, FabricWorker fabrics, SizeSet sizes, int longest, FindingBag bag)
    {
        foreach (var line in lines)
        {
            foreach (var row in line.Rows)
            {
                if (Colours(row.Steps).Take(2).Count() == 2)
                {
                    Report(row, worked[line.Index], fabrics, sizes, longest, bag);
                }
            }
        }
    }

    private static IEnumerable<string> Colours(ImmutableArray<Step> steps) => steps
        .SelectMany(s => s switch
        {
            GroupStep group => Colours(group.Body),
            RepeatStep repeat => Colours(repeat.Body).Concat(Colours(repeat.Ending)),
            _ => s.Colour is { } colour ? [colour] : Array.Empty<string>(),
        })
        .Distinct(StringComparer.Ordinal);

    private static void Report(BoundRow row, WorkedLine line, FabricWorker fabrics, SizeSet sizes, int longest, FindingBag bag)
    {
        var found = new List<(int Size, string Colour, int Over)>();
        for (var size = 0; size < line.Before.Length; size++)
        {
            if (line.Before[size] is { } stitches && fabrics.One(row, stitches, size) is var (made, isRound) && Longest(made, isRound) is { } strand && strand.Over > longest)
            {
                found.Add((size, strand.Colour, strand.Over));
            }
        }

        if (found.Count > 0)
        {
            var (_, colour, over) = found.MaxBy(f => f.Over);
            bag.Add(new Finding(Rule, bag.Source, row.Origin, string.Create(CultureInfo.InvariantCulture, $"{colour} is carried over {over} stitches on the back; more than {longest} make a long strand"))
            {
                Sizes = found.Count == sizes.Count ? [] : [.. found.Select(f => f.Size)],
                Help = "tell makers to twist the yarns behind the work every few stitches, or break up the motif",
            });
        }
    }

    /// <summary>The longest stretch over which a yarn of the row is not worked, between two stitches that are; in rounds across its beginning too.</summary>
    private static (string Colour, int Over)? Longest(FabricRow row, bool isRound)
    {
        (string Colour, int Over)? longest = null;
        foreach (var colour in row.Colours.OfType<string>().Distinct(StringComparer.Ordinal))
        {
            int[] at = [.. Enumerable.Range(0, row.Colours.Length).Where(i => row.Colours[i] == colour)];
            for (var i = 0; i < at.Length; i++)
            {
                if (i + 1 < at.Length || isRound)
                {
                    var over = i + 1 < at.Length ? at[i + 1] - at[i] - 1 : row.Colours.Length - at[i] + at[0] - 1;
                    longest = over > (longest?.Over ?? 0) ? (colour, over) : longest;
                }
            }
        }

        return longest;
    }
}
