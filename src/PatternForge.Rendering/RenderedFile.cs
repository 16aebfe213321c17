using System.Collections.Immutable;
using System.Text;
using PatternForge.Core.Findings;

namespace PatternForge.Rendering;

/// <summary>One file of a release.</summary>
/// <param name="Name">Its name relative to the folder of the release, with forward slashes.</param>
/// <param name="Text">Its text; lines end with LF.</param>
public sealed record RenderedFile(string Name, string Text)
{
    /// <summary>The bytes to write: UTF-8 without a byte-order mark.</summary>
    public byte[] ToBytes() => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(Text);
}

/// <summary>What came of rendering: files, or findings about the templates that say why there are none.</summary>
/// <param name="Files">The files; empty when a template has an error.</param>
/// <param name="Findings">What is wrong with the templates; empty when all is well.</param>
public sealed record RenderResult(ImmutableArray<RenderedFile> Files, ImmutableArray<Finding> Findings);
