using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Says what did not add up in a row: one finding for a kind and place, with the sizes that it holds for.</summary>
internal sealed class RowMessages
{
    private const int MostLabels = 6;

    private readonly SizeSet _sizes;
    private readonly FindingBag _bag;
    private readonly RowOrder _order;
    private readonly List<Pending> _pending = [];
    private readonly HashSet<(int Pattern, string Stitches)> _misfits = [];
    private Finding? _noMarker;

    public RowMessages(SizeSet sizes, FindingBag bag, RowOrder order)
    {
        _sizes = sizes;
        _bag = bag;
        _order = order;
    }

    /// <summary>A wrong claim whose help line waits for what the next claims say.</summary>
    private sealed class Pending
    {
        public required Finding Finding { get; set; }

        public required ImmutableArray<int> Sizes { get; init; }

        public int LaterAgree { get; set; }
    }

    public void BeginSection()
    {
        _misfits.Clear();
        Flush();
    }

    /// <summary>Writes the findings that were waiting for what comes after them.</summary>
    public void Flush()
    {
        _order.Flush();
        FlushMarker();
        foreach (var pending in _pending)
        {
            var help = pending.LaterAgree > 0
                ? "the counts stated after this one go on from the stated number, so it is the row that is wrong rather than the count"
                : pending.Finding.Help;
            _bag.Add(pending.Finding with { Help = help });
        }

        _pending.Clear();
    }

    private void FlushMarker()
    {
        if (_noMarker is { } finding)
        {
            _bag.Add(finding);
            _noMarker = null;
        }
    }

    /// <summary>One marker that was left out is missed by every row that goes to it: the first row tells, the others are named beside it.</summary>
    private void MarkerMissing(Finding finding)
    {
        if (_noMarker is null)
        {
            _noMarker = finding;
        }
        else if (_noMarker.Labels.Length < MostLabels && _noMarker.Span != finding.Span)
        {
            _noMarker = _noMarker with { Labels = _noMarker.Labels.Add(new Label(finding.Span, "goes to it too")) };
        }
    }

    /// <summary>Stated minus worked; null when they agree or one of them is not known.</summary>
    public static (int Stated, int Worked)? Differs(Claim claim, int size, RowOutcome outcome)
    {
        if (!claim.IsTrusted || claim.Values[size] is not { } stated || outcome.After is not { } after)
        {
            return null;
        }

        if (claim.Of is { } kind)
        {
            return OfKind(kind, stated, outcome);
        }

        if (claim.Kind == ClaimKind.Total)
        {
            // Some count the chains of the spaces as stitches; accepted where only that fits.
            return stated == after || (outcome.Made is { ChainsInSpaces: > 0 and var chains } && stated == after + chains) ? null : (stated, after);
        }

        return outcome.Before is { } before && after - before != stated ? (stated, after - before) : null;
    }

    private static (int Stated, int Worked)? OfKind(Counted counted, int stated, RowOutcome outcome) =>
        outcome.Made is { } row && CrochetCounts.Of(counted, row) is [var worked, ..] fair && !fair.Contains(stated) ? (stated, worked) : null;

    /// <summary>Reports a row's problems, claims and readings.</summary>
    public void Report(BoundRow row, int[] active, RowOutcome[] outcomes, SizeState[] states)
    {
        if (_noMarker is not null && row.Steps.Any(s => s is MarkerStep { Action: MarkerAction.Place }))
        {
            FlushMarker();
        }

        if (Array.Exists(outcomes, o => o.IsWrong))
        {
            Problems(row, active, outcomes, states);
        }

        if (row.Steps.Any(s => s is RepeatStep { To: not null }))
        {
            for (var i = 0; i < active.Length; i++)
            {
                states[active[i]].IsBorneOut |= outcomes[i] is { IsWrong: false, After: not null } && states[active[i]] is { Drift: 0, Suspected: null };
            }
        }

        var told = _pending.Count;
        foreach (var claim in row.Claims)
        {
            Claim(row, claim, active, outcomes, states);
            OneOfARow(told);
            if (!claim.Sections.IsEmpty)
            {
                SectionMessages.Report(claim, active, states, _sizes, _bag);
            }
        }

        if (Array.Exists(outcomes, o => o.Readings.Count > 0))
        {
            Readings(row, active, outcomes);
        }

        if (Array.Find(outcomes, o => o.LabelRows is not null)?.LabelRows is { } rows)
        {
            _bag.Add(WorkRules.LabelRowsDiffer, row.LabelOrigin, $"the label covers {rows.Label} rows, but the words make {rows.Made}", "correct the label or the number of times");
        }
    }

