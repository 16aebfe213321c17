using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Core.Yarns;

/// <summary>Which yarns a row is worked with, by their places in the header.</summary>
/// <param name="Yarns">The yarns.</param>
/// <param name="IsTogether">True where they are held together, so that every stitch takes all of them; false where they share the stitches.</param>
/// <param name="IsKnown">False where the rows do not say which yarn it is.</param>
internal sealed record YarnsOfRow(ImmutableArray<int> Yarns, bool IsTogether, bool IsKnown)
{
    /// <summary>True where the shares are those of the stitches as they are told, stitch by stitch.</summary>
    public bool HasColours { get; init; }
}

/// <summary>Finds out which yarn each row is worked with: by the letters of the header's yarns, where the rows name them, and else by the row before.</summary>
internal sealed class YarnsInHand
{
    private static readonly string[] Held = ["held together", "held double", "hold together", "strands together", "yarns together", "together with"];
    private static readonly string[] Changes = ["to", "join", "attach"];

    private readonly SourceText _source;
    private readonly string[] _labels;
    private readonly Dictionary<BoundRow, YarnsOfRow> _rows = new(ReferenceEqualityComparer.Instance);
    private readonly YarnsOfRow _unknown;
    private YarnsOfRow _now;

    private YarnsInHand(PatternFacts facts, SourceText source)
    {
        _source = source;
        _labels = [.. facts.Yarns.Select(y => y.Label ?? "")];
        _unknown = new([.. Enumerable.Range(0, facts.Yarns.Length)], IsTogether: true, IsKnown: facts.Yarns.Length == 1);
        _now = _unknown;
    }

    /// <summary>The yarns of every row.</summary>
    public static Func<BoundRow, YarnsOfRow> Of(PatternFacts facts, ImmutableArray<BoundLine> lines, SourceText source)
    {
        var hands = new YarnsInHand(facts, source);
        if (facts.Yarns.Length > 1)
        {
            foreach (var row in lines.SelectMany(l => l.Rows))
            {
                hands.Row(row);
            }
        }

        return row => hands._rows.GetValueOrDefault(row, hands._unknown);
    }

    /// <summary>The yarn of a label; -1 for none.</summary>
    public int IndexOf(string label) => Array.IndexOf(_labels, label);

    private void Row(BoundRow row)
    {
        var text = row.Origin.Length == 0 || row.Origin.End > _source.Text.Length ? "" : _source.Slice(row.Origin).ToString();
        var named = Named(text);
        int[] colours = [.. Colours(row.Steps).Distinct().Select(IndexOf).Where(i => i >= 0)];
        if (named.Count > 1 && Array.Exists(Held, h => text.Contains(h, StringComparison.OrdinalIgnoreCase)))
        {
            _now = new([.. named.Select(n => n.Yarn).Distinct().Order()], IsTogether: true, IsKnown: true);
            _rows[row] = _now;
            return;
        }

        if (named.Count == 0)
        {
            _rows[row] = _now;
            return;
        }

        // "Sc to end, changing to B": the row is worked with the yarn before; "Change to B. K 4 rows" with the new one.
        var first = row.Steps.FirstOrDefault(s => s is not (RemarkStep or SentenceStep));
        var begins = first is null ? int.MaxValue : first.Origin.End - row.Origin.Start;
        var isLater = named[0].At >= begins && named[0].IsChange;
        int[] used = [.. named.Where((n, i) => !(n.IsChange && n.At >= begins && i == named.Count - 1)).Select(n => n.Yarn).Concat(isLater ? _now.Yarns : []).Distinct().Order()];
        _rows[row] = used.Length == 0 ? _now
            : used.Length == 1 ? new([used[0]], true, true)
            : colours.Length > 1 ? new([.. used], false, true) { HasColours = true }
            : new([.. used], false, isLater && used.Length == 1);
        _now = new([named[^1].Yarn], true, true);
    }

    /// <summary>The yarns that a text names, in order.</summary>
    private List<(int Yarn, int At, bool IsChange)> Named(string text)
    {
        var named = new List<(int Yarn, int At, bool IsChange)>();
        for (var at = 0; at < text.Length; at++)
        {
            if (!char.IsLetterOrDigit(text[at]) || (at > 0 && char.IsLetter(text[at - 1])))
            {
                continue;
            }

            for (var yarn = 0; yarn < _labels.Length; yarn++)
            {
                var label = _labels[yarn];
                var end = at + label.Length;
                if (label.Length > 0 && text.AsSpan(at).StartsWith(label, StringComparison.Ordinal) && (end == text.Length || !char.IsLetterOrDigit(text[end])))
                {
                    var before = text[..at].TrimEnd().Split(' ')[^1];
                    named.Add((yarn, at, Changes.Contains(before, StringComparer.OrdinalIgnoreCase)));
                    break;
                }
            }
        }

        return named;
    }

    /// <summary>The letters of the yarns that steps are marked with.</summary>
    public static IEnumerable<string> Colours(ImmutableArray<Step> steps)
    {
        foreach (var step in steps)
        {
            if (step.Colour is { } colour)
            {
                yield return colour;
            }

            var inner = step switch
            {
                GroupStep group => Colours(group.Body),
                RepeatStep repeat => Colours(repeat.Body).Concat(Colours(repeat.Ending)),
                _ => [],
            };
            foreach (var one in inner)
            {
                yield return one;
            }
        }
    }
}
