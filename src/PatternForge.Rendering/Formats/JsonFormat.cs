using PatternForge.Core;
using PatternForge.Rendering.Data;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>The whole pattern for other programs. No template has a part in it.</summary>
internal sealed class JsonFormat : OutputFormat
{
    /// <inheritdoc/>
    public override string Name => "json";

    /// <inheritdoc/>
    public override string Extension => ".json";

    /// <inheritdoc/>
    public override string Description => "the whole pattern as data, for other programs";

    /// <inheritdoc/>
    public override string ForBuyers => "the pattern as data, for programs";

    /// <inheritdoc/>
    internal override TemplateResult Write(Compilation compilation, PatternView view, TemplateSet templates) => new(PatternJson.Of(compilation, view), []);
}