    private void Problems(BoundRow row, int[] active, RowOutcome[] outcomes, SizeState[] states)
    {
        var groups = active.Zip(outcomes)
            .SelectMany(pair => pair.Second.Problems.Select(problem => (Size: pair.First, Problem: problem)))
            .Where(p => p.Problem.Kind != ProblemKind.Unknown && !FollowsFromDrift(p.Problem, states[p.Size]))
            .GroupBy(p => (p.Problem.Kind, p.Problem.Span, p.Problem.Pass));
        foreach (var group in groups)
        {
            Problem(row, [.. group.Select(g => g.Size)], [.. group.Select(g => g.Problem)]);
            foreach (var (size, problem) in group)
            {
                Remember(states[size], problem);
            }
        }
    }

    /// <summary>True for a target that is reached from the count stated before, which has been told to be wrong, and for words that name it again: one mistake, one message.</summary>
    private static bool FollowsFromDrift(Problem problem, SizeState state) => problem.Kind switch
    {
        ProblemKind.TargetMissed => problem.C != 0 && state.Explains(more => (problem.A - problem.B - more) % problem.C == 0),
        ProblemKind.NamedCount or ProblemKind.TooFew => state.Explains(more => problem.A - problem.B == more),
        ProblemKind.LeftOver => state.Explains(more => problem.A - problem.B == more),
        ProblemKind.Misfit => problem.A > 0 && state.Explains(more => problem.B + more > 0 && (problem.B + more) % problem.A == 0),
        _ => false,
    };

    /// <summary>What a wrong number, or a repeat that did not fit, says of the counts that follow.</summary>
    private static void Remember(SizeState state, Problem problem)
    {
        if (problem.Kind == ProblemKind.NamedCount)
        {
            state.Drifts(problem.A, problem.B);
        }
        else if (problem is { Kind: ProblemKind.Misfit, A: > 1, D: > 0 } && problem.D < problem.A && !state.IsBorneOut)
        {
            state.Suspected ??= (problem.D, problem.A - problem.D);
        }
    }

