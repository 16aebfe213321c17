using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Plans;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Core.Yarns;

/// <summary>
/// Works out what a pattern takes of each yarn in every size: from what the sample took, else from a weighed swatch, else roughly from published figures, by the stitches that its rows make.
/// </summary>
public sealed class YarnEstimator
{
    private readonly PatternFacts _facts;
    private readonly ImmutableArray<WorkedLine> _lines;
    private readonly WorkedYarn _work;
    private readonly ImmutableArray<decimal> _areas;
    private readonly int _sample;

    private YarnEstimator(Pattern pattern, ImmutableArray<WorkedLine> worked, WorkedYarn work, ImmutableArray<decimal> areas)
    {
        (_facts, _lines, _work, _areas) = (pattern.Facts, worked, work, areas);
        _sample = SampleSize(_facts);
    }

    /// <summary>The size of the sample; -1 where it is not known.</summary>
    public static int SampleSize(PatternFacts facts) => facts.Sizes.Count == 1 ? 0 : facts.Sample?.Size is { } name ? facts.Sizes.IndexOf(name) : -1;

    /// <summary>The amounts of every yarn.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="bound">Its lines as they are written.</param>
    /// <param name="worked">Its lines as they were worked.</param>
    /// <param name="outlines">The outlines of its pieces.</param>
    /// <param name="source">The text that was read.</param>
    /// <param name="options">Limits.</param>
    public static YarnEstimate Of(Pattern pattern, ImmutableArray<BoundLine> bound, ImmutableArray<WorkedLine> worked, ImmutableArray<PieceOutline> outlines, SourceText source, CompileOptions options)
    {
        var (areas, noArea) = PieceAreas.Of(pattern, worked, outlines);
        var work = WorkedYarn.Of(pattern, bound, worked, outlines, source, options);
        var estimator = new YarnEstimator(pattern, worked, work, areas);
        var margin = pattern.Facts.YarnMargin ?? YarnEstimate.UsualMargin;
        return new([.. pattern.Facts.Yarns.Select((y, i) => estimator.One(y, i, margin))], margin, areas, noArea) { IsSure = work.IsSure };
    }

    private EstimatedYarn One(Yarn yarn, int index, decimal margin)
    {
        if (_work.Reason is not null && _areas.IsEmpty)
        {
            return new() { Reason = _work.Reason };
        }

        var found = BySample(yarn, index) ?? BySwatch(yarn, index) ?? Roughly(yarn, index);
        if (found is not var (method, sizes))
        {
            return new() { Reason = _work.Reason ?? NothingToGoBy(index) };
        }

        return new() { Method = method, Sizes = [.. sizes.Select((s, i) => Complete(s, yarn, index, i, margin))] };
    }

    private string NothingToGoBy(int yarn) =>
        _work.Sizes.All(s => s.Stitches[yarn] == 0) ? "no row is worked with it"
        : !_work.AreApart ? "the rows do not say which yarn they are worked with, and the sample's yarns are not told apart"
        : "there is no sample that was weighed (`sample: {size: M, used: 180 g}`), no weighed swatch and no gauge of stitches and rows";

    /// <summary>What the sample took of the yarn, times the stitches of a size beside those of the sample's.</summary>
    private (AmountMethod Method, SizeAmount[] Sizes)? BySample(Yarn yarn, int index)
    {
        if (_sample < 0 || _facts.Sample is not { } sample || UsedOf(yarn, index, sample.Used, sample.UsedBy, s => s.Weighted) is not var (grams, metres))
        {
            return null;
        }

        var byArea = _areas.IsEmpty ? null : Scaled(grams, metres, s => _areas[s] / _areas[_sample]);
        SizeAmount[]? byStitches = null;
        if (!_work.Sizes.IsEmpty && _work.Sizes[_sample].Weighted[index] is > 0 and var whole)
        {
            byStitches = Scaled(grams, metres, s => _work.Sizes[s].Weighted[index] / whole);
        }

        if ((byStitches ?? byArea) is not { } main)
        {
            return null;
        }

        var took = Took(grams, metres, sample.UsedBy, sample.Used);
        var size = _facts.Sizes.Count > 1 ? $" of size {_facts.Sizes.Names[_sample]}" : "";
        var method = new AmountMethod(
            AmountBasis.Sample,
            byStitches is not null ? $"what the sample{size} took ({took}), by the stitches of each size{Kinds()}{Doubt()}" : $"what the sample{size} took ({took}), by the area of each size",
            byStitches is null || !_work.AreApart ? YarnAmount.ErrorBySwatch : YarnAmount.ErrorByStitches);
        return (method, With(main, byArea));
    }

