using System.Collections.Immutable;
using System.Text;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// The usual cautions for things that can hurt (common practice): small parts and cords on things for babies and children, toys,
/// things near heat. They are plain words, no legal advice, and defer to local rules and to the yarn's label.
/// </summary>
internal static class Cautions
{
    private static readonly string[] BabyWords =
        ["baby", "babies", "babys", "infant", "infants", "newborn", "newborns", "preemie", "preemies", "premature", "pram", "cot", "crib", "layette", "bootee", "bootees"];

    private static readonly string[] ChildWords =
        ["child", "childs", "children", "childrens", "kids", "toddler", "toddlers", "girls", "boys", "nursery"];

    private static readonly string[] ToyWords =
        ["toy", "toys", "doll", "dolls", "teddy", "softie", "softies", "rattle", "plaything"];

    private static readonly string[] HeatWords =
        ["potholder", "potholders", "trivet", "trivets", "cosy", "cosies", "cozy", "cozies", "hotpad", "stove", "oven", "candle", "lampshade", "lantern"];

    /// <summary>After "baby" these name a fibre, a yarn or a stitch and no wearer.</summary>
    private static readonly string[] NotABaby =
        ["alpaca", "llama", "camel", "suri", "yak", "merino", "wool", "yarn", "weight", "cable", "cables", "rib", "ribbing"];

    /// <summary>Whom and what the pattern speaks of, and so the cautions it needs.</summary>
    public static ImmutableArray<CautionView> Build(PatternFacts facts)
    {
        if (facts.Omit.Any(o => string.Equals(o, "cautions", StringComparison.OrdinalIgnoreCase)))
        {
            return [];
        }

        var words = Words([facts.Title?.Value, facts.Summary, facts.LevelReason, .. facts.Notions.Select(n => n.Text), .. facts.Fits.Select(f => f.Name)]);
        var (babySize, childSize) = Sizes(facts.Sizes);
        var baby = babySize || Speaks(words, BabyWords);
        var toy = Speaks(words, ToyWords);
        var child = baby || childSize || Speaks(words, ChildWords);
        var cautions = ImmutableArray.CreateBuilder<CautionView>();
        if (child || toy)
        {
            cautions.Add(Small(toy));
        }

        if (child)
        {
            cautions.Add(new CautionView
            {
                Name = "Cords and loops",
                Text = "Keep ties, cords and strings short, and leave them off anything worn near the neck or the face. Hide or cut long floats inside, so that fingers and toes cannot catch.",
            });
        }

        if (baby)
        {
            cautions.Add(new CautionView
            {
                Name = "Sleep",
                Text = "Take hats, hoods and anything tied off a baby who sleeps or is left alone, and keep loose covers and soft toys out of the bed. Follow the safe-sleep advice given where you live.",
            });
        }

        if (child || Speaks(words, HeatWords))
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

    private static CautionView Small(bool toy) => new()
    {
        Name = "Small parts",
        Text = "Buttons, beads, eyes and pompoms can come off and be swallowed. Sew them on so that a hard pull does not move them, look at them before every use, and "
            + (toy ? "embroider them instead on a toy for a child under three." : "leave them off anything for a child under three."),
    };

    /// <summary>What the sizes' names say: months and "newborn" mean babies; years, and the names of the young, mean children.</summary>
    private static (bool Baby, bool Child) Sizes(SizeSet sizes)
    {
        var words = Words([.. sizes.Names, sizes.Word]);
        var baby = Speaks(words, BabyWords) || words.Any(w => w is "month" or "months" or "mo" or "mos" or "mths");
        var child = Speaks(words, ChildWords) || words.Any(w => w is "year" or "years" or "yr" or "yrs" || (w.Length == 2 && char.IsAsciiDigit(w[0]) && w[1] == 't'));
        return (baby, child);
    }

    private static bool Speaks(List<string> said, string[] of)
    {
        for (var i = 0; i < said.Count; i++)
        {
            var isFibre = said[i] is "baby" && i + 1 < said.Count && NotABaby.Contains(said[i + 1], StringComparer.Ordinal);
            if (!isFibre && of.Contains(said[i], StringComparer.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Lower-case words; an apostrophe inside a word is dropped ("baby's" is "babys").</summary>
    private static List<string> Words(IEnumerable<string?> texts)
    {
        var words = new List<string>();
        foreach (var text in texts)
        {
            var word = new StringBuilder();
            foreach (var c in (text ?? "") + " ")
            {
                if (char.IsLetterOrDigit(c))
                {
                    word.Append(char.ToLowerInvariant(c));
                }
                else if (c is not ('\'' or '’') && word.Length > 0)
                {
                    words.Add(word.ToString());
                    word.Clear();
                }
            }
        }

        return words;
    }
}
