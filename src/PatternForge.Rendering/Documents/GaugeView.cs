namespace PatternForge.Rendering.Documents;

/// <summary>One gauge.</summary>
public sealed record GaugeView
{
    /// <summary>Its name where there are several; null for the only one.</summary>
    public string? Name { get; init; }

    /// <summary>Stitches and rows: "22 sts and 30 rounds"; null when neither is said.</summary>
    public string? Counts { get; init; }

    /// <summary>What they are counted over, "10 × 10 cm"; null when not said.</summary>
    public string? Over { get; init; }

    /// <summary>The same in inches, "4 × 4 in"; null when not said, or in an edition in one system alone.</summary>
    public string? OverInches { get; init; }

    /// <summary>The stitch pattern it is measured in; null when not said.</summary>
    public string? Stitch { get; init; }

    /// <summary>The needle or hook; null when not said.</summary>
    public string? Tool { get; init; }

    /// <summary>"after blocking" or "before blocking"; null when not said.</summary>
    public string? State { get; init; }

    /// <summary>All of it in one line, as the trade writes it.</summary>
    public required string Sentence { get; init; }
}
