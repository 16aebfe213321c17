using System.Collections.Immutable;

namespace PatternForge.Core.Work;

/// <summary>The sections between markers that a line leaves, in every size.</summary>
internal static class SectionsAfter
{
    /// <summary>One list a size; empty where no size has any.</summary>
    public static ImmutableArray<ImmutableArray<MarkedSection>> Of(SizeState[] states, int?[] after)
    {
        ImmutableArray<MarkedSection>[]? sections = null;
        for (var size = 0; size < after.Length; size++)
        {
            if (after[size] is not null && states[size] is { IsKnown: true } state && state.Live.Sections is { IsEmpty: false } there)
            {
                (sections ??= [.. after.Select(_ => ImmutableArray<MarkedSection>.Empty)])[size] = there;
            }
        }

        return sections is null ? [] : [.. sections];
    }
}
