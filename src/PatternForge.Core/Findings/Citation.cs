using PatternForge.Core.Reference;

namespace PatternForge.Core.Findings;

/// <summary>Sees to it that a finding which rests on a published table or a handbook names it: in its message, or at the end of its help.</summary>
internal static class Citation
{
    /// <summary>The finding with the first table of its rule named, unless one is named already.</summary>
    public static Finding Of(Finding finding)
    {
        var sources = finding.Rule.Sources;
        if (sources.IsDefaultOrEmpty)
        {
            return finding;
        }

        foreach (var source in sources)
        {
            if (Names(finding.Message, source) || (finding.Help is { } said && Names(said, source)))
            {
                return finding;
            }
        }

        // What the trade knows at large is no table to look up.
        foreach (var source in sources)
        {
            if (source.Name != Reference.Sources.CommonPractice.Name)
            {
                return finding with { Help = finding.Help is { Length: > 0 } help ? $"{help} ({source})" : $"see {source}" };
            }
        }

        return finding;
    }

    /// <summary>True when a text names a source, by its whole name or by what stands before its first comma or bracket.</summary>
    public static bool Names(string text, Source source)
    {
        var name = source.Name.AsSpan();
        var end = name.IndexOfAny(',', '(');
        return text.AsSpan().Contains(end > 0 ? name[..end].TrimEnd() : name, StringComparison.OrdinalIgnoreCase);
    }
}
