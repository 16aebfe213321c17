using System.Collections.Immutable;
using System.Text;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>What the body says after binding.</summary>
/// <param name="Sections">Its sections and blocks.</param>
/// <param name="Lines">Its instruction lines.</param>
/// <param name="Abbreviations">The abbreviations that the lines use, as the table prints them.</param>
/// <param name="Words">The words of the lines as they are written, each once.</param>
public sealed record BoundBody(ImmutableArray<Section> Sections, ImmutableArray<BoundLine> Lines, ImmutableArray<AbbreviationUse> Abbreviations, ImmutableArray<string> Words)
{
    /// <summary>The charts that the source holds square by square.</summary>
    public ImmutableArray<ChartSource> Charts { get; init; } = [];
}

/// <summary>Tells prose from instruction lines, and binds the lines.</summary>
public sealed class BodyBinder
{
    private const int MostOfName = 40;

    private readonly SourceText _source;
    private readonly PatternFacts _facts;
    private readonly StitchBook _book;
    private readonly FindingBag _bag;
    private readonly CompileOptions _options;
    private readonly CancellationToken _cancel;
    private readonly Abbreviations _abbreviations;
    private readonly List<BoundLine> _lines = [];
    private readonly List<ChartSource> _charts = [];
    private readonly HashSet<string> _marked = new(StringComparer.Ordinal);
    private readonly List<(Operation Operation, string Said, TextSpan Span)> _uses = [];
    private readonly Recovery _recovery;
    private readonly StringBuilder _joined = new();
    private ImmutableArray<StitchPattern> _stitchPatterns = [];
    private ImmutableArray<string> _pieces = [];
    private readonly List<Token> _tokens = []; // of the line being bound
    private ImmutableArray<int> _standing = [];
    private string _piece = "";
    private int _section;
    private KnownLines? _known;

    private BodyBinder(SourceText source, PatternFacts facts, StitchBook book, FindingBag bag, CompileOptions options, CancellationToken cancel)
    {
        _source = source;
        _facts = facts;
        _book = book;
        _bag = bag;
        _options = options;
        _cancel = cancel;
        _abbreviations = new Abbreviations(facts, book, source);
        _recovery = new Recovery(source, facts, book, options);
    }

    /// <summary>Binds the sections of a body to the facts of its header.</summary>
    public static BoundBody Bind(ImmutableArray<SectionNode> sections, PatternFacts facts, SourceText source, FindingBag bag, CompileOptions options, CancellationToken cancel, KnownLines? known = null)
    {
        var book = new StitchBook(facts);
        book.Define(SpecialStitches.Bind(facts, book, bag, options));
        var binder = new BodyBinder(source, facts, book, bag, options, cancel) { _known = known, _stitchPatterns = StitchPatternFinder.Find(sections, source), _pieces = [.. sections.Select(s => s.Heading.ToLowerInvariant()).Where(h => h.Length > 1)] };
        var bound = sections.Select(binder.Section).ToImmutableArray();
        if (binder._lines.Count > 0)
        {
            binder.OutsideTheRows(bound);
        }

        if (facts.Abbreviations is null && binder._lines.Count > 0)
        {
            foreach (var definition in facts.Stitches)
            {
                binder._abbreviations.NoteDescription(definition);
            }
        }

        if (facts.Craft == Craft.Crochet)
        {
            CrochetTerms.Check(binder._uses, facts, bag);
        }

        return new BoundBody(bound, [.. binder._lines], binder._abbreviations.Table(), binder._abbreviations.Words) { Charts = [.. binder._charts] };
    }

    /// <summary>Notes the abbreviations of the prose, and of all that the header says to the maker in words.</summary>
    private void OutsideTheRows(ImmutableArray<Section> sections)
    {
        foreach (var block in sections.SelectMany(s => s.Blocks).OfType<ProseBlock>())
        {
            _abbreviations.NoteProse(_source, block.Origin);
        }

        foreach (var (words, place) in HeaderWords())
        {
            if (!string.IsNullOrWhiteSpace(words))
            {
                _abbreviations.NoteProse(new SourceText("", words), new TextSpan(0, words.Length), place);
            }
        }
    }

