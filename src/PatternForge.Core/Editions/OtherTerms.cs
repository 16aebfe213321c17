using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>Names of a table in the terms that the pattern is not written in.</summary>
public static class OtherTerms
{
    /// <summary>An abbreviation and its meaning as the other side has them; as they are where both have the same.</summary>
    /// <param name="facts">The pattern's facts.</param>
    /// <param name="name">The abbreviation.</param>
    /// <param name="meaning">What it means.</param>
    public static (string Name, string Meaning) Of(PatternFacts facts, string name, string meaning)
    {
        var words = TermsEdition.WordsOf(facts, (facts.TermsInForce ?? Dialect.Us) == Dialect.Us ? Dialect.Uk : Dialect.Us);
        return (In(words, name, StretchKind.Row), In(words, meaning, StretchKind.Definition));
    }

    private static string In(ITermWords[] words, string said, StretchKind kind)
    {
        var text = new SourceText("", said);
        var edits = new List<Findings.Edit>();
        var run = new WordRun(text, new Stretch(new TextSpan(0, said.Length), kind));
        TermsEdition.Rewrite(run, 0, run.Count, words, edits);
        foreach (var edit in edits.OrderByDescending(e => e.Span.Start))
        {
            said = string.Concat(said.AsSpan(0, edit.Span.Start), edit.NewText, said.AsSpan(edit.Span.End));
        }

        return said;
    }
}
