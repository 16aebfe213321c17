using System.Collections.Immutable;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>The source of an edition: the edits that make it, its text, and the way back from each place of that text to the file that the designer wrote.</summary>
public sealed class RewrittenSource
{
    private readonly MendedText _from;
    private readonly ImmutableArray<Edit> _edits;
    private RewrittenSource? _before;

    /// <summary>Rewrites a text.</summary>
    /// <param name="from">The pattern as it was read.</param>
    /// <param name="edits">Edits of that text, in any order; of two that overlap the first in the text counts.</param>
    /// <param name="findings">What the edition could not do, at the places of the file.</param>
    /// <param name="isRefused">True when the edition cannot be made at all; the findings say why.</param>
    public RewrittenSource(MendedText from, IEnumerable<Edit> edits, ImmutableArray<Finding> findings, bool isRefused = false)
    {
        _from = from;
        _edits = [.. edits.OrderBy(e => e.Span.Start).ThenBy(e => e.Span.End)];
        Findings = findings;
        IsRefused = isRefused;
        Mended = from.With([.. _edits.Select(e => new Mend(e.Span, e.NewText))]);
    }

    /// <summary>The rewritten source, under the path of the file it was made from.</summary>
    public SourceText Text => Mended.Text;

    /// <summary>What the edition could not do, at the places of the file.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>True when the edition cannot be made at all; the findings say why.</summary>
    public bool IsRefused { get; }

    /// <summary>The text with the way back from it.</summary>
    internal MendedText Mended { get; }

    /// <summary>The place in the designer's file of a place in the rewritten text.</summary>
    public TextSpan ToSource(TextSpan span) => _before is null ? Mended.ToSource(span) : _before.ToSource(Mended.ToSource(span));

    /// <summary>A finding of the rewritten text at its place in the designer's file.</summary>
    internal Finding ToSource(Finding finding) => _before is null ? Mended.ToSource(finding) : _before.ToSource(Mended.ToSource(finding));

    /// <summary>The same, made from a source that was itself rewritten.</summary>
    internal RewrittenSource After(RewrittenSource before) => new(_from, _edits, Findings, IsRefused) { _before = before };

    /// <summary>The place in the pattern as it was read: unlike a place in the file it tells the rows of one plan apart.</summary>
    public TextSpan ToRead(TextSpan span) => ReferenceEquals(Mended, _from) ? span : Mended.ToBefore(span);

    /// <summary>The same without the edits inside some stretches of the text that was rewritten.</summary>
    public RewrittenSource Without(IReadOnlyCollection<TextSpan> stretches) =>
        new(_from, _edits.Where(e => !stretches.Any(s => s.Contains(e.Span))), Findings, IsRefused) { _before = _before };

    /// <summary>The same with one more finding.</summary>
    public RewrittenSource With(Finding finding) => new(_from, _edits, Findings.Add(finding), IsRefused) { _before = _before };
}
