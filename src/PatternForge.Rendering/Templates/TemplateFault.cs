using PatternForge.Core.Findings;
using Scriban.Parsing;
using Scriban.Syntax;

namespace PatternForge.Rendering.Templates;

/// <summary>Stops a template at a place with a rule and words for it. It never leaves this folder: it becomes a finding.</summary>
internal sealed class TemplateFault : ScriptRuntimeException
{
    /// <summary>A fault at a place.</summary>
    public TemplateFault(Rule rule, SourceSpan span, string message, string? help = null)
        : base(span, message) => (Rule, Help) = (rule, help);

    /// <summary>The kind of fault.</summary>
    public Rule Rule { get; }

    /// <summary>What to do about it; null when nothing useful can be said.</summary>
    public string? Help { get; }
}
