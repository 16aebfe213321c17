using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>A kind of file that a pattern can be released as. What the command line offers comes from <see cref="All"/>.</summary>
public abstract class OutputFormat
{
    /// <summary>Every format, the usual one first.</summary>
    public static ImmutableArray<OutputFormat> All { get; } = [new HtmlFormat(), new MarkdownFormat(), new TextFormat(), new JsonFormat()];

    /// <summary>The web page.</summary>
    public static OutputFormat Html => All[0];

    /// <summary>The Markdown text.</summary>
    public static OutputFormat Markdown => All[1];

    /// <summary>What is written where nothing is said.</summary>
    public static ImmutableArray<OutputFormat> Usual { get; } = [Html, Markdown];

    /// <summary>The name it is asked for by ("html").</summary>
    public abstract string Name { get; }

    /// <summary>The end of its files' names, with the dot.</summary>
    public abstract string Extension { get; }

    /// <summary>What it is, in a few words.</summary>
    public abstract string Description { get; }

    /// <summary>What it is to who buys the pattern, in a few words.</summary>
    public abstract string ForBuyers { get; }

    /// <summary>The format of a name, ignoring case; null when there is none such.</summary>
    public static OutputFormat? Find(string name) => All.FirstOrDefault(f => string.Equals(f.Name, name.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>Writes a pattern.</summary>
    /// <param name="compilation">The pattern.</param>
    /// <param name="view">The same as pages show it.</param>
    /// <param name="templates">The templates.</param>
    internal abstract TemplateResult Write(Compilation compilation, PatternView view, TemplateSet templates);
}
