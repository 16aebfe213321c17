using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

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
    private static readonly string[] Changes = ["to", "join", "attach", "joining"];
    private static readonly string[] Ends = ["off", "cut", "break", "drop", "cutting", "breaking", "dropping"];

    /// <summary>How a row speaks of a yarn.</summary>
    private enum Way
    {
        /// <summary>It is worked with it.</summary>
        Works,

        /// <summary>It takes it up, for what follows.</summary>
        Changes,

        /// <summary>It leaves it.</summary>
        Ends,
    }

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

    /// <summary>The yarns of a row that a line works: its own, else, for a row of a stitch pattern, those of the line.</summary>
    public static Func<BoundRow, BoundRow, YarnsOfRow> Of(PatternFacts facts, ImmutableArray<BoundLine> lines, SourceText source)
    {
        var hands = new YarnsInHand(facts, source);
        if (facts.Yarns.Length > 1)
        {
            foreach (var line in lines)
            {
                foreach (var row in line.Rows)
                {
                    hands.Row(row, line.Pattern is not null);
                }
            }
        }

        return (row, caller) => hands._rows.GetValueOrDefault(row) ?? hands._rows.GetValueOrDefault(caller) ?? hands._unknown;
    }

    /// <summary>The yarn of a label; -1 for none.</summary>
    public int IndexOf(string label) => Array.IndexOf(_labels, label);

    private void Row(BoundRow row, bool isOfPattern)
    {
        var text = row.Origin.Length == 0 || row.Origin.End > _source.Text.Length ? "" : _source.Slice(row.Origin).ToString();
        var named = Named(text);
        int[] colours = [.. Colours(row.Steps).Distinct(StringComparer.Ordinal).Select(IndexOf).Where(i => i >= 0).Order()];
        if (colours.Length > 1)
        {
            _rows[row] = new([.. colours], false, true) { HasColours = true };
            _now = isOfPattern || colours.Intersect(_now.Yarns).Any() ? _now : One(named.Count > 0 ? named[^1].Yarn : colours[^1]);
            return;
        }

        if (isOfPattern)
        {
            if (colours.Length == 1 || named.Count == 1)
            {
                _rows[row] = One(colours.Length == 1 ? colours[0] : named[0].Yarn);
            }

            return;
        }

        if (named.Select(n => n.Yarn).Distinct().Count() > 1 && Array.Exists(Held, h => text.Contains(h, StringComparison.OrdinalIgnoreCase)))
        {
            _rows[row] = _now = new([.. named.Select(n => n.Yarn).Distinct().Order()], IsTogether: true, IsKnown: true);
            return;
        }

        // "Sc to end, changing to B": the row is worked with the yarn before; "Change to B. K 4 rows" with the new one; "Fasten off A" leaves the row as it is.
        var first = row.Steps.FirstOrDefault(s => s is not (RemarkStep or SentenceStep));
        var begins = first is null ? int.MaxValue : first.Origin.End - row.Origin.Start;
        var used = new List<int>();
        var now = _now;
        for (var i = 0; i < named.Count; i++)
        {
            var (yarn, at, way) = named[i];
            if (way == Way.Ends)
            {
                now = now.Yarns is [var last] && last == yarn && _labels.Length == 2 ? One(1 - yarn) : now;
                continue;
            }

            if (at >= begins && used.Count == 0)
            {
                used.AddRange(_now.Yarns); // something was worked before the yarn was named
                used = way == Way.Changes || !_now.IsKnown ? used : [];
            }

            if (way != Way.Changes || at < begins || i < named.Count - 1)
            {
                used.Add(yarn);
            }

            now = One(yarn);
        }

        int[] all = [.. used.Distinct().Order()];
        _rows[row] = all.Length switch { 0 => _now, 1 => One(all[0]), _ => new([.. all], false, false) };
        _now = now;
    }

    private static YarnsOfRow One(int yarn) => new([yarn], IsTogether: true, IsKnown: true);

    /// <summary>The yarns that a text names, in order.</summary>
    private List<(int Yarn, int At, Way Way)> Named(string text)
    {
        var named = new List<(int Yarn, int At, Way Way)>();
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
                    named.Add((yarn, at, Changes.Contains(before, StringComparer.OrdinalIgnoreCase) ? Way.Changes : Ends.Contains(before, StringComparer.OrdinalIgnoreCase) ? Way.Ends : Way.Works));
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
