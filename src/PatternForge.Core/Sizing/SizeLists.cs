using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Sizing;

/// <summary>Finds every place of a source that hangs on the sizes: literal lists with one value a size in header and body, rows for some sizes alone, and sizes named in prose.</summary>
internal sealed class SizeLists
{
    private const int MostPlaces = 20_000;

    // Values that are never told by size, though brackets may stand in them.
    private static readonly HashSet<string> Single = new(
        "title designer version date craft terms level techniques audience gauge tension tools tool needles needle hook hooks put-up over weight label name fibre fiber colours colors shade photos photo videos video links link url contact omit release stitches special-stitches abbreviations care measured".Split(' '),
        StringComparer.Ordinal);

    private readonly SourceText _text;
    private readonly SizeSet _sizes;
    private readonly List<SizeList> _lists = [];
    private readonly List<NamedSizes> _named = [];
    private readonly List<TextSpan> _called = [];
    private readonly List<TextSpan> _formulas = [];
    private readonly List<RowNode> _rows = [];

    private SizeLists(SourceText text, SizeSet sizes)
    {
        _text = text;
        _sizes = sizes;
    }

    /// <summary>The lists in the order of the text.</summary>
    public IReadOnlyList<SizeList> Lists => _lists;

    /// <summary>The places that name sizes, in the order of the text.</summary>
    public IReadOnlyList<NamedSizes> Named => _named;

    /// <summary>The formulas of the header, in the order of the text.</summary>
    public IReadOnlyList<TextSpan> Formulas => _formulas;

    /// <summary>The rows of the body's lines, in the order of the text.</summary>
    public IReadOnlyList<RowNode> Rows => _rows;

    /// <summary>The entry that names a size table, or tells one; null for none.</summary>
    public HeaderEntry? From { get; private set; }

    /// <summary>The stretches of the body that call a number of the header by its name.</summary>
    public IReadOnlyList<TextSpan> Called => _called;

    /// <summary>Finds them all. There must be two sizes at least: with one, every number is its own.</summary>
    public static SizeLists Find(SourceText text, SizeSet sizes)
    {
        var found = new SizeLists(text, sizes);
        var bag = new FindingBag(text); // what is wrong has been told already
        var file = FileSplitter.Split(text, bag);
        if (file.Header is { } header)
        {
            foreach (var entry in HeaderReader.Read(text, header, CompileOptions.Default, bag).Entries)
            {
                found.Entry(entry);
            }
        }

        found.Body(BodyParser.Parse(text, file.Body, bag));
        found._lists.Sort((a, b) => a.Span.Start.CompareTo(b.Span.Start));
        return found;
    }

    private void Entry(HeaderEntry entry)
    {
        var key = KeySet.Plain(entry.Name);
        switch (key)
        {
            case "sizes" or "size" when entry.Value is HeaderMap map:
                foreach (var part in map.Entries)
                {
                    switch (SizesBinder.PartOf(part.Name))
                    {
                        case "names":
                            Names(part.Value);
                            break;
                        case "from":
                            From = part;
                            Table(part.Value);
                            break;
                        case { } other:
                            Node(part.Value, other);
                            break;
                    }
                }

                break;
            case "sizes" or "size":
                Names(entry.Value);
                break;
            case "sample" or "shown":
                Says(entry, key);
                break;
            default:
                if (!Single.Contains(key))
                {
                    Node(entry.Value, key);
                }

                break;
        }
    }

    private void Names(HeaderNode node)
    {
        var names = node switch
        {
            HeaderScalar scalar => SizesBinder.InTradeForm(scalar).Names,
            HeaderList list => [.. list.Items.OfType<HeaderScalar>().Where(i => !i.IsBlank).Select(i => new Located<string>(i.Text.Trim(), i.Span))],
            _ => [],
        };
        if (names.Length == _sizes.Count)
        {
            Add(new SizeList(SizeListKind.Names, FormOf(node), node.Span, [.. names.Select((n, i) => new SizeListValue(i, n.Origin, n.Origin, null, null))], "sizes.names", ""));
        }
    }

    // "women S (M, L)": the sizes of a table by their names.
    private void Table(HeaderNode node)
    {
        if (node is HeaderMap own)
        {
            Node(own, "body"); // measurements of the pattern's own
            return;
        }

        foreach (var scalar in (node is HeaderList list ? list.Items : [node]).OfType<HeaderScalar>())
        {
            var text = scalar.Text;
            var values = ImmutableArray.CreateBuilder<SizeListValue>();
            var at = text.TrimStart().IndexOf(' ') is > 0 and var blank ? blank + text.Length - text.TrimStart().Length : text.Length;
            while (at < text.Length)
            {
                var end = at;
                while (end < text.Length && !" ,()[]".Contains(text[end], StringComparison.Ordinal))
                {
                    end++;
                }

                if (end > at)
                {
                    var span = scalar.SpanOf(at, end - at);
                    values.Add(new SizeListValue(values.Count, span, span, null, null));
                }

                at = Math.Max(end, at + 1);
            }

            if (values.Count == _sizes.Count)
            {
                Add(new SizeList(SizeListKind.TableNames, SizeListForm.Trade, values[0].Span.Cover(values[^1].Span), values.ToImmutable(), "sizes.from", ""));
            }
        }
    }

