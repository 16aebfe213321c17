namespace PatternForge.Core.Binding;

/// <summary>Sentences about stuffing and trimming: they tell the maker what to do, and nothing about stitches to be counted, however many numbers they name.</summary>
internal static class MakingUp
{
    private const string Verbs = "embroider|stuff|pin";

    // "Insert safety eyes", "Attach the nose", "Sew the ears to the head": with what is put on.
    private const string Joining = "insert|attach|sew|place|position|glue|add";
    private const string Parts = "eyes|eye|nose|ears|ear|arms|legs|tail|button|buttons|mouth|snout|wings|beak|felt|bow|hair|squeaker|stuffing|head|wire";

    /// <summary>True when a phrase begins with such a verb.</summary>
    public static bool Begins(List<Lexeme> lexemes)
    {
        var c = new PhraseCursor(lexemes);
        c.Eat("then|now|and|lightly|firmly|loosely");
        if (c.Eat(Joining))
        {
            return lexemes.Skip(1).Take(5).Any(l => Vocabulary.AlternativesContain(Parts, l.Norm)) && !lexemes.Exists(l => l.Norm is "sc" or "dc" or "hdc" or "k" or "p");
        }

        return c.Is(Verbs) && !c.IsNumber(1);
    }
}