    private void Problem(BoundRow row, ImmutableArray<int> sizes, ImmutableArray<Problem> problems)
    {
        var first = problems[0];
        if (first.Pattern is { } pattern && !_misfits.Add((pattern.Section, Values(p => p.A))))
        {
            return; // told before, and the stitches are still the same
        }

        var subject = Subject(first.Inner ?? row, sizes, first.Pass);
        var several = (first.Inner ?? row).Numbers.Length > 1;
        string Values(Func<Problem, int> of) => List(sizes, problems.Select(of));
        var (rule, message, help) = first.Kind switch
        {
            ProblemKind.TooFew when problems.Any(p => p.A <= p.B) => (WorkRules.TooFewStitches, $"{subject} {(several ? "need" : "needs")} {Values(p => p.C)} stitch{(problems.All(p => p.C == 1) ? "" : "es")} more than can be reached from where it begins", "check where the row before it turned, and the numbers of this row"),
            ProblemKind.TooFew => (WorkRules.TooFewStitches, $"{subject} {(several ? "need" : "needs")} {Values(p => p.A)} stitches, but there are {Values(p => p.B)}", $"take {Values(p => p.A - p.B)} out of the row, or check the count before it"),
            ProblemKind.LeftOver when first.C == 1 => (WorkRules.BareBracket, $"{subject} {(several ? "work" : "works")} its bracket once and {(several ? "leave" : "leaves")} {Values(p => p.B - p.A)} of {Values(p => p.B)} stitches", "write how often the bracket is worked, or \"to end\""),
            ProblemKind.LeftOver => (WorkRules.StitchesLeft, $"{subject} {(several ? "use" : "uses")} {Values(p => p.A)} of {Values(p => p.B)} stitches and {(several ? "leave" : "leaves")} {Values(p => p.B - p.A)}", "say what happens to them (\"k to end\", \"turn\"), or check the numbers of the row"),
            ProblemKind.Misfit => (WorkRules.RepeatDoesNotFit, $"{Inner(first)}the repeat takes {Values(p => p.A)} sts; {Values(p => p.B)} {(problems.All(p => p.B == 1) ? "st is" : "sts are")} {Values(p => p.C)} repeat{(problems.All(p => p.C == 1) ? "" : "s")} and {Values(p => p.D)} over{In(sizes)}", MisfitHelp(problems)),
            ProblemKind.NoMarker => (WorkRules.NoMarker, $"{subject} {(several ? "go" : "goes")} to a marker, but no marker is left between here and the end", "place the marker in an earlier row, or check how often the repeat is worked"),
            ProblemKind.Endless => (WorkRules.RepeatTakesNothing, "this repeat uses none of the stitches there are and would never end", "say how often it is worked"),
            ProblemKind.TooLarge => (WorkRules.TooLarge, TooLarge(first), "check the number for a slip of the keys"),
            ProblemKind.NamedCount => (WorkRules.NamedCountDiffers, $"the words name {Values(p => p.A)} stitches, but there are {Values(p => p.B)}{In(sizes)}", "check the number, or the rows before it"),
            ProblemKind.TargetMissed => (WorkRules.TargetMissed, $"{Values(p => p.A)} stitches cannot be reached from {Values(p => p.B)}{In(sizes)}: {Changes(problems[0].C)}", TargetHelp(first)),
            ProblemKind.PatternMisfit => (WorkRules.StitchPatternDoesNotFit, $"{first.Pattern!.Name} {(first.Pattern.Multiple == 0 ? "is a panel" : "takes a multiple")} of {first.Pattern.InTradeForm} sts; there are {Values(p => p.A)}{In(sizes)}; {NearestFits(first.Pattern, sizes, problems)}", "change the edge stitches or the stitches cast on, or check the multiple in the heading"),
            ProblemKind.SideDiffers => (WorkRules.SecondSideDiffers, $"the second side begins with {Values(p => p.A)} stitches{In(sizes)}, but the first began with {Values(p => p.B)}", "check the stitches bound off or held between them"),
            ProblemKind.NeedleSum => (WorkRules.NeedlesDoNotAddUp, $"the needles add up to {Values(p => p.A)} stitches, but there are {Values(p => p.B)}{In(sizes)}", "check the numbers of the needles"),
            ProblemKind.Exhausted => (WorkRules.ShapedAway, $"{Values(p => p.A)} stitches are to go, but there are only {Values(p => p.B)}{In(sizes)}", "check how many rows or times the shaping is worked"),
            ProblemKind.NoSuchPlace => (WorkRules.NoSuchPlace, NoSuchPlace(first, subject, several), "check the row below, or the length of the chain"),
            _ => (WorkRules.UnknownReference, first.A > 0 ? $"{(row.IsRound == true ? "round" : "row")} {first.A} has not been given" : "the rows meant here have not been given", "give the row, or correct the number or name"),
        };
        var finding = new Finding(rule, _bag.Source, first.Span, message) { Sizes = Concerned(sizes), Help = help };
        if (first.Kind == ProblemKind.NoMarker)
        {
            MarkerMissing(finding);
            return;
        }

        if (rule == WorkRules.UnknownReference && first.A > 0 && _order.TakeSkipped(first.A) is { } skipped)
        {
            finding = finding with { Labels = [skipped] };
        }

        _bag.Add(finding);
    }

    private static string Inner(Problem problem) => problem.Inner is { } inner ? $"{Name(inner)}, worked again: " : "";

    private string Subject(BoundRow row, ImmutableArray<int> sizes, int pass) => $"{Name(row)}{(pass > 0 ? $", worked again for time {pass}," : "")}{In(sizes)}";

