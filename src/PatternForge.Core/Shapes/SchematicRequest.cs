using System.Collections.Immutable;
using PatternForge.Core.Checks;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Shapes;

/// <summary>What a block that asks for a schematic says: of which piece, and in which size.</summary>
/// <param name="Of">The heading of the piece; null for the pieces of the section that the block stands in, or for all.</param>
/// <param name="Size">The name of the size; null for all sizes in one drawing.</param>
public sealed record SchematicRequest(string? Of, string? Size)
{
    /// <summary>The word of the block.</summary>
    public const string Word = "schematic";

    /// <summary>Reads the lines "of: Back" and "size: M"; null where the block holds anything else.</summary>
    public static SchematicRequest? Read(string text)
    {
        var request = new SchematicRequest(null, null);
        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            var value = colon < 0 ? "" : line[(colon + 1)..].Trim();
            switch (colon < 0 ? "" : line[..colon].Trim().ToLowerInvariant())
            {
                case "of" when value.Length > 0:
                    request = request with { Of = value };
                    break;
                case "size" when value.Length > 0:
                    request = request with { Size = value };
                    break;
                default:
                    return null;
            }
        }

        return request;
    }

    /// <summary>Every request of a pattern, with its block and the section that it stands in.</summary>
    public static IEnumerable<(SchematicRequest Request, FencedBlock Block, Section Section)> In(Pattern pattern)
    {
        foreach (var section in pattern.Sections)
        {
            foreach (var block in section.Blocks)
            {
                if (block is FencedBlock { Info: Word } fenced && Read(fenced.Text) is { } request)
                {
                    yield return (request, fenced, section);
                }
            }
        }
    }

    /// <summary>The pieces that are meant: those of the name, else those of the section, else all.</summary>
    public ImmutableArray<PieceOutline> Meant(ImmutableArray<PieceOutline> outlines, Section section)
    {
        bool Is(PieceOutline outline, string name) => outline.Headings.Append(outline.Name).Any(h => string.Equals(Plain(h), Plain(name), StringComparison.OrdinalIgnoreCase));
        if (Of is { } of)
        {
            return [.. outlines.Where(o => Is(o, of))];
        }

        ImmutableArray<PieceOutline> own = [.. outlines.Where(o => Is(o, section.Heading))];
        return own.IsEmpty ? outlines : own;
    }

    /// <summary>True where schematics are drawn without being asked for: something fitted to a body, nothing asked for, and the part not left out.</summary>
    public static bool ByItself(Pattern pattern)
    {
        var facts = pattern.Facts;
        return WornPiece.IsFitted(facts)
            && !facts.Omit.Contains(Word, StringComparer.OrdinalIgnoreCase) && !pattern.Sections.SelectMany(s => s.Blocks).Any(b => b is FencedBlock { Info: Word });
    }

    /// <summary>Says of each request that cannot be met why.</summary>
    /// <param name="context">The worked pattern.</param>
    public static void Check(CheckContext context)
    {
        var outlines = context.Outlines;
        foreach (var (request, block, section) in In(context.Pattern))
        {
            var end = context.Source.Text.IndexOf('\n', block.Origin.Start);
            var place = new TextSpan(block.Origin.Start, end < 0 ? block.Origin.Length : Math.Min(block.Origin.Length, end - block.Origin.Start));
            var meant = request.Meant(outlines.Value, section);
            var sizes = context.Facts.Sizes;
            if (meant.IsEmpty)
            {
                context.Bag.Add(new Finding(Rule, context.Source, place, request.Of is { } of ? $"there is no piece `{of}` to draw" : "there is no piece to draw") { Help = outlines.Value.IsEmpty ? null : $"the pieces are {string.Join(", ", outlines.Value.Select(o => o.Name))}" });
            }
            else if (request.Size is { } size && sizes.IndexOf(size) < 0)
            {
                context.Bag.Add(new Finding(Rule, context.Source, place, $"there is no size `{size}` to draw") { Help = $"the sizes are {string.Join(", ", sizes.Names)}" });
            }
            else if (meant.All(o => !o.IsDrawn) && !IsTold(context, meant[0]))
            {
                context.Bag.Add(new Finding(Rule, context.Source, place, $"{meant[0].Name} cannot be drawn: {meant[0].Reason}"));
            }
            else if (meant.Any(o => o.IsDrawn) && Array.Find([.. meant], o => !o.IsDrawn && !IsTold(context, o)) is { } missing)
            {
                context.Bag.Add(new Finding(Rule, context.Source, place, $"{missing.Name} is left out of what is drawn: {missing.Reason}"));
            }
        }
    }

    /// <summary>True where a line of the piece was told of already: what is wrong with it is the reason.</summary>
    private static bool IsTold(CheckContext context, PieceOutline piece)
    {
        var told = context.Bag.ToSorted().Where(f => f.Severity == Severity.Error).ToArray();
        return context.Lines.Any(l => piece.Headings.Contains(l.Piece, StringComparer.Ordinal) && (l.Status != Work.LineStatus.Checked || Array.Exists(told, f => l.Origin.Contains(f.Span))));
    }

    /// <summary>A schematic that was asked for cannot be drawn.</summary>
    public static Rule Rule { get; } = new(
        "PF630", "schematic-not-drawn", Area.Gauge, Severity.Note,
        "A schematic that was asked for cannot be drawn.",
        "A schematic follows from the stitches, the rows and the gauge of a piece. It is drawn where all of them are known: each line is understood, its rows are counted or end at a length that is told in numbers, and it is plain at which edge the piece is shaped. Where one of them is missing there is no drawing rather than one that may be wrong. A drawing of your own can stand under a heading `Schematic`.")
    {
        Bad = """
            ---
            title: Harbour scarf
            sizes: one size
            gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked
            ---

            ## Scarf

            CO 40 sts.

            Row 1 (RS): Knit.

            Work even in stockinette until the yarn is nearly used up.

            BO all sts.

            ```schematic
            ^^^^^^^^^^^^
            ```
            """,
        Good = """
            ---
            title: Harbour scarf
            sizes: one size
            gauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked
            ---

            ## Scarf

            CO 40 sts.

            Row 1 (RS): Knit.

            Work even in stockinette until piece measures 120 cm.

            BO all sts.

            ```schematic
            ```
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    private static string Plain(string heading) => PieceWidth.Plain(heading);
}
