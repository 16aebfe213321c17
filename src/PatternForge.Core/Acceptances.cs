using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core;

/// <summary>Marks the findings that the designer has accepted where they stand, with a reason.</summary>
internal static class Acceptances
{
    /// <summary>Each acceptance takes one finding of its code on its line (alone on a line: on the next line that is not blank); one that takes none is itself reported.</summary>
    public static ImmutableArray<Finding> Apply(ImmutableArray<Finding> findings, SourceText source, SplitFile file, ImmutableArray<string> never)
    {
        var acceptances = BodyAcceptances.Find(source, file.Body);
        if (file.Header is { } header)
        {
            acceptances = HeaderAcceptances.Find(source, header).AddRange(acceptances);
        }

        if (acceptances.IsEmpty)
        {
            return findings;
        }

        var all = findings.ToList();
        var extra = new FindingBag(source);
        var next = (From: 0, To: 0);
        foreach (var acceptance in acceptances)
        {
            if (string.IsNullOrWhiteSpace(acceptance.Reason))
            {
                extra.Add(BodyRules.AcceptanceWithoutReason, acceptance.Span, $"`{acceptance.Code}` is accepted here without a reason", $"write why: accept {acceptance.Code}: the reason");
                continue;
            }

            var line = acceptance.Line;
            if (acceptance.IsAlone)
            {
                // Remarks that follow each other are of the same line.
                next = line >= next.From && line < next.To ? next : (line, NextLine(source, line));
                line = next.To == int.MaxValue ? line : next.To;
            }

            var at = all.FindIndex(f => f.Accepted is null && IsCalled(f.Rule, acceptance.Code) && !IsUnreadable(f.Rule) && Touches(source, f.Span, line));
            if (at < 0)
            {
                if (IsOfTheNetwork(acceptance.Code))
                {
                    continue;
                }

                extra.Add(BodyRules.AcceptanceUnused, acceptance.Span, $"nothing on line {line} is found under `{acceptance.Code}`", "take this remark out, or put it where the finding is");
                continue;
            }

            if (never.Contains(all[at].Rule.Code, StringComparer.Ordinal))
            {
                extra.Add(HouseRules.AcceptanceNotAllowed, acceptance.Span, $"the project file lets nobody accept {all[at].Rule.Code}", "put right what is found, and take this remark out");
                continue;
            }

            all[at] = all[at] with { Accepted = acceptance.Reason };
        }

        return [.. all.Concat(extra.ToSorted()).OrderBy(f => f.Span.Start).ThenBy(f => f.Rule.Code, StringComparer.Ordinal).ThenBy(f => f.Message, StringComparer.Ordinal)];
    }

    // What could not be read at all cannot be accepted.
    private static bool IsUnreadable(Rule rule) => rule.Code == SyntaxRules.UnreadableHeader.Code || rule.Code == FileRules.NotText.Code || rule.Code == FileRules.FileTooLarge.Code;

    // What is found only online may be accepted for good.
    private static bool IsOfTheNetwork(string said) => Checks.CheckList.All.Any(c => c is Checks.LinkGone or Checks.LinkUnanswered && IsCalled(c.Rule, said));

    private static bool IsCalled(Rule rule, string said) => string.Equals(rule.Code, said, StringComparison.OrdinalIgnoreCase) || string.Equals(rule.Name, said, StringComparison.OrdinalIgnoreCase);

    private static bool Touches(SourceText source, TextSpan span, int line) =>
        source.Lines.PositionOf(span.Start).Line <= line && line <= source.Lines.PositionOf(Math.Max(span.Start, span.End - 1)).Line;

    /// <summary>The next line that is neither blank nor a remark; <see cref="int.MaxValue"/> for none.</summary>
    private static int NextLine(SourceText source, int line)
    {
        for (var next = line + 1; next <= source.Lines.Count; next++)
        {
            var text = source.Slice(source.Lines.SpanOf(next, source.Text)).Trim();
            if (!text.IsEmpty && !text.StartsWith("<!--") && !text.StartsWith("#"))
            {
                return next;
            }
        }

        return int.MaxValue;
    }
}
