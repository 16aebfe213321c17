using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Work;

/// <summary>A thing that can hurt, by the word that names it.</summary>
/// <param name="Word">The word as the pattern writes it, in small letters.</param>
/// <param name="Origin">Where the item or the line stands that speaks of it.</param>
public sealed record Hazard(string Word, TextSpan Origin);

/// <summary>Whom a piece is for and what in it can hurt, as the usual cautions look at it (common practice).</summary>
public sealed record Hazards
{
    private static readonly string[] BabyWords =
        ["baby", "babies", "babys", "infant", "infants", "newborn", "newborns", "preemie", "preemies", "premature", "pram", "cot", "crib", "layette", "bootee", "bootees"];

    private static readonly string[] ChildWords =
        ["child", "childs", "children", "childrens", "kids", "toddler", "toddlers", "girls", "boys", "nursery"];

    private static readonly string[] ToyWords =
        ["toy", "toys", "doll", "dolls", "teddy", "softie", "softies", "rattle", "plaything"];

    private static readonly string[] HeatWords =
        ["potholder", "potholders", "trivet", "trivets", "cosy", "cosies", "cozy", "cozies", "hotpad", "stove", "oven", "candle", "lampshade", "lantern"];

    private static readonly string[] HotHandWords = ["potholder", "potholders", "trivet", "trivets", "hotpad", "hotpads"];

    /// <summary>After "baby" these name a fibre, a yarn or a stitch and no wearer.</summary>
    private static readonly string[] NotABaby =
        ["alpaca", "llama", "camel", "suri", "yak", "merino", "wool", "yarn", "weight", "cable", "cables", "rib", "ribbing"];

    private static readonly SoughtWords SmallParts = new(
        ["button", "buttons", "buttonhole", "buttonholes", "bead", "beads", "toggle", "toggles", "snaps", "sequin", "sequins", "pompom", "pompoms", "bell", "bells", "eyes", "rhinestones", "buckle", "buckles", "brooch"]);

    private static readonly SoughtWords CordsInNotions = new(
        ["ribbon", "ribbons", "elastic", "cord", "cords", "drawstring", "lace", "tassel", "tassels", "string", "strap", "straps"]);

    private static readonly SoughtWords CordsInRows = new(["icord", "drawstring", "tassel", "tassels", "ties", "pompom", "pompoms"]);

    private static readonly string[] LoftyWords = ["mohair", "angora", "brushed", "fur", "eyelash", "fluffy"];

    /// <summary>True for a thing for babies.</summary>
    public bool ForBabies { get; private init; }

    /// <summary>True for a thing for children, babies included.</summary>
    public bool ForChildren { get; private init; }

    /// <summary>True for a thing for youths: cords can catch them as well.</summary>
    public bool ForYouths { get; private init; }

    /// <summary>True for a toy.</summary>
    public bool IsToy { get; private init; }

    /// <summary>True for a thing that is used near heat or flames.</summary>
    public bool NearHeat { get; private init; }

    /// <summary>True for a thing that takes hold of what is hot.</summary>
    public bool HoldsHotThings { get; private init; }

    /// <summary>True for a yarn whose hairs stand off and catch fire easily.</summary>
    public bool IsLofty { get; private init; }

    /// <summary>Small parts among the notions and in the rows, each word once.</summary>
    public ImmutableArray<Hazard> Small { get; private init; } = [];

    /// <summary>Cords, ribbons and ties among the notions and in the rows, each word once.</summary>
    public ImmutableArray<Hazard> Cords { get; private init; } = [];

