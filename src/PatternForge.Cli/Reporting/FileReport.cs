using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Cli.Reporting;

/// <summary>How many instruction lines a file has and how many ended in each state.</summary>
internal sealed record LineTally(int Instructions, int Checked, int Trusted, int Unread)
{
    /// <summary>No lines at all.</summary>
    public static LineTally None { get; } = new(0, 0, 0, 0);

    /// <summary>Both together.</summary>
    public LineTally Plus(LineTally other) =>
        new(Instructions + other.Instructions, Checked + other.Checked, Trusted + other.Trusted, Unread + other.Unread);
}

/// <summary>An instruction line that was not checked: where it stands, its label or first words, and why.</summary>
internal sealed record OpenLine(int Line, string Words, bool IsTrusted);

/// <summary>All that a report says of one file.</summary>
internal sealed record FileReport
{
    /// <summary>The path as the user knows it.</summary>
    public required string Path { get; init; }

    /// <summary>The pattern's title; null when it has none.</summary>
    public string? Title { get; init; }

    /// <summary>The names of the sizes in order.</summary>
    public required ImmutableArray<string> Sizes { get; init; }

    /// <summary>How much of the file was understood; null for a file that was refused or is no pattern, such as a template.</summary>
    public required LineTally? Coverage { get; init; }

    /// <summary>False for a file that is no pattern: a template, a project file.</summary>
    public bool IsPattern { get; init; } = true;

    /// <summary>The names of the editions that were made and checked beside the pattern as it is written.</summary>
    public ImmutableArray<string> Editions { get; init; } = [];

    /// <summary>The lines that were not checked.</summary>
    public ImmutableArray<OpenLine> OpenLines { get; init; } = [];

    /// <summary>Everything found, by place.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>True when a finding of at least this weight stands that was not accepted.</summary>
    public bool Stands(Severity threshold) => Findings.Any(f => f.Accepted is null && f.Severity >= threshold);

    /// <summary>The names of the sizes that a finding holds for; null when it holds for all.</summary>
    public IReadOnlyList<string>? SizesOf(Finding finding)
    {
        if (finding.Sizes.IsDefaultOrEmpty)
        {
            return null;
        }

        var names = finding.Sizes.Distinct().Order().Where(i => i >= 0 && i < Sizes.Length).Select(i => Sizes[i]).ToArray();
        return names.Length == 0 || names.Length == Sizes.Length ? null : names;
    }
}

/// <summary>How many findings of each weight stand, and how many were accepted.</summary>
internal sealed record Totals(int Errors, int Warnings, int Notes, int Accepted)
{
    /// <summary>Counts the findings of some files.</summary>
    public static Totals Of(IEnumerable<FileReport> files)
    {
        var (errors, warnings, notes, accepted) = (0, 0, 0, 0);
        foreach (var finding in files.SelectMany(f => f.Findings))
        {
            switch (finding)
            {
                case { Accepted: not null }:
                    accepted++;
                    break;
                case { Severity: Severity.Error }:
                    errors++;
                    break;
                case { Severity: Severity.Warning }:
                    warnings++;
                    break;
                default:
                    notes++;
                    break;
            }
        }

        return new(errors, warnings, notes, accepted);
    }
}
