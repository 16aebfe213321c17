using System.Globalization;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Sizing;

/// <summary>A source with one more size: its edits, its text, and what is to be told of each place.</summary>
internal sealed class SourceGrowth
{
    private readonly MendedText _mended;
    private readonly SizeLists _found;
    private readonly SizeSet _sizes;
    private readonly string _name;
    private readonly GivenValues _given;
    private readonly StitchMultiples _multiples;
    private readonly List<Edit> _edits = [];
    private readonly List<SizeChange> _changes = [];
    private readonly List<(SizeList List, NewValue Value)> _numbers = [];
    private readonly SettledValues? _settled;

    /// <summary>A source before a size is added.</summary>
    public SourceGrowth(MendedText mended, SizeLists found, SizeSet sizes, string name, GivenValues given, StitchMultiples multiples, SettledValues? settled = null)
    {
        (_mended, _found, _sizes, _name, _given, _multiples, _settled) = (mended, found, sizes, name.Trim(), given, multiples, settled);
        Source = mended;
    }

    /// <summary>The source as it is read with its edits.</summary>
    public MendedText Source { get; private set; }

    /// <summary>What is to be told of its places.</summary>
    public IReadOnlyList<SizeChange> Changes => _changes;

    /// <summary>The values that were proposed for lists, given ones left out.</summary>
    public IReadOnlyList<(SizeList List, NewValue Value)> Numbers => _numbers;

    private SourceText Text => _mended.Text;

    /// <summary>The same before a size is added, with values that take the place of what lists would say.</summary>
    public SourceGrowth With(SettledValues settled) => new(_mended, _found, _sizes, _name, _given, _multiples, settled);

    /// <summary>The line of the text as it is read that a place of it stands on.</summary>
    public int LineOfText(TextSpan place) => Text.Lines.PositionOf(place.Start).Line;

    /// <summary>The source with the new size's name alone, in which its body can be looked up.</summary>
    public SourceText Named(int index) =>
        With(_found.Lists.Where(l => l.Kind is SizeListKind.Names or SizeListKind.TableNames).SelectMany(l => ListGrowth.Insert(Text, l, index, _name, _name))).Text;

    /// <summary>The source with the new size in every list.</summary>
    public SourceGrowth Grow(NewPlace place, bool keepsAll)
    {
        var grown = new SourceGrowth(_mended, _found, _sizes, _name, _given, _multiples, _settled);
        foreach (var list in _found.Lists)
        {
            grown.List(list, place, keepsAll);
        }

        foreach (var named in _found.Named)
        {
            grown.Label(named, place.Index);
        }

        grown.Source = With(grown._edits);
        return grown;
    }

    /// <summary>The file itself with the new size; null where it was mended in reading and the edits do not come to the same.</summary>
    public SourceText? InFile(SourceText file, MendedText mended, bool isDraft)
    {
        if (!isDraft)
        {
            return new SourceText(file.Path, Source.Text.Text);
        }

        var text = file.Text;
        foreach (var edit in _edits.OrderByDescending(e => e.Span.Start).ThenByDescending(e => e.Span.End))
        {
            var span = edit.Span is { IsEmpty: true, Start: > 0 and var at } ? new TextSpan(mended.ToSource(new TextSpan(at - 1, 1)).End, 0) : mended.ToSource(edit.Span);
            text = text[..span.Start] + edit.NewText + text[span.End..];
        }

        var written = new SourceText(file.Path, text);
        return DraftReader.Read(written).Mended.Text.Text == Source.Text.Text ? written : null;
    }

    private MendedText With(IEnumerable<Edit> edits) => _mended.With([.. edits.OrderBy(e => e.Span.Start).ThenBy(e => e.Span.End).Select(e => new Mend(e.Span, e.NewText))]);

    private void List(SizeList list, NewPlace place, bool keepsAll)
    {
        if (list.Kind is SizeListKind.Names or SizeListKind.TableNames)
        {
            Write(list, place.Index, _name, SizeChangeKind.Given, list.Kind == SizeListKind.Names ? "the name of the new size" : "the size of the table by its name");
            return;
        }

        if (Local(list, place) is not { } local)
        {
            if (list.Form is SizeListForm.Map or SizeListForm.MapLines)
            {
                Tell(list.Span, SizeChangeKind.Decide, list.Path, "the sizes beside the new one are not in this list");
            }

            return; // a row for other sizes is told at its label
        }

        var given = _given.For(list);
        var value = given ?? _settled?.For(list) ?? Interpolation.Of(list.Values, local, list.Measure, list.Path.EndsWith("needs", StringComparison.Ordinal), keepsAll, _multiples.For(list));
        if (given is null)
        {
            _numbers.Add((list, value));
        }

        Write(list, local.Index, ListGrowth.Written(Text, list, value), given is not null ? SizeChangeKind.Given : value.IsOpen ? SizeChangeKind.Decide : SizeChangeKind.Proposed, value.Why);
    }

