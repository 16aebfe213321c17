namespace PatternForge.Core.Sizing;

/// <summary>What becomes of one place of a source when a size is added.</summary>
public enum SizeChangeKind
{
    /// <summary>It follows by itself, from a formula or a number that is called by its name.</summary>
    Follows,

    /// <summary>The value was given.</summary>
    Given,

    /// <summary>A value is proposed.</summary>
    Proposed,

    /// <summary>The designer must decide.</summary>
    Decide,
}

/// <summary>One place of a source that hangs on the sizes, and what it is to say of the new one.</summary>
/// <param name="Line">Its line in the file, from 1.</param>
/// <param name="Kind">What becomes of it.</param>
/// <param name="What">The key of the header that it stands under, or the words of the body.</param>
/// <param name="Before">As it stands; empty where nothing is to be rewritten.</param>
/// <param name="After">As it would stand; empty where nothing is to be rewritten.</param>
/// <param name="Value">What it says of the new size; null for nothing.</param>
/// <param name="Why">How the value comes about, or what there is to decide.</param>
public sealed record SizeChange(int Line, SizeChangeKind Kind, string What, string Before, string After, string? Value, string Why);
