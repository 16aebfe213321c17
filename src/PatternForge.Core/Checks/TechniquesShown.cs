using System.Buffers;
using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Reference;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>A technique that the rows show.</summary>
/// <param name="Technique">The technique.</param>
/// <param name="Line">The first line that shows it.</param>
internal sealed record ShownTechnique(Technique Technique, WorkedLine Line)
{
    /// <summary>The technique and the row that shows it: "cables (Row 5)".</summary>
    public override string ToString() => Line.Label.Length > 0 ? $"{Technique.Name} ({Line.Label})" : Technique.Name;
}

/// <summary>Which techniques the rows show: by the stitches they use, and by the words that name what is no stitch.</summary>
internal static class TechniquesShown
{
    /// <summary>Yarn overs on fewer lines than this make a row of eyelets and no lace.</summary>
    private const int LinesOfLace = 3;

    /// <summary>Changes of colour within one line, and lines that have them, from which on it is colour work.</summary>
    private const int ColoursInLine = 3;

    private static readonly SearchValues<string> s_grafting = SearchValues.Create(["graft", "kitchener"], StringComparison.OrdinalIgnoreCase);
    private static readonly SearchValues<string> s_shortRows = SearchValues.Create(["short row", "short-row", "w&t", "w+t", "wrap and turn", "wrap & turn", "wrap next st", "make double st", "mds"], StringComparison.OrdinalIgnoreCase);
    private static readonly SearchValues<string> s_steeks = SearchValues.Create(["steek"], StringComparison.OrdinalIgnoreCase);
    private static readonly SearchValues<string> s_pickingUp = SearchValues.Create(["pick up and k", "pick up & k", "knit up"], StringComparison.OrdinalIgnoreCase);
    private static readonly SearchValues<string> s_bobbles = SearchValues.Create(["bobble", "popcorn", "puff", "cluster", " cl "], StringComparison.OrdinalIgnoreCase);
    private static readonly SearchValues<string> s_filet = SearchValues.Create(["open mesh", "solid mesh", "filet"], StringComparison.OrdinalIgnoreCase);

    /// <summary>The techniques, the most involved first, then in the order of the rows.</summary>
    public static ImmutableArray<ShownTechnique> In(CheckContext context)
    {
        var found = new Dictionary<string, ShownTechnique>(StringComparer.Ordinal);
        var (openLines, firstOpen, firstHole) = (0, (WorkedLine?)null, (WorkedLine?)null);
        var (mixedLines, firstMixed) = (0, (WorkedLine?)null);
        var labels = Labels(context.Facts);
        var (lastColour, changes, firstChange) = ((string?)null, 0, (WorkedLine?)null);
        foreach (var line in context.Lines)
        {
            if (context.Facts.Craft == Craft.Knitting)
            {
                Knitted(line);
            }
            else
            {
                Crocheted(line);
            }

            if (Says(line, s_grafting))
            {
                Add(TechniqueLevels.Grafting, line);
            }

            if (labels.Length > 1)
            {
                Colours(line);
            }
        }

        if (openLines >= LinesOfLace)
        {
            Add(TechniqueLevels.Lace, firstOpen!);
        }
        else if (firstHole is not null)
        {
            Add(TechniqueLevels.Eyelets, firstHole);
        }

        if (mixedLines > 1)
        {
            Add(TechniqueLevels.ColourWork, firstMixed!);
        }
        else if (changes > 1)
        {
            Add(TechniqueLevels.Stripes, firstChange!);
        }

        return [.. found.Values.OrderByDescending(t => t.Technique.Step).ThenBy(t => t.Line.Index)];

        void Add(Technique technique, WorkedLine line) => found.TryAdd(technique.Name, new ShownTechnique(technique, line));

        void Knitted(WorkedLine line)
        {
            var (opens, closes) = (false, false);
            foreach (var operation in line.Operations)
            {
                switch (operation.Family)
                {
                    case Family.Cable:
                        Add(TechniqueLevels.Cables, line);
                        break;
                    case Family.ShortRow:
                        Add(TechniqueLevels.ShortRows, line);
                        break;
                    case Family.Brioche:
                        Add(TechniqueLevels.Brioche, line);
                        break;
                    case Family.YarnOver:
                        opens = true;
                        break;
                    case Family.Decrease:
                        closes = true;
                        break;
                    case Family.Edge when operation.Id.StartsWith("pu", StringComparison.Ordinal) || operation.Spoken.StartsWith("pick up", StringComparison.Ordinal):
                        Add(TechniqueLevels.PickingUp, line);
                        break;
                    default:
                        break;
                }
            }

            if (Says(line, s_shortRows))
            {
                Add(TechniqueLevels.ShortRows, line);
            }

            if (Says(line, s_steeks))
            {
                Add(TechniqueLevels.Steeks, line);
            }

            if (Says(line, s_pickingUp))
            {
                Add(TechniqueLevels.PickingUp, line);
            }

            if (opens)
            {
                firstHole ??= line;
                if (closes)
                {
                    firstOpen ??= line;
                    openLines++;
                }
            }
        }

        void Crocheted(WorkedLine line)
        {
            if (context.Facts.Craft == Craft.Tunisian)
            {
                Add(TechniqueLevels.Tunisian, line);
            }

            foreach (var operation in line.Operations)
            {
                if (operation.Id.StartsWith("FP", StringComparison.Ordinal) || operation.Id.StartsWith("BP", StringComparison.Ordinal))
                {
                    Add(TechniqueLevels.PostStitches, line);
                }
            }

            if (Says(line, s_bobbles))
            {
                Add(TechniqueLevels.Bobbles, line);
            }

            if (Says(line, s_filet))
            {
                Add(TechniqueLevels.Filet, line);
            }
        }

        void Colours(WorkedLine line)
        {
            var (turns, last) = (0, (string?)null);
            foreach (var word in line.Text.Split(Marks, StringSplitOptions.RemoveEmptyEntries))
            {
                if (labels.Contains(word, StringComparer.Ordinal))
                {
                    turns += last is not null && last != word ? 1 : 0;
                    last = word;
                }
            }

            if (turns + 1 >= ColoursInLine)
            {
                firstMixed ??= line;
                mixedLines++;
            }

            if (last is not null && last != lastColour)
            {
                changes += lastColour is null ? 0 : 1;
                firstChange ??= lastColour is null ? null : line;
                lastColour = last;
            }
        }
    }

    /// <summary>Where a pattern's techniques stand on the scale: the highest of them, or the fourth step where three involved ones come together.</summary>
    public static Level LevelOf(ImmutableArray<ShownTechnique> shown) =>
        shown.Count(t => t.Technique.Step >= 2) >= 3 ? Level.Complex : shown.IsEmpty ? Level.Basic : (Level)shown.Max(t => t.Technique.Step);

    private static readonly char[] Marks = [' ', ',', '.', ';', ':', '(', ')', '[', ']', '*', '/', '\n', '\r', '\t'];

    private static bool Says(WorkedLine line, SearchValues<string> words) => line.Text.AsSpan().ContainsAny(words);

    private static string[] Labels(PatternFacts facts) => [.. facts.Yarns.Select(y => y.Label).OfType<string>().Distinct(StringComparer.Ordinal)];
}
