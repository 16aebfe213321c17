using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Work;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// Another form of a pattern whose lines and prose stand in the order of the pattern as it is written, so that what each size says there can be taken over. The compiler worked the form in
/// all sizes and each size as it is written; that both go together needs no third look, unless they change the same words.
/// </summary>
internal sealed class FormWords
{
    private readonly Compilation _plain;
    private readonly Compilation _made;
    private readonly RowBuilder _plainRows;
    private readonly RowBuilder _madeRows;
    private readonly Dictionary<int, (RowView Plain, RowView Made)> _rows = [];
    private readonly Dictionary<Block, ProseBlock> _prose;

    private FormWords(Compilation plain, OwnSizes written, Compilation made, Dictionary<Block, ProseBlock> prose)
    {
        (_plain, Written, _made, _prose) = (plain, written, made, prose);
        _plainRows = new RowBuilder(plain.Pattern.Facts.Sizes.Count, PageWords.Of(plain));
        _madeRows = new RowBuilder(plain.Pattern.Facts.Sizes.Count, PageWords.Of(made));
    }

    /// <summary>What each size of the pattern as it is written says.</summary>
    public OwnSizes Written { get; }

    /// <summary>Lays a form beside the pattern; null where its lines or its prose do not stand in the same order.</summary>
    /// <param name="plain">The pattern as it is written.</param>
    /// <param name="written">What each of its sizes says.</param>
    /// <param name="made">The form.</param>
    public static FormWords? Between(Compilation plain, OwnSizes written, Compilation made)
    {
        if (plain.Lines.Length != made.Lines.Length || plain.Pattern.Facts.Sizes.Count != made.Pattern.Facts.Sizes.Count)
        {
            return null;
        }

        var (own, other) = (ProseOf(plain), ProseOf(made));
        return own.Length != other.Length ? null : new FormWords(plain, written, made, other.Zip(own).ToDictionary(p => (Block)p.First, p => p.Second));
    }

    /// <summary>The line of the pattern as it is written.</summary>
    public WorkedLine Line(WorkedLine made) => _plain.Lines[made.Index];

    /// <summary>A line of the form as one size has it.</summary>
    /// <param name="line">The line.</param>
    /// <param name="size">The size, from 0.</param>
    /// <param name="isKnown">False where only the compiler knows.</param>
    public RowWords? Row(WorkedLine line, int size, out bool isKnown)
    {
        isKnown = true;
        if (Written.Row(Line(line), size) is not { } own)
        {
            return null;
        }

        if (!_rows.TryGetValue(line.Index, out var row))
        {
            _rows[line.Index] = row = (_plainRows.Build(Line(line)), _madeRows.Build(line));
        }

        var label = OneSizeWords.Of(row.Plain.MarkedLabel, row.Made.Label, own.Label, size + 1);
        var instruction = OneSizeWords.Of(row.Plain.MarkedInstruction, row.Made.Instruction, own.Instruction, size + 1);
        var count = row.Plain.MarkedCount is { } plain && row.Made.Count is { } made && own.Count is { } said ? OneSizeWords.Of(plain, made, said, size + 1) : own.Count;
        isKnown = label is not null && instruction is not null && (row.Made.Count is null) == (row.Plain.Count is null) && (count is null) == (own.Count is null);
        return isKnown ? new RowWords(label!, instruction!, count) : null;
    }

    /// <summary>A stretch of prose of the form as one size has it; null where only the compiler knows.</summary>
    public string? Prose(Block block, int size) =>
        block is ProseBlock made && _prose.TryGetValue(block, out var plain) && Written.Prose(plain, size) is { } own ? Taken(plain.Markdown, made.Markdown, own, size) : null;

    /// <summary>What is told of a line; null where only the compiler knows.</summary>
    public string? Told(WorkedLine line, int size, Func<WorkedLine, Compilation, string?> tell) =>
        Written.Told(Line(line), size, tell) is { } own ? Taken(tell(Line(line), _plain), tell(line, _made), own, size) : null;

    /// <summary>What the header says; null where only the compiler knows.</summary>
    public string? Said(int size, Func<PatternFacts, string?> read) =>
        Written.Said(size, read) is { } own ? Taken(read(_plain.Pattern.Facts), read(_made.Pattern.Facts), own, size) : null;

    private string? Taken(string? plain, string? made, string own, int size) =>
        plain is null || made is null ? null : OneSizeWords.Of(new SizedText(plain, _plain.Pattern.Facts.Sizes.Count), made, own, size + 1);

    private static ProseBlock[] ProseOf(Compilation compilation) => [.. compilation.Pattern.Sections.SelectMany(s => s.Blocks).OfType<ProseBlock>()];
}
