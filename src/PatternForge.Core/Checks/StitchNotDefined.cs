using System.Buffers;
using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Checks;

/// <summary>A shell, cluster, bobble or the like that the rows use and the pattern nowhere explains: there is no standard one.</summary>
internal sealed class StitchNotDefined : PatternCheck
{
    // Published lists of abbreviations agree that these differ from pattern to pattern (common practice).
    private static readonly ImmutableArray<ImmutableArray<string>> OfCrochet =
    [
        ["shell", "shells"],
        ["cluster", "clusters", "cl", "cls"],
        ["bobble", "bobbles", "bob", "mb"],
        ["popcorn", "popcorns", "pc", "pcs", "pop"],
        ["puff", "puffs"],
        ["fan", "fans"],
        ["picot", "picots"],
        ["v-st", "v-sts", "v-stitch", "v-stitches"],
    ];

    private static readonly ImmutableArray<ImmutableArray<string>> OfKnitting = [["bobble", "bobbles", "mb"], ["nupp", "nupps"]];

    private static readonly SearchValues<string> Signs = SearchValues.Create(["shell", "clus", "cl", "bob", "mb", "pop", "pc", "puff", "fan", "pico", "v-st", "nupp"], StringComparison.OrdinalIgnoreCase);

    // "shell pattern", "fan edging": the name of a fabric or of a part.
    private static readonly HashSet<string> Fabrics = new[] { "pattern", "patt", "pat", "edging", "edge", "border", "row", "rows", "rnd", "rnds", "round", "rounds", "chart", "section", "lace", "trim", "panel", "motif", "repeat", "repeats", "shape" }.ToHashSet(StringComparer.OrdinalIgnoreCase);

    private static readonly HashSet<string> Beside = new[] { "of", "next", "last", "first", "each", "every", "same", "previous", "prev", "to", "the", "this", "that", "in", "into", "between", "following", "foll", "both", "any" }.ToHashSet(StringComparer.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF506", "stitch-not-defined", Area.Abbreviations, Severity.Warning,
        "The rows use a stitch that has no standard form (shell, cluster, bobble, popcorn, puff, fan, picot, V-stitch), and the pattern does not say how it is worked.",
        "One designer's shell has five stitches and another's seven, with a chain in the middle or without; clusters, bobbles and the others differ as much. Say it once under `stitches` in the header, in a sentence, or in brackets where it comes first. Then the counts of its rows can be checked as well.")
    {
        Bad = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            tools: 4 mm hook
            ---

            ## Coaster

            Ch 14.

            Row 1: Sc in 2nd ch from hook and in each ch across. (13 sc)

            Row 2: Ch 1, turn, sc in first st, *sk 2 sts, shell in next st, sk 2 sts, sc in next st; rep from * across.
                                                          ^^^^^
            """,
        Good = """
            ---
            title: Coaster
            craft: crochet
            terms: us
            tools: 4 mm hook
            stitches:
              shell: 5 dc in one st
            ---

            ## Coaster

            Ch 14.

            Row 1: Sc in 2nd ch from hook and in each ch across. (13 sc)

            Row 2: Ch 1, turn, sc in first st, *sk 2 sts, shell in next st, sk 2 sts, sc in next st; rep from * across.
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        if (!Explanations.AreExpected(context) || context.IsExcused("abbreviations"))
        {
            return;
        }

        foreach (var words in context.Facts.Craft == Craft.Knitting ? OfKnitting : OfCrochet)
        {
            if (First(context, words.AsSpan()) is { } place && !Explanations.Has(context, words.AsSpan()))
            {
                Replace(context, words.AsSpan());
                context.Bag.Add(Rule, place, $"`{context.Source.ToString(place)}` has no standard form, and the pattern does not say how it is worked", $"define `{words[0]}` under `stitches` in the header, as in `{words[0]}: {Example(context)}`");
            }
        }
    }

    private static string Example(CheckContext context) => context.Facts.Craft == Craft.Knitting ? "(k1, p1, k1) in next st, turn, p3, turn, sk2p"
        : context.Facts.TermsInForce == Dialect.Uk ? "5 tr in one st" : "5 dc in one st";

    private static TextSpan? First(CheckContext context, ReadOnlySpan<string> words)
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
                if (tokens[i].Kind == TokenKind.Word && words.Contains(context.Source.ToString(tokens[i].Span).ToLowerInvariant()) && IsMade(context.Source, tokens, i))
                {
                    return tokens[i].Span;
                }
            }
        }

        return null;
    }

    /// <summary>True where a maker is to work one, and not where it is counted, is there already, or names a fabric.</summary>
    private static bool IsMade(SourceText source, List<Token> tokens, int at)
    {
        if (IsFabric(source, tokens, at) || IsMaterial(source, tokens, at))
        {
            return false;
        }

        var behind = at + 1 < tokens.Count ? tokens[at + 1].Kind : TokenKind.Stop;
        var ahead = at == 0 ? default : tokens[at - 1];
        if (at > 0 && ahead.Kind == TokenKind.Number && behind is TokenKind.Close or TokenKind.Comma or TokenKind.Stop)
        {
            return false; // "(4 shells, 5 sc)"
        }

        if (at > 0 && behind == TokenKind.Close && (ahead.Kind == TokenKind.Open || (at > 1 && tokens[at - 2].Kind == TokenKind.Open)))
        {
            return false; // "dc2tog in ring (beg cluster)"
        }

        return at == 0 || ahead.Kind != TokenKind.Word || !Beside.Contains(source.ToString(ahead.Span)); // "to last shell", "in center dc of next shell"
    }

    private static bool IsFabric(SourceText source, List<Token> tokens, int at)
    {
        var next = at + 1 < tokens.Count && source.Slice(tokens[at + 1].Span) is "st" or "stitch" ? at + 2 : at + 1;
        return next < tokens.Count && Fabrics.Contains(source.ToString(tokens[next].Span));
    }

    // "MB" and "CL" as the letters of a yarn or of a size.
    private static bool IsMaterial(SourceText source, List<Token> tokens, int at) =>
        at > 0 && source.Slice(tokens[at - 1].Span) is "with" or "in" or "colour" or "color" or "size" or "sizes" && source.Slice(tokens[at].Span) is "MB" or "CL" or "PC";

    // That its row was not understood is the same mistake.
    private static void Replace(CheckContext context, ReadOnlySpan<string> words)
    {
        var echoes = new List<Finding>();
        foreach (var (_, finding) in context.Bag.From(0))
        {
            if (finding.Rule.Code == "PF208" && Explanations.Says(finding.Message, words))
            {
                echoes.Add(finding);
            }
        }

        context.Bag.Remove(echoes);
    }
}
