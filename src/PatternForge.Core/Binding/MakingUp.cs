namespace PatternForge.Core.Binding;

/// <summary>Sentences about making up, stuffing and trimming: they tell the maker what to do, and nothing about stitches to be counted.</summary>
internal static class MakingUp
{
    private const string Verbs = "embroider|sew|stuff|pin|steam|press|wash|block|fold|trim|glue|wet";

    /// <summary>True when a phrase begins with such a verb, perhaps behind the yarn that is used for it.</summary>
    public static bool Begins(List<Lexeme> lexemes)
    {
        var c = new PhraseCursor(lexemes);
        c.Eat("then|now|and|lightly|firmly|loosely");
        return c.Is(Verbs) && !c.IsNumber(1);
    }
}
