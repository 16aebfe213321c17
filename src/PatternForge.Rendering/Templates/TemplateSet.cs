using System.Collections.Concurrent;
using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;
using PatternForge.Rendering.Documents;
using Scriban;
using Scriban.Parsing;
using Scriban.Runtime;
using Scriban.Syntax;

namespace PatternForge.Rendering.Templates;

/// <summary>What a template made: the text, or findings that say why there is none.</summary>
/// <param name="Text">The text; null when an error stands in its way.</param>
/// <param name="Findings">What is wrong with the templates; empty when all is well.</param>
public sealed record TemplateResult(string? Text, ImmutableArray<Finding> Findings);

/// <summary>
/// The templates of a release: the built-in ones, and files of one's own that replace them one by one. A file is named by its folder
/// (the format) and its name, <c>html/pattern.html</c>. Nothing outside the set is ever read.
/// </summary>
public sealed class TemplateSet
{
    private readonly TemplateFiles _files;
    private readonly ConcurrentDictionary<string, Parsed> _parsed = new(StringComparer.Ordinal);

    [ThreadStatic]
    private static Dictionary<string, EscapingContext>? s_contexts;

    private sealed record Parsed(SourceText Source, Template? Template, ImmutableArray<Finding> Findings);

    private TemplateSet(TemplateFiles files) => _files = files;

    /// <summary>The built-in templates alone.</summary>
    public static TemplateSet Default { get; } = new(TemplateFiles.BuiltIn);

    /// <summary>What is wrong with the files themselves; empty for the built-in ones.</summary>
    public ImmutableArray<Finding> Findings => _files.Findings;

    /// <summary>The files in front of the built-in ones, name and text after each other: whether two sets are the same. Empty for the built-in ones alone.</summary>
    public string Own => _files.Own;

    /// <summary>The built-in templates with those of a folder in front of them.</summary>
    /// <param name="folder">The folder; it has the formats as its sub-folders.</param>
    public static TemplateSet FromFolder(string folder) => new(TemplateFiles.FromFolder(folder));

    /// <summary>The built-in templates with others in front of them, by name.</summary>
    /// <param name="files">Text by name (<c>html/pattern.html</c>).</param>
    public static TemplateSet With(IReadOnlyDictionary<string, string> files) => new(TemplateFiles.With(files));

    /// <summary>Renders a view.</summary>
    /// <param name="name">The template, <c>html/pattern.html</c>.</param>
    /// <param name="view">What it sees.</param>
    /// <param name="landing">How texts land in the format.</param>
    internal TemplateResult Render(string name, PatternView view, Landing landing) => Render(name, ViewScript.Of(view, landing), landing, view.Sizes?.Count ?? 1);

    /// <summary>Renders a shelf.</summary>
    /// <param name="name">The template, <c>html/shelf.html</c>.</param>
    /// <param name="view">What it sees.</param>
    /// <param name="landing">How texts land in the format.</param>
    internal TemplateResult Render(string name, ShelfView view, Landing landing) => Render(name, ViewScript.Of(view, landing), landing);

    /// <summary>Renders the sheet of a test maker.</summary>
    /// <param name="name">The template, <c>html/test-sheet.html</c>.</param>
    /// <param name="view">What it sees.</param>
    /// <param name="landing">How texts land in the format.</param>
    internal TemplateResult Render(string name, TestSheetView view, Landing landing) => Render(name, ViewScript.Of(view, landing), landing);

    /// <summary>A file of the set as it stands; null where there is none of that name.</summary>
    internal string? Plain(string name) => _files.Find(name)?.Text;

