using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Finds the stripes of a pattern whose yarn changes with its rows, and how its stitches are shared out among its yarns.</summary>
public sealed class StripeMaker
{
    /// <summary>The most stripes that are drawn.</summary>
    public const int MostStripes = 80;

    // So many stripes make a sequence that is worth a drawing; fewer are a border or a blocked colour.
    private const int FewestStripes = 3;

    // So many drawings at most where the sizes differ.
    private const int MostDrawings = 3;

    private readonly Pattern _pattern;
    private readonly ImmutableArray<BoundLine> _lines;
    private readonly ImmutableArray<WorkedLine> _worked;
    private readonly SortedDictionary<int, ImmutableArray<YarnRow>>[] _sizes;

    private StripeMaker(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, CompileOptions options)
    {
        (_pattern, _lines, _worked) = (pattern, lines, worked);
        var fabrics = new FabricWorker(options, PatternBook.Of(lines));
        _sizes = [.. Enumerable.Range(0, pattern.Facts.Sizes.Count).Select(size => YarnWalk.Of(pattern, lines, worked, fabrics, size))];
    }

    /// <summary>Looks through a pattern; null where its yarns have no letters.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="lines">Its lines.</param>
    /// <param name="worked">The same lines, worked.</param>
    /// <param name="options">Limits.</param>
    public static StripeMaker? Of(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, CompileOptions options) =>
        worked.Any(l => !l.Log.IsEmpty) ? new StripeMaker(pattern, lines, worked, options) : null;

    /// <summary>The sequences to draw, in the order of the source.</summary>
    public ImmutableArray<StripeSequence> Sequences()
    {
        var sequences = new List<StripeSequence>();
        var drawn = new HashSet<int>();
        foreach (var (section, number) in _pattern.Sections.Select((s, i) => (s, i + 1)))
        {
            foreach (var block in section.Blocks.OfType<FencedBlock>().Where(b => b.Info == FencedBlock.Stripes))
            {
                if (ChartRequest.Read(block.Text) is { First: null } request && SectionOf(request, number) is > 0 and var meant)
                {
                    sequences.AddRange(In(meant, fewest: 2).Select(s => s with { Section = number, Block = block.Origin }));
                    drawn.Add(meant);
                }
            }
        }

        if (!_pattern.Facts.Omit.Contains(FencedBlock.Stripes, StringComparer.OrdinalIgnoreCase))
        {
            for (var number = 1; number <= _pattern.Sections.Length; number++)
            {
                sequences.AddRange(drawn.Contains(number) ? [] : In(number, FewestStripes));
            }
        }

        return [.. sequences.OrderBy(s => s.Section)];
    }

    /// <summary>The shares of each part in which they are known in at least one size, and where more than one yarn is worked with.</summary>
    public ImmutableArray<YarnShares> Shares()
    {
        var shares = ImmutableArray.CreateBuilder<YarnShares>();
        foreach (var number in _sizes.SelectMany(s => s.Keys).Distinct().Order())
        {
            var labels = YarnMention.Labels(_pattern.Facts);
            ImmutableArray<string> used = [.. labels.Where(l => _sizes.Any(s => s.GetValueOrDefault(number) is { IsDefault: false } rows && rows.Any(r => r.Yarns.IndexOf(l) >= 0)))];
            if (used.Length > 1)
            {
                shares.Add(new YarnShares(_pattern.Sections[number - 1].Heading, number, used,
                    [.. _sizes.Select(s => s.GetValueOrDefault(number) is { IsDefault: false } rows ? used.Select(l => Sum(rows, l)).ToImmutableArray() : [])]));
            }
        }

        // What a yarn takes in all is known of the pattern, and not of one of its parts.
        if (shares is [var only] && _lines.All(l => l.Section == only.Section))
        {
            shares[0] = only with { Amounts = ColourAmounts.Of(_pattern.Facts, only) };
        }

        return shares.ToImmutable();
    }

    /// <summary>The section whose stripes a block asks for; 0 for none.</summary>
    internal int SectionOf(ChartRequest request, int here) => request.Of is not { } name ? here
        : _pattern.Sections.Select((s, i) => (s.Heading, Number: i + 1)).FirstOrDefault(s => string.Equals(s.Heading, name, StringComparison.OrdinalIgnoreCase)).Number;

