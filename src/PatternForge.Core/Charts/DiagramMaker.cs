using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Core.Charts;

/// <summary>
/// Makes the crochet diagrams of a pattern from the stitches of its rows: of every stitch pattern, of every motif worked from its centre, and where a block
/// <c>chart</c> asks for one. Rows that do not come out, or go where a drawing cannot show, give none.
/// </summary>
public sealed class DiagramMaker
{
    /// <summary>The most rows that a diagram has.</summary>
    public const int MostRows = 60;

    /// <summary>The most marks that a diagram has.</summary>
    public const int MostMarks = 4_000;

    /// <summary>A motif drawn without being asked for has no more rounds than this.</summary>
    public const int MostRounds = 12;

    // A flat motif's edge is about as long as the circle that its rounds are high enough for; a ball's or a cup's is far shorter. Chains beside chains, by geometry.
    private const double FlatShare = 0.5;

    private readonly Pattern _pattern;
    private readonly ImmutableArray<WorkedLine> _worked;
    private readonly PatternBook _patterns;
    private readonly CompileOptions _options;
    private readonly SortedDictionary<int, List<BoundLine>> _sections = [];

    private DiagramMaker(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, CompileOptions options)
    {
        _pattern = pattern;
        _worked = worked;
        _options = options;
        _patterns = PatternBook.Of(lines);
        foreach (var line in lines)
        {
            if (!_sections.TryGetValue(line.Section, out var section))
            {
                _sections[line.Section] = section = [];
            }

            section.Add(line);
        }
    }

    /// <summary>The diagrams in the order of the source.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="lines">Its lines.</param>
    /// <param name="worked">The same lines, worked.</param>
    /// <param name="options">Limits.</param>
    public static ImmutableArray<CrochetDiagram> Of(Pattern pattern, ImmutableArray<BoundLine> lines, ImmutableArray<WorkedLine> worked, CompileOptions options) =>
        pattern.Facts.Craft is Craft.Crochet or Craft.Tunisian && lines.Length > 0 ? new DiagramMaker(pattern, lines, worked, options).All() : [];

    private ImmutableArray<CrochetDiagram> All()
    {
        var diagrams = ImmutableArray.CreateBuilder<CrochetDiagram>();
        var drawn = new HashSet<int>();
        foreach (var (section, number) in _pattern.Sections.Select((s, i) => (s, i + 1)))
        {
            foreach (var block in section.Blocks.OfType<FencedBlock>().Where(b => b.Info == FencedBlock.Chart))
            {
                if (ChartRequest.Read(block.Text) is { } request && SectionOf(request, number) is var of && Drawn(of, request.First, request.Last) is { } asked)
                {
                    diagrams.Add(asked with { Section = number, Block = block.Origin });
                    drawn.Add(of);
                }
            }
        }

        var omitted = _pattern.Facts.Omit.Any(o => o.Equals("charts", StringComparison.OrdinalIgnoreCase) || o.Equals("chart", StringComparison.OrdinalIgnoreCase));
        foreach (var (number, lines) in _sections)
        {
            if (!omitted && !drawn.Contains(number) && (lines[0].Pattern is not null || MayBeMotif(lines)) && Drawn(number, null, null) is { } diagram && (lines[0].Pattern is not null || IsMotif(diagram)))
            {
                diagrams.Add(diagram);
            }
        }

        return [.. diagrams.OrderBy(d => d.Section)];
    }

    private int SectionOf(ChartRequest request, int here) => request.Of is not { } name ? here
        : _pattern.Sections.Select((s, i) => (s.Heading, Number: i + 1)).FirstOrDefault(s => string.Equals(s.Heading, name, StringComparison.OrdinalIgnoreCase)).Number is > 0 and var named ? named
        : _sections.Values.Select(s => s[0].Pattern).FirstOrDefault(p => string.Equals(p?.Name, name, StringComparison.OrdinalIgnoreCase))?.Section ?? 0;

    /// <summary>Rounds from a centre, not too many of them, and all of them read.</summary>
    private static bool MayBeMotif(List<BoundLine> lines) =>
        lines.SelectMany(l => l.Rows).Any(r => r.IsRound == true)
        && lines.SelectMany(l => l.Rows).All(r => r.IsRound != false && !r.HasUnread && r.Numbers.All(n => n <= MostRounds))
        && CrochetSteps.BeginPiece(lines[0].Rows[0].Steps);

    private static bool IsMotif(CrochetDiagram diagram)
    {
        if (!diagram.IsRound || diagram.Rows.Length is < 2 or > MostRounds || diagram.Start is not (DiagramStart.Ring or DiagramStart.ChainRing or DiagramStart.OneChain or DiagramStart.BothSides))
        {
            return false;
        }

        // In the length of a chain: a stitch is about as wide as one.
        var edge = diagram.Rows[^1].Stitches.Where(s => s.Top >= 0).Sum(s => s.Mark == DiagramMark.Chains ? s.Chains : 1);
        var height = diagram.Rows.Sum(r => r.Stitches.Where(s => s is { Mark: DiagramMark.Stitch, Stitch: not null }).Select(s => HeightOf(s.Stitch!)).DefaultIfEmpty(1).Max());
        return edge - (diagram.Start == DiagramStart.BothSides ? 2 * diagram.StartCount : 0) >= FlatShare * 2 * Math.PI * height;
    }

    private static int HeightOf(Operation stitch) => Math.Max(1, stitch.Height ?? (stitch.IsSpecial ? 3 : 1));

    private CrochetDiagram? Drawn(int section, int? first, int? last)
    {
        if (!_sections.TryGetValue(section, out var lines) || lines[0].Rows.IsEmpty)
        {
            return null;
        }

        var sizes = new DiagramWorker(_pattern.Facts, _patterns, _options).Work(lines, _worked, MostRows);
        var yarns = DiagramYarns.Of(lines, _pattern.Facts.Yarns);
        var shown = Array.FindIndex(sizes, s => s is { IsEmpty: false });
        if (shown < 0 || DiagramRows.Of(sizes[shown]!.Value, lines, first, last, yarns) is not { } diagram || diagram.Rows.Length > MostRows || diagram.Rows.Sum(r => r.Stitches.Length) > MostMarks)
        {
            return null;
        }

        var key = KeyOf(diagram);
        var agree = sizes.All(s => s is { } rows && DiagramRows.Of(rows, lines, first, last, yarns) is { } other && KeyOf(other) == key);
        var pattern = lines[0].Pattern;
        var heading = pattern?.Name ?? _pattern.Sections[section - 1].Heading;
        return diagram with
        {
            Name = first is null && last is null ? heading : $"{heading}, {(diagram.IsRound ? "rounds" : "rows")} {diagram.Rows[0].Number} to {diagram.Rows[^1].Number}",
            Section = section,
            IsTunisian = _pattern.Facts.Craft == Craft.Tunisian,
            Size = agree ? null : shown,
            Repeats = pattern is { Multiple: > 0 } ? (pattern.Least - pattern.Plus) / pattern.Multiple : null,
        };
    }

    /// <summary>Two diagrams with the same stitches in the same places are the same drawing.</summary>
    private static string KeyOf(CrochetDiagram diagram) => $"{diagram.Start} {diagram.StartCount} " +
        string.Join('/', diagram.Rows.Select(r => string.Join(' ', r.Stitches.Select(s => $"{s.Mark}{s.Stitch?.Id}{s.Chains}{s.Loop}:{string.Join(',', s.Bases.Select(b => b.Top))}"))));
}
