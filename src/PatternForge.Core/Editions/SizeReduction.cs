using System.Buffers;
using System.Collections.Frozen;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Sizing;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>The edits that leave one size of a pattern.</summary>
internal sealed class SizeReduction
{
    private static readonly SearchValues<char> Quoted = SearchValues.Create(":#[]{}&*!|>%@`,");

    private static readonly FrozenDictionary<string, string> One =
        "times:time sts:st stitches:stitch rows:row rounds:round rnds:rnd repeats:repeat buttons:button buttonholes:buttonhole balls:ball skeins:skein motifs:motif ridges:ridge pieces:piece loops:loop wedges:wedge markers:marker"
            .Split(' ').Select(pair => pair.Split(':')).ToFrozenDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);

    private readonly PatternFacts _facts;
    private readonly SourceText _text;
    private readonly int _size;
    private readonly SizeLists _found;
    private readonly List<Edit> _edits = [];
    private readonly List<TextSpan> _gone = [];

    /// <summary>One size of a pattern, from 0.</summary>
    public SizeReduction(Compilation plain, int size)
    {
        (_facts, _text, _size) = (plain.Pattern.Facts, plain.Text.Text, size);
        _found = plain.SizeLists;
    }

    /// <summary>All of them, in the order of the text; none inside another.</summary>
    public IEnumerable<Edit> Edits()
    {
        foreach (var named in _found.Named.Where(n => n.Path.Length > 0 || !n.Row.IsEmpty))
        {
            Named(named);
        }

        foreach (var formula in _found.Formulas)
        {
            Formula(formula);
        }

        // The sample goes where it is of another size, and with it what an amount is worked out from: the amount itself stays.
        foreach (var yarn in _facts.Yarns.Where(y => y is { NeedsAreEstimated: true, EstimatedBy: not null } && _found.Named.Any(n => n.Path == "sample" && !n.Sizes.Contains(_size))))
        {
            if (yarn is { NeedsOrigin: { } place, Needs: { } needs } && needs[_size] is { } amount)
            {
                _edits.Add(new Edit(place, amount.ToString()));
            }
        }

        foreach (var list in _found.Lists)
        {
            List(list);
        }

        return _edits.Where(e => !_gone.Exists(g => g.Contains(e.Span))).Concat(_gone.Where(g => !_gone.Exists(other => other != g && other.Contains(g))).Distinct().Select(g => new Edit(g, "")));
    }

    private void Named(NamedSizes named)
    {
        if (named.Row.IsEmpty)
        {
            if (!named.Sizes.Contains(_size))
            {
                Entry(named.Entry); // the sample, and what the photos show, are of another size
            }

            return;
        }

        if (!named.Sizes.Contains(_size))
        {
            Row(named.Row);
            return;
        }

        // The label goes, and the sentence begins behind it.
        var at = named.Span.End;
        while (at < named.Row.End && _text.Text[at] is ' ' or ':' or ',')
        {
            at++;
        }

        if (at < named.Row.End && char.IsLower(_text.Text[at]))
        {
            _edits.Add(new Edit(TextSpan.FromBounds(named.Span.Start, at + 1), char.ToUpperInvariant(_text.Text[at]).ToString()));
        }
        else
        {
            _edits.Add(new Edit(TextSpan.FromBounds(named.Span.Start, at), ""));
        }
    }

    private void Formula(TextSpan formula)
    {
        var values = _facts.Numbers.Select(n => (n.Origin, n.Values)).Concat(_facts.Finished.Select(m => (m.Origin, m.Values))).Concat(_facts.Fits.Select(m => (m.Origin, m.Values)))
            .FirstOrDefault(v => v.Origin.Start == formula.Start).Values;
        if (values is null)
        {
            return; // what could not be worked out has been told
        }

        if (values[_size] is { } value)
        {
            _edits.Add(new Edit(formula, value.ToString()));
        }
        else
        {
            Entry(formula);
        }
    }

    private void List(SizeList list)
    {
        var own = list.Values.FirstOrDefault(v => v.Size == _size);
        if (list.Kind == SizeListKind.Names)
        {
            var name = _facts.Sizes.Names[_size] + (_facts.Sizes.Word is { } word ? " " + word : "");
            _edits.Add(new Edit(list.Span, name.AsSpan().IndexOfAny(Quoted) >= 0 ? $"\"{name}\"" : name));
            return;
        }

        if (list.Kind == SizeListKind.TableNames)
        {
            var end = list.Span.End;
            while (end < _text.Text.Length && _text.Text[end] is ')' or ']')
            {
                end++;
            }

            _edits.Add(new Edit(TextSpan.FromBounds(list.Span.Start, end), _text.ToString(own!.Span)));
            return;
        }

        if (own?.Number is not null)
        {
            Put(list, own);
        }
        else if (list.Kind == SizeListKind.Header)
        {
            Entry(list.Span);
        }
        else
        {
            Step(list.Span);
        }
    }

    private void Put(SizeList list, SizeListValue own)
    {
        var span = list.Form == SizeListForm.MapLines
            ? TextSpan.FromBounds(list.Values.Min(v => v.Key!.Value.Start), list.Values.Max(v => v.Whole.End))
            : list.Form == SizeListForm.Lines ? TextSpan.FromBounds(list.Span.Start, list.Values[^1].Whole.End)
            : list.Span;
        span = list.Values[0].Span.Start < span.Start ? span.Cover(list.Values[0].Span) : span;

        _edits.Add(new Edit(span, _text.ToString(own.Whole)));
        if (own.Number != 1)
        {
            return;
        }

        // One time, not 1 times.
        var at = span.End;
        for (var words = 0; words < 2; words++)
        {
            while (at < _text.Text.Length && _text.Text[at] == ' ')
            {
                at++;
            }

            var end = at;
            while (end < _text.Text.Length && char.IsLetter(_text.Text[end]))
            {
                end++;
            }

            var word = _text.Text[at..end];
            if (One.TryGetValue(word, out var single))
            {
                _edits.Add(new Edit(TextSpan.FromBounds(at, end), single));
                return;
            }

            if (word is not "more")
            {
                return;
            }

            at = end;
        }
    }

    /// <summary>Takes an entry out of the header: its whole lines, or its part of a map on one line.</summary>
    private void Entry(TextSpan value)
    {
        var start = _text.Lines.StartOf(_text.Lines.PositionOf(value.Start).Line);
        var before = _text.Text.AsSpan(start, value.Start - start);
        if (before.IndexOfAny('{', '[') < 0)
        {
            var end = FileSplitter.LineAt(_text.Text, Math.Max(value.End - 1, value.Start)).End;
            _gone.Add(TextSpan.FromBounds(start, FileSplitter.AfterLineEnd(_text.Text, end)));
            return;
        }

        var from = before.LastIndexOfAny('{', ',') is >= 0 and var sign ? start + sign + 1 : value.Start;
        var to = value.End;
        while (to < _text.Text.Length && _text.Text[to] is not (',' or '}' or '\n'))
        {
            to++;
        }

        // The comma behind it goes with the first, the one before with the others.
        _gone.Add(_text.Text[from - 1] == ',' ? TextSpan.FromBounds(from - 1, to) : TextSpan.FromBounds(from, to < _text.Text.Length && _text.Text[to] == ',' ? to + 1 : to));
    }

    /// <summary>Takes a step out of its row, with the comma that parts it from the next; the whole row where nothing else is in it.</summary>
    private void Step(TextSpan list)
    {
        var row = _found.Rows.FirstOrDefault(r => r.Span.Contains(list));
        if (row is null || Holding(row.Steps, list) is not { } place)
        {
            _edits.Add(new Edit(list, "–"));
            return;
        }

        if (place.IsAlone && place.IsTop)
        {
            Row(row.Span);
            return;
        }

        var (start, end) = (place.Span.Start, place.Span.End);
        while (end < _text.Text.Length && _text.Text[end] == ' ')
        {
            end++;
        }

        if (end < _text.Text.Length && _text.Text[end] is ',' or ';' && !place.IsLast)
        {
            end++;
            while (end < _text.Text.Length && _text.Text[end] == ' ')
            {
                end++;
            }
        }
        else
        {
            end = place.Span.End;
            while (start > row.Span.Start && _text.Text[start - 1] is ' ' or ',' or ';')
            {
                start--;
            }
        }

        _gone.Add(TextSpan.FromBounds(start, end));
    }

    /// <summary>The smallest part of a row that holds a list and can go by itself.</summary>
    private static (TextSpan Span, bool IsAlone, bool IsLast, bool IsTop)? Holding(IReadOnlyList<StepNode> steps, TextSpan list, bool isTop = true)
    {
        for (var i = 0; i < steps.Count; i++)
        {
            if (!steps[i].Span.Contains(list))
            {
                continue;
            }

            IReadOnlyList<StepNode> within = steps[i] switch { GroupNode group => group.Body, RepeatNode repeat => repeat.Body, _ => [] };
            return within.Count > 0 && Holding(within, list, isTop: false) is { IsAlone: false } inner
                ? inner
                : (steps[i].Span, steps.Count == 1, i + 1 == steps.Count, isTop);
        }

        return null;
    }

    /// <summary>Takes a row out, and its line where nothing else stands in it.</summary>
    private void Row(TextSpan row)
    {
        var (start, end) = (row.Start, row.End);
        while (end < _text.Text.Length && _text.Text[end] is ' ' or '.' or ')' or ']')
        {
            end++;
        }

        _gone.Add(TextSpan.FromBounds(start, end));
    }
}
