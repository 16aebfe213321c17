namespace PatternForge.Rendering.Documents;

/// <summary>A picture as it stands in a release.</summary>
/// <param name="Address">Its address as seen from the page.</param>
/// <param name="Width">Its width in pixels; null when not known.</param>
/// <param name="Height">Its height in pixels; null when not known.</param>
public sealed record ReleasedPicture(string Address, int? Width = null, int? Height = null);
