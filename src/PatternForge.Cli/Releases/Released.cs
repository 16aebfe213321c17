using System.Collections.Immutable;
using PatternForge.Core.Findings;

namespace PatternForge.Cli.Releases;

/// <summary>What came of releasing one pattern; the compilation itself is not kept, so that thousands of patterns cost no more memory than a few.</summary>
/// <param name="Worked">What was read and found.</param>
/// <param name="Written">The files that were written, below the folder of the release.</param>
/// <param name="Remarks">What is worth knowing of its photos, a sentence each.</param>
/// <param name="Problems">What could not be written, a sentence each.</param>
/// <param name="TemplateFindings">What is wrong with the templates.</param>
internal sealed record Released(
    WorkedFile Worked, ImmutableArray<string> Written, ImmutableArray<string> Remarks, ImmutableArray<string> Problems, ImmutableArray<Finding> TemplateFindings)
{
    /// <summary>True when it was not written because its project file has errors: what it would say of the studio cannot be known.</summary>
    public bool IsRefusedForHouse { get; init; }

    /// <summary>True when no browser was found that prints documents: the pages made for print were written in their place.</summary>
    public bool LacksBrowser { get; init; }

    /// <summary>True when the release of an earlier run is whole and would come out the same: nothing was written.</summary>
    public bool IsUnchanged { get; init; }

    /// <summary>Its picture on a shelf; null where it has none.</summary>
    public ShelfPicture? Picture { get; init; }

    /// <summary>Nothing was written.</summary>
    public static Released Nothing(WorkedFile worked) => new(worked, [], [], [], []);
}
