using System.Collections.Immutable;

namespace PatternForge.Core.Plans;

/// <summary>One increase, decrease or hole as it is written, with what it takes and makes, and the plain stitch beside it.</summary>
/// <param name="Text">As it is written: <c>M1</c>, <c>k2tog</c>, <c>2 sc in next st</c>.</param>
/// <param name="Uses">Stitches of the row before that it uses: kfb one, M1 none.</param>
/// <param name="Makes">Stitches that it makes.</param>
/// <param name="Plain">The plain stitch: <c>k</c>, <c>p</c>, or the name of a crochet stitch.</param>
public sealed record Shaper(string Text, int Uses, int Makes, string Plain)
{
    /// <summary>The bar between two stitches lifted and knitted.</summary>
    public static Shaper M1 { get; } = new("M1", 0, 1, "k");

    /// <summary>Front and back of one stitch.</summary>
    public static Shaper Kfb { get; } = new("kfb", 1, 2, "k");

    /// <summary>A yarn over.</summary>
    public static Shaper Yo { get; } = new("yo", 0, 1, "k");

    /// <summary>Two together, leaning right.</summary>
    public static Shaper K2tog { get; } = new("k2tog", 2, 1, "k");

    /// <summary>Two together, leaning left.</summary>
    public static Shaper Ssk { get; } = new("ssk", 2, 1, "k");

    /// <summary>Two purled together.</summary>
    public static Shaper P2tog { get; } = new("p2tog", 2, 1, "p");

    /// <summary>Three into one, the middle one on top.</summary>
    public static Shaper Cdd { get; } = new("cdd", 3, 1, "k");

    /// <summary>Those of knitting.</summary>
    public static ImmutableArray<Shaper> Knitted { get; } = [M1, Kfb, Yo, K2tog, Ssk, P2tog, Cdd];

    /// <summary>Stitches more after it than before: negative for a decrease.</summary>
    public int Change => Makes - Uses;

    /// <summary>True for a stitch of crochet.</summary>
    public bool IsCrochet => Plain is not ("k" or "p");

    /// <summary>Two of a crochet stitch in one.</summary>
    public static Shaper CrochetIncrease(string stitch) => new($"2 {stitch} in next st", 1, 2, stitch);

    /// <summary>Two of a crochet stitch together.</summary>
    public static Shaper CrochetDecrease(string stitch) => new($"{stitch}2tog", 2, 1, stitch);

    /// <summary>So many plain stitches; empty for none.</summary>
    internal string PlainText(int stitches) =>
        stitches == 0 ? "" : !IsCrochet ? FormattableString.Invariant($"{Plain}{stitches}") : stitches == 1 ? $"{Plain} in next st" : FormattableString.Invariant($"{Plain} in next {stitches} sts");
}