    private void Says(HeaderEntry whole, string path)
    {
        foreach (var entry in (whole.Value as HeaderMap)?.Entries ?? [])
        {
            if (entry.Value is HeaderScalar { IsBlank: false } scalar && KeySet.Plain(entry.Name) is "size" && _sizes.IndexOf(scalar.Text.Trim()) is >= 0 and var size)
            {
                _named.Add(new NamedSizes(scalar.Span, default, [scalar.Text.Trim()], [size], path) { Entry = whole.Span });
            }
        }
    }

    private void Node(HeaderNode node, string path)
    {
        switch (node)
        {
            case HeaderScalar scalar when NumberBook.IsFormula(scalar.Text):
                _formulas.Add(scalar.Span);
                break;
            case HeaderScalar { IsBlank: false } scalar:
                var before = _lists.Count;
                foreach (var list in ListReader.InHeader(_text, scalar, _sizes.Count, path))
                {
                    Add(list);
                }

                if (_lists.Count == before)
                {
                    foreach (var list in ListReader.InWords(_text, Lexer.Lex(_text, scalar.Span), All, SizeListKind.Header, path))
                    {
                        Add(list);
                    }
                }

                break;
            case HeaderList items when items.Items.Length == _sizes.Count && Listed(items.Items.Select((item, i) => (item, i)), FormOf(items), path, items.Span):
                break;
            case HeaderList items:
                foreach (var item in items.Items)
                {
                    Node(item, path);
                }

                break;
            case HeaderMap map when map.Entries.Length > 0 && map.Entries.All(e => _sizes.IndexOf(e.Name.Trim()) >= 0):
                Mapped(map, path);
                break;
            case HeaderMap map:
                foreach (var entry in map.Entries)
                {
                    var key = KeySet.Plain(entry.Name);
                    if (!Single.Contains(key))
                    {
                        Node(entry.Value, $"{path}.{key}");
                    }
                }

                break;
        }
    }

    private bool Listed(IEnumerable<(HeaderNode Item, int Size)> items, SizeListForm form, string path, TextSpan span)
    {
        var values = items.Select(i => i.Item is HeaderScalar scalar ? ListReader.One(_text, scalar, i.Size) : null).ToArray();
        if (values.Any(v => v is null) || values.All(v => v!.Number is null))
        {
            return false;
        }

        Add(new SizeList(SizeListKind.Header, form, span, [.. values.OfType<SizeListValue>()], path, UnitOf(values[0]!)));
        return true;
    }

    private void Mapped(HeaderMap map, string path)
    {
        var values = map.Entries
            .Select(e => (Value: e.Value is HeaderScalar scalar ? ListReader.One(_text, scalar, _sizes.IndexOf(e.Name.Trim())) : null, e.Key))
            .Select(v => v.Value is { } value ? value with { Key = v.Key.Span } : null)
            .ToArray();
        if (values.All(v => v is not null))
        {
            Add(new SizeList(SizeListKind.Header, IsFlow(map) ? SizeListForm.Map : SizeListForm.MapLines, map.Span, [.. values.OfType<SizeListValue>().OrderBy(v => v.Size)], path, UnitOf(values[0]!)));
        }
    }

    private string UnitOf(SizeListValue value) => _text.ToString(TextSpan.FromBounds(value.Span.End, value.Whole.End)).Trim();

    private SizeListForm FormOf(HeaderNode node) => node is HeaderList && !IsFlow(node) ? SizeListForm.Lines : SizeListForm.Trade;

    private bool IsFlow(HeaderNode node) => node.Span.Start < _text.Text.Length && _text.Text[node.Span.Start] is '[' or '{';

    private void Body(IEnumerable<SectionNode> sections)
    {
        foreach (var section in sections)
        {
            if (section.Level > 0)
            {
                InProse(section.Span, []);
            }

            foreach (var block in section.Blocks)
            {
                if (block.Kind != BlockKind.Fence)
                {
                    Words(block.Content);
                }
                else if (string.Equals(block.Info, "plan", StringComparison.OrdinalIgnoreCase))
                {
                    Plan(block.Content);
                }
            }
        }
    }

