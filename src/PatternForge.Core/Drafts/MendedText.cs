using System.Text;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>A text as it is read, and the way back from each place of it to the place in the file. Where nothing was mended both are the same.</summary>
public sealed class MendedText
{
    private readonly MendedText? _before;
    private readonly Piece[] _pieces;

    private MendedText(SourceText source, SourceText text, MendedText? before, Piece[] pieces)
    {
        Source = source;
        Text = text;
        _before = before;
        _pieces = pieces;
    }

    /// <summary>The file as it is.</summary>
    public SourceText Source { get; }

    /// <summary>The text as it is read.</summary>
    public SourceText Text { get; }

    /// <summary>A text that is read as it stands.</summary>
    public static MendedText Unchanged(SourceText source) => new(source, source, null, []);

    /// <summary>The text with further mends, which are places of <see cref="Text"/> in their order; one that overlaps an earlier one is left out.</summary>
    public MendedText With(IReadOnlyList<Mend> mends)
    {
        if (mends.Count == 0)
        {
            return this;
        }

        var old = Text.Text;
        var read = new StringBuilder(old.Length + 64);
        var pieces = new List<Piece>((mends.Count * 2) + 1);
        var at = 0;
        foreach (var mend in mends)
        {
            if (mend.Span.Start < at)
            {
                continue;
            }

            Keep(mend.Span.Start);
            pieces.Add(new Piece(read.Length, mend.Span, IsKept: false));
            read.Append(mend.NewText);
            at = mend.Span.End;
        }

        Keep(old.Length);
        return new MendedText(Source, new SourceText(Source.Path, read.ToString()), this, [.. pieces]);

        void Keep(int end)
        {
            if (end > at)
            {
                pieces.Add(new Piece(read.Length, TextSpan.FromBounds(at, end), IsKept: true));
                read.Append(old, at, end - at);
            }
        }
    }

    /// <summary>The place in the file of a place in the text as it is read. What a mend made is the whole of what it was made from.</summary>
    public TextSpan ToSource(TextSpan span)
    {
        if (_before is null)
        {
            return span;
        }

        return _before.ToSource(ToBefore(span));
    }

    /// <summary>The place in the text as it was before the last mends.</summary>
    public TextSpan ToBefore(TextSpan span)
    {
        if (_before is null)
        {
            return span;
        }

        var start = Before(span.Start).Start;
        return span.IsEmpty ? new TextSpan(start, 0) : TextSpan.FromBounds(start, Math.Max(start, Before(span.End - 1).End));
    }

    /// <summary>The other way: the place here of a place in the text as it was before the last mends; null inside words that were mended.</summary>
    public int? ToAfter(int offset)
    {
        if (_before is null)
        {
            return offset;
        }

        var (low, high) = (0, _pieces.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = _pieces[middle].From.Start <= offset ? (middle, high) : (low, middle - 1);
        }

        var piece = _pieces[low];
        return piece.IsKept ? piece.Start + offset - piece.From.Start : offset == piece.From.Start ? piece.Start : null;
    }

    /// <summary>A finding of the text as it is read, as a finding of the file.</summary>
    public Finding ToSource(Finding finding) => _before is null ? finding : finding with
    {
        Source = Source,
        Span = ToSource(finding.Span),
        Labels = [.. finding.Labels.Select(l => l with { Span = ToSource(l.Span) })],
        Fix = finding.Fix is { } fix ? fix with { Edits = [.. fix.Edits.Select(e => e with { Span = ToSource(e.Span) })] } : null,
    };

    /// <summary>Where one character came from.</summary>
    private TextSpan Before(int offset)
    {
        var (low, high) = (0, _pieces.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = _pieces[middle].Start <= offset ? (middle, high) : (low, middle - 1);
        }

        var piece = _pieces[low];
        return piece.IsKept ? new TextSpan(piece.From.Start + offset - piece.Start, 1) : piece.From;
    }

    private readonly record struct Piece(int Start, TextSpan From, bool IsKept);
}
