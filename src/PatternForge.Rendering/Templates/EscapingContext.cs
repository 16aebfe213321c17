using System.Runtime.CompilerServices;
using System.Text;
using PatternForge.Core.Findings;
using Scriban;
using Scriban.Functions;
using Scriban.Parsing;
using Scriban.Runtime;
using Scriban.Syntax;

namespace PatternForge.Rendering.Templates;

/// <summary>
/// Runs templates so that everything printed is escaped for its format unless it is <see cref="Ready"/>. Names must exist, loops, nesting and
/// output have limits, and only the template set can be included. The library's own functions are made when a template asks for them, since
/// making them costs more than a page.
/// </summary>
internal sealed class EscapingContext : TemplateContext
{
    private const int MostSteps = 2_000_000;
    private const int MostOutput = 256 * 1024 * 1024;
    private const int DeepestInclude = 16;

    // Kept with the template itself.
    private static readonly ConditionalWeakTable<Template, PlainText> Plain = [];

    private readonly Func<string, string> _escape;
    private int _steps;
    private int _includes;

    /// <summary>A context for one kind of output.</summary>
    public EscapingContext(Func<string, string> escape)
        : base(new ScriptObject(StringComparer.Ordinal), StringComparer.Ordinal)
    {
        _escape = escape;
        StrictVariables = true;
        EnableRelaxedMemberAccess = false;
        LoopLimit = 0;
        LoopLimitQueryable = 0;
        RecursiveLimit = 64;
        ObjectRecursionLimit = 8;
        LimitToString = 0;
        OutputLimit = MostOutput;
        OnOutputLimit = ScriptLimitBehavior.Throw;
        NewLine = "\n";
        AutoIndent = false;
        BuiltinObject.SetValue("include", new Function(1, Include), true);
        BuiltinObject.SetValue("css_string", new Function(1, (_, _, a) => new Ready(Escaping.CssString(ObjectToString(a[0])))), true);
        BuiltinObject.SetValue("target", new Function(1, (_, _, a) => new Ready(Escaping.MarkdownTarget(ObjectToString(a[0])))), true);
        BuiltinObject.SetValue("fence", new Function(1, (_, _, a) => new Ready(Escaping.MarkdownFence(ObjectToString(a[0])))), true);
        BuiltinObject.SetValue("lines", new Function(1, (_, _, a) => new Ready(string.Join('\n', Escaping.Clean(ObjectToString(a[0])).Split('\n').Select(l => '\v' + l)))), true);
        BuiltinObject.SetValue("ready", new Function(1, (_, _, a) => new Ready(ObjectToString(a[0]))), true);
        BuiltinObject.SetValue("marked", new Function(1, (_, _, a) => new Ready(Marked(ObjectToString(a[0])))), true);
        BuiltinObject.SetValue("script", new Function(1, (c, n, a) => new Ready(ScriptText.Of(Include(c, n, a).Text))), true);
        BuiltinObject.SetValue("script_hash", new Function(1, (_, _, a) => new Ready(ScriptText.Hash(ObjectToString(a[0])))), true);
        TryGetVariable = FindVariable;
        TryGetMember = (_, span, target, member, out value) => throw UnknownMember(span, target, member, out value);
    }

    /// <summary>Finds the template that a name means; null when the set has none such. Set before every rendering.</summary>
    public Func<string, Template?>? Find { get; set; }

    /// <summary>Marks the numbers of each size in plain words, as the format does. Set before every rendering.</summary>
    public Func<string, string> Marked { get; set; } = text => text;

    /// <summary>The names of all templates in the folder, to suggest near ones.</summary>
    public Func<IEnumerable<string>> KnownTemplates { get; set; } = () => [];

    /// <inheritdoc/>
    public override TemplateContext Write(SourceSpan span, object? textAsObject) => textAsObject switch
    {
        null => this,
        Ready ready => Write(ready.Text),
        string text => Write(_escape(text)),
        _ => Write(_escape(ObjectToString(textAsObject))),
    };

    /// <inheritdoc/>
    public override string ObjectToString(object? value, bool nested = false) => value is Ready ready ? ready.Text : base.ObjectToString(value, nested) ?? "";