    private void Words(TextSpan span)
    {
        var bag = new FindingBag(_text);
        var labels = new List<NamedSizes>();
        foreach (var row in RowParser.Parse(_text, Lexer.Lex(_text, span), bag, CompileOptions.Default.MaxDepth))
        {
            _rows.Add(row);
            if (row.Label is { Sizes.Length: > 0 } label)
            {
                var sizes = label.Sizes.Select(name => SizesNamed.Range(name, _sizes)).Where(r => r.First >= 0 && r.Last >= r.First).SelectMany(r => Enumerable.Range(r.First, r.Last - r.First + 1)).Distinct().Order();
                labels.Add(new NamedSizes(label.SizesSpan, row.Span, label.Sizes, [.. sizes], ""));
            }
        }

        _named.AddRange(labels);
        var tokens = Lexer.Lex(_text, span);
        _called.AddRange(tokens.Where(t => t.Kind == TokenKind.Placeholder && !_text.Slice(t.Span).SequenceEqual("{count}")).Select(t => t.Span));
        foreach (var list in ListReader.InWords(_text, tokens, (place, count) => labels.Find(l => l.Row.Contains(place)) is { } scope && scope.Sizes.Length == count ? scope.Sizes : All(place, count), SizeListKind.Body, ""))
        {
            if (!labels.Exists(l => l.Span.Contains(list.Span)))
            {
                Add(list);
            }
        }

        InProse(span, labels);
    }

    private void Plan(TextSpan content)
    {
        for (var at = content.Start; at < content.End;)
        {
            var line = FileSplitter.LineAt(_text.Text, at);
            line = TextSpan.FromBounds(line.Start, Math.Min(line.End, content.End));
            if (_text.Slice(line).IndexOf(':') is >= 0 and var colon)
            {
                foreach (var list in ListReader.InWords(_text, Lexer.Lex(_text, TextSpan.FromBounds(line.Start + colon + 1, line.End)), All, SizeListKind.Body, ""))
                {
                    Add(list);
                }
            }

            at = FileSplitter.AfterLineEnd(_text.Text, line.End);
        }
    }

    /// <summary>Sizes that prose names: long names anywhere, short ones where sizes are spoken of.</summary>
    private void InProse(TextSpan span, List<NamedSizes> labels)
    {
        var text = _text.Slice(span);
        var speaksOfSizes = text.Contains("size", StringComparison.OrdinalIgnoreCase);
        var names = ImmutableArray.CreateBuilder<string>();
        var sizes = ImmutableArray.CreateBuilder<int>();
        var place = default(TextSpan);
        for (var size = 0; size < _sizes.Count; size++)
        {
            var name = _sizes.Names[size];
            if (name.Length == 0 || (!speaksOfSizes && (name.Length < 3 || !char.IsUpper(name[0]))) || char.IsAsciiDigit(name[0]))
            {
                continue;
            }

            var at = Find(span, name, labels);
            if (at >= 0)
            {
                names.Add(name);
                sizes.Add(size);
                place = place.IsEmpty ? new TextSpan(at, name.Length) : place.Cover(new TextSpan(at, name.Length));
            }
        }

        if (names.Count > 0)
        {
            _named.Add(new NamedSizes(place, default, names.ToImmutable(), sizes.ToImmutable(), ""));
        }
    }

    private int Find(TextSpan span, string name, List<NamedSizes> labels)
    {
        var text = _text.Text;
        for (var at = span.Start; (at = text.IndexOf(name, at, span.End - at, StringComparison.Ordinal)) >= 0; at += name.Length)
        {
            var end = at + name.Length;
            if ((at == 0 || !IsPartOfWord(text[at - 1])) && (end >= text.Length || !IsPartOfWord(text[end])) && !labels.Exists(l => l.Span.Contains(new TextSpan(at, name.Length))))
            {
                return at;
            }
        }

        return -1;
    }

    private static bool IsPartOfWord(char c) => char.IsLetterOrDigit(c) || c is '-' or '\'' or '’' or '{' or '}';

    private ImmutableArray<int>? All(TextSpan place, int count) => count == _sizes.Count ? [.. Enumerable.Range(0, count)] : null;

    // Values whose own places cannot be told apart (broken letters in a quoted text) make no list that could be rewritten.
    private void Add(SizeList list)
    {
        var isOrdered = list.Values.Zip(list.Values.Skip(1)).All(pair => Place(pair.First).End <= Place(pair.Second).Start);
        if (_lists.Count < MostPlaces && isOrdered)
        {
            _lists.Add(list);
        }

        static TextSpan Place(SizeListValue value) => value.Key is { } key ? key.Cover(value.Whole) : value.Whole;
    }
}
