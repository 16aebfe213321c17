using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>An amount of one yarn: its letters or its name as written, and how much.</summary>
public sealed record YarnUsed(string Label, Quantity Amount, TextSpan Origin);

/// <summary>A swatch that was weighed.</summary>
public sealed record Swatch(TextSpan Origin)
{
    /// <summary>How wide it is; null when not said.</summary>
    public Quantity? Width { get; init; }

    /// <summary>How high it is; null when not said.</summary>
    public Quantity? Height { get; init; }

    /// <summary>Its stitches across; null when not said.</summary>
    public decimal? Stitches { get; init; }

    /// <summary>Its rows; null when not said.</summary>
    public decimal? Rows { get; init; }

    /// <summary>What it weighs, or the yarn that it took, all yarns together; null when not said.</summary>
    public Quantity? Weighs { get; init; }

    /// <summary>The same yarn by yarn; empty where it is one amount.</summary>
    public ImmutableArray<YarnUsed> WeighsBy { get; init; } = [];
}

/// <summary>What an amount of yarn is worked out from.</summary>
public enum AmountBasis
{
    /// <summary>What the sample took.</summary>
    Sample,

    /// <summary>A weighed swatch.</summary>
    Swatch,

    /// <summary>Published figures: rough.</summary>
    Published,
}

/// <summary>How the amounts of a yarn were found.</summary>
/// <param name="Basis">What they are worked out from.</param>
/// <param name="Method">How, as a sentence without its full stop.</param>
/// <param name="LikelyError">How far they may be out, as a share: 0.1 is a tenth more or less.</param>
public sealed record AmountMethod(AmountBasis Basis, string Method, decimal LikelyError);

/// <summary>Another yarn in place of the one that is reckoned with, in one size, the margin counted in.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Grams">Grams of it: the same metres by its own metres in a gram.</param>
/// <param name="Balls">Balls of its own put-up.</param>
public sealed record AlternativeAmount(string Name, decimal Grams, int Balls);

/// <summary>What a yarn comes to in one size. Amounts are without the margin where nothing else is said; null where they cannot be told.</summary>
public sealed record SizeAmount
{
    /// <summary>Stitches worked with it.</summary>
    public decimal? Stitches { get; init; }

    /// <summary>The same in the shortest stitches of the craft, each by the yarn that it takes.</summary>
    public decimal? Weighted { get; init; }

    /// <summary>Grams by its stitches; by area where stitches cannot be told.</summary>
    public decimal? Grams { get; init; }

    /// <summary>Metres by its stitches; by area where stitches cannot be told.</summary>
    public decimal? Metres { get; init; }

    /// <summary>Grams by the area of the pieces.</summary>
    public decimal? GramsByArea { get; init; }

    /// <summary>Metres by the area of the pieces.</summary>
    public decimal? MetresByArea { get; init; }

    /// <summary>Grams with the margin.</summary>
    public decimal? SafeGrams { get; init; }

    /// <summary>Metres with the margin.</summary>
    public decimal? SafeMetres { get; init; }

    /// <summary>Whole balls with the margin.</summary>
    public int? Balls { get; init; }

    /// <summary>Other yarns that will do.</summary>
    public ImmutableArray<AlternativeAmount> Alternatives { get; init; } = [];
}

/// <summary>The amounts of one yarn in every size.</summary>
public sealed record EstimatedYarn
{
    /// <summary>How they were found; null where they were not.</summary>
    public AmountMethod? Method { get; init; }

    /// <summary>Why there are none, as a sentence without its full stop; null where there are.</summary>
    public string? Reason { get; init; }

    /// <summary>The amounts, one a size.</summary>
    public ImmutableArray<SizeAmount> Sizes { get; init; } = [];
}

/// <summary>What a pattern takes of each of its yarns, worked out from its stitches.</summary>
/// <param name="Yarns">One a yarn, in the header's order.</param>
/// <param name="Margin">What is added, as a share.</param>
/// <param name="AreasCm2">The area of all pieces, one a size; empty where it cannot be told.</param>
/// <param name="NoArea">Why it cannot be told; null where it can.</param>
public sealed record YarnEstimate(ImmutableArray<EstimatedYarn> Yarns, decimal Margin, ImmutableArray<decimal> AreasCm2, string? NoArea)
{
    /// <summary>False where it is not said how often some piece is made: the sizes cannot then be held against each other.</summary>
    public bool IsSure { get; init; } = true;

    /// <summary>What is usually added: a tenth (common practice).</summary>
    public const decimal UsualMargin = 0.1m;
}
