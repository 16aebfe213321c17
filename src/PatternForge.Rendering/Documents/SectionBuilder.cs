using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Charts;
using PatternForge.Core.Model;
using PatternForge.Core.Shapes;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes the sections of the page out of the sections of the source, and keeps their identifiers apart.</summary>
internal sealed class SectionBuilder
{
    private static readonly string[] Taken =
        ["top", "main", "title", "photos", "videos", "charts", "your-size", "sizes", "yarn", "tools", "gauge", "abbreviations", "stitches", "notes", "work", "care", "cautions", "contact", "more", "contents"];

    private readonly Compilation _compilation;
    private readonly RowBuilder _rows;
    private readonly int _sizes;
    private readonly HashSet<string> _ids = new(Taken, StringComparer.Ordinal);
    private readonly Dictionary<string, int> _used = new(StringComparer.Ordinal);

    private readonly string _name;
    private readonly OwnSizes _own;
    private readonly DrawnDiagrams _drawn;
    private readonly SchematicBuilder _schematics;
    private readonly PageChoice _choice;
    private Dictionary<string, string>? _names;

    /// <summary>Prepares for one pattern.</summary>
    /// <param name="compilation">The pattern.</param>
    /// <param name="name">What the files of the release are called.</param>
    /// <param name="own">What each size alone has.</param>
    /// <param name="drawn">The diagrams that have been drawn for other forms of it.</param>
    public SectionBuilder(Compilation compilation, string name, OwnSizes own, DrawnDiagrams drawn)
    {
        _drawn = drawn;
        _name = name;
        _own = own;
        _compilation = compilation;
        _sizes = compilation.Pattern.Facts.Sizes.Count;
        _rows = new RowBuilder(_sizes, PageWords.Of(compilation), own);
        _schematics = new SchematicBuilder(compilation, Id);
        _choice = new PageChoice(compilation);
    }

    /// <summary>Groups of source sections: one of the first or second rank with the lower ones after it.</summary>
    public static ImmutableArray<ImmutableArray<Section>> Groups(ImmutableArray<Section> sections)
    {
        var groups = ImmutableArray.CreateBuilder<ImmutableArray<Section>>();
        var group = ImmutableArray.CreateBuilder<Section>();
        foreach (var section in sections)
        {
            if (section.Level <= 2 || (group.Count > 0 && group[0].Level == 0))
            {
                Close();
            }

            group.Add(section);
        }

        Close();
        return groups.ToImmutable();

        void Close()
        {
            if (group.Count > 0)
            {
                groups.Add(group.ToImmutable());
                group.Clear();
            }
        }
    }

    /// <summary>One section of the page; null when there is nothing under its heading.</summary>
    public SectionView? Build(ImmutableArray<Section> group, string whenUnnamed = "Instructions")
    {
        var parts = ImmutableArray.CreateBuilder<PartView>();
        var leads = Leads(group);
        var (top, before) = (group[0].Level, 2);
        foreach (var section in group)
        {
            var blocks = Blocks(section);
            var isFirst = ReferenceEquals(section, group[0]);
            if (blocks.IsEmpty && (isFirst || !leads.Contains(section)))
            {
                continue;
            }

            var rank = isFirst ? 3 : Math.Clamp(section.Level - Math.Max(top, 1) + 2, 3, Math.Min(before + 1, 6));
            parts.Add(new PartView { Heading = isFirst ? null : section.Heading, Rank = rank, Blocks = blocks });
            before = isFirst ? 2 : rank;
        }

        if (parts.Count == 0)
        {
            return null;
        }

        var heading = Wording.Said(group[0].Heading) ?? whenUnnamed;
        var id = Id(heading);
        return new SectionView
        {
            Id = id,
            Heading = heading,
            Role = group[0].Role,
            HasRows = group.Any(s => s.HasInstructions),
            Parts = [.. parts.Select(p => p with { Blocks = [.. p.Blocks.Select(b => Named(b, id))] })],
        };
    }

    /// <summary>A block with an identifier for each of its rows.</summary>
    private BlockView Named(BlockView block, string section) =>
        block.Rows.IsEmpty ? block : block with { Rows = [.. block.Rows.Select(r => r with { Id = Id($"{section} {r.Name}") })] };

