using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>A class of yarn weight: its number, its name, and the kinds of yarn that the trade counts to it.</summary>
/// <param name="Class">0 to 7.</param>
/// <param name="Name">The class's name.</param>
/// <param name="Kinds">Names of yarns in the class, American and British.</param>
public sealed record YarnWeight(int Class, string Name, ImmutableArray<string> Kinds)
{
    /// <summary>
    /// The classes. Names and most kinds: Craft Yarn Council, Standard Yarn Weight System, as printed in Crochet World, October 2018, p. 64;
    /// the ply names: common practice in Britain and Australia.
    /// </summary>
    public static ImmutableArray<YarnWeight> All { get; } =
    [
        new(0, "lace", ["laceweight", "lace weight", "cobweb", "thread", "10-count", "2 ply"]),
        new(1, "super fine", ["fingering", "sock", "baby", "light fingering", "3 ply", "4 ply"]),
        new(2, "fine", ["sport", "sportweight", "sport weight", "5 ply"]),
        new(3, "light", ["dk", "double knitting", "light worsted", "8 ply"]),
        new(4, "medium", ["worsted", "aran", "afghan", "10 ply"]),
        new(5, "bulky", ["chunky", "craft", "rug", "12 ply"]),
        new(6, "super bulky", ["super chunky", "roving"]),
        new(7, "jumbo", []),
    ];

    /// <summary>The class meant by a text such as "4", "worsted", "DK (3)" or "3 light"; null when nobody knows it.</summary>
    public static YarnWeight? Find(string said)
    {
        var words = Plain(said);
        if (All.FirstOrDefault(w => w.Name == words || w.Kinds.Contains(words, StringComparer.Ordinal)) is { } exact)
        {
            return exact;
        }

        var numbers = words.Split(' ').Where(w => w.Length == 1 && w[0] is >= '0' and <= '7').ToArray();
        if (numbers.Length == 1 && !words.Contains("ply", StringComparison.Ordinal))
        {
            return All[numbers[0][0] - '0'];
        }

        // The longest name that stands in the text as whole words: "light worsted" before "worsted".
        return All
            .SelectMany(w => w.Kinds.Add(w.Name).Select(name => (weight: w, name)))
            .Where(pair => $" {words} ".Contains($" {pair.name} ", StringComparison.Ordinal))
            .OrderByDescending(pair => pair.name.Length)
            .Select(pair => pair.weight)
            .FirstOrDefault();
    }

    /// <summary>True when a text says a weight and nothing more: "worsted weight yarn", "DK", "4 ply".</summary>
    public static bool IsNothingElse(string said)
    {
        var words = Plain(said);
        return words.Length == 0 || (words.Length == 1 && words[0] is >= '0' and <= '7') || All.Any(w => w.Name == words || w.Kinds.Contains(words, StringComparer.Ordinal));
    }

    private static string Plain(string said)
    {
        var letters = said.Select(c => char.IsLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' ').ToArray();
        var words = new string(letters).Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(w => w.EndsWith("ply", StringComparison.Ordinal) && w.Length > 3 && char.IsDigit(w[0]) ? [w[..^3], "ply"] : new[] { w })
            .Where(w => w is not ("weight" or "yarn" or "class" or "cyc"));
        return string.Join(' ', words);
    }
}