    private static string Name(BoundRow row)
    {
        var word = row.IsRound == true ? "round" : "row";
        return row.Numbers.Length == 1 ? $"{word} {row.Numbers[0]}" : row.Numbers.Length > 1 ? $"{word}s {row.Numbers[0]}-{row.Numbers[^1]}" : row.Name is { } name ? $"the {name.Replace(" row", $" {word}", StringComparison.Ordinal)}" : $"this {word}";
    }

    private string In(ImmutableArray<int> sizes) => _sizes.Describe(sizes) is { Length: > 0 } words ? $" in {words}" : "";

    private ImmutableArray<int> Concerned(ImmutableArray<int> sizes) => sizes.Length == _sizes.Count ? [] : [.. sizes.Order()];

    private string List(ImmutableArray<int> sizes, IEnumerable<int> values)
    {
        var list = values.ToArray();
        if (list.Distinct().Count() == 1)
        {
            return list[0].ToString(CultureInfo.InvariantCulture);
        }

        var words = list.Select(v => v.ToString(CultureInfo.InvariantCulture)).ToArray();
        return sizes.Length == _sizes.Count ? $"{words[0]} ({string.Join(", ", words[1..])})" : words.Length == 2 ? $"{words[0]} and {words[1]}" : $"{string.Join(", ", words[..^1])} and {words[^1]}";
    }

    /// <summary>"nearest that fit: 44 or 50 in S, 50 or 56 in M".</summary>
    private string NearestFits(StitchPattern pattern, ImmutableArray<int> sizes, ImmutableArray<Problem> problems)
    {
        var each = sizes.Zip(problems, (size, problem) => (Size: size, Near: pattern.Nearest(problem.A))).Select(n => (n.Size, Words: n.Near.Below is { } below && below != n.Near.Above ? $"{below} or {n.Near.Above}" : $"{n.Near.Above}")).ToArray();
        return each.Length == 1 || each.All(e => e.Words == each[0].Words)
            ? $"nearest that fit: {each[0].Words}"
            : $"nearest that fit: {string.Join(", ", each.Select(e => $"{e.Words} in {_sizes.Names[e.Size]}"))}";
    }

    private static string MisfitHelp(ImmutableArray<Problem> problems)
    {
        var first = problems[0];
        if (problems.Any(p => p.A != first.A || p.D != first.D) || first.A <= 0 || first.D <= 0)
        {
            return "change the edge stitches, the repeat, or the stitches cast on";
        }

        return $"{first.D} more at the edges, or {first.A - first.D} more stitches in all, would make it fit";
    }

    private static string NoSuchPlace(Problem problem, string subject, bool several)
    {
        var thing = problem.Text ?? "chain space";
        var named = problem.A > 0 && thing != "chain" ? $"ch-{problem.A} {(thing == "chain space" ? "space" : thing)}" : thing;
        return problem.B > 0 ? $"there is no {named}: the round begins with ch {problem.B}" : $"{subject} {(several ? "go" : "goes")} into a {named}, but there is no such {(thing == "chain" ? "chain" : "place")} to work into";
    }

    private static string TooLarge(Problem problem) => problem.A switch
    {
        0 => "this line makes more stitches than any piece has (100,000 are worked)",
        1 => "this line stands for more rows than any piece has (10,000 are worked)",
        _ => "this line takes more steps than can be worked",
    };

    private static string Changes(int change) => change == 0 ? "the rows do not change the count" : $"each time {(change > 0 ? "adds" : "takes away")} {Math.Abs(change)}";

    private static string TargetHelp(Problem problem)
    {
        if (problem.C == 0)
        {
            return "check which rows are repeated";
        }

        var times = (problem.A - problem.B) / problem.C;
        var near = problem.B + (times * problem.C);
        return times < 0 ? "the shaping goes the other way" : $"{near} or {near + problem.C} can be reached";
    }

    /// <summary>Several counts of one row that differ in the same sizes are one mistake: the first tells it, the others stand beside it.</summary>
    private void OneOfARow(int from)
    {
        if (_pending.Count - from < 2 || !_pending[from].Sizes.SequenceEqual(_pending[^1].Sizes) || _pending[from].Finding.Rule != _pending[^1].Finding.Rule)
        {
            return;
        }

        var (first, other) = (_pending[from].Finding, _pending[^1].Finding);
        _pending.RemoveAt(_pending.Count - 1);
        _pending[from].Finding = first with { Labels = first.Labels.Add(new Label(other.Span, other.Message)) };
    }