    /// <summary>Forgets what the last rendering did.</summary>
    public void Renew()
    {
        _steps = 0;
        _includes = 0;
    }

    /// <inheritdoc/>
    protected override bool OnStepLoop(ScriptLoopStatementBase loop)
    {
        if (++_steps > MostSteps)
        {
            throw new TemplateFault(TemplateRules.TooMuch, loop.Span, "this loop goes round without end", "check what is meant to stop it");
        }

        return base.OnStepLoop(loop);
    }

    private bool FindVariable(TemplateContext context, SourceSpan span, ScriptVariable variable, out object? value)
    {
        value = variable.Name switch
        {
            "string" => new StringFunctions(),
            "array" => new ArrayFunctions(),
            "math" => new MathFunctions(),
            _ => null,
        };
        if (value is null)
        {
            var near = Suggest.Nearest(variable.Name, [.. ViewScript.Pattern.Keys, .. BuiltinObject.Keys, "string", "array", "math"]);
            throw new TemplateFault(TemplateRules.NameUnknown, span, $"the page has nothing called `{variable.Name}`", NearHelp(near));
        }

        BuiltinObject.SetValue(variable.Name, value, true);
        return true;
    }

    private static TemplateFault UnknownMember(SourceSpan span, object target, string member, out object? value)
    {
        value = null;
        var near = target is IScriptObject known ? Suggest.Nearest(member, known.GetMembers()) : [];
        return target is IScriptObject
            ? new TemplateFault(TemplateRules.NameUnknown, span, $"there is nothing called `{member}` here", NearHelp(near))
            : new TemplateFault(TemplateRules.StepFails, span, $"a plain value has no `{member}`", "print the value itself");
    }

    private Ready Include(TemplateContext context, ScriptNode? caller, ScriptArray arguments)
    {
        var name = ObjectToString(arguments[0]);
        if (Find?.Invoke(name) is not { } template)
        {
            throw new TemplateFault(TemplateRules.PartMissing, caller?.Span ?? default, $"there is no template `{name}` in this folder", NearHelp(Suggest.Nearest(name, KnownTemplates())));
        }

        if (++_includes > DeepestInclude)
        {
            throw new TemplateFault(TemplateRules.TooMuch, caller?.Span ?? default, $"`{name}` is included inside itself over and over", "take out the include that leads back to the same file");
        }

        if (Plain.GetValue(template, PlainTextOf) is { Text: { } plain })
        {
            _includes--;
            return plain;
        }

        var passed = new ScriptArray();
        for (var i = 1; i < arguments.Count; i++)
        {
            passed.Add(arguments[i]);
        }

        var text = RenderTemplate(template, passed, caller);
        _includes--;
        return new Ready(text);
    }

    /// <summary>The text of a template without a single command, a style sheet say; without text where there is one.</summary>
    private static PlainText PlainTextOf(Template template)
    {
        var text = new StringBuilder();
        foreach (var part in template.Page?.Body?.Statements ?? [])
        {
            if (part is not ScriptRawStatement raw)
            {
                return new(null);
            }

            text.Append(raw.Text.ToString());
        }

        return new(new Ready(text.ToString()));
    }

    private static string? NearHelp(IReadOnlyList<string> near) =>
        near.Count == 0 ? "the names are listed in the templates' README" : $"did you mean {string.Join(" or ", near.Select(n => $"`{n}`"))}?";

    private sealed record PlainText(Ready? Text);

    /// <summary>A function that templates can call, made of ordinary code.</summary>
    private sealed class Function(int required, Func<TemplateContext, ScriptNode?, ScriptArray, object?> call) : IScriptCustomFunction
    {
        public int RequiredParameterCount => required;

        public int ParameterCount => required;

        public ScriptVarParamKind VarParamKind => ScriptVarParamKind.Direct;

        public Type ReturnType => typeof(object);

        public ScriptParameterInfo GetParameterInfo(int index) => new(typeof(object), index < required ? "value" : "more");

        public object? Invoke(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement) => call(context, callerContext, arguments);

        public ValueTask<object?> InvokeAsync(TemplateContext context, ScriptNode? callerContext, ScriptArray arguments, ScriptBlockStatement? blockStatement) =>
            new(call(context, callerContext, arguments));
    }
}
