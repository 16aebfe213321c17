using System.Buffers;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Checks;

/// <summary>What the pattern's own list says of a stitch, held against the trade's lists in the declared terms.</summary>
internal static class AbbreviationMeanings
{
    private static readonly SearchValues<char> Ends = SearchValues.Create("(:=.");

    /// <summary>An entry whose name and meaning both are known.</summary>
    /// <param name="Entry">The entry.</param>
    /// <param name="Named">The stitch that its name is, in the terms in force.</param>
    /// <param name="Meant">The stitch that its meaning is in those terms; null where they have no such words.</param>
    /// <param name="MeantThere">The stitch that its meaning is in the other terms; null where those have no such words.</param>
    public readonly record struct Explained(Abbreviation Entry, Operation Named, Operation? Meant, Operation? MeantThere)
    {
        /// <summary>True where the words are those of the other terms: they name the stitch there, and another one or none here.</summary>
        public bool IsInOtherTerms => MeantThere is not null && MeantThere.Id == Named.Id && Meant?.Id != Named.Id;
    }

    /// <summary>The entries that can be judged.</summary>
    public static IEnumerable<Explained> Of(PatternFacts facts)
    {
        var terms = facts.TermsInForce ?? Dialect.Us;
        var other = terms == Dialect.Us ? Dialect.Uk : Dialect.Us;
        foreach (var entry in facts.Abbreviations ?? [])
        {
            if (entry.Meaning is not { Length: > 0 } meaning || facts.Stitches.Any(s => AbbreviationUse.KeyOf(s.Name) == AbbreviationUse.KeyOf(entry.Name))
                || OperationTable.Find(facts.Craft, terms, entry.Name) is not { } named)
            {
                continue;
            }

            yield return new Explained(entry, named, Find(facts.Craft, terms, meaning), facts.Craft == Craft.Crochet ? Find(facts.Craft, other, meaning) : null);
        }
    }

    // Words that change nothing about which stitch is meant: "knit into the front and the back of the next stitch".
    private static readonly HashSet<string> Filling = new[] { "the", "a", "an", "of", "into", "in", "same", "next", "stitch", "stitches", "st", "sts", "one", "loop" }.ToHashSet(StringComparer.Ordinal);

    private static readonly string[] Whole = ["knit", "purl", "slip", "yarn over", "chain"];

    // The whole meaning, else its words before the first sign that opens a remark; behind a comma another step may follow, as in "slip, slip, knit the two together": "knit 2 together (1 stitch decreased)".
    private static Operation? Find(Craft craft, Dialect terms, string meaning)
    {
        var end = meaning.AsSpan().IndexOfAny(Ends);
        return OperationTable.Find(craft, terms, meaning.TrimEnd('.')) ?? (end > 0 ? OperationTable.Find(craft, terms, meaning[..end].Trim()) : null) ?? Plainly(craft, terms, meaning);
    }

    // The same without filling words, held against the trade's own words without theirs. One word alone may be only a plain stitch: "increase" and "cable" are free wording.
    private static Operation? Plainly(Craft craft, Dialect terms, string meaning)
    {
        var plain = Plain(meaning);
        if (plain.Length == 0 || meaning.Length > 80)
        {
            return null;
        }

        if (!plain.Contains(' ', StringComparison.Ordinal) && !Whole.Contains(plain, StringComparer.Ordinal))
        {
            return null;
        }

        Operation? found = null;
        foreach (var operation in OperationTable.All(craft))
        {
            if (Plain(OperationTable.SpokenIn(operation, terms)) == plain)
            {
                if (found is not null && found.Id != operation.Id)
                {
                    return null;
                }

                found = operation;
            }
        }

        return found;
    }

    private static string Plain(string words) =>
        string.Join(' ', words.ToLowerInvariant().Split([' ', ',', '.', '-'], StringSplitOptions.RemoveEmptyEntries).Where(w => !Filling.Contains(w)));
}
