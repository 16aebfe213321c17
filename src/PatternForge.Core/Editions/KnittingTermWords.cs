using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Editions;

/// <summary>Knitting in the other terms: binding and casting off, the names of fabrics, yarn overs, and what is worked even or straight.</summary>
internal sealed class KnittingTermWords : ITermWords
{
    private static readonly string[] Past = ["st", "sts", "stitch", "stitches", "are", "were", "was", "is", "been", "be", "have", "has"];

    private readonly bool _toUk;
    private readonly bool _isSure;

    /// <summary>The words of one way.</summary>
    /// <param name="to">The terms to come to.</param>
    /// <param name="isSure">True where the pattern declares its terms: words that both sides use for different things can then be told.</param>
    public KnittingTermWords(Dialect to, bool isSure)
    {
        _toUk = to == Dialect.Uk;
        _isSure = isSure;
    }

    /// <inheritdoc/>
    public (int Tokens, string? Words) At(WordRun run, int at)
    {
        if (run.Word(at).Length == 0)
        {
            return default;
        }

        return Off(run, at) ?? Fabric(run, at) ?? (_toUk ? ToUk(run, at) : ToUs(run, at));
    }

    private (int Tokens, string? Words)? Off(WordRun run, int at)
    {
        if (_toUk)
        {
            return run.Are(at, "bind", "off") || run.Are(at, "bound", "off") ? (2, "cast off")
                : run.Are(at, "binding", "off") ? (2, "casting off")
                : run.Are(at, "binds", "off") ? (2, "casts off")
                : run.Is(at, "bind-off", "bound-off") ? (1, "cast-off")
                : run.Is(at, "bind-offs") ? (1, "cast-offs")
                : run.Is(at, "binding-off") ? (1, "casting-off")
                : run.Word(at) is "BO" || (run.IsRow && run.Is(at, "bo")) ? (1, run.Kind == StretchKind.Definition || !run.BeginsSentence(at) ? "cast off" : "Cast off")
                : null;
        }

        return run.Are(at, "cast", "off") ? (2, Array.Exists(Past, w => run.Is(at - 1, w)) ? "bound off" : "bind off")
            : run.Are(at, "casting", "off") ? (2, "binding off")
            : run.Are(at, "casts", "off") ? (2, "binds off")
            : run.Is(at, "cast-off") ? (1, run.Is(at + 1, "edge", "sts", "stitches", "row", "edges") ? "bound-off" : "bind-off")
            : run.Is(at, "cast-offs") ? (1, "bind-offs")
            : run.Is(at, "casting-off") ? (1, "binding-off")
            : null;
    }

    // Published tables of American and British terms: seed is moss, moss is double moss. What the double moss of Americans is, the tables do not agree on.
    private (int Tokens, string? Words)? Fabric(WordRun run, int at)
    {
        var isNamed = run.Is(at + 1, "st", "sts", "stitch", "stitches", "rib", "band", "border", "edge", "edging", "edges", "pattern", "bands", "borders");
        if (_toUk)
        {
            return run.Is(at, "stockinette", "stockingette") ? (1, run.Is(at + 1, "st", "stitch") ? "stocking" : "stocking stitch")
                : !_isSure ? null
                : run.Is(at, "double") && run.Is(at + 1, "moss", "seed") ? (2, null)
                : run.Is(at, "seed") && isNamed ? (1, "moss")
                : run.Is(at, "moss") && isNamed ? (1, "double moss")
                : null;
        }

        return run.Is(at, "stocking") && run.Is(at + 1, "st", "stitch") ? (1, "stockinette")
            : !_isSure ? null
            : run.Are(at, "double", "moss") ? (2, "moss")
            : run.Are(at, "double", "seed") ? (2, null)
            : run.Is(at, "moss") && isNamed ? (1, "seed")
            : null;
    }

    private static (int Tokens, string? Words) ToUk(WordRun run, int at)
    {
        if (run.Are(at, "every", "other") && run.Is(at + 2, "row", "rows", "round", "rounds", "rnd", "rnds"))
        {
            return (2, "every alternate");
        }

        return IsWork(run, at) && run.Is(at + 1, "even") ? (2, run.Word(at) + " straight") : default;
    }

    private static (int Tokens, string? Words) ToUs(WordRun run, int at)
    {
        if (run.Is(at, "every") && run.Is(at + 1, "alternate", "alt") && run.Is(at + 2, "row", "rows", "round", "rounds", "rnd", "rnds"))
        {
            return (2, "every other");
        }

        if (IsWork(run, at) && run.Is(at + 1, "straight"))
        {
            return (2, run.Word(at) + " even");
        }

        if (run.Are(at, "knit", "up") && (Wordings.IsNumber(run, at + 2) || run.Is(at + 2, "sts", "stitches")))
        {
            return (2, "pick up and knit");
        }

        return Over(run, at) is { Tokens: > 0 } over ? over : default;
    }

    private static bool IsWork(WordRun run, int at) => run.Is(at, "work", "works", "working", "continue", "cont", "continuing", "knit", "knitting");

    /// <summary>yfwd, yrn, yon and yfrn make a stitch; before a purl or a slipped stitch yf only brings the yarn to the front (as the rows are read).</summary>
    private static (int Tokens, string? Words) Over(WordRun run, int at)
    {
        var many = 0;
        Operation? over = null;
        for (var words = 1; words <= 3 && run.Word(at + words - 1).Length > 0; words++)
        {
            var said = string.Join(' ', Enumerable.Range(at, words).Select(run.Word));
            if (OperationTable.Find(Craft.Knitting, Dialect.Uk, said) is { Family: Family.YarnOver } found && OperationTable.Find(Craft.Knitting, Dialect.Us, said) is null or { Id: "yfwd" })
            {
                (many, over) = (words, OperationTable.Find(Craft.Knitting, Dialect.Uk, said));
            }
        }

        if (over is null)
        {
            return default;
        }

        if (over.Id == "yfwd" && Next(run, at + many) is { } next && (next.Gives == StitchKind.Purl || (next.Family == Family.Slip && !Passes(run, at + many))))
        {
            return (many, run.IsRow ? "ytf" : "bring yarn to front");
        }

        return (many, run.Kind == StretchKind.Definition && many > 1 ? "yarn over" : "yo");
    }

    private static Operation? Next(WordRun run, int at)
    {
        var i = at;
        while (run.KindOf(i) is TokenKind.Comma or TokenKind.Open or TokenKind.Mark)
        {
            i++;
        }

        var word = run.Word(i);
        var stem = word.TrimEnd("0123456789".ToCharArray());
        return OperationTable.Find(Craft.Knitting, Dialect.Uk, word) ?? (stem.Length > 0 ? OperationTable.Find(Craft.Knitting, Dialect.Uk, stem) : null);
    }

    private static bool Passes(WordRun run, int at)
    {
        for (var i = at; i < at + 9; i++)
        {
            if (run.Word(i) is { Length: > 0 } word && OperationTable.Find(Craft.Knitting, Dialect.Uk, word) is { PassesOver: > 0 })
            {
                return true;
            }
        }

        return run.Are(at + 4, "pass", "slipped");
    }
}