    /// <summary>The blocks of a section; instructions that follow one another become one block of rows.</summary>
    public ImmutableArray<BlockView> Blocks(Section section)
    {
        var blocks = ImmutableArray.CreateBuilder<BlockView>();
        var rows = ImmutableArray.CreateBuilder<RowView>();
        var charted = new List<(string Row, string Chart)>();
        WorkedLine? last = null;
        foreach (var block in section.Blocks)
        {
            if (block is InstructionBlock { Index: var i })
            {
                if (i >= 0 && i < _compilation.Lines.Length)
                {
                    last = _compilation.Lines[i];
                    var row = _rows.Build(last);
                    if (_choice.ChartOf(i) is { } chart)
                    {
                        charted.Add((row.Name, chart));
                        FlushRows();
                        continue;
                    }

                    FlushCharted();
                    rows.Add(_choice.IsReadOut ? PlainSpeech.Row(row, _compilation.Pattern.Facts.Sizes.Names) : row);
                }

                continue;
            }

            Flush();
            switch (block)
            {
                case ProseBlock { Markdown: var text } when !string.IsNullOrWhiteSpace(text):
                    blocks.Add(new BlockView { Kind = "prose", Prose = new ProseText(text, _sizes) { In = size => _own.Prose(block, size) } });
                    break;
                case FencedBlock { Info: FencedBlock.Shaping }:
                    if (last is not null && ShapingText.Of(last, _compilation) is { } shaping)
                    {
                        blocks.Add(new BlockView { Kind = "prose", Prose = new ProseText(shaping, _sizes) { In = Told(last) } });
                    }

                    break;
                case FencedBlock { Info: FencedBlock.Chart } when DrawnIn(block, section).ToArray() is { Length: > 0 } charts:
                    blocks.AddRange(charts);
                    break;
                case FencedBlock { Info: FencedBlock.Stripes or FencedBlock.Chart } fenced when ChartRequest.Read(fenced.Text) is not null:
                    blocks.AddRange(DrawnIn(block, section)); // where it cannot be drawn, lint says why
                    break;
                case FencedBlock { Info: SchematicRequest.Word } fenced when SchematicRequest.Read(fenced.Text) is { } request:
                    blocks.AddRange(_schematics.Asked(request, section).Select(d => View(d, DrawingKind.Schematic)));
                    break;
                case FencedBlock { Text: var text } when !string.IsNullOrWhiteSpace(text):
                    blocks.Add(new BlockView { Kind = "text", Text = text.TrimEnd() });
                    break;
            }
        }

        Flush();
        blocks.AddRange(DrawnIn(null, section));
        blocks.RemoveAll(b => b.Kind == "none");
        return blocks.ToImmutable();

        Func<int, string?> Told(WorkedLine line) => size => _own.Told(line, size, ShapingText.Of);

        void Flush()
        {
            FlushRows();
            FlushCharted();
        }

        // "Rows 1 to 8: work from the chart Lace."
        void FlushCharted()
        {
            foreach (var left in charted.GroupBy(c => c.Chart, StringComparer.Ordinal))
            {
                var names = left.Select(c => c.Row).ToArray();
                var which = names.Length == 1 ? names[0] : $"{names[0]} to {names[^1]}";
                blocks.Add(new BlockView { Kind = "prose", Prose = new ProseText($"**{which}:** work from the chart of {left.Key}.") });
            }

            charted.Clear();
        }

        void FlushRows()
        {
            if (rows.Count > 0)
            {
                blocks.Add(new BlockView { Kind = "rows", Rows = Columns(rows.ToImmutable()) });
                rows.Clear();
            }
        }
    }

    /// <summary>What the pattern calls a stitch: the first of its own abbreviations for it, else the usual one.</summary>
    private string NameOf(Operation operation)
    {
        var terms = _compilation.Pattern.Facts.TermsInForce ?? Dialect.Us;
        _names ??= _compilation.Abbreviations.Where(a => !a.IsSpecial)
            .Select(a => (a.Name, Id: (OperationTable.Find(Craft.Knitting, terms, a.Name) ?? OperationTable.Find(Craft.Knitting, Dialect.Any, a.Name))?.Id))
            .Where(a => a.Id is not null).DistinctBy(a => a.Id, StringComparer.Ordinal).ToDictionary(a => a.Id!, a => a.Name, StringComparer.Ordinal);
        return _names.TryGetValue(operation.Id, out var name) ? name : ChartWords.NameOf(operation, terms);
    }

    /// <summary>The schematics that a garment gets without being asked for; null where it gets none.</summary>
    public SectionView? Schematics()
    {
        var blocks = _schematics.ByItself().Select(d => View(d, DrawingKind.Schematic)).Where(b => b.Kind != "none").ToImmutableArray();
        return blocks.IsEmpty ? null : new SectionView { Id = Id("Schematics"), Heading = "Schematics", Role = "schematic", HasRows = false, Parts = [new PartView { Heading = null, Rank = 3, Blocks = blocks }] };
    }

    /// <summary>The drawings that a block asks for; those that stand at the end of a section where it is null.</summary>
    private IEnumerable<BlockView> DrawnIn(Block? block, Section section)
    {
        bool Ends(int number) => ReferenceEquals(_compilation.Pattern.Sections[number - 1], section);
        var facts = _compilation.Pattern.Facts;
        var terms = facts.TermsInForce ?? Dialect.Us;
        return _compilation.Charts.Where(c => block is null ? c.Block is null && Ends(c.Section) : c.Block == block.Origin).Select(c => View(ChartDrawing.Of(c, Id("Chart " + c.Name), terms, facts.Sizes, facts.Yarns, NameOf) with { Sizes = c.Sizes }, DrawingKind.Chart, c.StandsAlone))
            .Concat(_compilation.Diagrams.Where(d => block is null ? d.Block is null && Ends(d.Section) : d.Block == block.Origin).Select(d => _drawn.Of(d, Id("Chart " + d.Name), terms, WordsOf(d), facts)).OfType<Drawing>().Select(d => View(d, DrawingKind.Diagram)))
            .Concat(_compilation.Stripes.Where(s => block is null ? s.Block is null && Ends(s.Section) : s.Block == block.Origin).Select(s => StripeDrawing.Of(s, Id("Stripes " + s.Name), facts.Sizes, facts.Yarns) with { Sizes = s.Sizes }).Select(d => View(d, DrawingKind.Stripes)));
    }

