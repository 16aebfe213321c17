using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Names of rows in one spelling: "Decrease Round", "dec rnd" and "dec row" are the same row.</summary>
internal static class RowNames
{
    public static string Key(string name)
    {
        var words = name.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(word => Vocabulary.NormOf(new Atom(TokenKind.Word, default, Spelling.Of(word), spaceBefore: false)))
            .Select(word => word == "rnd" ? "row" : word);
        var key = string.Join(' ', words);
        return key.Contains("row", StringComparison.Ordinal) ? key : key + " row";
    }
}
