using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core;

/// <summary>Counts that come out in the other terms alone are a proof of whose terms the rows of a crochet pattern are written in.</summary>
internal static class TermsProof
{
    // One row that is a stitch out may be a slip; two rows that both come out in the other terms are no accident.
    private const int LeastRows = 2;

    /// <summary>Looks where counts do not come out, or where nothing else tells the terms.</summary>
    /// <param name="facts">The header.</param>
    /// <param name="bag">What has been found so far; findings that the proof explains are taken out of it.</param>
    /// <param name="retry">Reads and works the rows by other facts, and says what is found then.</param>
    public static void Look(PatternFacts facts, FindingBag bag, Func<PatternFacts, ImmutableArray<Finding>> retry)
    {
        if (facts.Craft != Craft.Crochet)
        {
            return;
        }

        var found = bag.ToSorted();
        if (facts.Terms is { } declared)
        {
            Finding[] wrong = [.. found.Where(IsOfRows)];
            var other = declared.Value == Dialect.Us ? Dialect.Uk : Dialect.Us;
            if (wrong.Length < LeastRows || found.Any(f => f.Rule == CrochetTermsRules.WordOfOtherTerms) || retry(facts with { Terms = declared with { Value = other } }).Any(IsOfRows))
            {
                return;
            }

            bag.Remove(wrong);
            bag.Add(new Finding(CrochetTermsRules.CountsOfOtherTerms, bag.Source, declared.Origin, $"the header says {Word(declared.Value)} terms, but the rows only come out in {Word(other)} ones")
            {
                Help = $"write `terms: {(other == Dialect.Us ? "us" : "uk")}`, or correct the rows that are marked",
                Labels = [.. wrong.Take(4).Select(f => new Label(f.Span, f.Message))],
            });
        }
        else if (found.FirstOrDefault(f => f.Rule == CrochetTermsRules.TermsMissing) is { } missing)
        {
            var origin = facts.HeaderOrigin ?? default;
            var (us, uk) = (retry(facts with { Terms = new Located<Dialect>(Dialect.Us, origin) }).Any(IsOfRows), retry(facts with { Terms = new Located<Dialect>(Dialect.Uk, origin) }).Any(IsOfRows));
            if (us != uk)
            {
                bag.Remove([.. found.Where(f => f == missing || (us && IsOfRows(f)))]);
                bag.Add(missing with { Help = $"the counts only come out in {Word(us ? Dialect.Uk : Dialect.Us)} terms: write `terms: {(us ? "uk" : "us")}` in the header" });
            }
        }
    }

    private static bool IsOfRows(Finding finding) => finding.Severity == Severity.Error && (finding.Rule.Area == Area.Counts || finding.Rule == CrochetTermsRules.WordOfOtherTerms);

    private static string Word(Dialect dialect) => dialect == Dialect.Uk ? "British" : "American";
}