    private IEnumerable<(string? Words, TextSpan Place)> HeaderWords()
    {
        var header = _facts.HeaderOrigin ?? default;
        return _facts.Notes.Select(n => ((string?)n.Value, n.Origin))
            .Concat(_facts.Gauges.Select(g => (g.Stitch, g.Origin)))
            .Concat(_facts.Gauges.Select(g => (g.Tool, g.Origin)))
            .Concat(_facts.Tools.Concat(_facts.Notions).Select(t => ((string?)t.Text, t.Origin)))
            .Concat(_facts.Photos.SelectMany(p => new[] { (p.Alt, p.Origin), (p.Caption, p.Origin) }))
            .Concat(_facts.Yarns.SelectMany(y => y.Alternatives).Select(a => (a.Note, a.Origin)))
            .Concat(_facts.Techniques.Select(t => ((string?)t.Value, t.Origin)))
            .Concat([(_facts.Summary, header), (_facts.LevelReason, header), (_facts.Ease, header), (_facts.GaugeRemark, header)]);
    }

    private Section Section(SectionNode node)
    {
        var role = node.DeclaredRole ?? SectionRoles.Slug(node.Heading);
        var isProse = SectionRoles.IsProse(role);
        _piece = node.Heading;
        _section++;
        _standing = [];
        var blocks = ImmutableArray.CreateBuilder<Block>();
        foreach (var block in node.Blocks)
        {
            _cancel.ThrowIfCancellationRequested();
            switch (block.Kind)
            {
                case BlockKind.Fence:
                    Add(blocks, new FencedBlock(block.Span, block.Info, _source.ToString(block.Content)));
                    ChartRows(node, block, blocks);
                    break;
                case BlockKind.Text or BlockKind.ListItem when !isProse && Line(block) is { } line:
                    Add(blocks, new InstructionBlock(block.Span, line.Index));
                    break;
                default:
                    Prose(blocks, block);
                    break;
            }
        }

        EndJoined(blocks);
        return new Section(node.Heading, role, node.Level, node.Span, blocks.ToImmutable());
    }

    /// <summary>The rows of a chart that the block holds: lines of the pattern, unless words give rows of the same numbers.</summary>
    private void ChartRows(SectionNode node, BlockNode block, ImmutableArray<Block>.Builder blocks)
    {
        if (block.Info != FencedBlock.Chart || _facts.Craft != Craft.Knitting || ChartGrid.Read(_source, block.Content) is not { } grid)
        {
            return;
        }

        var pattern = _stitchPatterns.FirstOrDefault(p => p.Section == _section);
        if (ChartBinder.Bind(grid, _section, _source, _book, pattern, _facts, _bag) is not var (chart, rows))
        {
            return;
        }

        var numbers = rows.Select(r => r.Numbers[0]).ToHashSet();
        var standsAlone = !node.Blocks.Any(b => b.Kind is BlockKind.Text or BlockKind.ListItem && Numbers(b).Any(numbers.Contains));
        _charts.Add(new ChartSource(_section, block.Span, rows, standsAlone));
        for (var i = 0; standsAlone && i < rows.Length; i++)
        {
            var operations = chart.Rows[i].Cells.Select(c => c.Operation).OfType<Operation>().DistinctBy(o => o.Id, StringComparer.Ordinal).ToImmutableArray();
            _abbreviations.Note([.. operations.Select(o => (o, ChartWords.NameOf(o, _facts.TermsInForce ?? Dialect.Us), rows[i].Origin))], []);
            var line = new BoundLine
            {
                Index = _lines.Count,
                Origin = rows[i].Origin,
                Piece = _piece,
                Section = _section,
                Pattern = pattern,
                Rows = [rows[i]],
                Label = ChartWords.Label(chart.Rows[i], chart),
                Text = ChartWords.Instruction(chart.Rows[i], chart, _facts.TermsInForce ?? Dialect.Us),
                Operations = operations,
            };
            _lines.Add(line);
            blocks.Add(new InstructionBlock(rows[i].Origin, line.Index));
        }
    }

    /// <summary>The row numbers that a block's labels name.</summary>
    private IEnumerable<int> Numbers(BlockNode block)
    {
        var tokens = new List<Token>();
        Lexer.Lex(_source, block.Content, tokens);
        return RowParser.Parse(_source, tokens, new FindingBag(_source), _options.MaxDepth).SelectMany(r => r.Label?.Numbers ?? []).SelectMany(NumbersOf);
    }

