using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Holds the amounts of the header against what the stitches of each size take, by what the sample took.</summary>
internal static class NeedsBesideStitches
{
    /// <summary>A size whose amount differs: what is said, what its stitches take, and the difference as a share of that.</summary>
    private sealed record Gap(int Size, decimal Said, decimal Takes, decimal By);

    /// <summary>Tells each yarn whose amounts are too small, or far too large.</summary>
    public static void Check(CheckContext context, Rule rule, bool below)
    {
        var facts = context.Facts;
        if (context.Bag.HasErrors || facts.Sample is not { } sample || (sample.Used is null && sample.UsedBy.IsEmpty) || facts.Sizes.Count < 2 || sample.Size is not { } name || facts.Sizes.IndexOf(name) is not (>= 0 and var own)
            || context.IsExcused("yarn", "yarn.needs", "needs", "sizes", "sample", "sample.used", "yarn.put-up", "swatch"))
        {
            return;
        }

        for (var i = 0; i < facts.Yarns.Length; i++)
        {
            var yarn = facts.Yarns[i];
            if (yarn.Needs is { IsShared: false } && !yarn.NeedsAreEstimated && !(yarn.NeedsOrigin is { } place && context.Bag.HasAt("PF611", place)) && context.Yarn.Value is { IsSure: true, Yarns: { IsEmpty: false } yarns } && yarns[i] is { Method.Basis: AmountBasis.Sample, Sizes.IsEmpty: false } estimate)
            {
                One(context, rule, yarn, estimate, own, below);
            }
        }
    }

    private static void One(CheckContext context, Rule rule, Yarn yarn, EstimatedYarn estimate, int own, bool below)
    {
        var facts = context.Facts;
        var isMass = yarn.Needs!.Values.Any(q => q?.Unit.Dimension == Dimension.Mass);
        decimal? Said(int size) => isMass ? Amounts.Grams(yarn, size) : Amounts.Metres(yarn, size);
        decimal? Takes(int size) => isMass ? estimate.Sizes[size].Grams : estimate.Sizes[size].Metres;

        // What the sample's own size is said to need is held against the sample by another rule.
        if (Said(own) is not { } saidOwn || Takes(own) is not { } tookOwn || (below && tookOwn > (saidOwn * 1.05m) + 2))
        {
            return;
        }

        var gaps = new List<Gap>();
        for (var size = 0; size < facts.Sizes.Count; size++)
        {
            if (size == own || Said(size) is not { } said || Takes(size) is not (> 0 and var takes))
            {
                continue;
            }

            var by = (said - takes) / takes;
            if (below ? by < -context.Tolerances.YarnShort : by > context.Tolerances.YarnOver && !IsOneBall(yarn, said, takes, isMass))
            {
                gaps.Add(new(size, said, takes, by));
            }
        }

        if (gaps.Count == 0)
        {
            return;
        }

        var unit = isMass ? "g" : "m";
        var worst = below ? gaps.MinBy(g => g.By)! : gaps.MaxBy(g => g.By)!;
        var others = gaps.Count > 1 ? $" ({facts.Sizes.Describe([.. gaps.Select(g => g.Size)])} alike)" : "";
        var takesAll = string.Join(", ", Enumerable.Range(0, facts.Sizes.Count).Select(s => Takes(s) is { } t ? t.ToString("0", CultureInfo.InvariantCulture) : "–"));
        context.Bag.Add(new Finding(rule, context.Source, yarn.NeedsOrigin ?? yarn.Origin, string.Create(CultureInfo.InvariantCulture,
            $"size {facts.Sizes.Names[worst.Size]} is said to need {worst.Said:0} {unit} of {YarnWords.Of(yarn)}, {Math.Abs(worst.By) * 100:0} % {(below ? "less" : "more")} than the {worst.Takes:0} {unit} that its stitches take by what the sample took{others}"))
        {
            Sizes = [.. gaps.Select(g => g.Size)],
            Labels = [new Label(facts.Sample!.Origin, "the sample")],
            Help = $"by the stitches of each size it takes {takesAll} {unit}, without a margin (likely error {estimate.Method!.LikelyError * 100:0.#} %): check the amounts and the sample; `counts FILE --yarn` tells how it is reckoned",
        });
    }

    /// <summary>True where no smaller number of whole balls would do.</summary>
    private static bool IsOneBall(Yarn yarn, decimal said, decimal takes, bool isMass) =>
        (isMass ? yarn.PutUpMass : yarn.PutUpLength)?.InBase is > 0 and var ball && Math.Ceiling(Math.Round(said / ball, 6)) <= Math.Ceiling(Math.Round(takes * (1 + YarnEstimate.UsualMargin) / ball, 6));
}
