using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>One yarn.</summary>
public sealed record YarnView
{
    /// <summary>The letters it goes by in the rows; null when it has none.</summary>
    public string? Label { get; init; }

    /// <summary>Its name; a plain description when it has none.</summary>
    public required string Name { get; init; }

    /// <summary>What it is spun from; null when not said.</summary>
    public string? Fibre { get; init; }

    /// <summary>Its weight in words, "DK, light (3)"; null when not said.</summary>
    public string? Weight { get; init; }

    /// <summary>One ball: "100 g = 200 m (3½ oz = 219 yd)"; null when not said.</summary>
    public string? PutUp { get; init; }

    /// <summary>Metres in a gram and yards in an ounce: "2.0 m per g (62 yd per oz)"; null when the ball is not known.</summary>
    public string? Grist { get; init; }

    /// <summary>The amount needed: all sizes in trade form, "180 (200, 215) m", or for one size all its units, "300 m, 329 yd, 150 g, 2 balls"; null when not said.</summary>
    public string? Needs { get; init; }

    /// <summary>How many strands are held together, "2 strands held together"; null for one.</summary>
    public string? Strands { get; init; }

    /// <summary>A sentence on how the amount was worked out, and how far it may be out; null where it was not.</summary>
    public string? Estimate { get; init; }

    /// <summary>Colour names.</summary>
    public ImmutableArray<string> Colours { get; init; } = [];

    /// <summary>Other yarns that will do.</summary>
    public ImmutableArray<AlternativeView> Alternatives { get; init; } = [];
}

/// <summary>Another yarn that will do.</summary>
public sealed record AlternativeView
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>How it differs; null when not said.</summary>
    public string? Note { get; init; }

    /// <summary>One ball; null when not said.</summary>
    public string? PutUp { get; init; }

    /// <summary>Metres in a gram and yards in an ounce; null when the ball is not known.</summary>
    public string? Grist { get; init; }

    /// <summary>How much of it takes the place of the yarn, where that was worked out: "51 (100) g, 1 (2) balls"; null where it was not.</summary>
    public string? Needs { get; init; }
}

/// <summary>Yarn amounts as a table: a row for each size, a column for each yarn and unit.</summary>
public sealed record AmountsView
{
    /// <summary>The amounts of each size as a sentence.</summary>
    public ImmutableArray<string> Sentences { get; init; } = [];

    /// <summary>The yarns over the columns, with how many columns each has.</summary>
    public required ImmutableArray<AmountYarnView> Yarns { get; init; }

    /// <summary>The columns' units in order ("m", "yd", "g", "balls").</summary>
    public required ImmutableArray<string> Units { get; init; }

    /// <summary>One row a size.</summary>
    public required ImmutableArray<AmountRowView> Rows { get; init; }
}

/// <summary>How the stitches of one part are shared out among the yarns: a row for each size, a column for each yarn.</summary>
public sealed record SharesView
{
    /// <summary>The part's heading; null where the pattern has one part.</summary>
    public string? Part { get; init; }

    /// <summary>The letters of the yarns.</summary>
    public required ImmutableArray<string> Yarns { get; init; }

    /// <summary>One row a size; one row for all where they agree.</summary>
    public required ImmutableArray<AmountRowView> Rows { get; init; }

    /// <summary>The shares of each size as a sentence.</summary>
    public ImmutableArray<string> Sentences { get; init; } = [];

    /// <summary>What the metres and grams beside the shares are; null where there are none.</summary>
    public string? Reading { get; init; }
}

/// <summary>A yarn over some columns of the amounts.</summary>
public sealed record AmountYarnView
{
    /// <summary>Its letters or name.</summary>
    public required string Name { get; init; }

    /// <summary>How many columns it spans.</summary>
    public required int Columns { get; init; }
}

/// <summary>The amounts for one size.</summary>
public sealed record AmountRowView
{
    /// <summary>The size's name; empty when there is one size without a name.</summary>
    public required string Size { get; init; }

    /// <summary>The amounts in the order of the units, without them; an en dash where not known.</summary>
    public required ImmutableArray<string> Cells { get; init; }
}
