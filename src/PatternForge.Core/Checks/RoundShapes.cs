using System.Collections.Immutable;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>Crochet that is worked in rounds from its middle, and what its heading says it is meant to be.</summary>
internal static class RoundShapes
{
    private static readonly string[] FlatWords = ["circle", "disc", "disk", "base", "flat", "coaster", "mandala"];
    private static readonly string[] BallWords = ["ball", "sphere"];
    private static readonly string[] ShapedWords = ["ruffle", "ruffled", "frill", "frilled", "cup", "bowl", "half", "oval", "square", "hexagon", "semicircle", "cushion", "flower"];

    /// <summary>The rounds of pieces that are said to lie flat, each from its first.</summary>
    public static IEnumerable<ImmutableArray<WorkedLine>> Flat(CheckContext context) => Called(context, FlatWords);

    /// <summary>The rounds of pieces that are said to be balls.</summary>
    public static IEnumerable<ImmutableArray<WorkedLine>> Balls(CheckContext context) => Called(context, BallWords);

    /// <summary>
    /// How many stitches a flat circle may gain in each round of a stitch of that height: rules of thumb, which differ from handbook to handbook (common practice:
    /// 6 to 8 in single crochet, 8 to 10 in half double, 10 to 14 in double, 12 to 18 in treble, by their American names).
    /// </summary>
    public static (int Least, int Most, string Usual)? Growth(int height) => height switch
    {
        1 => (6, 8, "about 6"),
        2 => (8, 10, "about 8"),
        3 => (10, 14, "about 12"),
        4 => (12, 18, "12 to 18"),
        _ => null,
    };

    /// <summary>The plain stitch of a round; null where it has several kinds, spaces, or none that is known.</summary>
    public static Operation? StitchOf(WorkedLine line)
    {
        if (line is not { Kinds.IsEmpty: true, Kind: { } kind })
        {
            return null;
        }

        Operation[] named = [.. line.Operations.Where(o => o.Height is > 0 && (o.Names.Any(n => n.Text == kind) || o.Id == kind))];
        return named.Length > 0 ? named[0] : line.Operations.FirstOrDefault(o => o is { Height: > 0, Change: 0 });
    }

    private static IEnumerable<ImmutableArray<WorkedLine>> Called(CheckContext context, string[] words)
    {
        if (context.Facts.Craft != Craft.Crochet)
        {
            yield break;
        }

        foreach (var group in context.Lines.GroupBy(l => l.Piece, StringComparer.Ordinal))
        {
            var title = context.Lines.Select(l => l.Piece).Distinct(StringComparer.Ordinal).Count() == 1 ? context.Facts.Title?.Value ?? "" : "";
            var said = $"{group.Key} {title}".ToLowerInvariant().Split([' ', ',', '(', ')', '-', ':', '.'], StringSplitOptions.RemoveEmptyEntries);
            if (!Array.Exists(said, w => words.Contains(w, StringComparer.Ordinal) || words.Contains(w.TrimEnd('s'), StringComparer.Ordinal)) || Array.Exists(said, w => ShapedWords.Contains(w, StringComparer.Ordinal)))
            {
                continue;
            }

            ImmutableArray<WorkedLine> rounds = [.. group.Where(l => l.Numbers.Length > 0)];
            if (rounds.Length >= 3 && rounds[0].Numbers[0] == 1 && rounds.All(l => l is { Status: LineStatus.Checked, InTheRound: true, Rows.IsEmpty: false, Kinds.IsEmpty: true }))
            {
                yield return rounds;
            }
        }
    }
}
