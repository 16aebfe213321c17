using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Makes the rows of a diagram from the notes that were kept while its rows were worked.</summary>
internal sealed class DiagramRows
{
    private readonly Dictionary<Text.TextSpan, (BoundRow Row, int Line)> _rows = [];
    private readonly ImmutableArray<DiagramRow>.Builder _made = ImmutableArray.CreateBuilder<DiagramRow>();
    private readonly SortedSet<int> _lines = [];
    private readonly IReadOnlyDictionary<int, string> _yarns;
    private DiagramStart? _start;
    private int _startCount;
    private int _lifted;
    private int _tops = -1;
    private bool _isFront = true;
    private int? _number;
    private bool _isRound;

    private DiagramRows(List<BoundLine> lines, IReadOnlyDictionary<int, string> yarns)
    {
        _yarns = yarns;
        foreach (var line in lines)
        {
            foreach (var row in line.Rows)
            {
                _rows[row.Origin] = (row, line.Index);
            }
        }
    }

    /// <summary>The diagram of rows, its name still empty; null where a stitch goes to a place that cannot be shown.</summary>
    /// <param name="rows">The rows as they were worked.</param>
    /// <param name="lines">The lines that they come from.</param>
    /// <param name="first">The number of the first row; null for the first there is. Rounds begin at the centre all the same.</param>
    /// <param name="last">The number of the last row; null for the last there is.</param>
    /// <param name="yarns">The letter of the yarn of each line; empty where one yarn does it all.</param>
    public static CrochetDiagram? Of(ImmutableArray<CrochetRow> rows, List<BoundLine> lines, int? first, int? last, IReadOnlyDictionary<int, string> yarns)
    {
        var made = new DiagramRows(lines, yarns);
        foreach (var row in rows)
        {
            if (made.IsPast(row, last))
            {
                break;
            }

            if (!made.Add(row))
            {
                return null;
            }
        }

        return made.Finish(first);
    }

    private CrochetDiagram? Finish(int? first)
    {
        var rows = _made.ToImmutable();
        if (rows.IsEmpty)
        {
            return null;
        }

        var start = _start!.Value;
        if (first is { } number && !_isRound && rows.FirstOrDefault(r => r.Number == number) is { } from && rows.IndexOf(from) is > 0 and var at)
        {
            (start, _startCount, _lifted) = (DiagramStart.EarlierRow, rows[at - 1].Tops, 0);
            rows = [Met(rows[at], _startCount), .. rows[(at + 1)..]];
        }

        return new CrochetDiagram { Name = "", Section = 1, IsRound = _isRound, Start = start, StartCount = _startCount, Lifted = _lifted, Rows = rows, Lines = [.. _lines] };
    }

    /// <summary>A row whose places are counted as it meets them: the row below was worked the other way.</summary>
    private static DiagramRow Met(DiagramRow row, int below) =>
        row with { Stitches = [.. row.Stitches.Select(s => s with { Bases = [.. s.Bases.Select(b => b.Kind == DiagramPlace.Below ? b with { Top = below - 1 - b.Top } : b)] })] };

    private bool IsPast(CrochetRow row, int? last) => row.HasStitches && last is { } most && NumberOf(row) > most;

    /// <summary>Rows worked again go on counting.</summary>
    private int? NumberOf(CrochetRow row)
    {
        if (!_rows.TryGetValue(row.Origin, out var said) || said.Row.Numbers.IsEmpty)
        {
            return _number is { } last && row.HasStitches ? last + 1 : null;
        }

        return _number is { } before && said.Row.Numbers[0] <= before ? before + 1 : said.Row.Numbers[0];
    }

