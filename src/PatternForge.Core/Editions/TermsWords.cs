using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>A few words of a pattern in the terms of the other side.</summary>
public static class TermsWords
{
    /// <summary>"Ch 3 counts as dc" of a pattern in US terms as "Ch 3 counts as tr"; words of two meanings stay.</summary>
    /// <param name="said">The words.</param>
    /// <param name="facts">The pattern that they are of, with its craft and terms.</param>
    /// <param name="to">Whose terms are wanted.</param>
    public static string In(string said, PatternFacts facts, Dialect to)
    {
        if (said.Length == 0 || facts.TermsInForce is not { } from || from == to)
        {
            return said;
        }

        var run = new WordRun(new SourceText("", said + "\n"), new Stretch(new TextSpan(0, said.Length), StretchKind.Prose));
        var edits = new List<Edit>();
        TermsEdition.Rewrite(run, 0, run.Count, TermsEdition.WordsOf(facts, to), edits);
        foreach (var edit in edits.OrderByDescending(e => e.Span.Start))
        {
            said = string.Concat(said.AsSpan(0, edit.Span.Start), edit.NewText, said.AsSpan(edit.Span.End));
        }

        return said;
    }
}
