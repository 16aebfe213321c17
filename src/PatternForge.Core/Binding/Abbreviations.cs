using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Which abbreviations a line uses: stitches by their short names, and the short words of the trade.</summary>
internal static class Abbreviations
{
    private static readonly string[] WordsInFull = ["knit", "purl", "slip", "work", "increase", "decrease", "inches", "inch", "row", "rows", "round", "rounds", "skip", "miss", "in", "ins", "cm", "mm", "m", "g", "yd", "yds", "oz"];

    /// <summary>The abbreviations of one line, each once, in order of first use.</summary>
    public static ImmutableArray<AbbreviationUse> Of(RowContext context, List<Token> tokens)
    {
        var terms = context.Facts.Terms?.Value ?? Dialect.Us;
        var uses = new List<AbbreviationUse>();
        foreach (var (operation, said, span) in context.Used)
        {
            if (said.Length > 0 && !IsInFull(said, operation.Spoken))
            {
                var name = operation.IsSpecial ? operation.Id : said.Equals(OperationTable.NameIn(operation, terms), StringComparison.OrdinalIgnoreCase) || !IsName(operation, said) ? OperationTable.NameIn(operation, terms) ?? operation.Id : said;
                uses.Add(new AbbreviationUse(name, operation.IsSpecial && operation.Spoken == operation.Id ? operation.Definition : operation.Spoken, operation.IsSpecial, span));
            }
        }

        for (var i = 0; i < tokens.Count; i++)
        {
            var token = tokens[i];
            if (token.Kind != TokenKind.Word)
            {
                continue;
            }

            var word = context.Source.ToString(token.Span);
            if (i > 0 && tokens[i - 1].Kind == TokenKind.Number && !token.SpaceBefore && NumberFolder.IsOrdinalEnd(word))
            {
                continue; // the end of "3rd" is no abbreviation
            }

            if (word is "CO" or "BO" && context.Book.Find(word) is { } edge && !uses.Exists(u => u.Key == AbbreviationUse.KeyOf(word)))
            {
                uses.Add(new AbbreviationUse(word, edge.Spoken, false, token.Span));
                continue;
            }

            if (word.Length <= 6 && TradeWords.Find(terms, word) is { } trade && !IsInFull(word, trade.MeaningIn(terms)) && !uses.Exists(u => u.Key == AbbreviationUse.KeyOf(word)))
            {
                var name = trade.Names.FirstOrDefault(n => string.Equals(n.Text, word, StringComparison.OrdinalIgnoreCase))?.Text ?? word;
                uses.Add(new AbbreviationUse(name, trade.MeaningIn(terms), false, token.Span));
            }
        }

        return [.. uses.DistinctBy(u => u.Key, StringComparer.Ordinal)];
    }

    /// <summary>The uses of all lines as one table, sorted; where the pattern's own list has it, in the words of that list.</summary>
    public static ImmutableArray<AbbreviationUse> Table(ImmutableArray<BoundLine> lines, PatternFacts facts)
    {
        var own = (facts.Abbreviations ?? []).Where(a => a.Meaning is not null).DistinctBy(a => AbbreviationUse.KeyOf(a.Name), StringComparer.Ordinal).ToDictionary(a => AbbreviationUse.KeyOf(a.Name), StringComparer.Ordinal);
        return
        [
            .. lines.SelectMany(l => l.Abbreviations)
                .DistinctBy(u => u.Key, StringComparer.Ordinal)
                .Select(u => own.TryGetValue(u.Key, out var entry) ? u with { Name = entry.Name, Meaning = entry.Meaning! } : u)
                .OrderBy(u => u.Name, StringComparer.OrdinalIgnoreCase).ThenBy(u => u.Name, StringComparer.Ordinal),
        ];
    }

    private static bool IsName(Operation operation, string said) => operation.Names.Any(n => AbbreviationUse.KeyOf(n.Text) == AbbreviationUse.KeyOf(said));

    private static bool IsInFull(string said, string meaning)
    {
        var first = said.IndexOf(' ', StringComparison.Ordinal) is var blank and > 0 ? said[..blank] : said;
        return WordsInFull.Contains(first, StringComparer.OrdinalIgnoreCase) || string.Equals(said, meaning, StringComparison.OrdinalIgnoreCase)
            || (said.Length >= 5 && meaning.Contains(said, StringComparison.OrdinalIgnoreCase));
    }
}
