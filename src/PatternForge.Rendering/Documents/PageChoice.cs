using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>What an edition shows of rows that stand in words and in a drawing, and what its page says of itself.</summary>
internal sealed class PageChoice
{
    // What no chart shows: a row that says it keeps its words.
    private static readonly string[] NotCharted = ["marker", "pm", "sm", "fasten", "cut ", "break ", "join mc", "join cc", "join a", "join b", "join c", "change", "needle", "holder", "place", "cast", "co ", "bind", "bo ", "pick up", "color", "colour", "with "];

    private readonly Compilation _compilation;
    private readonly EditionForm? _form;
    private readonly Dictionary<int, string> _charted = [];

    /// <summary>Prepares for one pattern.</summary>
    public PageChoice(Compilation compilation)
    {
        _compilation = compilation;
        _form = compilation.Edition;
        if (_form?.Content == PageContent.Charts)
        {
            FindCharted();
        }
    }

    /// <summary>True for a page that is read out.</summary>
    public bool IsReadOut => _form is { IsReadOut: true };

    /// <summary>True for a page in mirror image.</summary>
    public bool IsMirrored => _form is { IsMirrored: true };

    /// <summary>Words about sides in mirror image.</summary>
    public string Told(string words) => MirrorWords.In(words, _compilation.Pattern.Facts.TermsInForce);

    /// <summary>The chart that a line is left to; null where its words stand.</summary>
    public string? ChartOf(int line) => _charted.GetValueOrDefault(line);

    /// <summary>True where words stand in the place of a drawing.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="standsAlone">True where no words give its rows.</param>
    public bool IsInWords(DrawingKind kind, bool standsAlone) => _form?.Content == PageContent.Words && !standsAlone && (IsReadOut || kind is DrawingKind.Chart or DrawingKind.Diagram);

    /// <summary>Sentences on what this edition does otherwise.</summary>
    public ImmutableArray<string> Notes()
    {
        if (_form is null)
        {
            return [];
        }

        var facts = _compilation.Pattern.Facts;
        var notes = ImmutableArray.CreateBuilder<string>();
        if (_form.IsMirrored)
        {
            notes.AddRange(MirrorNotes.Of(_compilation));
        }

        if (_form.MarkedSize is { } size && size < facts.Sizes.Count)
        {
            notes.Add($"All sizes are on this page; size {SizesBuilder.NameOf(facts.Sizes, size)} stands out.");
        }

        if (_form.HasBothTerms)
        {
            notes.Add("The abbreviations are given in US and in UK terms, side by side.");
        }

        if (_form.IsLowInk && !facts.Photos.IsEmpty)
        {
            notes.Add("Photos are left out to spare ink.");
        }

        var alone = _compilation.Charts.Where(c => c.StandsAlone).Select(c => c.Name).Distinct(StringComparer.Ordinal).ToArray();
        if (_form.Content == PageContent.Words && (!_compilation.Charts.IsEmpty || !_compilation.Diagrams.IsEmpty || IsReadOut))
        {
            if (IsReadOut)
            {
                notes.Add("Drawings and tables are told in words.");
            }
            else if (!_compilation.Diagrams.IsEmpty || _compilation.Charts.Any(c => !c.StandsAlone))
            {
                notes.Add("Charts are left out where their rows stand in words.");
            }

            if (alone.Length > 0)
            {
                notes.Add($"{(alone.Length == 1 ? "The chart of" : "The charts of")} {string.Join(", ", alone)} {(alone.Length == 1 ? "stays" : "stay")}, as no words give {(alone.Length == 1 ? "its" : "their")} rows.");
            }
        }

        if (_charted.Count > 0)
        {
            notes.Add("Rows that a chart shows are left to the chart; all others stand in words.");
        }

        if (IsReadOut && facts.Sizes.Count > 1)
        {
            notes.Add($"Where several numbers stand together, they are for sizes {string.Join(", ", facts.Sizes.Names.Select((_, i) => SizesBuilder.NameOf(facts.Sizes, i)))}, in this order.");
        }

        if (IsReadOut && _compilation.Lines.Any(l => l.Text.Contains('*', StringComparison.Ordinal)))
        {
            notes.Add("The word star marks where a repeat begins.");
        }

        return notes.ToImmutable();
    }

    private void FindCharted()
    {
        foreach (var chart in _compilation.Charts.Where(c => c.Sizes.IsEmpty && !c.StandsAlone))
        {
            var rows = chart.Rows.Select(r => r.Origin).ToArray();
            foreach (var line in _compilation.Lines.Where(l => Array.Exists(rows, r => l.Origin.Contains(r))))
            {
                var shown = chart.Rows.Where(r => line.Origin.Contains(r.Origin)).Select(r => r.Number).ToHashSet();
                if (line.Numbers.All(shown.Contains))
                {
                    Take(line.Index, chart.Name);
                }
            }
        }

        foreach (var diagram in _compilation.Diagrams.Where(d => d.Size is null))
        {
            foreach (var line in diagram.Lines.Where(l => l >= 0 && l < _compilation.Lines.Length && !_compilation.Lines[l].Numbers.IsEmpty))
            {
                Take(line, diagram.Name);
            }
        }
    }

    private void Take(int line, string chart)
    {
        var text = _compilation.Lines[line].Text;
        if (!Array.Exists(NotCharted, w => text.Contains(w, StringComparison.OrdinalIgnoreCase)))
        {
            _charted.TryAdd(line, chart);
        }
    }
}
