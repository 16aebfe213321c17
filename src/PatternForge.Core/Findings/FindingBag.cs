using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Findings;

/// <summary>Collects what the stages find in one file. At most one finding is kept for a rule, place and message.</summary>
public sealed class FindingBag
{
    private readonly List<Finding> _findings = [];
    private HashSet<(string Code, TextSpan Span, string Message)>? _seen;

    /// <summary>An empty bag for one source.</summary>
    public FindingBag(SourceText source) => Source = source;

    /// <summary>The file spoken of.</summary>
    public SourceText Source { get; }

    /// <summary>How many there are so far.</summary>
    public int Count => _findings.Count;

    /// <summary>Adds an occurrence.</summary>
    public void Add(Finding finding)
    {
        finding = Citation.Of(finding);

        // What a message quotes may run over several lines of the source; a message is one line.
        finding = finding with { Message = OneLine(finding.Message), Help = finding.Help is null ? null : OneLine(finding.Help) };
        if ((_seen ??= []).Add((finding.Rule.Code, finding.Span, finding.Message)))
        {
            _findings.Add(finding);
        }
    }

    /// <summary>True when a rule has told something at just this place.</summary>
    public bool HasAt(string code, TextSpan span) => _findings.Exists(f => f.Rule.Code == code && f.Span == span);

    private static string OneLine(string text) =>
        text.AsSpan().IndexOfAny('\r', '\n') < 0 ? text : string.Join(' ', text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));

    /// <summary>Takes out what another finding says better.</summary>
    public void Remove(IReadOnlyCollection<Finding> findings)
    {
        _findings.RemoveAll(findings.Contains);
        foreach (var finding in findings)
        {
            _seen?.Remove((finding.Rule.Code, finding.Span, finding.Message));
        }
    }

    /// <summary>Adds an occurrence at a place, with an optional help line.</summary>
    public void Add(Rule rule, TextSpan span, string message, string? help = null) =>
        Add(new Finding(rule, Source, span, message) { Help = help });

    /// <summary>True when the rule has been broken so far.</summary>
    public bool Has(Rule rule) => _findings.Exists(f => f.Rule == rule);

    /// <summary>Takes back what was added after the first so many: what had been read turned out to be a remark.</summary>
    public void TakeBack(int count)
    {
        for (var i = count; i < _findings.Count; i++)
        {
            var finding = _findings[i];
            _seen!.Remove((finding.Rule.Code, finding.Span, finding.Message));
        }

        _findings.RemoveRange(count, _findings.Count - count);
    }

    /// <summary>Those after the first so many, with their places in the bag.</summary>
    public IEnumerable<(int At, Finding Finding)> From(int count)
    {
        for (var i = count; i < _findings.Count; i++)
        {
            yield return (i, _findings[i]);
        }
    }

    /// <summary>Adds to a finding what was learned of it later; rule, place and message stay.</summary>
    public void Amend(int at, string? help, string? reckoning) => _findings[at] = _findings[at] with { Help = help, Reckoning = reckoning };

    /// <summary>True when one of them stands in the span.</summary>
    public bool HasAnyIn(TextSpan span) => _findings.Exists(f => span.Contains(f.Span));

    /// <summary>All of them by place, then code.</summary>
    public ImmutableArray<Finding> ToSorted() => _findings.Count < 2
        ? [.. _findings]
        : [.. _findings.OrderBy(f => f.Span.Start).ThenBy(f => f.Rule.Code, StringComparer.Ordinal).ThenBy(f => f.Message, StringComparer.Ordinal)];
}
