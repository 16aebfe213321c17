using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Checks;

/// <summary>An abbreviation or special stitch that the header defines and nothing uses.</summary>
internal sealed class AbbreviationNotUsed : PatternCheck
{
    private static readonly char[] Digits = [.. "0123456789"];

    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF502", "abbreviation-not-used", Area.Abbreviations, Severity.Warning,
        "The header defines an abbreviation that nothing in the pattern uses.",
        "A maker who reads the list first learns a stitch that never comes. Take it out, or check whether a row that used it was lost.")
    {
        Bad = """
            ---
            title: Long list
            craft: knitting
            abbreviations: [CO, k, ssk, st]
                                   ^^^
            ---
            ## Piece

            CO 12 sts.

            Row 1: K12.
            """,
        Good = """
            ---
            title: Long list
            craft: knitting
            abbreviations: [CO, k, st]
            ---
            ## Piece

            CO 12 sts.

            Row 1: K12.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        var own = (context.Facts.Abbreviations ?? []).Select(a => (a.Name, a.Origin)).Concat(context.Facts.Stitches.Select(s => (s.Name, s.Origin))).ToArray();
        if (own.Length == 0 || context.Lines.IsEmpty)
        {
            return;
        }

        // The table has the whole list: what stands in it for the list's sake alone points at the list.
        var listed = (context.Facts.Abbreviations ?? []).Select(a => a.Origin).ToHashSet();
        var words = context.Abbreviations.Where(u => !listed.Contains(u.Origin)).Select(u => u.Key).ToHashSet(StringComparer.Ordinal);
        foreach (var word in context.Words)
        {
            words.Add(AbbreviationUse.KeyOf(word));
            words.Add(AbbreviationUse.KeyOf(word.TrimEnd(Digits)));
        }

        var meant = WrittenInOtherTerms(context);
        foreach (var (name, origin) in own.Where(a => !IsUsed(a.Name, words, context) && !(meant.Count > 0 && OperationTable.Find(Craft.Crochet, context.Facts.TermsInForce ?? Dialect.Us, a.Name) is { } stitch && meant.Contains(stitch.Id))))
        {
            context.Bag.Add(new Finding(Rule, context.Source, origin, $"`{name}` is defined here, but nothing in the pattern uses it") { Help = "take it out, or check whether a row was lost" });
        }
    }

    // A stitch that the rows have under the other side's name, which is told already.
    private static HashSet<string> WrittenInOtherTerms(CheckContext context)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (_, finding) in context.Bag.From(0))
        {
            if (finding.Rule.Code == "PF402" && OperationTable.Find(Craft.Crochet, context.Source.Slice(finding.Span))?.In(Dialect.Any) is { } stitch)
            {
                ids.Add(stitch.Id);
            }
        }

        return ids;
    }

    private static bool IsUsed(string name, HashSet<string> words, CheckContext context) =>
        words.Contains(AbbreviationUse.KeyOf(name))
        || (name.Length > 2 && name.Any(c => !char.IsLetterOrDigit(c)) && context.Lines.Any(l => context.Source.Slice(l.Origin).Contains(name, StringComparison.OrdinalIgnoreCase)));
}
