using System.Collections.Immutable;
using PatternForge.Core.Reference;

namespace PatternForge.Core.Findings;

/// <summary>How much a finding weighs.</summary>
public enum Severity
{
    /// <summary>Worth knowing; never fails a build.</summary>
    Note,

    /// <summary>Probably wrong, unclear, or not as the trade does it.</summary>
    Warning,

    /// <summary>A maker who follows the page goes wrong, or it cannot be known what is meant.</summary>
    Error,
}

/// <summary>What a finding is about. The hundreds of its code follow this order, from 1.</summary>
public enum Area
{
    /// <summary>The file and its header (1xx).</summary>
    Source = 1,

    /// <summary>How rows are written (2xx).</summary>
    Notation,

    /// <summary>Stitch arithmetic (3xx).</summary>
    Counts,

    /// <summary>Terms and consistency (4xx).</summary>
    Terms,

    /// <summary>Abbreviations (5xx).</summary>
    Abbreviations,

    /// <summary>Gauge and sizes (6xx).</summary>
    Gauge,

    /// <summary>Yarn and materials (7xx).</summary>
    Yarn,

    /// <summary>Parts that a pattern needs (8xx).</summary>
    Completeness,

    /// <summary>Photos, links and files (9xx).</summary>
    Assets,
}

/// <summary>
/// The fixed facts of one kind of finding, declared once: what <c>explain</c> prints and what its tests run.
/// </summary>
/// <param name="Code">Stable for ever: <c>PF</c> and three digits, the first naming the area.</param>
/// <param name="Name">Kebab-case; reads well after the word "accept".</param>
/// <param name="Area">What it is about.</param>
/// <param name="Severity">Its weight; no setting lowers an error.</param>
/// <param name="Summary">One sentence.</param>
/// <param name="Explanation">Why it matters and what to do, in the designer's words.</param>
public sealed record Rule(string Code, string Name, Area Area, Severity Severity, string Summary, string Explanation)
{
    /// <summary>
    /// A source that gets this finding: either a whole file (starts with <c>---</c> or has several paragraphs) or rows alone,
    /// which the tests put under a plain header with a cast-on. A line of carets under a line marks the place.
    /// </summary>
    public required string Bad { get; init; }

    /// <summary>The same, put right: gives no finding of this rule and no error.</summary>
    public required string Good { get; init; }

    /// <summary>Where the figures and definitions of this rule come from; empty where it needs none.</summary>
    public ImmutableArray<Source> Sources { get; init; } = [];
}
