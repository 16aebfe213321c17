namespace PatternForge.Rendering;

/// <summary>Turns a compilation into the files of a release.</summary>
public static class Renderer
{
}