    private static IEnumerable<int> NumbersOf(NumberRange range)
    {
        var (from, to) = (range.From.Values[0], range.To?.Values[0] ?? range.From.Values[0]);
        return from is >= 1 and <= ChartGrid.Most && to >= from && to <= ChartGrid.Most ? Enumerable.Range((int)from, (int)(to - from)!.Value + 1) : [];
    }

    private void Add(ImmutableArray<Block>.Builder blocks, Block block)
    {
        EndJoined(blocks);
        blocks.Add(block);
    }

    /// <summary>Gives the last block the text of all the items that were joined to it.</summary>
    private void EndJoined(ImmutableArray<Block>.Builder blocks)
    {
        if (_joined.Length > 0)
        {
            blocks[^1] = new ProseBlock(blocks[^1].Origin, _joined.ToString());
            _joined.Clear();
        }
    }

    private void Prose(ImmutableArray<Block>.Builder blocks, BlockNode block)
    {
        var markdown = PrintedText.Fill(Remarks.Strip(_source.ToString(block.Content)), _facts).Trim();
        if (markdown.Length == 0)
        {
            return;
        }

        ProsePlaceholders(block.Content);
        var text = block.Kind == BlockKind.ListItem ? "- " + markdown : markdown;
        var joins = (block.Kind is BlockKind.ListItem || (block.Kind == BlockKind.Other && text[0] is '|' or '>') || BodyParser.IsNumbered(text)) && blocks.Count > 0
            && blocks[^1] is ProseBlock before && before.Markdown.Length > 0 && (before.Markdown[0] == text[0] || (BodyParser.IsNumbered(text) && BodyParser.IsNumbered(before.Markdown))) && before.Origin.End + 3 >= block.Content.Start - 6;
        if (joins)
        {
            var last = (ProseBlock)blocks[^1];
            _joined.Append(_joined.Length == 0 ? last.Markdown : "").Append('\n').Append(text);
            blocks[^1] = new ProseBlock(last.Origin.Cover(block.Span), last.Markdown);
            return;
        }

        Add(blocks, new ProseBlock(block.Span, text));
    }

    /// <summary>Binds a block as an instruction line; null when it is prose.</summary>
    private BoundLine? Line(BlockNode block)
    {
        if (_known is not null)
        {
            var known = _known.Line(block.Content, _lines.Count, _source, _facts);
            _lines.AddRange(known is null ? [] : [known]);
            return known;
        }

        var draft = new FindingBag(_source);
        var tokens = _tokens;
        Lexer.Lex(_source, block.Content, tokens);
        var nodes = RowParser.Parse(_source, tokens, draft, _options.MaxDepth);
        if (nodes.IsEmpty)
        {
            return null;
        }

        var context = new RowContext(_source, _facts, _book, draft, _options) { MarkedPieces = _marked, StitchPatterns = _stitchPatterns, Pieces = _pieces };
        var bound = ImmutableArray.CreateBuilder<BoundRow>(nodes.Length);
        var isLabelled = false;
        foreach (var node in nodes)
        {
            RowParts.Split(Row(node, context), bound);
            isLabelled |= node.Label is { IsTitle: false };
        }

        var rows = bound.DrainToImmutable();
        if (!isLabelled && !InstructionSigns.LooksLikeInstruction(rows, nodes, _book))
        {
            return null;
        }

        NotRead(rows, block.Content, draft);
        NumbersInRun.Check(rows, context);
        Placeholders(tokens, context);
        foreach (var finding in draft.ToSorted())
        {
            _bag.Add(finding);
        }

        var label = nodes[0].Label is { IsTitle: false } first && first.Span.Start <= block.Content.Start + 4 ? first.Span : default;
        var textStart = label.Length > 0 ? nodes[0].Body.IsEmpty ? nodes[0].Span.End : nodes[0].Body.Start : block.Content.Start;
        textStart -= textStart > block.Content.Start && _source.Text[textStart - 1] is '“' or '"' ? 1 : 0;
        var mark = MarkIn(nodes);
        if (mark is not null)
        {
            _marked.Add(_piece.ToLowerInvariant());
        }

        var line = new BoundLine
        {
            Index = _lines.Count,
            Origin = block.Content,
            Piece = _piece,
            Section = _section,
            Pattern = _stitchPatterns.FirstOrDefault(p => p.Section == _section),
            Mark = mark,
            Rows = rows,
            Label = label.Length > 0 ? PrintedText.Fill(PrintedText.Label(_source.ToString(label)), _facts) : "",
            LabelPlace = label,
            TextStart = textStart,
            Text = PrintedText.Row(_source.ToString(TextSpan.FromBounds(textStart, block.Content.End)), _facts),
            Operations = OperationsOf(context),
        };
        if (_facts.Craft == Craft.Crochet)
        {
            _uses.AddRange(context.Used);
        }

        _abbreviations.Note(context.Used, tokens);
        _lines.Add(line);
        return line;
    }