    private void Claim(BoundRow row, Claim claim, int[] active, RowOutcome[] outcomes, SizeState[] states)
    {
        List<int> sizes = [];
        List<int> stated = [];
        List<int> worked = [];
        for (var i = 0; i < active.Length; i++)
        {
            var size = active[i];
            if (Differs(claim, size, outcomes[i]) is not var (said, made))
            {
                if (claim is { IsTrusted: true, Kind: ClaimKind.Total, Of: null or { Kind: CountedKind.Stitch } } && claim.Values[size] is not null)
                {
                    states[size].Agrees();
                    states[size].IsBorneOut |= outcomes[i].After is not null;
                }

                continue;
            }

            if (claim is { Kind: ClaimKind.Total, Of: null or { Kind: CountedKind.Stitch } } && states[size].GoesOn(said, made))
            {
                states[size].Drifts(said, made);
                // It goes on from a count reported before: told once.
                if (_pending.LastOrDefault(p => p.Sizes.Contains(size)) is { } pending)
                {
                    pending.LaterAgree++;
                }

                continue;
            }

            if (claim is { Kind: ClaimKind.Total, Of: null or { Kind: CountedKind.Stitch } })
            {
                states[size].Drifts(said, made);
            }
            else if (claim.Kind == ClaimKind.Change && !row.Claims.Any(c => c.Kind == ClaimKind.Total))
            {
                states[size].Drift += said - made; // the totals after it may go on from the change that was meant
            }

            sizes.Add(size);
            stated.Add(said);
            worked.Add(made);
        }

        if (sizes.Count == 0)
        {
            return;
        }

        ImmutableArray<int> failing = [.. sizes];
        var finding = claim.Kind == ClaimKind.Total
            ? new Finding(WorkRules.StatedCountDiffers, _bag.Source, claim.Origin, $"{Name(row)} {(row.Numbers.Length > 1 ? "state" : "states")} {List(failing, stated)} {Noun(claim)}{In(failing)}, but {(row.Numbers.Length > 1 ? "make" : "makes")} {Instead(claim, failing, worked, states) ?? List(failing, worked)}")
            : new Finding(WorkRules.StatedChangeDiffers, _bag.Source, claim.Origin, $"{Name(row)} states {Change(failing, stated)}{In(failing)}, but the change is {Change(failing, worked)}");
        var help = failing.Length < active.Length && active.Length > 1 ? $"the other sizes agree; check the number for {_sizes.Describe(failing)}"
            : Swapped(stated, worked) is { } meant ? $"two figures may have changed places: {meant}"
            : SameEverywhere(claim, stated, worked) ?? $"check the count, or the row before it ({List(failing, outcomes.Where((_, i) => failing.Contains(active[i])).Select(o => o.Before ?? 0))} stitches when it begins)";
        finding = finding with { Sizes = Concerned(failing), Help = help, Labels = row.Origin.Contains(claim.Origin) ? [] : [new Label(row.Origin, "made by this row")] };
        _pending.Add(new Pending { Finding = finding, Sizes = failing });
    }

    /// <summary>The count that was meant, where two neighbouring figures of a single one changed places ("86" for 68); null where that is not it.</summary>
    private static string? Swapped(List<int> stated, List<int> worked)
    {
        if (stated.Count != 1 || Math.Abs(stated[0] - worked[0]) % 9 != 0)
        {
            return null;
        }

        var (said, made) = (stated[0].ToString(CultureInfo.InvariantCulture), worked[0].ToString(CultureInfo.InvariantCulture));
        for (var i = 0; said.Length == made.Length && i + 1 < said.Length; i++)
        {
            if (said[i] == made[i + 1] && said[i + 1] == made[i] && said[i] != said[i + 1] && said.AsSpan(0, i).SequenceEqual(made.AsSpan(0, i)) && said.AsSpan(i + 2).SequenceEqual(made.AsSpan(i + 2)))
            {
                return made;
            }
        }

        return null;
    }

