using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>The sizes and what they measure, metric and inches side by side.</summary>
public sealed record SizesView
{
    /// <summary>The sizes' names, smallest first; one empty name when there is one size without a name.</summary>
    public required ImmutableArray<string> Names { get; init; }

    /// <summary>The names in trade form, "S (M, L)"; empty when there is one size without a name.</summary>
    public required string List { get; init; }

    /// <summary>The number of the size that stands out, from 1; 0 where none does.</summary>
    public int Marked { get; init; }

    /// <summary>The measurements of each size as a sentence, "S: finished bust 80 cm (31½ in), finished length 50 cm (19¾ in)".</summary>
    public ImmutableArray<string> Sentences { get; init; } = [];

    /// <summary>How many sizes there are.</summary>
    public required int Count { get; init; }

    /// <summary>True in an edition that tells measurements in one system of units alone.</summary>
    public bool InOne { get; init; }

    /// <summary>The measurements, body first, then the finished piece.</summary>
    public ImmutableArray<MeasureView> Measures { get; init; } = [];

    /// <summary>The same measurements size by size.</summary>
    public ImmutableArray<SizeRowView> Rows { get; init; } = [];

    /// <summary>The ease it is meant to be worn with; null when not said.</summary>
    public string? Ease { get; init; }

    /// <summary>A sentence on the sample that was made; null when nothing is said of it.</summary>
    public string? Sample { get; init; }

    /// <summary>A sentence on the size and the ease that the photos show; null when nothing is said of it.</summary>
    public string? Shown { get; init; }

    /// <summary>Sentences on what the measurements are taken over and allow for.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];
}

/// <summary>One measurement in all sizes.</summary>
public sealed record MeasureView
{
    /// <summary>"To fit" for the body, "Finished" for the piece.</summary>
    public required string Kind { get; init; }

    /// <summary>What is measured ("head circumference").</summary>
    public required string Name { get; init; }

    /// <summary>The metric unit ("cm"), or the one of an edition in inches alone; empty for plain numbers.</summary>
    public required string MetricUnit { get; init; }

    /// <summary>The other unit ("in"); null when there is none, or in an edition in one system alone.</summary>
    public string? ImperialUnit { get; init; }

    /// <summary>All sizes in trade form with the metric unit: "51 (53.5, 56) cm".</summary>
    public required string Metric { get; init; }

    /// <summary>All sizes in trade form with the other unit: "20 (21, 22) in"; null when there is none.</summary>
    public string? Imperial { get; init; }

    /// <summary>One value a size.</summary>
    public required ImmutableArray<CellView> Cells { get; init; }
}

/// <summary>One size with all its measurements, in the order of the measures.</summary>
public sealed record SizeRowView
{
    /// <summary>The size's name.</summary>
    public required string Size { get; init; }

    /// <summary>One value a measurement.</summary>
    public required ImmutableArray<CellView> Cells { get; init; }
}

/// <summary>One measured value without its units.</summary>
public sealed record CellView
{
    /// <summary>In the metric unit; an en dash where the size has none.</summary>
    public required string Metric { get; init; }

    /// <summary>In the other unit; null when there is none.</summary>
    public string? Imperial { get; init; }
}
