using System.Buffers;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>Two words for the same thing in one pattern: "bind off" here and "cast off" there.</summary>
internal sealed class TermsMixed : PatternCheck
{
    // Pairs of the published tables of American and British terms (common practice).
    private static readonly (string Us, string Uk)[] Pairs = [("bind off", "cast off"), ("stockinette", "stocking")];

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
        var (us, uk) = (new TextSpan?[Pairs.Length], new TextSpan?[Pairs.Length]);
        foreach (var line in context.Lines)
        {
            if (!context.Source.Slice(line.Origin).ContainsAny(Signs))
            {
                continue;
            }

            var tokens = Lexer.Lex(context.Source, line.Origin);
            for (var i = 0; i < tokens.Count; i++)
            {
                for (var pair = 0; pair < Pairs.Length; pair++)
                {
                    us[pair] ??= At(context.Source, tokens, i, Pairs[pair].Us);
                    uk[pair] ??= At(context.Source, tokens, i, Pairs[pair].Uk);
                }
            }
        }

        for (var pair = 0; pair < Pairs.Length; pair++)
        {
            if (us[pair] is not { } american || uk[pair] is not { } british)
            {
                continue;
            }

            var declared = context.Facts.Terms?.Value;
            var later = declared == Stitches.Dialect.Uk ? american : declared == Stitches.Dialect.Us ? british : american.Start > british.Start ? american : british;
            var wrong = later == american ? Pairs[pair].Us : Pairs[pair].Uk;
            var right = later == american ? Pairs[pair].Uk : Pairs[pair].Us;
            context.Bag.Add(new Finding(Rule, context.Source, later, $"\"{wrong}\" and \"{right}\" are both used for the same thing")
            {
                Help = $"write \"{right}\" throughout",
                Labels = [new Label(later == american ? british : american, $"\"{right}\" here")],
            });
        }
    }

    private static TextSpan? At(SourceText source, List<Token> tokens, int at, string words)
    {
        var span = tokens[at].Span;
        foreach (var range in words.AsSpan().Split(' '))
        {
            if (at >= tokens.Count || !source.Slice(tokens[at].Span).Equals(words.AsSpan()[range], StringComparison.OrdinalIgnoreCase))
            {
                return null;
            }

            span = span.Cover(tokens[at].Span);
            at++;
        }

        return span;
    }
}
