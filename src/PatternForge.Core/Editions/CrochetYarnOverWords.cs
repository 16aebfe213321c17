using PatternForge.Core.Stitches;

namespace PatternForge.Core.Editions;

/// <summary>Crochet: how the yarn goes over the hook, which British lists call yarn round hook.</summary>
internal sealed class CrochetYarnOverWords(Dialect to) : ITermWords
{
    /// <inheritdoc/>
    public (int Tokens, string? Words) At(WordRun run, int at)
    {
        if (to == Dialect.Uk)
        {
            return run.Are(at, "yarn", "over", "hook") ? (3, "yarn round hook") : run.Are(at, "yarn", "over") ? (2, "yarn round hook") : run.Is(at, "yo") ? (1, "yrh") : default;
        }

        return run.Are(at, "yarn", "round", "hook") || run.Are(at, "yarn", "over", "hook") ? (3, "yarn over") : run.Is(at, "yrh") ? (1, "yo") : default;
    }
}
