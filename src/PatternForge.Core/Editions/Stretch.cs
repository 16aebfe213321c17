using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>What kind of words a stretch of the source holds.</summary>
internal enum StretchKind
{
    /// <summary>An instruction line, or words of the header in the notation of rows.</summary>
    Row,

    /// <summary>Words to the maker.</summary>
    Prose,

    /// <summary>A heading.</summary>
    Heading,

    /// <summary>The name or meaning of an abbreviation or of a special stitch.</summary>
    Definition,

    /// <summary>A needle or hook of the header.</summary>
    Tool,

    /// <summary>The weight of a yarn.</summary>
    Weight,

    /// <summary>The letters by which a yarn goes in the rows.</summary>
    YarnLabel,
}

/// <summary>A stretch of the source that a maker reads.</summary>
internal readonly record struct Stretch(TextSpan Span, StretchKind Kind);
