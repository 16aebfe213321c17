using PatternForge.Core.Findings;

namespace PatternForge.Cli.Reporting;

/// <summary>The words that other programs rely on.</summary>
internal static class Words
{
    /// <summary>A weight: error, warning, note.</summary>
    public static string Of(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    /// <summary>An area: source, notation, counts, terms, abbreviations, gauge, yarn, completeness, assets.</summary>
    public static string Of(Area area) => area switch
    {
        Area.Source => "source",
        Area.Notation => "notation",
        Area.Counts => "counts",
        Area.Terms => "terms",
        Area.Abbreviations => "abbreviations",
        Area.Gauge => "gauge",
        Area.Yarn => "yarn",
        Area.Completeness => "completeness",
        _ => "assets",
    };

    /// <summary>"1 error", "3 errors".</summary>
    public static string Counted(int count, string what) => $"{count} {what}{(count == 1 ? "" : "s")}";

    /// <summary>What stands below a finding's message, each on a line of its own: how the count comes about, and the likely repair.</summary>
    public static string Advice(Finding finding) => (finding.Reckoning is null ? "" : "\nworked: " + finding.Reckoning) + (finding.Help is null ? "" : "\n" + finding.Help);

    /// <summary>The same text with lone halves of surrogate pairs replaced, so that every encoder takes it.</summary>
    public static string WellFormed(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogate(text[i]))
            {
                if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                {
                    i++;
                }
                else
                {
                    return string.Concat(text.EnumerateRunes());
                }
            }
        }

        return text;
    }
}
