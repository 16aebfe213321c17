using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>Puts the running list of corrections in order, version by version.</summary>
internal static class CorrectionsBuilder
{
    /// <summary>The versions, the newest first.</summary>
    public static ImmutableArray<CorrectionsView> Build(ImmutableArray<ReleasedCorrection> corrections)
    {
        var groups = new List<(ReleasedCorrection First, List<FactView> Items)>();
        foreach (var entry in corrections)
        {
            var item = new FactView { Name = Wording.Capital(entry.Place), Value = Wording.Said(entry.Text) ?? "" };
            if (item.Name.Length + item.Value.Length == 0)
            {
                continue;
            }

            if (groups.Count > 0 && groups[^1].First.Version?.Value == entry.Version?.Value && groups[^1].First.Date?.Value == entry.Date?.Value)
            {
                groups[^1].Items.Add(item);
            }
            else
            {
                groups.Add((entry, [item]));
            }
        }

        if (groups.Count > 1 && IsOlder(groups[0].First, groups[^1].First))
        {
            groups.Reverse();
        }

        return [.. groups.Select(g => new CorrectionsView { Heading = Wording.Edition(g.First.Version?.Value, g.First.Date?.Value) ?? "", Items = [.. g.Items] })];
    }

    private static bool IsOlder(ReleasedCorrection first, ReleasedCorrection last) =>
        ReleasedCorrection.CompareVersions(first.Version?.Value, last.Version?.Value) is { } versions && versions != 0 ? versions < 0
        : ReleasedCorrection.DayOf(first.Date?.Value) is { } a && ReleasedCorrection.DayOf(last.Date?.Value) is { } b && a < b;
}
