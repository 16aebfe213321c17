using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Findings;

namespace PatternForge.Exam;

/// <summary>How the compiler and a case stand to each other.</summary>
public enum Verdict
{
    /// <summary>The right count, or the right finding.</summary>
    Agreed,

    /// <summary>The row was not worked, and nothing wrong was said about it.</summary>
    NotUnderstood,

    /// <summary>Another count than the true one, or an error that says something else.</summary>
    Wrong,

    /// <summary>A mistake that was not found.</summary>
    Missed,

    /// <summary>An error on a sound row.</summary>
    FalseAlarm,
}

/// <summary>A verdict, whether a sound row got a warning, and a word on why.</summary>
public sealed record Judgement(Verdict Verdict, bool IsNoisy, string Why);

/// <summary>Compares outcomes with the answers, as the exam's own page says.</summary>
public static class Judge
{
    // A warning is enough where the fault is one of consistency; elsewhere a maker goes wrong and only an error will do.
    private static readonly string[] WarningIsEnough = ["label", "size-sequence", "term-mix", "dialect", "undefined-abbr", "unused-abbr", "tch-conflict", "short-of-info", "gauge-mismatch"];

    /// <summary>Judges a row case.</summary>
    public static Judgement Of(RowCase given, SeenRow outcome)
    {
        var sizes = Math.Max(1, given.Question.Sizes.Length);
        if (given.Answer.Fault is { } fault)
        {
            var judged = OfFault(fault, given.Answer.After, given.Answer.Stated, given.Question.Before, outcome, sizes);
            return judged.Verdict != Verdict.Agreed && given.Answer.FairFinding is { } kind && outcome.Findings.Any(f => Fits(fault with { Kind = kind }, f) && NamesSizes(fault, f, sizes))
                ? new(Verdict.Agreed, false, "")
                : judged;
        }

        if (outcome.HasErrors && given.Answer.FairFinding is null)
        {
            return new(Verdict.FalseAlarm, false, "an error on a sound row");
        }

        // Where an error is fair, the row need not be worked past it.
        if (outcome.HasErrors && outcome.After.All(n => n is null))
        {
            return new(Verdict.Agreed, false, "");
        }

        if (!outcome.IsChecked)
        {
            return new(Verdict.NotUnderstood, false, outcome.Status.ToString().ToLowerInvariant());
        }

        var agrees = Counts.Agree(given.Answer.After, outcome, sizes) || (given.Answer.AlsoAfter is { } other && Counts.Agree(other, outcome, sizes));
        var noisy = outcome.HasWarnings && given.Answer.FairFinding is null;
        return agrees ? new(Verdict.Agreed, noisy, noisy ? "a warning on a sound row" : "") : new(Verdict.Wrong, noisy, "another count");
    }

    /// <summary>Judges a pattern case: every count, and exactly the expected rows have errors.</summary>
    public static Judgement Of(PatternCase given, SeenPattern outcome)
    {
        var sizes = Math.Max(1, given.Question.Sizes.Length);
        var worst = new Judgement(Verdict.Agreed, false, "");
        for (var i = 0; i < given.Question.Rows.Length; i++)
        {
            var number = given.Question.Rows[i].Number;
            var one = OfPatternRow([.. given.Answer.Faults.Where(f => f.Row == number)], given.Answer.After[i], given.Answer.Stated[i], outcome.Rows[i], sizes);
            worst = Worse(worst, one with { Why = $"row {number}: {one.Why}" });
        }

        foreach (var fault in given.Answer.Faults.Where(f => f.Row is null && !f.IsOptional))
        {
            if (!outcome.Elsewhere.Any(f => Fits(fault.Fault, f)))
            {
                worst = Worse(worst, new(Verdict.Missed, false, $"{fault.Fault.Kind} in the header"));
            }
        }

        return worst;
    }

    /// <summary>True when a finding is of an area, a weight that can say such a fault.</summary>
    public static bool Fits(ExpectedFault fault, SeenFinding finding) =>
        (finding.Severity == Severity.Error || (finding.Severity == Severity.Warning && WarningIsEnough.Contains(fault.Kind))) && AreasOf(fault.Kind).Contains(finding.Area);

    private static Judgement OfPatternRow(ImmutableArray<ExpectedPatternFault> faults, CaseCount after, CaseCount stated, SeenRow outcome, int sizes)
    {
        var noisy = faults.IsEmpty && outcome.HasWarnings;
        foreach (var fault in faults.Where(f => !f.IsOptional))
        {
            var one = OfFault(fault.Fault, after, stated, CaseCount.Unknown, outcome, sizes);
            if (one.Verdict != Verdict.Agreed)
            {
                return one;
            }
        }

        var needsError = faults.Any(f => !IsAboutAbbreviations(f.Fault.Kind));
        if (!needsError && outcome.Findings.Any(f => f.Severity == Severity.Error && !(faults.Length > 0 && f.Area == Area.Abbreviations)))
        {
            return new(Verdict.FalseAlarm, noisy, "an error on a sound row");
        }

        if (after.IsUnknown || Counts.Agree(after, outcome, sizes, nullAgrees: true))
        {
            return after.IsUnknown || outcome.IsChecked || needsError
                ? new(Verdict.Agreed, noisy, noisy ? "a warning on a sound row" : "")
                : new(Verdict.NotUnderstood, noisy, outcome.Status.ToString().ToLowerInvariant());
        }

        return outcome.IsChecked ? new(Verdict.Wrong, noisy, "another count") : new(Verdict.NotUnderstood, noisy, outcome.Status.ToString().ToLowerInvariant());
    }