    /// <summary>The rows of a diagram as the page prints them.</summary>
    private string WordsOf(CrochetDiagram diagram) =>
        string.Join(" ", diagram.Lines.Select(i => _compilation.Lines[i]).Select(l => l.Label.Length > 0 ? $"{l.Label}: {l.Text}" : l.Text));

    private BlockView View(Drawing drawing, DrawingKind kind, bool standsAlone = false) =>
        Shown(_choice.IsMirrored && kind != DrawingKind.Stripes ? MirroredDrawing.Of(drawing, _choice.Told) : drawing, kind, standsAlone);

    private BlockView Shown(Drawing drawing, DrawingKind kind, bool standsAlone) => _choice.IsInWords(kind, standsAlone) ? InWords(drawing, kind) : new()
    {
        Kind = "drawing",
        Drawing = new DrawingView
        {
            Id = drawing.Id,
            Title = drawing.Title,
            Description = drawing.Description,
            Address = Uri.EscapeDataString(ReleaseName.OfDrawing(_name, drawing.Id)),
            Pictures = [.. drawing.Sheets.Select(s => new PictureText(s))],
            Key = [.. drawing.Key.Select(k => new KeyView { Picture = new PictureText(k.Svg), Name = k.Name, Meaning = k.Meaning })],
            Notes = [.. drawing.Notes.Select(n => Wording.Spelled(n, _compilation.Pattern.Facts.TermsInForce))],
            Sizes = string.Join(' ', drawing.Sizes.Select(s => s + 1)),
            Bands = [.. drawing.Sheets.Select((_, i) => i < drawing.Bands.Length ? drawing.Bands[i] : "")],
            Alone = drawing.Alone,
            Kind = kind,
        },
    };

    // Charts say what the rows say; other drawings are told by their own words where the page is read out.
    private BlockView InWords(Drawing drawing, DrawingKind kind) => _choice.IsReadOut && kind is DrawingKind.Schematic or DrawingKind.Stripes
        ? new() { Kind = "prose", Prose = new ProseText($"**{drawing.Title}.** {drawing.Description}") }
        : new() { Kind = "none" };

    /// <summary>The blocks of a section and of those below it, whose headings become words of their own.</summary>
    public ImmutableArray<BlockView> Remarks(ImmutableArray<Section> group)
    {
        var blocks = ImmutableArray.CreateBuilder<BlockView>();
        foreach (var section in group)
        {
            if (!ReferenceEquals(section, group[0]))
            {
                blocks.Add(new BlockView { Kind = "prose", Prose = new ProseText("#### " + section.Heading) });
            }

            blocks.AddRange(Blocks(section));
        }

        return blocks.ToImmutable();
    }

    /// <summary>Rows that follow one another, their counts with room for the digits of the greatest.</summary>
    private static ImmutableArray<RowView> Columns(ImmutableArray<RowView> rows)
    {
        var digits = rows.Max(r => r.Count is not null && r.Counts.All(IsNumber) ? r.Counts.Max(c => (int?)c.Length) ?? 0 : 0);
        return [.. rows.Select(r => r.MarkedCount is { } count && r.Counts.All(IsNumber) ? r with { MarkedCount = count with { Digits = digits } } : r)];

        static bool IsNumber(string count) => count.All(c => char.IsAsciiDigit(c) || c == '–');
    }

    /// <summary>Headings with a lower one under them that has text: such a heading stays even when it has none of its own.</summary>
    private static HashSet<Section> Leads(ImmutableArray<Section> group)
    {
        var leads = new HashSet<Section>(ReferenceEqualityComparer.Instance);
        int? nearest = null;
        for (var i = group.Length - 1; i >= 0; i--)
        {
            var section = group[i];
            if (nearest > section.Level)
            {
                leads.Add(section);
            }

            nearest = section.Blocks.IsEmpty ? nearest is { } level ? Math.Min(level, section.Level) : null : section.Level;
        }

        return leads;
    }

    /// <summary>A short identifier from a heading, not used before on this page.</summary>
    private string Id(string heading)
    {
        var slug = "";
        foreach (var c in heading.Length > 60 ? heading[..60] : heading)
        {
            slug += char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : slug.Length > 0 && slug[^1] != '-' ? '-' : "";
        }

        slug = slug.Trim('-');
        slug = slug.Length == 0 || char.IsAsciiDigit(slug[0]) ? $"part-{slug}".TrimEnd('-') : slug;
        var id = slug;
        var n = _used.GetValueOrDefault(slug, 1);
        while (!_ids.Add(id))
        {
            id = string.Create(CultureInfo.InvariantCulture, $"{slug}-{++n}");
        }

        _used[slug] = n;
        return id;
    }
}