    /// <summary>What a difference of the same few stitches in all of several sizes suggests; null where it is not the same, or large.</summary>
    private static string? SameEverywhere(Claim claim, List<int> stated, List<int> worked)
    {
        var by = stated[0] - worked[0];
        if (claim.Of is not null || stated.Count < 2 || Math.Abs(by) > 4 || stated.Zip(worked).Any(p => p.First - p.Second != by))
        {
            return null;
        }

        var (few, many) = by < 0 ? ("decrease", "increase") : ("increase", "decrease");
        return $"{Math.Abs(by)} {(by < 0 ? "fewer" : "more")} in every size: {(by is 1 or -1 ? $"one {few} may be missing, or one {many} too many" : $"{Math.Abs(by)} {few}s may be missing, or {Math.Abs(by)} {many}s too many")}";
    }

    /// <summary>What there is instead, where none of the kind stated is made: "30 sc"; null where it is told by its number.</summary>
    private static string? Instead(Claim claim, ImmutableArray<int> failing, List<int> worked, SizeState[] states)
    {
        var kinds = claim.Of is { Kind: CountedKind.Stitch } && worked.TrueForAll(n => n == 0) ? states.First(s => s.Size == failing[0]).Live.Below?.Kinds.Where(k => !k.Key.EndsWith(" sp", StringComparison.Ordinal)).ToArray() : null;
        return kinds is [var only] && failing.Length == 1 ? $"{only.Value} {only.Key}" : null;
    }

    private static string Noun(Claim claim) => claim.Of switch
    {
        null => "stitches",
        { Kind: CountedKind.Space, Length: { } length } => $"ch-{length} spaces",
        { Kind: CountedKind.Space } => "chain spaces",
        { Kind: CountedKind.Group } group => $"of \"{group.Name}\"",
        var other => other.Name,
    };

    private string Change(ImmutableArray<int> sizes, List<int> changes)
    {
        var up = changes.TrueForAll(c => c >= 0);
        var down = changes.TrueForAll(c => c <= 0);
        return up || down ? $"{List(sizes, changes.Select(Math.Abs))} {(up && !changes.TrueForAll(c => c == 0) ? "more" : "fewer")}" : List(sizes, changes);
    }

    private void Readings(BoundRow row, int[] active, RowOutcome[] outcomes)
    {
        var readings = active.Zip(outcomes)
            .Where(pair => !pair.Second.IsWrong)
            .SelectMany(pair => pair.Second.Readings.Select(r => (Size: pair.First, Reading: r)))
            .GroupBy(r => r.Reading);
        foreach (var group in readings)
        {
            var sizes = group.Select(g => g.Size).Distinct().ToImmutableArray();
            (Rule Rule, string Message, string Help)? said = group.Key.Kind switch
            {
                ReadingKind.Implied => (WorkRules.RepeatImplied, $"{Name(row)} comes out only if it is repeated to the end, which it does not say", "write \"*...; rep from * to end\""),
                ReadingKind.RestPlain => (WorkRules.RestNotSaid, $"{Name(row)} does not say what happens to its last stitches; worked plain they give the stated count", "write \"k to end\" (or what is meant)"),
                ReadingKind.OnePlain => (WorkRules.RestNotSaid, $"one stitch is left over at the end of {Name(row)}; worked plain it gives the stated count", "write \"k1\" at the end"),
                ReadingKind.More => (WorkRules.TimesTwoWays, "the number of times can mean so many more or so many in all; it was taken as times more", "write \"more times\" or \"times in all\""),
                ReadingKind.InAll => (WorkRules.TimesTwoWays, "the number of times can mean so many more or so many in all; only so many in all fits", "write \"times in all\""),
                ReadingKind.NextMarker => (WorkRules.OtherMarker, $"no marker of this name lies ahead of `{_bag.Source.ToString(group.Key.Span)}`; the next marker was taken", "place the marker by its name in an earlier row, or call it as it was called there"),
                _ => null,
            };
            if (said is { } finding)
            {
                _bag.Add(new Finding(finding.Rule, _bag.Source, group.Key.Span, finding.Message) { Sizes = Concerned(sizes), Help = finding.Help });
            }
        }
    }
}
