using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Rendering.Templates;

/// <summary>What can be wrong with a template of one's own (910 to 919). The examples are templates, not patterns.</summary>
public static class TemplateRules
{
    /// <summary>The template cannot be read.</summary>
    public static Rule Unclear { get; } = new(
        "PF910", "template-unclear", Area.Assets, Severity.Error,
        "A template cannot be read at this place.",
        "A template is text with commands between `{{` and `}}`. Every `{{` needs its `}}`, and every `if`, `for`, `while`, `case`, `capture`, `func` and `with` needs its `end`. "
        + "The place named is where the reading stopped; the slip is often a little before it.")
    {
        Bad = "<h1>{{ title ) }}</h1>",
        Good = "<h1>{{ title }}</h1>",
    };

    /// <summary>A name that the view does not have.</summary>
    public static Rule NameUnknown { get; } = new(
        "PF911", "template-name-unknown", Area.Assets, Severity.Error,
        "A template asks for something that the page does not have.",
        "Templates see the names listed in the templates' README, and names that they set themselves before using them. A name that is not there would print nothing, "
        + "so a misspelt one is told instead of passed over.")
    {
        Bad = "<h1>{{ titel }}</h1>",
        Good = "<h1>{{ title }}</h1>",
    };

    /// <summary>An include of a file that is not in the set.</summary>
    public static Rule PartMissing { get; } = new(
        "PF912", "template-part-missing", Area.Assets, Severity.Error,
        "A template includes a file that is not among the templates.",
        "`include` takes the name of a file in the same folder of the templates, such as `include \"sizes.html\"`. Files outside the templates are never read.")
    {
        Bad = "{{ include \"sizs.html\" }}",
        Good = "{{ include \"sizes.html\" }}",
    };

    /// <summary>Work without end.</summary>
    public static Rule TooMuch { get; } = new(
        "PF913", "template-too-much", Area.Assets, Severity.Error,
        "A template goes round without end, or nests or writes more than any page needs.",
        "Loops, files that include themselves, nesting and the size of the page have limits far above what a pattern needs. Look for a `while` whose end never comes, or for "
        + "a file that includes itself.")
    {
        Bad = "{{ while true }}x{{ end }}",
        Good = "{{ for photo in photos }}x{{ end }}",
    };

    /// <summary>A command that does not work out.</summary>
    public static Rule StepFails { get; } = new(
        "PF914", "template-step-fails", Area.Assets, Severity.Error,
        "A command in a template does not work with what it is given.",
        "The command was read, but it cannot be carried out: a list where one value is needed, a part of something that is not there. What may be missing from a pattern, such as "
        + "`sizes` or `amounts`, is asked for first: `if sizes`.")
    {
        Bad = "{{ title.length.words }}",
        Good = "{{ title }}",
    };

    /// <summary>A file that nothing asks for.</summary>
    public static Rule NotUsed { get; } = new(
        "PF915", "template-not-used", Area.Assets, Severity.Warning,
        "A file among the templates is used by no page.",
        "A file replaces the built-in template of the same folder and name; any other file counts only when a template includes it. One that nothing asks for is most "
        + "likely misspelt, and the built-in one is used in its place.")
    {
        Bad = "html/patern.html",
        Good = "html/pattern.html",
    };

    /// <summary>A file that cannot be read as text.</summary>
    public static Rule Unreadable { get; } = new(
        "PF916", "template-unreadable", Area.Assets, Severity.Error,
        "A template file cannot be read.",
        "Templates are text in UTF-8, up to 256 KiB each and 200 files in all.")
    {
        Bad = "html/pattern.html with 300 KiB",
        Good = "html/pattern.html with 3 KiB",
    };

    /// <summary>All of them in the order of their codes.</summary>
    public static ImmutableArray<Rule> All { get; } = [Unclear, NameUnknown, PartMissing, TooMuch, StepFails, NotUsed, Unreadable];
}
