using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Whose names the stitches of a crochet pattern are: found where the header does not say, and held against it where it does.</summary>
internal static class CrochetTerms
{
    /// <summary>The terms that the rows themselves prove (sc and hdc are American alone, htr British alone); null where the header declares them, or nothing or both are proved.</summary>
    public static Dialect? Prove(IEnumerable<SectionNode> sections, SourceText source, PatternFacts facts)
    {
        if (facts.Craft == Craft.Knitting || facts.Terms is not null)
        {
            return null;
        }

        var (us, uk) = (false, false);
        foreach (var block in sections.SelectMany(s => s.Blocks).Where(b => b.Kind is BlockKind.Text or BlockKind.ListItem))
        {
            foreach (var token in Lexer.Lex(source, block.Content).Where(t => t.Kind == TokenKind.Word && t.Span.Length is > 1 and < 12))
            {
                var dialect = OperationTable.Find(Craft.Crochet, source.Slice(token.Span))?.Dialect;
                us |= dialect == Dialect.Us;
                uk |= dialect == Dialect.Uk;
            }
        }

        return us == uk ? null : us ? Dialect.Us : Dialect.Uk;
    }

    /// <summary>Holds the names that the rows use against the declared terms, or asks for them.</summary>
    public static void Check(IReadOnlyList<(Operation Operation, string Said, TextSpan Span)> uses, PatternFacts facts, FindingBag bag)
    {
        var names = uses.Where(u => !u.Operation.IsSpecial && u.Said.Length > 0)
            .DistinctBy(u => u.Said, StringComparer.OrdinalIgnoreCase)
            .Select(u => (u.Said, Place: NameIn(u.Said, u.Span, bag.Source), Meaning: OperationTable.Find(Craft.Crochet, u.Said)))
            .Where(u => u.Meaning is not null)
            .ToArray();
        if (facts.Terms?.Value is { } declared)
        {
            foreach (var (said, place, meaning) in names.Where(n => n.Meaning!.In(declared) is null))
            {
                var right = OperationTable.NameIn(meaning!.In(Dialect.Any)!, declared);
                bag.Add(CrochetTermsRules.WordOfOtherTerms, place, $"`{said}` is {Of(meaning.Dialect)} name, and this pattern is in {Word(declared)} terms", right is null ? $"use {Of(declared)} name" : $"in {Word(declared)} terms that stitch is `{right}`");
            }

            return;
        }

        var american = names.FirstOrDefault(n => n.Meaning!.Dialect == Dialect.Us);
        var british = names.FirstOrDefault(n => n.Meaning!.Dialect == Dialect.Uk);
        if (american.Meaning is not null && british.Meaning is not null)
        {
            var (later, earlier) = american.Place.Start > british.Place.Start ? (american, british) : (british, american);
            bag.Add(new Finding(CrochetTermsRules.BothTerms, bag.Source, later.Place, $"`{later.Said}` is {Of(later.Meaning.Dialect)} name, and `{earlier.Said}` {Of(earlier.Meaning.Dialect)} one")
            {
                Help = "choose one of the two, and declare it: `terms: us` or `terms: uk`",
                Labels = [new Label(earlier.Place, $"{Word(earlier.Meaning.Dialect)} here")],
            });
        }
        else if ((american.Meaning is null ? british : american) is { Meaning: { } } proof)
        {
            bag.Add(CrochetTermsRules.TermsOnlyShown, proof.Place, $"the header does not declare the terms; `{proof.Said}` shows that they are {Word(proof.Meaning.Dialect)}", $"write `terms: {(proof.Meaning.Dialect == Dialect.Us ? "us" : "uk")}` in the header");
        }
        else if (names.FirstOrDefault(n => n.Meaning!.IsTreacherous) is { Meaning: not null } doubtful)
        {
            bag.Add(CrochetTermsRules.TermsMissing, doubtful.Place, $"`{doubtful.Said}` is {doubtful.Meaning.Us!.Spoken} to an American maker and a shorter stitch to a British one, and the pattern does not say which it means", "write `terms: us` or `terms: uk` in the header");
        }
    }

    // The name alone, where a use covers its number and place as well.
    private static TextSpan NameIn(string said, TextSpan span, SourceText source)
    {
        var at = source.Slice(span).IndexOf(said, StringComparison.OrdinalIgnoreCase);
        return at < 0 ? span : new TextSpan(span.Start + at, said.Length);
    }

    private static string Of(Dialect dialect) => dialect == Dialect.Uk ? "a British" : "an American";

    private static string Word(Dialect dialect) => dialect == Dialect.Uk ? "British" : "American";
}