    /// <summary>The operations of a line, each once, in order of first use.</summary>
    private static ImmutableArray<Operation> OperationsOf(RowContext context)
    {
        var operations = new List<Operation>(Math.Min(context.Used.Count, 8));
        HashSet<string>? ids = null; // a line names few stitches, but nothing keeps it from naming many
        foreach (var (operation, _, _) in context.Used)
        {
            if (ids is null && operations.Count == 16)
            {
                ids = operations.Select(o => o.Id).ToHashSet(StringComparer.Ordinal);
            }

            if (ids is null ? !HasId(operations, operation.Id) : ids.Add(operation.Id))
            {
                operations.Add(operation);
            }
        }

        return [.. operations];
    }

    private static bool HasId(List<Operation> operations, string id)
    {
        foreach (var operation in operations)
        {
            if (string.Equals(operation.Id, id, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Where two stars mark a place in the line: null for nowhere, false before its words, true behind them.</summary>
    private static bool? MarkIn(ImmutableArray<RowNode> nodes)
    {
        bool? at = null;
        for (var row = 0; row < nodes.Length; row++)
        {
            for (var i = 0; i < nodes[row].Steps.Length; i++)
            {
                at = nodes[row].Steps[i] is MarkNode { Mark: "**" } ? row > 0 || i > 0 : at;
            }
        }

        return at;
    }

    /// <summary>Names what was not understood in rows of which nothing else has been told.</summary>
    private void NotRead(ImmutableArray<BoundRow> rows, TextSpan line, FindingBag draft)
    {
        foreach (var row in rows)
        {
            if (row.HasUnread && UnreadSteps.In(row.Steps).FirstOrDefault() is { } unread && !draft.HasAnyIn(row.Origin))
            {
                draft.Add(_recovery.Tell(line, row.Origin, unread.Origin));
            }
        }
    }

    private void Placeholders(List<Token> tokens, RowContext context)
    {
        foreach (var token in tokens)
        {
            if (token.Kind == TokenKind.Placeholder)
            {
                Placeholder(token.Span, context.Bag);
            }
        }
    }

    /// <summary>Reports names in braces that stand in prose, would be printed as they stand, and are neither a number of the header nor a stitch.</summary>
    private void ProsePlaceholders(TextSpan place)
    {
        var text = _source.ToString(place);
        for (var at = text.IndexOf('{', StringComparison.Ordinal); at >= 0; at = text.IndexOf('{', at + 1))
        {
            var close = at + 1;
            while (close < text.Length && close - at < MostOfName && (char.IsAsciiLetterOrDigit(text[close]) || text[close] is '-' or '_'))
            {
                close++;
            }

            if (close > at + 2 && close < text.Length && text[close] == '}' && char.IsAsciiLetter(text[at + 1]) && (at == 0 || text[at - 1] is not ('`' or '{' or '$'))
                && text.LastIndexOf("<!--", at, StringComparison.Ordinal) <= text.LastIndexOf("-->", at, StringComparison.Ordinal) && text[(at + 1)..close] is var name
                && _book.Find(name) is null && TradeWords.Find(Dialect.Any, name) is null && name != "count")
            {
                Placeholder(new TextSpan(place.Start + at, close + 1 - at), _bag);
            }
        }
    }

    private void Placeholder(TextSpan span, FindingBag bag)
    {
        var name = _source.ToString(span)[1..^1];
        if (name != "count" && !_facts.Unread.Contains(name, StringComparer.OrdinalIgnoreCase) && !_facts.Numbers.Any(n => string.Equals(n.Name, name, StringComparison.OrdinalIgnoreCase)))
        {
            var near = Suggest.Nearest(name, _facts.Numbers.Select(n => n.Name).Append("count"));
            bag.Add(RowRules.UnknownNumber, span, $"there is no number called `{name}` in the header", near.Count > 0 ? $"did you mean `{near[0]}`?" : "define it under `numbers`");
        }
    }

    private BoundRow Row(RowNode node, RowContext context)
    {
        var label = node.Label;
        var sizes = Sizes(node, context);
        context.Scope = sizes;
        context.RowEnd = node.Body.End;
        var body = RowBinder.Bind(node.Steps, context);
        var row = new BoundRow
        {
            Origin = PlaceOf(node, body),
            Sizes = sizes,
            IsForNoSize = label is { Sizes.IsEmpty: false } && sizes.IsEmpty,
            Steps = body.Steps,
            Claims = body.Claims,
            HasUnread = body.HasUnread,
            BareGroup = body.BareGroup,
            WantsCount = body.WantsCount,
        };
        row = EachRow(label is null ? row : LabelBinder.Bind(row, label, context));
        context.Scope = [];
        return RowYarnReader.Read(row, node.Span, context) is { } yarns ? row with { Yarns = yarns } : row;
    }

    /// <summary>"Rows 3-6: ... (1 st dec'd each row)": four in all; of rows told in words it is not known how many there are.</summary>
    private static BoundRow EachRow(BoundRow row)
    {
        if (!row.Claims.Any(c => c.IsEachRow))
        {
            return row;
        }

        var isKnown = !row.Steps.Any(s => s is RowsStep);
        var rows = row.Count ?? RowContext.Constant(row.IsRange ? Math.Max(1, row.Numbers.Length) : 1, row.Origin);
        return row with { Claims = [.. row.Claims.Select(c => c.IsEachRow ? c with { IsEachRow = false, IsTrusted = c.IsTrusted && isKnown, Values = Product(c.Values, rows.Values) } : c)] };
    }

    private static PerSize<int?> Product(PerSize<int?> changes, PerSize<int?> rows)
    {
        int? Of(int size) => changes[size] is { } change && rows[size] is { } count ? (int)Math.Clamp((long)change * count, -1_000_000, 1_000_000) : null;
        var sizes = Math.Max(changes.Values.Length, rows.Values.Length);
        return sizes == 1 ? PerSize.Shared(Of(0)) : PerSize.Each([.. Enumerable.Range(0, sizes).Select(Of)]);
    }

    /// <summary>The sizes that a row is for: those it names, else those of a line "Size XL only:" above it; empty for all.</summary>
    private ImmutableArray<int> Sizes(RowNode node, RowContext context)
    {
        var named = node.Label is null ? [] : SizesNamed.Bind(node.Label, context);
        if (node.Label is { Sizes.IsEmpty: false })
        {
            _standing = node.Body.IsEmpty ? named : _standing;
            return named;
        }

        var text = _source.Slice(node.Span).TrimStart("*_ ");
        if (text.StartsWith("all sizes", StringComparison.OrdinalIgnoreCase) || text.StartsWith("for all sizes", StringComparison.OrdinalIgnoreCase) || text.StartsWith("on all sizes", StringComparison.OrdinalIgnoreCase)
            || text.StartsWith("both sizes", StringComparison.OrdinalIgnoreCase))
        {
            _standing = [];
        }

        return _standing;
    }

    /// <summary>The row without the counts stated behind it, and without the sign at its end.</summary>
    private TextSpan PlaceOf(RowNode node, RowBinder.Body body)
    {
        var worked = body.Steps.IsEmpty ? node.Body.Start : int.MinValue;
        foreach (var step in body.Steps)
        {
            worked = Math.Max(worked, step.Origin.End);
        }

        var end = int.MaxValue;
        foreach (var claim in body.Claims)
        {
            end = claim.Origin.Start >= worked ? Math.Min(end, claim.Origin.Start) : end;
        }

        end = end == int.MaxValue ? node.Span.End : end;
        var text = _source.Slice(TextSpan.FromBounds(node.Span.Start, end)).TrimEnd(" .,;=-–—(\t\r\n");
        return new TextSpan(node.Span.Start, Math.Max(1, text.Length));
    }
}