    /// <summary>What a swatch weighs, times the stitches or the area of a size beside its own.</summary>
    private (AmountMethod Method, SizeAmount[] Sizes)? BySwatch(Yarn yarn, int index)
    {
        if (_facts.Swatch is not { } swatch || UsedOf(yarn, index, swatch.Weighs, swatch.WeighsBy, s => s.Stitches) is not var (grams, metres))
        {
            return null;
        }

        var gauge = _facts.Gauges.FirstOrDefault(g => g is { StitchesPerCm: > 0, RowsPerCm: > 0 });
        var stitches = swatch is { Stitches: { } across, Rows: { } along } ? across * along
            : swatch is { Width.InBase: var width, Height.InBase: var height } && gauge is not null ? width * gauge.StitchesPerCm * height * gauge.RowsPerCm : null;
        // Of several yarns each has its share of the swatch: what all of them make is held against all of it.
        SizeAmount[]? byStitches = null;
        if (!_work.Sizes.IsEmpty && stitches is > 0)
        {
            byStitches = Scaled(grams, metres, s => _work.Sizes[s].All / stitches.Value);
        }

        SizeAmount[]? byArea = null;
        if (!_areas.IsEmpty && swatch is { Width.InBase: > 0 and var wide, Height.InBase: > 0 and var high })
        {
            byArea = Scaled(grams, metres, s => _areas[s] / (wide * high));
        }

        if ((byStitches ?? byArea) is not { } main)
        {
            return null;
        }

        var took = Took(grams, metres, swatch.WeighsBy, swatch.Weighs);
        return (new(AmountBasis.Swatch, $"a swatch of the fabric that took {took}, by the {(byStitches is not null ? "stitches" : "area")} of each size", YarnAmount.ErrorBySwatch), With(main, byArea));
    }

    /// <summary>The length of yarn in a stitch as published, and a factor of the fabric.</summary>
    private (AmountMethod Method, SizeAmount[] Sizes)? Roughly(Yarn yarn, int index)
    {
        var gauge = _facts.Gauges.FirstOrDefault(g => g is { StitchesPerCm: > 0, RowsPerCm: > 0 });
        if (gauge is not { StitchesPerCm: { } across, RowsPerCm: { } along } || _work.Sizes.IsEmpty || !_work.AreApart || _work.Sizes.Any(s => s.Stitches[index] <= 0))
        {
            return null;
        }

        var factor = FabricShare.Of(_facts.Craft, _lines, _work.Stranded / Math.Max(1, _work.Sizes.Sum(s => s.All)));
        decimal? Metres(decimal area) => YarnAmount.Rough(area, across * 10, along * 10)?.Times(factor.Usual * yarn.Strands).Metres;

        var sizes = new SizeAmount[_work.Sizes.Length];
        for (var i = 0; i < sizes.Length; i++)
        {
            if (Metres(_work.Sizes[i].Stitches[index] / across / along) is not { } metres)
            {
                return null;
            }

            var share = _work.Sizes[i].Stitches[index] / _work.Sizes[i].All;
            sizes[i] = new SizeAmount { Metres = metres, MetresByArea = _areas.IsEmpty ? null : Metres(_areas[i] * share) };
        }

        var times = factor.Usual == 1 ? "" : $", times {Figure(factor.Usual)} for {factor.Name} ({factor.Source})";
        var strands = yarn.Strands == 1 ? "" : $", for each of {yarn.Strands} strands";
        return (new(AmountBasis.Published, $"rough figures, because no sample or swatch was weighed: the length of a stitch at the gauge ({Sources.LoopLength}){times}{strands}", YarnAmount.ErrorRough), sizes);
    }

    /// <summary>What was used of a yarn, told of it by its letters or its name, or its share of what all yarns took; null where that cannot be told.</summary>
    private (decimal? Grams, decimal? Metres)? UsedOf(Yarn yarn, int index, Quantity? all, ImmutableArray<YarnUsed> by, Func<SizeYarn, decimal[]> stitches)
    {
        if (!by.IsEmpty)
        {
            return by.FirstOrDefault(u => IsCalled(yarn, u.Label)) is { Amount: { } own } ? Amount(own, yarn) : null;
        }

        if (all is null || _facts.Yarns.Length == 1)
        {
            return all is null ? null : Amount(all, yarn);
        }

        if (!_work.AreApart || _work.Sizes.IsEmpty || all.Unit.Dimension == Dimension.Count)
        {
            return null;
        }

        // Each stitch takes the same length of any yarn, and so much of its weight as its metres per gram say.
        var size = _work.Sizes[Math.Max(0, _sample)];
        var grists = all.Unit.Dimension == Dimension.Mass && _facts.Yarns.All(y => y.MetresPerGram is > 0) ? _facts.Yarns.Select(y => y.MetresPerGram!.Value).ToArray() : null;
        decimal Of(int i) => stitches(size)[i] * _facts.Yarns[i].Strands / (grists?[i] ?? 1);

        var sum = Enumerable.Range(0, _facts.Yarns.Length).Sum(Of);
        return sum <= 0 || Of(index) <= 0 ? null : Amount(new Quantity(all.InBase * (Of(index) / sum), Base(all.Unit.Dimension)), yarn);
    }

