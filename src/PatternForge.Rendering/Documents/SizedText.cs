using System.Collections.Immutable;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// Words in which lists of numbers may stand for the sizes, "88 (96, 104)". Each format decides how it tells the sizes apart; no word and no
/// sign of the text is changed. Templates print it as it comes.
/// </summary>
/// <param name="Text">The words.</param>
/// <param name="Sizes">How many sizes the pattern has.</param>
/// <param name="Digits">Digits to leave room for, where such texts stand under one another and their numbers in columns; 0 where they do not.</param>
public readonly record struct SizedText(string Text, int Sizes, int Digits = 0)
{
    /// <summary>The sizes that the words are for, counted from 0, where they are for some alone: a list of as many numbers stands for these. Empty for all sizes.</summary>
    public ImmutableArray<int> Only { get; init; } = [];

    /// <summary>The words as the edition of one size has them, by the size from 0; null for a size whose edition has none such. Null where nothing is known but the lists. No matter of templates.</summary>
    internal Func<int, string?>? In { get; init; }
}
