using System.Buffers;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>Two words for the same thing in one pattern: "bind off" here and "cast off" there.</summary>
internal sealed class TermsMixed : PatternCheck
{
    // A line without any of these has none of the pairs: it need not be cut into tokens.
    private static readonly SearchValues<string> Signs = SearchValues.Create(["bind", "cast", "stock"], StringComparison.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF401", "terms-mixed", Area.Terms, Severity.Warning,
        "The rows call the same thing by two names.",
        "American and British patterns have different words for the same thing. Both in one pattern make a maker look for a difference that is not there. Keep to the terms that the header declares.")
    {
        Bad = """
            Row 1: Bind off 4 sts, k to end.

            Cast off all sts.
            ^^^^^^^^
            """,
        Good = """
            Row 1: Bind off 4 sts, k to end.

            Bind off all sts.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        var (us, uk) = (new TextSpan?[WordPairs.All.Length], new TextSpan?[WordPairs.All.Length]);
        foreach (var line in context.Lines)
        {
            if (!context.Source.Slice(line.Origin).ContainsAny(Signs))
            {
                continue;
            }

            var tokens = Lexer.Lex(context.Source, line.Origin);
            for (var i = 0; i < tokens.Count; i++)
            {
                for (var pair = 0; pair < WordPairs.All.Length; pair++)
                {
                    us[pair] ??= WordPairs.At(context.Source, tokens, i, WordPairs.All[pair].Us);
                    uk[pair] ??= WordPairs.At(context.Source, tokens, i, WordPairs.All[pair].Uk);
                }
            }
        }

        for (var pair = 0; pair < WordPairs.All.Length; pair++)
        {
            if (us[pair] is not { } american || uk[pair] is not { } british)
            {
                continue;
            }

            var declared = context.Facts.Terms?.Value;
            var later = declared == Stitches.Dialect.Uk ? american : declared == Stitches.Dialect.Us ? british : american.Start > british.Start ? american : british;
            var wrong = later == american ? WordPairs.All[pair].Us : WordPairs.All[pair].Uk;
            var right = later == american ? WordPairs.All[pair].Uk : WordPairs.All[pair].Us;
            context.Bag.Add(new Finding(Rule, context.Source, later, $"\"{wrong}\" and \"{right}\" are both used for the same thing")
            {
                Help = $"write \"{right}\" throughout",
                Labels = [new Label(later == american ? british : american, $"\"{right}\" here")],
            });
        }
    }
}
