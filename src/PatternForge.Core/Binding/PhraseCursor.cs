using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>A place in a phrase's words.</summary>
internal sealed class PhraseCursor
{
    public PhraseCursor(List<Lexeme> lexemes) => Lexemes = lexemes;

    public List<Lexeme> Lexemes { get; }

    public int At { get; set; }

    public bool IsDone => At >= Lexemes.Count;

    public Lexeme? Peek(int ahead = 0) => At + ahead < Lexemes.Count ? Lexemes[At + ahead] : null;

    public bool Is(string alternatives, int ahead = 0) => Peek(ahead) is { } lexeme && Vocabulary.AlternativesContain(alternatives, lexeme.Norm);

    public bool IsNumber(int ahead = 0) => Peek(ahead) is { IsNumber: true } lexeme && lexeme.Number is not { IsOrdinal: true };

    public bool Eat(string alternatives)
    {
        if (!Is(alternatives))
        {
            return false;
        }

        At++;
        return true;
    }

    /// <summary>Takes the words in order, or none of them.</summary>
    public bool EatAll(params ReadOnlySpan<string> words)
    {
        var start = At;
        foreach (var word in words)
        {
            if (!Eat(word))
            {
                At = start;
                return false;
            }
        }

        return true;
    }

    /// <summary>Takes "1st", "2nd" and the like.</summary>
    public bool EatOrdinal()
    {
        var isOrdinal = Peek() is { Number.IsOrdinal: true };
        At += isOrdinal ? 1 : 0;
        return isOrdinal;
    }

    public Lexeme? EatNumber()
    {
        if (!IsNumber())
        {
            return null;
        }

        return Lexemes[At++];
    }

    public TextSpan SpanFrom(int start) => Lexemes[start].Span.Cover(Lexemes[Math.Max(start, At - 1)].Span);
}
