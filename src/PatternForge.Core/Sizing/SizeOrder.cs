using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Core.Sizing;

/// <summary>The order that the names of sizes have by themselves: XS, S, M, L, XL, 2X and so on, by the number they begin with, or by the ages, beds and lengths that they name (common practice).</summary>
internal static class SizeOrder
{
    private static readonly string[][] Ranges =
    [
        ["preemie", "newborn", "baby", "infant", "toddler", "child", "youth", "teen", "adult"],
        ["doll", "pram", "cot", "crib", "lap", "sofa", "throw", "single", "twin", "bed", "double", "full", "queen", "king"],
        ["mini", "small", "medium", "large"],
        ["short", "regular", "long", "extra long"],
        ["narrow", "medium", "wide", "extra wide"],
        ["scarf", "wide", "wrap", "stole"],
    ];

    /// <summary>Where a new name belongs among the others; null where their names do not tell.</summary>
    public static int? PlaceOf(string name, SizeSet sizes)
    {
        foreach (var rank in (ReadOnlySpan<Func<string, decimal?>>)[Letters, Number, .. Ranges.Select(range => (Func<string, decimal?>)(n => Array.IndexOf(range, n.Trim().ToLowerInvariant()) is >= 0 and var rank ? rank : null))])
        {
            if (rank(name) is not { } own)
            {
                continue;
            }

            // "Child (S, M, L)": a name that tells nothing is no hindrance where the names beside the place tell enough.
            var ranks = sizes.Names.Select(rank).ToArray();
            var known = ranks.OfType<decimal>().ToArray();
            if (known.Length < 2 || known.Contains(own) || !known.Zip(known.Skip(1)).All(pair => pair.First < pair.Second))
            {
                continue;
            }

            var place = Array.FindIndex(ranks, r => r > own) is >= 0 and var next ? next : ranks.Length;
            if ((place == 0 || ranks[place - 1] is not null) && (place == ranks.Length || ranks[place] is not null))
            {
                return place;
            }
        }

        return null;
    }

    private static decimal? Letters(string name)
    {
        var word = name.Trim().ToUpperInvariant().Replace("-", "", StringComparison.Ordinal);
        switch (word)
        {
            case "S" or "SMALL":
                return 0;
            case "M" or "MEDIUM":
                return 1;
            case "L" or "LARGE":
                return 2;
            case "XSMALL":
                return -1;
            case "XLARGE":
                return 3;
        }

        if (word.Length < 2 || word[^1] is not ('S' or 'L' or 'X'))
        {
            return null;
        }

        var count = word[..^1].All(c => c == 'X') ? word.Length - 1
            : char.IsAsciiDigit(word[0]) && int.TryParse(word.TrimEnd('S', 'L', 'X'), NumberStyles.None, CultureInfo.InvariantCulture, out var said) && word.TrimStart("0123456789".ToCharArray()) is "X" or "XL" or "XS" ? said
            : 0;
        return count is 0 or > 20 ? null : word[^1] == 'S' ? -count : word.All(c => c == 'X') ? null : 2 + count;
    }

    private static decimal? Number(string name)
    {
        var digits = name.Trim().TakeWhile(char.IsAsciiDigit).Count();
        return digits is > 0 and < 7 ? decimal.Parse(name.Trim().AsSpan(0, digits), NumberStyles.None, CultureInfo.InvariantCulture) : null;
    }
}
