using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// What a pattern of several sizes says in each of them alone: the words of the edition of that size, which the compiler has read and worked. Made when a page
/// asks for it and not before.
/// </summary>
internal sealed class OwnSizes
{
    // Far above what any pattern has: a page of more would be slow to make, and is left as it is.
    private const int MostSizes = 16;
    private const int MostLines = 1_500;

    private readonly Compilation _plain;
    private readonly CompileOptions _options;
    private readonly Lazy<ImmutableArray<OwnSize>> _each;
    private readonly FormWords? _form;

    /// <summary>Prepares for one pattern.</summary>
    /// <param name="plain">The pattern.</param>
    /// <param name="options">How it was compiled; the defaults when null.</param>
    /// <param name="written">Where the pattern is another form of one: what the sizes of that one are, whose words are taken over where it is known how.</param>
    public OwnSizes(Compilation plain, CompileOptions? options, OwnSizes? written = null)
    {
        (_plain, _options) = (plain, (options ?? CompileOptions.Default) with { Checking = Checking.RowsAlone, LookAtPhoto = null, Trace = false });
        _each = new(Each);
        _form = written is null ? null : FormWords.Between(written._plain, written, plain);
    }

    /// <summary>True when every size can stand alone: its edition comes to the same counts in every line.</summary>
    public bool AreKnown => _form?.Written.AreKnown ?? !_each.Value.IsEmpty;

    /// <summary>A line as one size has it; null where the size does not work it, or where nothing is known.</summary>
    public RowWords? Row(WorkedLine line, int size) =>
        !AreKnown || size >= _plain.Pattern.Facts.Sizes.Count ? null
        : _form is { } form ? form.Row(line, size, out var isKnown) is var row && isKnown ? row : Alone(size)?.Row(line.Index)
        : _each.Value[size].Row(line.Index);

    /// <summary>The sizes that do not work a line, counted from 1, with blanks between them.</summary>
    public string Without(WorkedLine line) =>
        _form is { } form ? form.Written.Without(form.Line(line)) : AreKnown ? string.Join(' ', Enumerable.Range(0, _each.Value.Length).Where(i => Row(line, i) is null).Select(i => i + 1)) : "";

    /// <summary>A stretch of prose as one size has it; null where nothing is known.</summary>
    public string? Prose(Block block, int size) =>
        !AreKnown ? null : _form is { } form && form.Prose(block, size) is { } taken ? taken : Alone(size)?.Prose(block);

    /// <summary>What one size makes of something that is told of a line; null where it has none such.</summary>
    public string? Told(WorkedLine line, int size, Func<WorkedLine, Compilation, string?> tell) =>
        !AreKnown ? null : _form is { } form && form.Told(line, size, tell) is { } taken ? taken : Alone(size) is { } own && own.Line(line.Index) is { } same ? tell(same, own.Made) : null;

    /// <summary>What the header of one size says.</summary>
    public string? Said(int size, Func<PatternFacts, string?> read) =>
        !AreKnown ? null : _form is { } form && form.Said(size, read) is { } taken ? taken : Alone(size) is { } own ? read(own.Made.Pattern.Facts) : null;

    private OwnSize? Alone(int size) => size < _each.Value.Length ? _each.Value[size] : null;

    private ImmutableArray<OwnSize> Each()
    {
        var sizes = _plain.Pattern.Facts.Sizes;
        if (sizes.Count is < 2 or > MostSizes || _plain.Lines.Length > MostLines || _plain.HasErrors || _plain.Source.Text.Length == 0)
        {
            return [];
        }

        Edition[] editions = [.. Edition.Find("sizes")?.For(_plain) ?? []];
        var all = ImmutableArray.CreateBuilder<OwnSize>(sizes.Count);
        for (var i = 0; i < sizes.Count; i++)
        {
            var edition = i < editions.Length ? editions[i] : null;
            if (edition is null || !edition.Exists(sizes) || edition.OnlySize(_plain) != i)
            {
                return [];
            }

            var made = EditionCompiler.Compile(_plain, edition, _options);
            if (made.HasErrors || made.Compilation is not { } compilation)
            {
                return [];
            }

            // A size of an edition is still of that edition: without abbreviations, say.
            var own = _plain.Edition is { } form ? compilation with { Edition = compilation.Edition is { } size ? form.With(size) : form } : compilation;
            all.Add(new OwnSize(made, own, made.LinesOf(_plain)));
        }

        return all.ToImmutable();
    }

    /// <summary>One size.</summary>
    private sealed class OwnSize(EditionCompilation edition, Compilation made, ImmutableArray<WorkedLine?> lines)
    {
        private readonly RowBuilder _rows = new(1, PageWords.Of(made));
        private readonly Dictionary<int, RowWords> _built = [];
        private Dictionary<int, string>? _prose;

        public Compilation Made => made;

        public WorkedLine? Line(int index) => index < lines.Length ? lines[index] : null;

        public RowWords? Row(int index)
        {
            if (Line(index) is not { } line)
            {
                return null;
            }

            if (!_built.TryGetValue(index, out var row))
            {
                var built = _rows.Build(line);
                _built[index] = row = new RowWords(built.Label, built.Instruction, built.Count);
            }

            return row;
        }

        public string? Prose(Block block)
        {
            if (_prose is null)
            {
                _prose = [];
                foreach (var own in made.Pattern.Sections.SelectMany(s => s.Blocks).OfType<ProseBlock>())
                {
                    _prose.TryAdd(edition.PlaceOf(own.Origin).Start, own.Markdown);
                }
            }

            return _prose.GetValueOrDefault(block.Origin.Start);
        }
    }
}
