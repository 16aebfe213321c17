using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Checks;

/// <summary>Moss stitch in a knitting pattern that does not say whose terms it uses.</summary>
internal sealed class MossStitchUnclear : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF411", "moss-stitch-unclear", Area.Terms, Severity.Note,
        "The rows say moss stitch, which is one fabric to American and another to British makers, and the terms are not declared.",
        "British moss stitch is the American seed stitch, whose knits and purls change place in every row; American moss stitch is the British double moss, which is two rows high. The count is the same and the fabric is not. Declare the terms, or write the rows out once under a heading of that name.")
    {
        Bad = """
            Work in moss st for 6 rows.
                    ^^^^^^^
            """,
        Good = """
            Work in seed st for 6 rows.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        if (facts.Craft != Craft.Knitting || facts.Terms is not null
            || facts.Stitches.Any(s => Says(s.Name)) || facts.Abbreviations is { } own && own.Any(a => Says(a.Name) || Says(a.Meaning ?? "")) || context.Pattern.Sections.Any(s => Says(s.Heading)))
        {
            return;
        }

        foreach (var line in context.Lines)
        {
            if (!context.Source.Slice(line.Origin).Contains("moss", StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            var tokens = Lexer.Lex(context.Source, line.Origin);
            for (var i = 0; i + 1 < tokens.Count; i++)
            {
                if (context.Source.Slice(tokens[i].Span).Equals("moss", StringComparison.OrdinalIgnoreCase) && context.Source.Slice(tokens[i + 1].Span).StartsWith("st", StringComparison.OrdinalIgnoreCase))
                {
                    context.Bag.Add(Rule, tokens[i].Span.Cover(tokens[i + 1].Span), "moss stitch is one fabric to American and another to British makers, and the pattern does not say whose terms it uses", "write `terms: us` or `terms: uk` in the header, or write its rows out once");
                    return;
                }
            }
        }
    }

    private static bool Says(string words) => words.Contains("moss", StringComparison.OrdinalIgnoreCase);
}