    /// <summary>True for the letters of a yarn or its name.</summary>
    internal static bool IsCalled(Yarn yarn, string label) =>
        string.Equals(yarn.Label, label, StringComparison.OrdinalIgnoreCase) || string.Equals(yarn.Name, label, StringComparison.OrdinalIgnoreCase);

    private static Unit Base(Dimension dimension) => dimension == Dimension.Mass ? Unit.Gram : Unit.Metre;

    private static (decimal? Grams, decimal? Metres)? Amount(Quantity used, Yarn yarn)
    {
        (decimal? grams, decimal? metres) = used.Unit.Dimension switch
        {
            Dimension.Mass => ((decimal?)used.InBase, used.InBase * yarn.MetresPerGram),
            Dimension.YarnLength => (yarn.MetresPerGram is > 0 and var grist ? used.InBase / grist : null, used.InBase),
            _ => (used.InBase * yarn.PutUpMass?.InBase, used.InBase * yarn.PutUpLength?.InBase),
        };
        return grams is > 0 or null && metres is > 0 or null && (grams ?? metres) is not null ? (grams, metres) : null;
    }

    private SizeAmount[] Scaled(decimal? grams, decimal? metres, Func<int, decimal> share) =>
        [.. Enumerable.Range(0, _facts.Sizes.Count).Select(s => (Share: share(s), 0)).Select(s => new SizeAmount { Grams = grams * s.Share, Metres = metres * s.Share })];

    private static SizeAmount[] With(SizeAmount[] main, SizeAmount[]? byArea) =>
        [.. main.Select((m, i) => m with { GramsByArea = byArea?[i].Grams, MetresByArea = byArea?[i].Metres })];

    /// <summary>An amount with its stitches, the margin, the balls and the other yarns.</summary>
    private SizeAmount Complete(SizeAmount amount, Yarn yarn, int index, int size, decimal margin)
    {
        var per100 = yarn.MetresPerGram * 100;
        var need = new YarnNeed(amount.Metres, amount.Grams, 0, Sources.LoopLength);
        need = (per100 is { } known ? need.Filled(known) : need).WithMargin(margin * 100);
        var others = ImmutableArray.CreateBuilder<AlternativeAmount>();
        foreach (var other in yarn.Alternatives)
        {
            if (need.Metres is { } metres && other is { PutUpMass.InBase: > 0 and var ball, PutUpLength.InBase: > 0 and var length }
                && YarnAmount.SubstituteGrams(metres, length * 100 / ball) is { } grams && YarnAmount.Balls(metres, length) is { } balls)
            {
                others.Add(new(other.Name, grams, balls));
            }
        }

        return amount with
        {
            Stitches = _work.Sizes.IsEmpty ? null : _work.Sizes[size].Stitches[index],
            Weighted = _work.Sizes.IsEmpty ? null : _work.Sizes[size].Weighted[index],
            SafeGrams = need.Grams,
            SafeMetres = need.Metres,
            Balls = need.Metres is { } m && yarn.PutUpLength is { } put ? YarnAmount.Balls(m, put.InBase) : need.Grams is { } g && yarn.PutUpMass is { } mass ? YarnAmount.Balls(g, mass.InBase) : null,
            Alternatives = others.ToImmutable(),
        };
    }

    /// <summary>How stitches of several heights are weighed.</summary>
    private string Kinds()
    {
        if (_facts.Craft == Craft.Knitting)
        {
            return "";
        }

        var terms = _facts.TermsInForce ?? Dialect.Us;
        string[] kinds = [.. _lines.SelectMany(l => l.Operations).Where(o => o is { Height: not null, CountsAs: null, Makes: 1, Takes: <= 1 } && o.Names.Any(n => n.Dialect == terms || n.Dialect == Dialect.Any))
            .DistinctBy(o => o.Id, StringComparer.Ordinal).OrderBy(StitchYarn.Of).Take(6)
            .Select(o => string.Create(CultureInfo.InvariantCulture, $"{o.Names.First(n => n.Dialect == terms || n.Dialect == Dialect.Any).Text} {StitchYarn.Of(o):0.#}"))];
        return kinds.Length < 2 ? "" : $", each by its height ({string.Join(", ", kinds)}; common practice, from memory)";
    }

    /// <summary>"412 g", or for one of several yarns "112 g of 412 g in all, by its stitches".</summary>
    private string Took(decimal? grams, decimal? metres, ImmutableArray<YarnUsed> by, Quantity? all)
    {
        var own = grams is { } g ? $"{Figure(g)} g" : $"{Figure(metres ?? 0)} m";
        return by.IsEmpty && _facts.Yarns.Length > 1 && all is not null ? $"{own} of {all} in all, shared out by the stitches" : own;
    }

    private string Doubt() => _work.AreApart ? "" : ", all yarns alike, because not every row says which yarn it is worked with";

    private static string Figure(decimal value) => value.ToString(value < 10 ? "0.##" : "0.#", CultureInfo.InvariantCulture);
}
