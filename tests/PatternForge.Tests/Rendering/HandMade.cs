using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Drafts;
using PatternForge.Core.Model;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Tests.Rendering;

/// <summary>Makes compilations by hand, so that pages can be tested without a source file.</summary>
internal sealed class HandMade
{
    private readonly List<Section> _sections = [];
    private readonly List<Block> _blocks = [];
    private readonly List<WorkedLine> _lines = [];
    private (string Heading, string Role, int Level) _open = ("", "", 0);

    public PatternFacts Facts { get; set; } = new();

    public ImmutableArray<AbbreviationUse> Abbreviations { get; set; } = [];

    public static Quantity Cm(decimal value) => new(value, Unit.Centimetre);

    public static Quantity In(decimal value) => new(value, Unit.Inch);

    public static Quantity M(decimal value) => new(value, Unit.Metre);

    public static Quantity G(decimal value) => new(value, Unit.Gram);

    public static AbbreviationUse Short(string name, string meaning, bool isSpecial) => new(name, meaning, isSpecial, default);

    public static PerSize<Quantity?> Each(Func<decimal, Quantity> unit, params decimal[] values) =>
        values.Length == 1 ? PerSize.Shared<Quantity?>(unit(values[0])) : PerSize.Each<Quantity?>([.. values.Select(unit)]);

    public HandMade Heading(string heading, string? role = null, int level = 2)
    {
        Close();
        _open = (heading, role ?? new string([.. heading.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]), level);
        return this;
    }

    public HandMade Prose(string markdown)
    {
        _blocks.Add(new ProseBlock(default, markdown));
        return this;
    }

    public HandMade Fenced(string info, string text)
    {
        _blocks.Add(new FencedBlock(default, info, text));
        return this;
    }

    public HandMade Row(string label, string text, int?[]? before = null, int?[]? after = null, int?[]? stated = null, int[]? numbers = null, ImmutableArray<ImmutableSortedDictionary<string, int>> kinds = default)
    {
        _blocks.Add(new InstructionBlock(default, _lines.Count));
        _lines.Add(new WorkedLine
        {
            Index = _lines.Count,
            Origin = default,
            Piece = _open.Heading,
            Label = label,
            Text = text,
            Status = after is null ? LineStatus.Trusted : LineStatus.Checked,
            Numbers = [.. numbers ?? []],
            Before = [.. before ?? after ?? []],
            After = [.. after ?? []],
            Stated = [.. stated ?? []],
            Kinds = kinds.IsDefault ? [] : kinds,
        });
        return this;
    }

    public Compilation Compile(string path = "sample.pattern.md")
    {
        Close();
        var source = new SourceText(path, "");
        return new Compilation
        {
            Source = source,
            Text = MendedText.Unchanged(source),
            Pattern = new Pattern(Facts, [.. _sections]),
            Lines = [.. _lines],
            Abbreviations = Abbreviations,
            Findings = [],
            Coverage = new Coverage(_lines.Count, _lines.Count, 0, 0),
        };
    }

    private void Close()
    {
        if (_blocks.Count > 0 || _open.Heading.Length > 0)
        {
            _sections.Add(new Section(_open.Heading, _open.Role, _open.Level, default, [.. _blocks]));
            _blocks.Clear();
        }
    }
}