    private TemplateResult Render(string name, IScriptObject names, Landing landing, int sizes = 1)
    {
        var folder = name[..(name.IndexOf('/', StringComparison.Ordinal) + 1)];
        if (Find(name) is not { } main)
        {
            var source = new SourceText(name, "");
            return new TemplateResult(null, [new Finding(TemplateRules.PartMissing, source, default, $"there is no template `{name}`")]);
        }

        if (main.Template is null)
        {
            return new TemplateResult(null, main.Findings);
        }

        var contexts = s_contexts ??= new(StringComparer.Ordinal);
        if (!contexts.Remove(folder, out var context))
        {
            context = new EscapingContext(landing.Escape);
        }

        context.Renew();
        context.KnownTemplates = () => _files.NamesIn(folder).Select(n => n[folder.Length..]);
        context.Find = part => Find(folder + part) switch
        {
            null => null,
            { Template: { } template } => template,
            var broken => throw new BrokenPart(broken.Findings),
        };
        context.Marked = text => landing.Sized(new SizedText(text, sizes));
        context.PushGlobal(names);
        context.PushGlobal(new ScriptObject(StringComparer.Ordinal));
        try
        {
            var text = main.Template.Render(context);
            context.PopGlobal();
            context.PopGlobal();
            context.Find = null;
            contexts[folder] = context;
            return new TemplateResult(text, []);
        }
        catch (Exception e) when (e is not (OperationCanceledException or OutOfMemoryException))
        {
            // The context is left behind with the fault: its stacks are not what they were.
            return new TemplateResult(null, Explain(e, main));
        }
    }

    private Parsed? Find(string name) =>
        _parsed.TryGetValue(name, out var parsed) ? parsed
        : _files.Find(name) is { } source ? _parsed.GetOrAdd(name, Parse(name, source))
        : null;

    private static Parsed Parse(string name, SourceText source)
    {
        if (TemplateNesting.TooDeepAt(source.Text) is { } deep)
        {
            var finding = new Finding(TemplateRules.TooMuch, source, new TextSpan(deep, 0), "this template nests deeper than any page needs");
            return new Parsed(source, null, [finding]);
        }

        var template = Template.Parse(source.Text, name, new ParserOptions { ExpressionDepthLimit = 64 });
        if (!template.HasErrors)
        {
            return new Parsed(source, template, []);
        }

        var first = template.Messages.First(m => m.Type == ParserMessageType.Error);
        var span = SpanOf(first.Span, source);
        var word = source.ToString(span).Trim();
        var message = word.Length is > 0 and <= 40 && !word.Contains('\n', StringComparison.Ordinal)
            ? $"the template cannot be read at `{word}`"
            : "the template cannot be read from here on";
        return new Parsed(source, null, [new Finding(TemplateRules.Unclear, source, span, message) { Help = "check that every `{{` has its `}}`, and every `if`, `for` or `capture` its `end`" }]);
    }

    private ImmutableArray<Finding> Explain(Exception fault, Parsed main)
    {
        for (var e = fault; e is not null; e = e.InnerException)
        {
            switch (e)
            {
                case BrokenPart broken:
                    return broken.Findings;
                case TemplateFault told:
                    return [At(told.Rule, told.Span, main, told.OriginalMessage, told.Help)];
            }
        }

        var span = (fault as ScriptRuntimeException)?.Span ?? default;
        var limit = (fault as ScriptRuntimeException)?.OriginalMessage is { } said && (said.Contains("limit", StringComparison.OrdinalIgnoreCase) || said.Contains("recursi", StringComparison.OrdinalIgnoreCase));
        return limit
            ? [At(TemplateRules.TooMuch, span, main, "this asks for more than any page needs", "look for something that calls or includes itself")]
            : [At(TemplateRules.StepFails, span, main, "this command does not work with what it is given", "what a pattern may lack is asked for first: `if sizes`")];
    }

    private Finding At(Rule rule, SourceSpan span, Parsed main, string message, string? help)
    {
        var source = span.FileName is { } file && Find(file) is { } part ? part.Source : main.Source;
        return new Finding(rule, source, SpanOf(span, source), message) { Help = help };
    }

    private static TextSpan SpanOf(SourceSpan span, SourceText source)
    {
        var start = Math.Clamp(span.Start.Offset, 0, source.Text.Length);
        return TextSpan.FromBounds(start, Math.Clamp(span.End.Offset + 1, start, source.Text.Length));
    }

    /// <summary>A part that cannot be read was included: its own findings are what there is to say.</summary>
    private sealed class BrokenPart(ImmutableArray<Finding> findings) : Exception
    {
        public ImmutableArray<Finding> Findings { get; } = findings;
    }
}
