namespace PatternForge.Core.Reference;

/// <summary>Where a figure or a definition comes from: a standard, a handbook, or the trade at large.</summary>
/// <param name="Name">What a reader looks for: publisher and title, edition or year included.</param>
/// <param name="IsFromMemory">True when the figures were set down from memory and not checked against the text: they may drive a note or a warning, never an error.</param>
public sealed record Source(string Name, bool IsFromMemory = false)
{
    /// <summary>As it is cited: the name, and that the figures are from memory where they are.</summary>
    public override string ToString() => IsFromMemory ? Name + " (from memory)" : Name;
}
