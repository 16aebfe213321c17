using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>A line of a piece that has been worked, with its counts, one a size.</summary>
internal sealed record PieceLine(BoundLine Line, ImmutableArray<int?> Before, ImmutableArray<int?> After);

/// <summary>The pieces worked so far, line by line: what "work as for Back" and "complete to match first side" go back to.</summary>
internal sealed class PieceBook
{
    private readonly Dictionary<string, List<PieceLine>> _pieces = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>A line of a piece has been worked.</summary>
    public void Add(PieceLine line)
    {
        if (line.Line.Piece.Length == 0 || line.Line.Pattern is not null)
        {
            return;
        }

        if (!_pieces.TryGetValue(line.Line.Piece, out var lines))
        {
            _pieces[line.Line.Piece] = lines = [];
        }

        lines.Add(line);
    }

    /// <summary>The lines that a reference means; empty where that cannot be known.</summary>
    public IReadOnlyList<PieceLine> Lines(AsPieceStep step)
    {
        if (!_pieces.TryGetValue(step.Piece, out var lines))
        {
            return [];
        }

        if (step.ToMark)
        {
            var marked = lines.FindLastIndex(l => l.Line.Mark is not null);
            return marked < 0 ? [] : lines[..(lines[marked].Line.Mark == true ? marked + 1 : marked)];
        }

        if (step.UpTo is { } measured && measured.Contains("measure", StringComparison.Ordinal))
        {
            var at = MeasuredAt(lines, measured);
            return at < 0 ? [] : lines[..(at + 1)];
        }

        if (step.UpTo is { } place)
        {
            // "to armholes" is up to the line that shapes them.
            var word = Array.Find(place.Split(' '), w => w.Length > 3 && w is not ("shaping" or "beginning" or "start"))?.TrimEnd('s', '.', ',');
            var at = word is null ? -1 : lines.FindIndex(l => Says(l.Line, "shap") && Says(l.Line, word));
            return at <= 0 ? [] : lines[..at];
        }

        return lines;
    }

    /// <summary>The lines of a piece from one count to its end: the side worked first.</summary>
    public IReadOnlyList<PieceLine> Since(string piece, int line) => _pieces.TryGetValue(piece, out var lines) ? [.. lines.Where(l => l.Line.Index > line)] : [];

    /// <summary>The count that a reference leaves in a size; null where it cannot be known.</summary>
    public int? After(AsPieceStep step, int size) => Lines(step) is [.., var last] ? last.After[size] : null;

    /// <summary>
    /// "until armhole measures 12 cm" ends within the rows that the other piece works to a length of its armhole; any other length is one that a line
    /// of the other piece says in the same words, else nobody can say where it is. -1 for none.
    /// </summary>
    private static int MeasuredAt(List<PieceLine> lines, string place)
    {
        if (place.Contains("armhole", StringComparison.Ordinal))
        {
            return lines.FindLastIndex(l => Says(l.Line, "armhole") && Says(l.Line, "measure"));
        }

        var words = place[place.IndexOf("measure", StringComparison.Ordinal)..];
        var end = words.IndexOf("cm", StringComparison.Ordinal) is >= 0 and var cm ? cm : words.IndexOf(" in", StringComparison.Ordinal);
        return end < 0 ? -1 : lines.FindIndex(l => Says(l.Line, words[..end]));
    }

    private static bool Says(BoundLine line, string word) =>
        line.Label.Contains(word, StringComparison.OrdinalIgnoreCase) || line.Text.Contains(word, StringComparison.OrdinalIgnoreCase);
}
