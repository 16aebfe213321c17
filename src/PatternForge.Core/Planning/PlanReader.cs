using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Planning;

/// <summary>Reads one block that asks for a plan, and has it made in every size.</summary>
internal sealed class PlanReader(HeaderContext context, PatternFacts facts, FindingBag bag)
{
    /// <summary>The lines of the plan for all sizes; null where there are none, which is reported.</summary>
    public ImmutableArray<string>? Read(PlanBlock block, CompileOptions options)
    {
        var before = bag.Count;
        var map = HeaderReader.Read(context.Source, block.Content, options, bag);
        var entries = map.Entries.Where(e => e.Value is not HeaderScalar { IsBlank: true }).ToArray();
        if (bag.Count > before || Kind(block, entries) is not { } kind)
        {
            return null;
        }

        var (values, words) = (new Dictionary<string, PerSize<Quantity?>>(StringComparer.Ordinal), new Dictionary<string, string>(StringComparer.Ordinal));
        foreach (var entry in entries)
        {
            var key = KeySet.Plain(entry.Name);
            if (kind.NumberKeys.Contains(key, StringComparer.Ordinal) && entry.Value is HeaderScalar number)
            {
                if (Number(number, key) is { } said)
                {
                    values[key] = said;
                }
            }
            else if (kind.WordKeys.Contains(key, StringComparer.Ordinal) && entry.Value is HeaderScalar word)
            {
                words[key] = word.Text.Trim();
            }
            else if (key != "work")
            {
                string[] known = ["work", .. kind.ListedKeys];
                var near = Suggest.Nearest(key, known, 1);
                context.Report(PlanRules.NotUnderstood, entry.Key.Span, $"`{HeaderContext.Short(entry.Name)}` is no key of a plan for `{kind.Name}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"its keys are {HeaderContext.Listed(known)}");
            }
        }

        return bag.Count > before ? null : Made(block, kind, values, words);
    }

    private PlanKind? Kind(PlanBlock block, HeaderEntry[] entries)
    {
        var names = PlanKind.All.Select(k => k.Name).ToArray();
        if (Array.Find(entries, e => KeySet.Plain(e.Name) == "work")?.Value is not HeaderScalar work)
        {
            context.Report(PlanRules.NotUnderstood, block.Opening, "this block does not say what is to be planned", $"begin it with a line `work: ...`: {HeaderContext.Listed(names, "or")}");
            return null;
        }

        if (PlanKind.Find(work.Text.Trim()) is { } kind)
        {
            return kind;
        }

        var near = Suggest.Nearest(work.Text.Trim().ToLowerInvariant(), names, 1);
        context.Report(PlanRules.NotUnderstood, work.Span, $"there is no plan for `{HeaderContext.Short(work.Text)}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"there are {HeaderContext.Listed(names)}");
        return null;
    }

    // "96 (104, 112)", "40 rows", "20 cm"; else a formula, with or without its equals sign.
    private PerSize<Quantity?>? Number(HeaderScalar scalar, string key)
    {
        var text = scalar.Text.Trim();
        if (text.Length > 0 && char.IsAsciiDigit(text[0]) && ValueListReader.Read(scalar.Text, 0, context.Sizes.Count) is { } list && list.End >= text.Length)
        {
            return QuantityBinder.Read(context, scalar, key, Dimension.Count, Dimension.Length);
        }

        return context.Numbers!.Read(scalar, key, [Dimension.Count, Dimension.Length]);
    }

    private ImmutableArray<string>? Made(PlanBlock block, PlanKind kind, Dictionary<string, PerSize<Quantity?>> values, Dictionary<string, string> words)
    {
        var gauge = context.Numbers!.Gauge(null).Gauge;
        var plans = new PlanLines[facts.Sizes.Count];
        PlanLines? failed = null;
        var (failing, problem) = (new List<int>(), (string?)null);
        for (var size = 0; size < plans.Length; size++)
        {
            plans[size] = new([], null, null);
            var numbers = new PlanNumbers(values, words, gauge, size);
            if (numbers.IsLeftOut)
            {
                continue;
            }

            var made = kind.Make(numbers);
            if (numbers.Problem is { } told)
            {
                problem ??= told;
            }
            else if (made.Reason is not null)
            {
                failed ??= made;
                failing.Add(size);
            }

            plans[size] = made;
        }

        if (problem is not null)
        {
            context.Report(PlanRules.NotUnderstood, block.Opening, problem, $"a plan for `{kind.Name}` has {HeaderContext.Listed([.. kind.ListedKeys])}");
            return null;
        }

        if (failed is not null)
        {
            var where = facts.Sizes.Describe([failing[0]]) is { Length: > 0 } size ? $"in {size}, " : "";
            bag.Add(new Finding(PlanRules.NotPossible, context.Source, block.Opening, where + failed.Reason) { Help = failed.Help, Sizes = failing.Count == plans.Length ? [] : [.. failing] });
            return null;
        }

        var own = SizedLines.Of([.. plans.Select(l => l.Lines)], facts.Sizes.Names, [.. plans.Select(l => l.Ranks)]);
        // Of several shared forms the first that every size has.
        var forms = plans.Select(l => l.Shared).ToArray();
        while (plans.Where((l, i) => !l.Lines.IsEmpty && forms[i]?.Lines.IsEmpty == true).Any())
        {
            forms = [.. forms.Select(f => f?.Shared)];
        }

        if (plans.Length == 1 || plans.Where((l, i) => !l.Lines.IsEmpty && forms[i] is null).Any())
        {
            return own;
        }

        // Steps that all sizes share are told once, unless that takes more lines than telling each size by itself.
        var shared = SizedLines.Shared([.. plans.Select((l, i) => forms[i] ?? l)], facts.Sizes.Names);
        return shared.Length < own.Length || (shared.Length == own.Length && own.Any(l => l.Contains(" only: ", StringComparison.Ordinal))) ? shared : own;
    }
}
