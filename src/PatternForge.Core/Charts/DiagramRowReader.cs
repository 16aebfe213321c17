using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>Turns the notes of one row into the marks of a diagram: chains into spaces, turning chains and picots, places into tops of the row below.</summary>
internal sealed class DiagramRowReader
{
    private readonly CrochetRow _row;
    private readonly DiagramStart? _start;
    private readonly List<DiagramStitch> _marks = [];
    private int _tops;
    private int _pending;
    private int _lifted;
    private int _skipped;
    private int _alongEdge;
    private bool _isWhole = true;

    /// <summary>Prepares for one row.</summary>
    /// <param name="row">The row.</param>
    /// <param name="start">What it stands on, for the first row of a diagram; null for others.</param>
    public DiagramRowReader(CrochetRow row, DiagramStart? start)
    {
        _row = row;
        _start = start;
    }

    /// <summary>The marks; null where one of them has no place.</summary>
    /// <param name="tops">How many tops the row makes.</param>
    /// <param name="lifted">Chains of the foundation that stand at its edge.</param>
    public ImmutableArray<DiagramStitch>? Read(out int tops, out int lifted)
    {
        var notes = _row.Notes.All;
        for (var i = 0; i < notes.Length; i++)
        {
            Read(notes[i], i + 1 < notes.Length ? notes[i + 1] : null);
        }

        if (_start == DiagramStart.Chain && _skipped > _lifted && _marks.FindIndex(m => m.Mark == DiagramMark.TurningChain) is >= 0 and var turning && _marks[turning].Chains == _lifted)
        {
            _marks[turning] = _marks[turning] with { Bases = [new DiagramBase(DiagramPlace.Below, _lifted)] }; // it stands on a chain that lies below
        }

        (tops, lifted) = (_tops, _lifted);
        return _isWhole && _row.Notes.IsWhole && _tops > 0 ? [.. _marks] : null;
    }

    private void Read(CrochetNote note, CrochetNote? next)
    {
        switch (note.Kind)
        {
            case NoteKind.Chains:
                _pending += note.Count;
                break;
            case NoteKind.Ring or NoteKind.Foundation:
                _pending = 0;
                break;
            case NoteKind.Picot:
                _marks.Add(new DiagramStitch(DiagramMark.Picot, null, note.Count, [], -1));
                _pending = 0;
                break;
            case NoteKind.Space:
                _marks.Add(new DiagramStitch(DiagramMark.Chains, null, note.Count, [], _tops++));
                _lifted += _lifted > 0 && _tops == 2 && _start == DiagramStart.Chain ? note.Count : 0;
                _pending = 0;
                break;
            case NoteKind.Stitch:
                Add(DiagramMark.Stitch, note, _tops++);
                break;
            case NoteKind.Slip:
                Add(DiagramMark.SlipStitch, note, -1);
                break;
            case NoteKind.NewYarn:
                Add(DiagramMark.NewYarn, note, -1);
                break;
            case NoteKind.Join:
                _marks.Add(new DiagramStitch(DiagramMark.Join, null, 0, [new DiagramBase(DiagramPlace.OwnFirst, 0)], -1));
                break;
            case NoteKind.Skipped:
                (_lifted, _skipped) = (note.Count, note.Count);
                if (next?.Kind != NoteKind.Turning && _start is DiagramStart.Chain or DiagramStart.OneChain or DiagramStart.BothSides)
                {
                    _marks.Add(new DiagramStitch(DiagramMark.SkippedChains, null, note.Count, [], -1));
                }

                break;
            case NoteKind.Turning:
                _marks.RemoveAll(m => m.Top >= 0);
                (_tops, _pending) = (0, 0);
                _lifted = _lifted > 0 ? note.Count : 0;
                var bases = _lifted > 0 ? [new DiagramBase(_start == DiagramStart.OneChain ? DiagramPlace.Centre : DiagramPlace.Nothing, -1)] : Places(note, mayBeNowhere: true);
                _marks.Add(new DiagramStitch(DiagramMark.TurningChain, note.Stitch, note.Count, bases, _tops++) { Counts = note.Counts });
                break;
        }
    }

    private void Add(DiagramMark mark, CrochetNote note, int top)
    {
        var places = Places(note, mayBeNowhere: mark != DiagramMark.Stitch || note.Stitch?.Takes == 0);
        var below = places.Length == 1 && places[0].Kind == DiagramPlace.Below && _start is null ? places[0].Top : -1;
        var space = below >= 0 && _row.Below.Tops[_row.Below.IsTurned ? _row.Below.Tops.Length - 1 - below : below].Kind == TopKind.Space;
        _marks.Add(new DiagramStitch(mark, note.Stitch, 0, places, top) { IntoSpace = space || places.Any(p => p.Kind == DiagramPlace.Centre), Loop = note.Loop });
    }

    private ImmutableArray<DiagramBase> Places(CrochetNote note, bool mayBeNowhere) => [.. note.Bases.Select(b => Place(b, mayBeNowhere))];

    private DiagramBase Place(int place, bool mayBeNowhere)
    {
        if (_start == DiagramStart.OneChain || place == CrochetNotes.Ring)
        {
            return new DiagramBase(place == CrochetNotes.OwnFirst ? DiagramPlace.OwnFirst : DiagramPlace.Centre, -1);
        }

        switch (place)
        {
            case CrochetNotes.OwnFirst:
                return new DiagramBase(DiagramPlace.OwnFirst, 0);
            case CrochetNotes.Edge:
                _isWhole &= _start == DiagramStart.Edge;
                return new DiagramBase(DiagramPlace.Below, _alongEdge++);
            case CrochetNotes.Nowhere:
                _isWhole &= mayBeNowhere;
                return new DiagramBase(DiagramPlace.Nothing, -1);
            case <= CrochetNotes.FreeSide:
                return new DiagramBase(DiagramPlace.FreeSide, CrochetNotes.FreeSide - place);
            case <= CrochetNotes.OwnChain:
                return new DiagramBase(DiagramPlace.Below, CrochetNotes.OwnChain - place);
            default:
                var tops = _row.Below.Tops.Length;
                _isWhole &= place < tops;
                return new DiagramBase(DiagramPlace.Below, _row.Below.IsTurned ? tops - 1 - place : place);
        }
    }
}
