using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Editions;

/// <summary>Words that American and British patterns of both crafts say otherwise: gauge and tension, skip and miss, weights of yarn, and spelling.</summary>
internal sealed class SharedTermWords : ITermWords
{
    // The published lists have skip and miss from memory alone; both are read in both terms, so that nothing hangs on them.
    private static readonly (string Us, string Uk)[] Spelling =
    [
        ("color", "colour"), ("colors", "colours"), ("colored", "coloured"), ("coloring", "colouring"), ("colorway", "colourway"), ("colorways", "colourways"), ("colorwork", "colourwork"), ("multicolored", "multicoloured"),
        ("center", "centre"), ("centers", "centres"), ("centered", "centred"), ("gray", "grey"), ("fiber", "fibre"), ("fibers", "fibres"),
    ];

    // Charts of British shops and dyers beside the names of the Craft Yarn Council, which counts both names of a pair to one class (worsted and aran to class 4, though aran is
    // the heavier one to some dyers). Sport, which those charts give to several British names, stays.
    private static readonly (string Us, string Uk)[] Weights = [("fingering", "4 ply"), ("worsted", "aran"), ("bulky", "chunky"), ("super bulky", "super chunky"), ("light worsted", "DK")];

    private readonly bool _toUk;
    private readonly bool _keepsSk;

    /// <summary>The words of one way.</summary>
    /// <param name="to">The terms to come to.</param>
    /// <param name="keepsSk">True when the pattern's own list defines "sk", which is then its word for it in any terms.</param>
    public SharedTermWords(Dialect to, bool keepsSk)
    {
        _toUk = to == Dialect.Uk;
        _keepsSk = keepsSk;
    }

    /// <inheritdoc/>
    public (int Tokens, string? Words) At(WordRun run, int at)
    {
        var word = run.Word(at);
        if (run.Kind == StretchKind.Weight)
        {
            return Weight(run, at);
        }

        if (word.Length < 2)
        {
            return default;
        }

        if (_toUk ? run.Is(at, "gauge", "gauges") && IsGauge(run, at) : run.Is(at, "tension") && IsTension(run, at))
        {
            return (1, _toUk ? "tension" : "gauge");
        }

        if (_toUk && run.Is(at, "skip", "skips", "skipping", "skipped", "sk") && (run.IsRow || run.Kind == StretchKind.Definition || NamesStitches(run, at)))
        {
            return word.ToLowerInvariant() switch { "sk" => _keepsSk ? (1, null) : (1, "miss"), "skip" => (1, "miss"), "skips" => (1, "misses"), "skipping" => (1, "missing"), _ => (1, "missed") };
        }

        if (!_toUk && run.Is(at, "miss") && (run.IsRow || run.Kind == StretchKind.Definition || NamesStitches(run, at)))
        {
            return (1, "skip");
        }

        if (!_toUk && run.Is(at, "misses", "missed", "missing") && NamesStitches(run, at))
        {
            return (1, word.ToLowerInvariant() switch { "misses" => "skips", "missed" => "skipped", _ => "skipping" });
        }

        foreach (var (us, uk) in Spelling)
        {
            if (run.Is(at, _toUk ? us : uk) && (!char.IsUpper(word[0]) || run.BeginsSentence(at) || run.Kind == StretchKind.Heading))
            {
                return (1, _toUk ? uk : us);
            }
        }

        return Weight(run, at) is { Tokens: > 0 } weight && run.Is(at + weight.Tokens, "weight", "yarn", "yarns") && !char.IsUpper(word[0]) ? weight : default;
    }

    private (int Tokens, string? Words) Weight(WordRun run, int at)
    {
        foreach (var (us, uk) in Weights.OrderByDescending(w => w.Us.Length))
        {
            var from = (_toUk ? us : uk).Split(' ');
            var many = 0;
            while (many < from.Length && string.Equals(run.Said(at + many), from[many], StringComparison.OrdinalIgnoreCase))
            {
                many++;
            }

            if (many == from.Length && (_toUk || us != "light worsted"))
            {
                return (many, _toUk ? uk : us);
            }
        }

        return default;
    }

    // A needle gauge is a tool, and one may gauge an amount.
    private static bool IsGauge(WordRun run, int at) => !run.Is(at - 1, "needle", "hook", "to", "sizing") && !(run.Is(at + 1, "the", "how") && !run.Is(at - 1, "the", "your"));

    // The tension of a yarn or of the hands is no gauge in any terms.
    private static bool IsTension(WordRun run, int at) =>
        run.Kind == StretchKind.Heading || run.IsRow || run.Is(at - 1, "the", "your", "correct", "right", "stated", "obtain", "get", "check", "match", "this", "this", "to", "same", "given") && !run.Is(at + 1, "of", "even", "evenly", "loose", "tight", "in", "on")
        || run.Is(at + 1, "square", "swatch", "sample", "swatches", "squares");

    // "skip the next stitch", "miss 2 sts": what is passed over is counted or named within a few words.
    private static bool NamesStitches(WordRun run, int at)
    {
        for (var i = at + 1; i <= at + 5 && run.KindOf(i) is TokenKind.Word or TokenKind.Number; i++)
        {
            if (run.Is(i, "st", "sts", "stitch", "stitches", "ch", "chs", "chain", "chains", "sp", "sps", "space", "spaces", "sc", "dc", "hdc", "tr", "htr", "dtr", "row", "rows", "round", "rounds"))
            {
                return true;
            }
        }

        return false;
    }
}