    private bool Add(CrochetRow row)
    {
        if (!row.HasStitches)
        {
            return Opening(row);
        }

        var notes = row.Notes.All;
        foreach (var note in notes)
        {
            if (note.Kind == NoteKind.Ring)
            {
                Begin(note.Count > 0 ? DiagramStart.ChainRing : DiagramStart.Ring, note.Count);
            }
            else if (note.Kind == NoteKind.Foundation)
            {
                Begin(DiagramStart.Chain, note.Count);
            }
        }

        if (_start is null && notes.Count(n => n.Kind == NoteKind.Stitch && n.Bases is [CrochetNotes.Edge]) is > 0 and var along)
        {
            Begin(DiagramStart.Edge, along);
        }
        else if (row.Below.IsRing && _start is null)
        {
            Begin(DiagramStart.Ring, 0);
        }
        else if (_start is null)
        {
            Begin(row.Below.Tops.IsEmpty ? DiagramStart.Nothing : row.Below.IsFoundation ? DiagramStart.Chain : DiagramStart.EarlierRow, row.Below.Tops.Length);
        }

        var isFirst = _made.Count == 0;
        if (isFirst && row.InTheRound && _start == DiagramStart.Chain && IsOnePlace(notes))
        {
            (_start, _isRound) = (DiagramStart.OneChain, true);
        }

        else if (isFirst && row.InTheRound && _start == DiagramStart.Chain && notes.Any(n => n.Bases.Any(b => b <= CrochetNotes.FreeSide)))
        {
            (_start, _isRound) = (DiagramStart.BothSides, true);
        }
        else if (notes.Any(n => n.Bases.Any(b => b <= CrochetNotes.FreeSide)))
        {
            return false; // along a free side, and not round it
        }

        if ((isFirst ? !StartsAt(row) : row.Below.Tops.Length != _tops) || (!isFirst && _isRound != row.InTheRound) || (isFirst && row.InTheRound && _start is DiagramStart.Chain or DiagramStart.Nothing && row.InTheRound))
        {
            return false; // something between the rows that the notes do not tell
        }

        _isRound |= row.InTheRound;
        if (isFirst && _isRound && _start is DiagramStart.EarlierRow or DiagramStart.Edge)
        {
            return false; // rounds without their centre
        }

        _number = NumberOf(row);
        if (_rows.TryGetValue(row.Origin, out var said))
        {
            _lines.Add(said.Line);
        }

        var stitches = new DiagramRowReader(row, isFirst ? _start : null).Read(out var tops, out var lifted);
        if (stitches is not { } there)
        {
            return false;
        }

        _lifted = isFirst ? lifted : _lifted;
        _made.Add(new DiagramRow(_number, _isFront, there, tops) { Yarn = said.Row is null ? null : _yarns.GetValueOrDefault(said.Line) });
        _tops = tops;
        _isFront ^= row.IsTurned;
        return true;
    }

    private bool StartsAt(CrochetRow row) => row.Below.IsRing || row.Below.Tops.IsEmpty || row.Below.Tops.Length == _startCount || row.Foundation > 0;

    /// <summary>A foundation, a ring, or chains for the next row.</summary>
    private bool Opening(CrochetRow row)
    {
        if (_made.Count > 0)
        {
            return row.Foundation == 0 && !row.MadeRing;
        }

        if (row.Foundation > 0 || row.MadeRing)
        {
            if (_rows.TryGetValue(row.Origin, out var said))
            {
                _lines.Add(said.Line);
            }

            Begin(row.MadeRing ? row.Foundation > 0 ? DiagramStart.ChainRing : DiagramStart.Ring : DiagramStart.Chain, row.Foundation);
        }

        return true;
    }

    private void Begin(DiagramStart start, int count) => (_start, _startCount) = (start, count);

    /// <summary>"11 dc in 4th ch from hook": all stitches of the round in one chain.</summary>
    private static bool IsOnePlace(ImmutableArray<CrochetNote> notes) =>
        notes.Where(n => n.Kind == NoteKind.Stitch).SelectMany(n => n.Bases).Where(b => b != CrochetNotes.OwnFirst).Distinct().Count() == 1;
}
