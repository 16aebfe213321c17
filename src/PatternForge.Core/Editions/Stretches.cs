using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>Finds the stretches of a source that a maker reads: rows, prose and headings, and the texts of the header. Names, addresses and files are not among them.</summary>
internal sealed class Stretches
{
    private const string MakersRead = "summary description level-reason ease notions materials tools tool needles needle hook hooks notes note photos photo gauge tension stitches special-stitches abbreviations yarn yarns sizes size corrections";
    private const string Names = "file link links url address name names fibre fiber colours colors put-up needs label over size swatch state takes makes rows row rounds rnds rnd fits finished to-fit";

    private static readonly HashSet<string> Keys = MakersRead.Split(' ').ToHashSet(StringComparer.Ordinal);
    private static readonly HashSet<string> Kept = Names.Split(' ').ToHashSet(StringComparer.Ordinal);

    private readonly Compilation _plain;
    private readonly SourceText _text;
    private readonly List<Stretch> _found = [];
    private readonly List<TextSpan> _named = [];

    private Stretches(Compilation plain)
    {
        _plain = plain;
        _text = plain.Text.Text;
    }

    /// <summary>The header's lines between its fences; null when the file has none.</summary>
    public HeaderMap? Header { get; private set; }

    /// <summary>Where the header's lines begin.</summary>
    public int HeaderStart { get; private set; }

    /// <summary>The stretches in the order of the text.</summary>
    public IReadOnlyList<Stretch> Found => _found;

    /// <summary>Where headings are called by their names outside of rows and prose: by what is measured over them, and by blocks that ask for drawings.</summary>
    public IReadOnlyList<TextSpan> Named => _named;

    /// <summary>Finds them all.</summary>
    public static Stretches Of(Compilation plain)
    {
        var stretches = new Stretches(plain);
        var bag = new FindingBag(stretches._text); // what is wrong has been told already
        var file = FileSplitter.Split(stretches._text, bag);
        if (file.Header is { } header)
        {
            stretches.HeaderStart = header.Start;
            stretches.Header = HeaderReader.Read(stretches._text, header, CompileOptions.Default, bag);
            foreach (var entry in stretches.Header.Entries)
            {
                stretches.Entry(entry);
            }
        }

        stretches.Body(BodyParser.Parse(stretches._text, file.Body, bag));
        return stretches;
    }

    private void Entry(HeaderEntry entry)
    {
        var key = Plain(entry.Name);
        if (key == "measured")
        {
            Headings(entry.Value);
        }

        if (!Keys.Contains(key))
        {
            return;
        }

        switch (key)
        {
            case "stitches" or "special-stitches" or "abbreviations":
                Definitions(entry.Value, isName: false);
                break;
            case "yarn" or "yarns":
                Yarn(entry.Value);
                break;
            case "tools" or "tool" or "needles" or "needle" or "hook" or "hooks":
                All(entry.Value, StretchKind.Tool);
                break;
            case "corrections":
                Corrections(entry.Value);
                break;
            case "sizes" or "size":
                foreach (var ease in (entry.Value as HeaderMap)?.Entries.Where(e => Plain(e.Name) == "ease") ?? [])
                {
                    All(ease.Value, StretchKind.Prose);
                }

                break;
            default:
                All(entry.Value, key is "notes" or "note" or "gauge" or "tension" ? StretchKind.Row : StretchKind.Prose);
                break;
        }
    }

    /// <summary>What was corrected, and the rows that it is about; versions, dates and sizes are no words.</summary>
    private void Corrections(HeaderNode node)
    {
        foreach (var item in node is HeaderList list ? list.Items : [node])
        {
            if (item is not HeaderMap map)
            {
                All(item, StretchKind.Prose);
                continue;
            }

            foreach (var entry in map.Entries)
            {
                if (Plain(entry.Name) is "text" or "correction" or "what" or "change")
                {
                    All(entry.Value, StretchKind.Prose);
                }
                else if (Plain(entry.Name) is "rows" or "row" or "rounds" or "round" or "where" or "place")
                {
                    All(entry.Value, StretchKind.Heading);
                }
            }
        }
    }

    private void Headings(HeaderNode node)
    {
        switch (node)
        {
            case HeaderScalar { IsBlank: false } scalar:
                _named.Add(scalar.Span);
                break;
            case HeaderList list:
                foreach (var item in list.Items)
                {
                    Headings(item);
                }

                break;
            case HeaderMap map:
                foreach (var entry in map.Entries)
                {
                    Headings(entry.Value);
                }

                break;
        }
    }