    /// <summary>The place of the new size among the values of a list; null where the list is for other sizes.</summary>
    private NewPlace? Local(SizeList list, NewPlace place)
    {
        if (list.Values.Length == _sizes.Count)
        {
            return place;
        }

        var (from, to) = (Array.FindIndex([.. list.Values], v => v.Size == place.From), Array.FindIndex([.. list.Values], v => v.Size == place.To));
        var isCovered = list.Form is SizeListForm.Map or SizeListForm.MapLines || (place.IsBetween && _found.Named.Any(n => n.Row.Contains(list.Span) && Covers(n, place.Index)));
        return from >= 0 && to >= 0 && isCovered ? place with { Index = list.Values.Count(v => v.Size < place.Index), From = from, To = to } : null;
    }

    /// <summary>True where a label names a span of sizes that the new one falls into.</summary>
    private bool Covers(NamedSizes named, int index) =>
        named.Names.Any(n => Binding.SizesNamed.Range(n, _sizes) is var (first, last) && first >= 0 && first < index && last >= index);

    private void Write(SizeList list, int at, string words, SizeChangeKind kind, string why)
    {
        var edits = ListGrowth.Insert(Text, list, at, words, _name).ToArray();
        _edits.AddRange(edits);
        var isShort = list.Form is not (SizeListForm.Lines or SizeListForm.MapLines);
        var span = isShort ? edits.Aggregate(list.Span, (s, e) => s.Cover(e.Span)) : default;
        _changes.Add(new(
            LineOf(list.Span), kind, list.Path.Length > 0 ? list.Path : Around(list.Span),
            isShort ? Text.ToString(span) : "", isShort ? ListGrowth.Grown(Text, span, edits) : "", words, why));
    }

    private void Label(NamedSizes named, int index)
    {
        if (named.Row.IsEmpty)
        {
            Tell(named.Span, SizeChangeKind.Decide, named.Path.Length > 0 ? named.Path : Text.ToString(named.Span), named.Path switch
            {
                "sample" => "the sample is of another size; nothing changes unless there is a new one",
                "shown" => "the photos show another size; nothing changes unless there are new ones",
                _ => $"the words name {(named.Names.Length == 1 ? "a size" : "sizes")}: see what they should say of {_name}",
            });
            return;
        }

        // "2nd and 3rd sizes" are counted: those behind the new one move on.
        var tokens = Lexer.Lex(Text, named.Span);
        for (var i = 0; i + 1 < tokens.Count; i++)
        {
            var span = tokens[i].Span.Cover(tokens[i + 1].Span);
            if (tokens[i].Kind == TokenKind.Number && tokens[i + 1] is { Kind: TokenKind.Word, SpaceBefore: false } && NumberFolder.IsOrdinalEnd(Text.Slice(tokens[i + 1].Span))
                && int.TryParse(Text.Slice(tokens[i].Span), NumberStyles.None, CultureInfo.InvariantCulture, out var nth) && nth > index && nth < 100)
            {
                _edits.Add(new Edit(span, ListGrowth.Ordinal(nth + 1)));
            }
        }

        Tell(named.Span, Covers(named, index) ? SizeChangeKind.Proposed : SizeChangeKind.Decide, Text.ToString(named.Span), Covers(named, index)
            ? $"{_name} lies among these sizes and works this too"
            : named.Sizes.Length == _sizes.Count ? $"these were all sizes: name {_name} as well, or leave the names out" : $"for these sizes alone: decide whether {_name} works this too, and with which numbers");
    }

    private void Tell(TextSpan span, SizeChangeKind kind, string what, string why) => _changes.Add(new(LineOf(span), kind, what, "", "", null, why));

    private int LineOf(TextSpan span) => _mended.Source.Lines.PositionOf(_mended.ToSource(span).Start).Line;

    /// <summary>The first words of the line that a place stands in.</summary>
    private string Around(TextSpan span)
    {
        var line = FileSplitter.LineAt(Text.Text, Text.Lines.StartOf(Text.Lines.PositionOf(span.Start).Line));
        return Text.ToString(line).Trim();
    }
}
