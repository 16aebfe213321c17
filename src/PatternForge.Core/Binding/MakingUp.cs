namespace PatternForge.Core.Binding;

/// <summary>Sentences about stuffing and trimming: they tell the maker what to do, and nothing about stitches to be counted, however many numbers they name.</summary>
internal static class MakingUp
{
    private const string Verbs = "embroider|stuff|pin";

    /// <summary>True when a phrase begins with such a verb.</summary>
    public static bool Begins(List<Lexeme> lexemes)
    {
        var c = new PhraseCursor(lexemes);
        c.Eat("then|now|and|lightly|firmly|loosely");
        return c.Is(Verbs) && !c.IsNumber(1);
    }
}
