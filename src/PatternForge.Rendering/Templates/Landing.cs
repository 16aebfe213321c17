using PatternForge.Rendering.Documents;

namespace PatternForge.Rendering.Templates;

/// <summary>How texts that are more than plain words land in a format, ready to be printed as they are.</summary>
/// <param name="Escape">Plain words.</param>
/// <param name="Prose">A designer's Markdown.</param>
/// <param name="Sized">Words with numbers for the sizes.</param>
/// <param name="Picture">A drawing, where the format can hold one.</param>
internal sealed record Landing(Func<string, string> Escape, Func<ProseText, string> Prose, Func<SizedText, string> Sized, Func<PictureText, string> Picture);
