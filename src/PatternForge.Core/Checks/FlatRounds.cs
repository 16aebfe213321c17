using System.Globalization;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Holds the counts of flat circles against what lies flat.</summary>
internal static class FlatRounds
{
    // Beyond the widest rules of thumb by so much; hands and yarns differ (common practice).
    private const decimal Allowed = 0.25m;
    private const int FewestRounds = 3;

    /// <summary>Tells the first round of each circle that has too many stitches, or too few.</summary>
    public static void Check(CheckContext context, Rule rule, bool ruffles)
    {
        foreach (var rounds in RoundShapes.Flat(context))
        {
            for (var size = 0; size < context.Facts.Sizes.Count; size++)
            {
                var (number, least, most) = (0, 0m, 0m);
                var last = rounds.LastOrDefault(l => l.Before[size] < l.After[size]); // rounds without increases behind it are an edge, or the sides
                foreach (var line in rounds)
                {
                    if (line.Rows[size] is not { } some || line.After[size] is not { } count || RoundShapes.StitchOf(line)?.Height is not { } height || RoundShapes.Growth(height) is not { } growth)
                    {
                        break;
                    }

                    (number, least, most) = (number + some, least + (some * growth.Least), most + (some * growth.Most));
                    var isLast = ReferenceEquals(line, last);
                    if (number >= FewestRounds && (ruffles ? count > most * (1 + Allowed) : isLast && count < least * (1 - Allowed)))
                    {
                        context.Bag.Add(new Finding(rule, context.Source, line.Origin, string.Create(CultureInfo.InvariantCulture, $"{number} rounds come to {count} stitches where a flat circle has {least:0} to {most:0}: it will {(ruffles ? "ruffle" : "cup")}"))
                        {
                            Help = $"in this stitch {growth.Usual} more in every round lie flat (common practice; rules of thumb differ); if the piece is meant to {(ruffles ? "ruffle" : "cup")}, say so in its heading",
                        });
                        size = context.Facts.Sizes.Count;
                        break;
                    }

                    if (isLast)
                    {
                        break;
                    }
                }
            }
        }
    }
}
