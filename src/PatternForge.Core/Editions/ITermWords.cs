namespace PatternForge.Core.Editions;

/// <summary>Words that an edition says otherwise.</summary>
internal interface ITermWords
{
    /// <summary>
    /// What the words at a place are in the edition: how many tokens they are, and what stands there then (null leaves them as they are, as one whole). No tokens where
    /// nothing is known of them.
    /// </summary>
    (int Tokens, string? Words) At(WordRun run, int at);
}
