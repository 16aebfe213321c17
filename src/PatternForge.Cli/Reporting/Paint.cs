using PatternForge.Core.Findings;

namespace PatternForge.Cli.Reporting;

/// <summary>Colour for a terminal (the standard ECMA-48 sequences), or none at all.</summary>
internal readonly record struct Paint(bool On)
{
    /// <summary>In the colour of a weight.</summary>
    public string Weight(Severity severity, string text) => Wrap(text, severity switch
    {
        Severity.Error => "1;31",
        Severity.Warning => "1;33",
        _ => "1;36",
    });

    /// <summary>Set strongly.</summary>
    public string Strong(string text) => Wrap(text, "1");

    /// <summary>Set back: frames, places, asides.</summary>
    public string Faint(string text) => Wrap(text, "2");

    private string Wrap(string text, string code) => On && text.Length > 0 ? $"\e[{code}m{text}\e[0m" : text;
}