    private static int Sum(ImmutableArray<YarnRow> rows, string label)
    {
        var sum = 0L;
        foreach (var row in rows)
        {
            var at = row.Yarns.IndexOf(label);
            sum += at < 0 ? 0 : row.Stitches[at];
        }

        return (int)Math.Min(sum, int.MaxValue);
    }

    /// <summary>The sequences of a section: sizes with the same one share it.</summary>
    private IEnumerable<StripeSequence> In(int number, int fewest)
    {
        var found = new List<(int Size, ImmutableArray<Stripe> Stripes)>();
        for (var size = 0; size < _sizes.Length; size++)
        {
            if (_sizes[size].GetValueOrDefault(number) is { IsDefault: false } rows && StripesOf(rows) is var stripes && IsSequence(rows, stripes, fewest))
            {
                found.Add((size, stripes));
            }
        }

        var groups = found.GroupBy(f => string.Join(' ', f.Stripes.Select(s => $"{string.Join('+', s.Yarns)}{s.Rows}")), StringComparer.Ordinal).ToArray();
        if (groups.Length > MostDrawings)
        {
            return []; // nearly each size has its own: the words say it better
        }

        return groups.Select(g => Folded(number, g.First().Stripes) with { Sizes = groups.Length == 1 && g.Count() == _sizes.Length ? [] : [.. g.Select(f => f.Size)] })
            .Where(s => s.Stripes.Length <= MostStripes);
    }

    private static bool IsSequence(ImmutableArray<YarnRow> rows, ImmutableArray<Stripe> stripes, int fewest) =>
        stripes.Length >= fewest && rows.Count(r => r.Yarns.Length > 1) * 2 <= rows.Length
        && stripes.Where(s => s.Yarns.Length == 1).Select(s => s.Yarns[0]).Distinct(StringComparer.Ordinal).Skip(1).Any();

    private static ImmutableArray<Stripe> StripesOf(ImmutableArray<YarnRow> rows)
    {
        var stripes = new List<Stripe>();
        for (var i = 0; i < rows.Length; i++)
        {
            if (stripes.Count > 0 && stripes[^1].Yarns.SequenceEqual(rows[i].Yarns))
            {
                stripes[^1] = stripes[^1] with { Rows = stripes[^1].Rows + 1 };
            }
            else
            {
                stripes.Add(new Stripe(rows[i].Yarns, i + 1, 1));
            }
        }

        return [.. stripes];
    }

    /// <summary>The stripes with the longest stretch that comes again shown once.</summary>
    private StripeSequence Folded(int number, ImmutableArray<Stripe> stripes)
    {
        (int From, int Period, int Times)? best = null;
        var most = Math.Min(stripes.Length, 400);
        for (var period = 2; period <= Math.Min(most / 2, 24); period++)
        {
            for (var from = 0; from + (2 * period) <= most; from++)
            {
                var same = 0;
                while (from + same + period < most && IsSame(stripes[from + same], stripes[from + same + period]))
                {
                    same++;
                }

                var times = (same / period) + 1;
                if (times >= 2 && (best is not { } b || (times - 1) * period > (b.Times - 1) * b.Period))
                {
                    best = (from, period, times);
                }
            }
        }

        var sequence = new StripeSequence
        {
            Name = _pattern.Sections[number - 1].Heading,
            Section = number,
            IsRound = _lines.Where(l => l.Section == number).Any(l => _worked[l.Index].InTheRound == true),
            Stripes = stripes,
            Rows = stripes.Sum(s => s.Rows),
        };
        return best is not var (at, each, again) ? sequence : sequence with
        {
            Stripes = [.. stripes[..(at + each)], .. stripes[(at + (each * again))..]],
            Repeat = new StripeRepeat(at, each, again, stripes[at..(at + each)].Sum(s => s.Rows)),
        };
    }

    private static bool IsSame(Stripe one, Stripe other) => one.Rows == other.Rows && one.Yarns.SequenceEqual(other.Yarns);
}
