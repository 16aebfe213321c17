using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Looks after references to charts and to marked places of other pieces.</summary>
internal static class ReferenceReader
{
    /// <summary>Reports charts that the header does not have; a pattern that lists none keeps its charts elsewhere.</summary>
    public static void Check(List<Lexeme> lexemes, RowContext context)
    {
        if (context.Facts.Charts.IsEmpty)
        {
            return;
        }

        for (var i = 0; i + 1 < lexemes.Count; i++)
        {
            if (!lexemes[i].Is("chart") || lexemes[i + 1].Atom.Text is not { Length: 1 or 2 } letter || !(char.IsUpper(letter[0]) || char.IsAsciiDigit(letter[0])))
            {
                continue;
            }

            var span = lexemes[i].Span.Cover(lexemes[i + 1].Span);
            var name = context.Source.ToString(span);
            if (!context.Facts.Charts.Any(c => string.Equals(c.Name, name, StringComparison.OrdinalIgnoreCase) || string.Equals(c.Name, lexemes[i + 1].Atom.Text, StringComparison.OrdinalIgnoreCase)))
            {
                context.Bag.Add(new Finding(RowRules.ChartNotFound, context.Source, span, $"there is no {name} in this pattern") { Help = $"the header has {string.Join(", ", context.Facts.Charts.Select(c => c.Name))}" });
            }
        }
    }

    /// <summary>"Work as for Back to **": true, with a finding where no such place is marked.</summary>
    public static bool IsAsForSection(ImmutableArray<StepNode> nodes, int at, List<Lexeme> lexemes, RowContext context)
    {
        var c = new PhraseCursor(lexemes);
        c.Eat("work");
        if (!c.EatAll("as", "for") || at + 1 >= nodes.Length || nodes[at + 1] is not MarkNode { Mark: "**" } || !lexemes[^1].Is("to"))
        {
            return false;
        }

        c.Eat("the");
        var piece = c.At < lexemes.Count - 1 ? context.Source.ToString(lexemes[c.At].Span.Cover(lexemes[^2].Span)) : "";
        if (!context.MarkedPieces.Contains(piece.ToLowerInvariant()))
        {
            var span = lexemes[0].Span.Cover(nodes[at + 1].Span);
            context.Bag.Add(RowRules.PlaceNotFound, span, piece.Length > 0 ? $"no ** is marked in the {piece}" : "no ** is marked in that piece", "mark the place with ** where the pieces part");
        }

        return true;
    }
}
