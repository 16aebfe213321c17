using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Sizing;

/// <summary>What the new size, once it is worked, shows of proposals: amounts of yarn that its stitches take, and numbers of a row that does not come out.</summary>
internal sealed class SettledValues(SizeLists found, Compilation plain, NewPlace place)
{
    private const int MostRows = 6;
    private const int MostTries = 120;
    private const decimal Reach = 6m;
    private const decimal MostMargin = 0.5m;

    private readonly Dictionary<SizeList, NewValue> _values = [];

    /// <summary>What stands in place of a list's interpolated value; null for nothing.</summary>
    public NewValue? For(SizeList list) => _values.GetValueOrDefault(list);

    /// <summary>Looks for numbers with which rows come out that do not in the new size, nearest first; takes one only where fewer mistakes are left of all.</summary>
    /// <param name="growth">The source with what is proposed so far.</param>
    /// <param name="errors">The errors of the new size alone when it is compiled.</param>
    /// <param name="lineOf">The line of the text as it is read that an error stands on.</param>
    /// <param name="tried">Grows and compiles it again with what is settled here.</param>
    public void Rows(SourceGrowth growth, IReadOnlyList<Finding> errors, Func<Finding, int> lineOf, Func<(SourceGrowth Growth, IReadOnlyList<Finding> Errors)> tried)
    {
        var tries = 0;
        var past = new HashSet<int>();
        for (var row = 0; row < MostRows && errors.Count > 0; row++)
        {
            if (errors.Select(lineOf).Where(l => !past.Contains(l)).Order().Take(1).ToArray() is not [var line])
            {
                return;
            }

            past.Add(line);
            var open = growth.Numbers.Where(n => growth.LineOfText(n.List.Span) == line && n.List.Kind == SizeListKind.Body && n.Value.UpTo is null).OrderByDescending(n => n.Value.IsOpen).ThenBy(n => n.List.Span.Start).ToArray();
            if (open.Select(n => Nearest(n.List, n.Value, errors.Count)).FirstOrDefault(n => n is not null) is { } better)
            {
                (growth, errors) = better;
            }
        }

        (SourceGrowth Growth, IReadOnlyList<Finding> Errors)? Nearest(SizeList list, NewValue value, int most)
        {
            for (var by = 1m; value.Number is { } number && by <= Reach; by++)
            {
                foreach (var other in (ReadOnlySpan<decimal>)[number - by, number + by])
                {
                    if (other < 0 || tries++ >= MostTries)
                    {
                        continue;
                    }

                    _values[list] = new(other, null, $"so that the row comes out; else it would be {number:0.##} ({value.Why})", IsOpen: true);
                    if (tried() is var made && made.Errors.Count < most)
                    {
                        return made;
                    }
                }
            }

            _values.Remove(list);
            return null;
        }
    }

    /// <summary>Proposes for each yarn what the stitches of the new size take by the sample or a swatch, with the margin that its neighbours have.</summary>
    /// <returns>True where an amount was found.</returns>
    public bool Yarn(Compilation made)
    {
        SizeList[] lists = [.. found.Lists.Where(l => l.Path.EndsWith("needs", StringComparison.Ordinal) && l.Values.Length == plain.Pattern.Facts.Sizes.Count)];
        var yarns = plain.Pattern.Facts.Yarns;
        int[] told = [.. Enumerable.Range(0, yarns.Length).Where(i => yarns[i] is { Needs.IsShared: false, NeedsAreEstimated: false })];
        if (lists.Length != told.Length || lists.Length == 0 || !made.Yarn.IsSure || made.Yarn.Yarns.Length != yarns.Length)
        {
            return false;
        }

        for (var i = 0; i < lists.Length; i++)
        {
            if (made.Yarn.Yarns[told[i]] is { Method: { Basis: not AmountBasis.Published } method } estimate && Amount(yarns[told[i]], estimate, lists[i], method) is { } value)
            {
                _values[lists[i]] = value;
            }
        }

        return _values.Count > 0;
    }

    private NewValue? Amount(Yarn yarn, EstimatedYarn estimate, SizeList list, AmountMethod method)
    {
        if (yarn.Needs!.Values.FirstOrDefault(q => q is not null)?.Unit is not { } unit || list.Values.Any(v => v.UpTo is not null) || Takes(place.Index) is not { } own)
        {
            return null;
        }

        int[] near = place.IsBetween ? [place.From, place.To] : [place.Share > 1 ? place.To : place.From];
        var margin = 0m;
        foreach (var size in near)
        {
            if (list.Values[size].Number is not { } said || Takes(size < place.Index ? size : size + 1) is not (> 0 and var takes))
            {
                return null;
            }

            margin += ((said / takes) - 1) / near.Length;
        }

        if (margin > MostMargin)
        {
            return null; // what is said of the other sizes comes from elsewhere
        }

        margin = Math.Max(margin, 0m); // too little is never carried on
        decimal[] known = [.. list.Values.Where(v => v.Number is not null).Select(v => v.Number!.Value)];
        var words = FormattableString.Invariant($"its stitches take {Math.Round(own, own < 20 ? 1 : 0):0.#} {unit.Symbol}").TrimEnd() + (method.Basis == AmountBasis.Sample ? " by what the sample took" : " by the swatch");
        return new(Interpolation.Measured(own * (1 + margin), known, isYarn: true), null, words + (margin >= 0.005m ? FormattableString.Invariant($", and {margin * 100:0} % more as {(near.Length > 1 ? "its neighbours have" : "its neighbour has")}") : ", rounded up"));

        decimal? Takes(int size) => unit.Dimension switch
        {
            Dimension.YarnLength => estimate.Sizes[size].Metres / unit.InBase,
            Dimension.Mass => estimate.Sizes[size].Grams / unit.InBase,
            _ => yarn.PutUpLength is { InBase: > 0 and var length } ? estimate.Sizes[size].Metres / length : estimate.Sizes[size].Grams / yarn.PutUpMass?.InBase,
        };
    }
}
