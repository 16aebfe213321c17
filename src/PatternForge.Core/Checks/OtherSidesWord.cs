using System.Buffers;
using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Checks;

/// <summary>A knitting pattern that declares its terms and uses the other side's word throughout: "cast off" in American terms.</summary>
internal sealed class OtherSidesWord : PatternCheck
{
    private static readonly SearchValues<string> Signs = SearchValues.Create(["bind", "cast", "stock"], StringComparison.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF412", "word-of-the-other-side", Area.Terms, Severity.Note,
        "A knitting row uses a word that makers on the other side of the water use, in place of the one that the declared terms have.",
        "American patterns bind off and work in stockinette, British ones cast off and work in stocking stitch. Both are understood everywhere, so nothing goes wrong; but the terms that the header declares promise the other word. `build --edition us` or `--edition uk` changes them all.")
    {
        Bad = """
            ---
            title: Harbour hat
            terms: us
            ---

            ## Hat

            CO 12 sts.

            Row 1: Knit.

            Cast off all sts.
            ^^^^^^^^
            """,
        Good = """
            ---
            title: Harbour hat
            terms: us
            ---

            ## Hat

            CO 12 sts.

            Row 1: Knit.

            Bind off all sts.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        if (context.Facts.Craft != Craft.Knitting || context.Facts.Terms?.Value is not { } declared)
        {
            return;
        }

        foreach (var (us, uk) in WordPairs.All)
        {
            var (right, wrong) = declared == Dialect.Uk ? (uk, us) : (us, uk);
            if (First(context, right) is null && First(context, wrong) is { } place)
            {
                var full = right == "stocking" ? "stocking stitch" : right;
                context.Bag.Add(new Finding(Rule, context.Source, place, $"`{context.Source.ToString(place)}` is {(declared == Dialect.Uk ? "an American" : "a British")} word, and this pattern is in {(declared == Dialect.Uk ? "British" : "American")} terms")
                {
                    Help = $"in {(declared == Dialect.Uk ? "British" : "American")} terms that is \"{full}\"",
                });
            }
        }
    }

    private static Text.TextSpan? First(CheckContext context, string words)
    {
        foreach (var line in context.Lines)
        {
            if (!context.Source.Slice(line.Origin).ContainsAny(Signs))
            {
                continue;
            }

            var tokens = Lexer.Lex(context.Source, line.Origin);
            for (var i = 0; i < tokens.Count; i++)
            {
                if (WordPairs.At(context.Source, tokens, i, words) is { } span)
                {
                    return span;
                }
            }
        }

        return null;
    }
}
