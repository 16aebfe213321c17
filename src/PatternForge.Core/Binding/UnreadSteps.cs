using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Finds what was not understood among the steps of a row, inside brackets and repeats too.</summary>
internal static class UnreadSteps
{
    /// <summary>The stretches in order.</summary>
    public static IEnumerable<UnreadStep> In(IEnumerable<Step> steps) => steps.SelectMany(step => step switch
    {
        UnreadStep unread => [unread],
        GroupStep group => In(group.Body),
        InOneStitchStep group => In(group.Body),
        ShellStep group => In(group.Body),
        InsteadStep group => In(group.Body),
        RepeatStep repeat => In(repeat.Body).Concat(In(repeat.Ending.IsDefault ? [] : repeat.Ending)),
        _ => Enumerable.Empty<UnreadStep>(),
    });
}
