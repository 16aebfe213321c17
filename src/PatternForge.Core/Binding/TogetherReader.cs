using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads "at the same time", wherever in a phrase it stands, and the words that say when the second shaping begins.</summary>
internal sealed class TogetherReader
{
    private const string Conditions = "when|once|after|until";

    private readonly RowContext _context;

    public TogetherReader(RowContext context) => _context = context;

    /// <summary>Binds a phrase that says it: what stands before, the step itself, what stands behind.</summary>
    public void Bind(List<Lexeme> lexemes, List<Step> steps, Action<PhraseCursor> bind)
    {
        var at = lexemes.FindIndex(l => l.Is("att"));

        // "Work both sides at the same time with separate balls of yarn" is how, not what.
        if (at > 1 && lexemes.Take(at).Any(l => l.Is("both") || l.Is("each")) && lexemes.Take(at).Any(l => l.Is("side") || l.Is("front") || l.Is("piece")))
        {
            steps.Add(new RemarkStep(lexemes[0].Span.Cover(lexemes[^1].Span)));
            return;
        }

        var before = lexemes.GetRange(0, at);
        while (before.Count > 0 && Vocabulary.AlternativesContain("and|but|while|also|then", before[^1].Norm))
        {
            before.RemoveAt(before.Count - 1);
        }

        if (before.Count > 0)
        {
            bind(new PhraseCursor(before));
        }

        steps.Add(new TogetherStep(lexemes[at].Span));
        var behind = new PhraseCursor(lexemes.GetRange(at + 1, lexemes.Count - at - 1));
        while (behind.Eat("also|and|,"))
        {
        }

        if (!behind.IsDone && !TryCondition(behind, steps, _context))
        {
            bind(new PhraseCursor(behind.Lexemes.GetRange(behind.At, behind.Lexemes.Count - behind.At)));
        }
    }

    /// <summary>"when armhole measures 10 cm", "once 6 rows have been worked": when the shaping behind begins; false, with nothing taken, for other words.</summary>
    public static bool TryCondition(PhraseCursor c, List<Step> steps, RowContext context)
    {
        if (!c.Is(Conditions) || c.At != 0 || steps.Count == 0 || steps[^1] is not TogetherStep together)
        {
            return false;
        }

        PerSize<decimal?>? length = null;
        for (var i = 1; i + 1 < c.Lexemes.Count && length is null; i++)
        {
            if (c.Lexemes[i] is { Number: { IsOrdinal: false } number } && Unit.Find(c.Lexemes[i + 1].Atom.Text) is { Dimension: Dimension.Length } unit && (number.Values.Length == 1 || number.Values.Length == context.SizeCount))
            {
                length = number.Values.Length == 1 ? PerSize.Shared(number.Values[0] * unit.InBase) : PerSize.Each([.. number.Values.Select(v => v * unit.InBase)]);
            }
        }

        c.At = c.Lexemes.Count;
        steps[^1] = together with { BeginsLater = true, AfterLength = length };
        return true;
    }
}
