using System.Collections.Immutable;
using PatternForge.Core.Plans;

namespace PatternForge.Core.Planning;

/// <summary>The lines of a plan in one size, or why there are none.</summary>
internal sealed record PlanLines(ImmutableArray<string> Lines, string? Reason, string? Help)
{
    /// <summary>For each line the stretch of the work that it belongs to, in rising order: stretches of the same number are the same in every size that has them. Empty where the plan is one stretch.</summary>
    public ImmutableArray<int> Ranks { get; init; } = [];

    /// <summary>The lines that do nothing in this size (`0 times`), by their numbers; they are told where another size needs them.</summary>
    public ImmutableArray<int> Idle { get; init; } = [];

    /// <summary>The same work in steps that other sizes can share; null where it has no such form. Its own may be a longer form that more sizes have; one without lines stands for a form that this size does not have.</summary>
    public PlanLines? Shared { get; init; }

    /// <summary>The lines of a plan, or why there is none.</summary>
    public static PlanLines Of<T>(Planned<T> planned, Func<T, ImmutableArray<string>> lines)
        where T : class => planned.IsPlanned ? new(lines(planned.Plan), null, null) : new([], planned.Reason, planned.Help);

    /// <summary>No lines, and why.</summary>
    public static PlanLines No(string reason, string? help = null) => new([], reason, help);

    /// <summary>These lines behind others, and before others. All have ranks between those of the ones before and of the ones behind.</summary>
    public PlanLines Within(ImmutableArray<string> before, ImmutableArray<string> behind)
    {
        var inner = Ranks.IsEmpty ? [.. Lines.Select(_ => 0)] : Ranks;
        return this with
        {
            Lines = [.. before, .. Lines, .. behind],
            Ranks = [.. before.Select((_, i) => i - 1_000_000), .. inner, .. behind.Select((_, i) => 1_000_000 + i)],
            Idle = [.. Idle.Select(i => i + before.Length)],
            Shared = Shared?.Within(before, behind),
        };
    }

    /// <summary>The lines of one stretch, and behind them those of another.</summary>
    public PlanLines Then(PlanLines next)
    {
        const int Apart = 10_000_000;
        var inner = Ranks.IsEmpty ? [.. Lines.Select(_ => 0)] : Ranks;
        var behind = next.Ranks.IsEmpty ? [.. next.Lines.Select(_ => 0)] : next.Ranks;
        return this with
        {
            Lines = [.. Lines, .. next.Lines],
            Ranks = [.. inner, .. behind.Select(r => r + Apart)],
            Idle = [.. Idle, .. next.Idle.Select(i => i + Lines.Length)],
            Shared = Shared is { } own && next.Shared is { } other ? own.Then(other) : null,
        };
    }
}
