namespace PatternForge.Rendering.Templates;

/// <summary>Text that already suits the format it lands in, and so is printed as it is. Everything else is escaped.</summary>
/// <param name="Text">The text.</param>
internal sealed record Ready(string Text)
{
    /// <inheritdoc/>
    public override string ToString() => Text;
}
