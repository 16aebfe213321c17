using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Work;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// The usual cautions for things that can hurt (common practice): small parts and cords on things for babies and children, toys,
/// things near heat. They are plain words, no legal advice, and defer to local rules and to the yarn's label.
/// </summary>
internal static class Cautions
{
    /// <summary>The cautions that a pattern needs for whom it is for, and for what is in it.</summary>
    public static ImmutableArray<CautionView> Build(PatternFacts facts, ImmutableArray<WorkedLine> lines)
    {
        if (facts.Omit.Any(o => string.Equals(o, "cautions", StringComparison.OrdinalIgnoreCase)))
        {
            return [];
        }

        var hazards = Hazards.Of(facts, lines);
        var cautions = ImmutableArray.CreateBuilder<CautionView>();
        if (hazards.ForChildren || hazards.IsToy)
        {
            cautions.Add(Small(hazards));
        }

        if (hazards.ForChildren || ((hazards.IsToy || hazards.ForYouths) && !hazards.Cords.IsEmpty))
        {
            cautions.Add(new CautionView
            {
                Name = "Cords and loops",
                Text = Here(hazards.Cords) + "Keep ties, cords and strings short, and leave them off anything worn near the neck or the face. Hide or cut long floats inside, so that fingers and toes cannot catch.",
            });
        }

        if (hazards.ForBabies)
        {
            cautions.Add(new CautionView
            {
                Name = "Sleep",
                Text = "Take hats, hoods and anything tied off a baby who sleeps or is left alone, and keep loose covers and soft toys out of the bed. Follow the safe-sleep advice given where you live.",
            });
        }

        if (hazards.ForChildren || hazards.NearHeat || hazards.HoldsHotThings || hazards.IsLofty)
        {
            cautions.Add(new CautionView
            {
                Name = "Heat and flames",
                Text = "Fluffy, brushed or open fabric catches fire easily: keep it away from fires, heaters and candles, and do not count on it as nightwear. Wool resists heat best; plant fibres burn and synthetics melt.",
            });
        }

        if (cautions.Count > 0)
        {
            cautions.Add(new CautionView
            {
                Name = "Rules and labels",
                Text = "If you give or sell what you make, look up the safety rules for such things where you live. For fibre content, washing and heat, the label of your yarn has the last word.",
            });
        }

        return facts.TermsInForce is Dialect.Us
            ? [.. cautions.Select(c => c with { Text = c.Text.Replace("fibre", "fiber", StringComparison.Ordinal) })]
            : cautions.ToImmutable();
    }

    private static CautionView Small(Hazards hazards) => new()
    {
        Name = "Small parts",
        Text = Here(hazards.Small) + "Buttons, beads, eyes and pompoms can come off and be swallowed. Sew them on so that a hard pull does not move them, look at them before every use, and "
            + (hazards.IsToy ? "embroider them instead on a toy for a child under three." : "leave them off anything for a child under three."),
    };

    /// <summary>What the pattern itself has of such things: "In this pattern: button, ribbon. ".</summary>
    private static string Here(ImmutableArray<Hazard> found) => found.IsEmpty ? "" : $"In this pattern: {string.Join(", ", found.Select(h => h.Word))}. ";
}
