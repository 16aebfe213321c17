using System.Collections.Immutable;

namespace PatternForge.Exam;

/// <summary>Compares counts.</summary>
internal static class Counts
{
    /// <summary>True when the outcome's count is the case's in every size.</summary>
    /// <param name="expected">The true count.</param>
    /// <param name="outcome">What was made.</param>
    /// <param name="sizes">How many sizes there are.</param>
    /// <param name="nullAgrees">True when a size without a true count agrees with anything.</param>
    public static bool Agree(CaseCount expected, SeenRow outcome, int sizes, bool nullAgrees = false)
    {
        for (var s = 0; s < sizes; s++)
        {
            if (expected.KindsIn(s) is { } kinds && !AgreeByKind(kinds, outcome, s))
            {
                return false;
            }

            if (!expected.Plain.IsEmpty && expected.PlainIn(s) != outcome.After[s] && !(nullAgrees && expected.PlainIn(s) is null))
            {
                return false;
            }

            if (expected.ByKind.IsEmpty && expected.Plain.IsEmpty && outcome.After[s] is not null)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The numbers that a finding about a size's count may name as the true one.</summary>
    public static IEnumerable<int> TrueNumbers(CaseCount after, CaseCount stated, CaseCount before, ExpectedFault fault, int size)
    {
        if (after.KindsIn(size) is { } kinds)
        {
            var claimed = stated.KindsIn(size);
            foreach (var (kind, count) in kinds)
            {
                if (claimed is null || !claimed.TryGetValue(kind, out var said) || said != count)
                {
                    yield return count;
                }
            }
        }

        // A row that ends with none states a count on its way: the true one stands in the case's own words.
        if (after.PlainIn(size) == 0)
        {
            foreach (var number in Numbers.All(fault.Detail).Where(n => n != stated.PlainIn(size) && n != before.PlainIn(size)))
            {
                yield return number;
            }
        }

        if (after.PlainIn(size) is { } true_)
        {
            yield return true_;
            if (fault.Kind == "delta" && before.PlainIn(size) is { } from)
            {
                yield return Math.Abs(true_ - from);
            }
        }
    }

    private static bool AgreeByKind(ImmutableSortedDictionary<string, int> expected, SeenRow outcome, int size)
    {
        if (outcome.Kinds.IsDefaultOrEmpty)
        {
            return !expected.Keys.Any(IsSpace) && expected.Values.Sum() == outcome.After[size];
        }

        var made = outcome.Kinds[outcome.Kinds.Length == 1 ? 0 : Math.Min(size, outcome.Kinds.Length - 1)];
        return expected.Where(k => k.Value != 0).All(k => made.TryGetValue(k.Key, out var n) && n == k.Value)
            && made.Where(k => k.Value != 0).All(k => expected.ContainsKey(k.Key));
    }

    private static bool IsSpace(string kind) => kind.EndsWith(" sp", StringComparison.Ordinal);
}