    private void All(HeaderNode node, StretchKind kind)
    {
        switch (node)
        {
            case HeaderScalar { IsBlank: false } scalar:
                _found.Add(new Stretch(scalar.Span, kind));
                break;
            case HeaderList list:
                foreach (var item in list.Items)
                {
                    All(item, kind);
                }

                break;
            case HeaderMap map:
                foreach (var entry in map.Entries)
                {
                    if (!Kept.Contains(Plain(entry.Name)) && Plain(entry.Name) is not ("stitches" or "sts" or "st"))
                    {
                        All(entry.Value, Plain(entry.Name) is "tool" or "needle" or "needles" or "hook" ? StretchKind.Tool : kind);
                    }
                }

                break;
        }
    }

    /// <summary>Names and meanings: as keys with values, as items, or as keys of an item.</summary>
    private void Definitions(HeaderNode node, bool isName)
    {
        switch (node)
        {
            case HeaderScalar { IsBlank: false } scalar:
                _found.Add(new Stretch(scalar.Span, isName ? StretchKind.Row : StretchKind.Definition));
                break;
            case HeaderList list:
                foreach (var item in list.Items)
                {
                    Definitions(item, isName);
                }

                break;
            case HeaderMap map:
                foreach (var entry in map.Entries)
                {
                    var key = Plain(entry.Name);
                    if (key is "takes" or "makes" or "uses")
                    {
                        continue;
                    }

                    if (key is not ("name" or "how" or "full-name" or "meaning" or "full" or "abbreviation"))
                    {
                        _found.Add(new Stretch(entry.Key.Span, StretchKind.Row));
                    }

                    Definitions(entry.Value, key is "how" or "name");
                }

                break;
        }
    }

    private void Yarn(HeaderNode node)
    {
        switch (node)
        {
            case HeaderList list:
                foreach (var item in list.Items)
                {
                    Yarn(item);
                }

                break;
            case HeaderMap map:
                foreach (var entry in map.Entries)
                {
                    switch (Plain(entry.Name))
                    {
                        case "note" or "notes":
                            All(entry.Value, StretchKind.Prose);
                            break;
                        case "weight" when entry.Value is HeaderScalar { IsBlank: false }:
                            _found.Add(new Stretch(entry.Value.Span, StretchKind.Weight));
                            break;
                        case "label" when entry.Value is HeaderScalar { IsBlank: false }:
                            _found.Add(new Stretch(entry.Value.Span, StretchKind.YarnLabel));
                            break;
                        case "alternatives" or "alternative":
                            Yarn(entry.Value);
                            break;
                    }
                }

                break;
        }
    }

    private void Body(IEnumerable<SectionNode> sections)
    {
        var rows = _plain.Lines.Select(l => l.Origin).ToHashSet();
        foreach (var section in sections)
        {
            if (section.Level > 0)
            {
                _found.Add(new Stretch(section.Span, StretchKind.Heading));
            }

            foreach (var block in section.Blocks)
            {
                if (block.Kind == BlockKind.Fence)
                {
                    if (block.Info is FencedBlock.Chart or FencedBlock.Stripes or "schematic" && ChartGrid.Read(_text, block.Content) is null)
                    {
                        _named.Add(block.Content);
                    }

                    Key(block);
                    continue;
                }

                _found.Add(new Stretch(block.Content, rows.Contains(block.Content) ? StretchKind.Row : StretchKind.Prose));
            }
        }
    }

    /// <summary>The key of a chart names stitches and yarns; its squares hold short names, which stay.</summary>
    private void Key(BlockNode block)
    {
        if (block.Info != FencedBlock.Chart || ChartGrid.Read(_text, block.Content) is not { } grid)
        {
            return;
        }

        foreach (var (_, meaning) in grid.Key)
        {
            var isYarn = _plain.Pattern.Facts.Yarns.Any(y => string.Equals(y.Label, _text.ToString(meaning), StringComparison.Ordinal));
            _found.Add(new Stretch(meaning, isYarn ? StretchKind.YarnLabel : StretchKind.Row));
        }
    }

    private static string Plain(string key) => key.Trim().ToLowerInvariant().Replace(' ', '-');
}