    /// <summary>Looks through a pattern's facts and worked lines.</summary>
    public static Hazards Of(PatternFacts facts, ImmutableArray<WorkedLine> lines)
    {
        var words = Words([facts.Title?.Value, facts.Summary, facts.LevelReason, .. facts.Notions.Select(n => n.Text), .. facts.Fits.Select(f => f.Name)]);
        var yarn = Words(facts.Yarns.SelectMany(y => new[] { y.Fibre, y.Name }));
        var (babySize, childSize) = Sizes(facts.Sizes);

        // Whom it is for is known where the header says so; else the words and the sizes show it.
        var said = facts.Audience?.Value;
        var isGrown = said is Audience.Women or Audience.Men or Audience.Adults or Audience.Youths;
        var baby = said is Audience.Babies || (!isGrown && (babySize || Speaks(words, BabyWords)));
        var child = baby || said is Audience.Children || (!isGrown && (childSize || Speaks(words, ChildWords)));
        return new Hazards
        {
            ForBabies = baby,
            ForChildren = child,
            ForYouths = said is Audience.Youths,
            IsToy = Speaks(words, ToyWords),
            NearHeat = Speaks(words, HeatWords),
            HoldsHotThings = Speaks(Words([facts.Title?.Value]), HotHandWords),
            IsLofty = Speaks(yarn, LoftyWords),
            Small = Found(facts.Notions, SmallParts, lines, SmallParts),
            Cords = Found(facts.Notions, CordsInNotions, lines, CordsInRows),
        };
    }

    private static ImmutableArray<Hazard> Found(ImmutableArray<Item> notions, SoughtWords inNotions, ImmutableArray<WorkedLine> lines, SoughtWords inRows)
    {
        var found = ImmutableArray.CreateBuilder<Hazard>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var notion in notions)
        {
            Take(notion.Text, notion.Origin, inNotions);
        }

        var piece = "";
        foreach (var line in lines)
        {
            if (line.Piece != piece)
            {
                piece = line.Piece;
                Take(piece, line.Origin, inRows);
            }

            Take(line.Text, line.Origin, inRows);
        }

        return found.ToImmutable();

        void Take(string text, TextSpan origin, SoughtWords of)
        {
            // Most rows name none of them: words are made only where one of them may stand.
            if (!text.AsSpan().ContainsAny(of.Signs))
            {
                return;
            }

            var words = Words([text]);
            for (var i = 0; i < words.Count; i++)
            {
                // "I-cord" is two words, and "eyes" are small parts only where they are bought.
                var word = words[i] is "cord" && i > 0 && words[i - 1] is "i" ? "icord" : words[i];
                if (of.Words.Contains(word, StringComparer.Ordinal) && !IsNone(words, i) && (word is not "eyes" || (i > 0 && words[i - 1] is "safety" or "plastic" or "glass")) && seen.Add(word))
                {
                    found.Add(new Hazard(word is "icord" ? "i-cord" : word, origin));
                }
            }
        }
    }

    private static bool IsNone(List<string> words, int at) => at > 0 && words[at - 1] is "no" or "without";

    /// <summary>What the sizes' names say: months and "newborn" mean babies; years, and the names of the young, mean children.</summary>
    private static (bool Baby, bool Child) Sizes(SizeSet sizes)
    {
        var words = Words([.. sizes.Names, sizes.Word]);
        var baby = Speaks(words, BabyWords) || words.Exists(w => w is "month" or "months" or "mo" or "mos" or "mths");
        var child = Speaks(words, ChildWords) || words.Exists(w => w is "year" or "years" or "yr" or "yrs" || (w.Length == 2 && char.IsAsciiDigit(w[0]) && w[1] == 't'));
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
        var word = new StringBuilder();
        foreach (var text in texts)
        {
            foreach (var c in text ?? "")
            {
                Letter(c);
            }

            Letter(' ');
        }

        return words;

        void Letter(char c)
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

    /// <summary>Words, and the signs of which one stands in every text that names one of them: "i-cord" is two words of a text.</summary>
    private sealed class SoughtWords(string[] words)
    {
        public string[] Words { get; } = words;

        public SearchValues<string> Signs { get; } = SearchValues.Create([.. words.Select(w => w is "icord" ? "cord" : w)], StringComparison.OrdinalIgnoreCase);
    }
}