    private static Judgement OfFault(ExpectedFault fault, CaseCount after, CaseCount stated, CaseCount before, SeenRow outcome, int sizes)
    {
        var fitting = outcome.Findings.Where(f => Fits(fault, f)).ToArray();
        if (fitting.Any(f => NamesSizes(fault, f, sizes) && NamesNumber(fault, after, stated, before, f, sizes)))
        {
            return new(Verdict.Agreed, false, "");
        }

        if (fitting.Length > 0)
        {
            return new(Verdict.Wrong, false, fitting.Any(f => NamesSizes(fault, f, sizes)) ? "the true number is not named" : "other sizes are named");
        }

        return outcome.HasErrors ? new(Verdict.Wrong, false, "the error says something else")
            : outcome.IsChecked ? new(Verdict.Missed, false, "nothing was found")
            : new(Verdict.NotUnderstood, false, outcome.Status.ToString().ToLowerInvariant());
    }

    private static bool NamesSizes(ExpectedFault fault, SeenFinding finding, int sizes)
    {
        if (fault.Sizes is not { } expected || sizes == 1)
        {
            return true;
        }

        var named = finding.Sizes.IsDefaultOrEmpty ? Enumerable.Range(0, sizes) : finding.Sizes;
        return named.Order().SequenceEqual(expected.Order());
    }

    private static bool NamesNumber(ExpectedFault fault, CaseCount after, CaseCount stated, CaseCount before, SeenFinding finding, int sizes)
    {
        if (fault.Kind is not ("count" or "delta"))
        {
            return true;
        }

        var concerned = fault.Sizes ?? [.. Enumerable.Range(0, sizes)];
        return concerned.All(s => Counts.TrueNumbers(after, stated, before, fault, s).Any(n => Numbers.StandIn(finding.Message, n)));
    }

    private static bool IsAboutAbbreviations(string kind) => kind is "undefined-abbr" or "unused-abbr";

    private static Judgement Worse(Judgement a, Judgement b) => Weight(b.Verdict) > Weight(a.Verdict)
        ? b with { IsNoisy = a.IsNoisy || b.IsNoisy }
        : a with { IsNoisy = a.IsNoisy || b.IsNoisy, Why = a.Why.Length > 0 || !b.IsNoisy ? a.Why : b.Why };

    private static int Weight(Verdict verdict) => verdict switch
    {
        Verdict.FalseAlarm => 4,
        Verdict.Wrong => 3,
        Verdict.Missed => 2,
        Verdict.NotUnderstood => 1,
        _ => 0,
    };

    private static Area[] AreasOf(string kind) => kind switch
    {
        "count" or "delta" or "misfit" or "overrun" or "short" or "shaping" => [Area.Counts],
        "marker" => [Area.Counts, Area.Notation],
        "no-repeat-count" => [Area.Notation, Area.Counts],
        "sizes" => [Area.Gauge, Area.Counts, Area.Notation],
        "size-sequence" => [Area.Gauge, Area.Counts, Area.Terms],
        "label" => [Area.Notation, Area.Terms, Area.Counts],
        "ref" or "chain-ref" => [Area.Notation, Area.Counts],
        "unbalanced" => [Area.Notation],
        "unknown-abbr" => [Area.Notation, Area.Abbreviations],
        "undefined-abbr" or "unused-abbr" => [Area.Abbreviations, Area.Notation],
        "dialect" or "term-mix" => [Area.Terms],
        "craft" => [Area.Terms, Area.Notation],
        "tch-conflict" => [Area.Terms, Area.Counts, Area.Notation],
        "short-of-info" => [Area.Notation, Area.Counts, Area.Gauge, Area.Completeness],
        "gauge-mismatch" => [Area.Gauge],
        _ => Enum.GetValues<Area>(),
    };
}

/// <summary>Numbers inside sentences.</summary>
internal static class Numbers
{
    private static readonly string[] Words = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>True when the number stands in the text as a whole, in digits or, when small, in words.</summary>
    public static bool StandIn(string text, int number) =>
        All(text).Contains(number)
        || (number is >= 0 and <= 12 && text.Split([' ', ',', '.', ';', ':', '(', ')'], StringSplitOptions.RemoveEmptyEntries).Contains(Words[number], StringComparer.OrdinalIgnoreCase));

    /// <summary>Every whole number written in digits.</summary>
    public static IEnumerable<int> All(string text)
    {
        for (var i = 0; i < text.Length;)
        {
            var start = i;
            while (i < text.Length && char.IsAsciiDigit(text[i]))
            {
                i++;
            }

            if (i > start)
            {
                if (int.TryParse(text.AsSpan(start, i - start), NumberStyles.None, CultureInfo.InvariantCulture, out var number))
                {
                    yield return number;
                }
            }
            else
            {
                i++;
            }
        }
    }
}
