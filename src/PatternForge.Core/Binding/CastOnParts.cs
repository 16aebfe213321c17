using System.Collections.Immutable;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>"Cast on 24 sts ... and work in rib", "CO 60 sts and join": what is done with the new stitches is said apart from casting them on.</summary>
internal static class CastOnParts
{
    /// <summary>The parts of a row, such phrases cut at their "and".</summary>
    public static ImmutableArray<StepNode> Split(ImmutableArray<StepNode> nodes)
    {
        for (var i = 0; i < nodes.Length; i++)
        {
            if (nodes[i] is PhraseNode phrase && Cut(phrase) is > 0 and var cut)
            {
                var rest = new PhraseNode(phrase.Atoms[(cut + 1)..], Separator.Comma);
                nodes = [.. nodes[..i], new PhraseNode(phrase.Atoms[..cut], phrase.Before), rest, .. nodes[(i + 1)..]];
            }
        }

        return nodes;
    }

    private static int? Cut(PhraseNode phrase)
    {
        if (!phrase.Atoms.Any(a => a.Is("co") || a.Is("on")) || !phrase.Atoms.Any(a => a.Is("and")))
        {
            return null;
        }

        var lexemes = Vocabulary.Normalise(phrase.Atoms);
        var cast = lexemes.FindIndex(l => l.Is("co"));
        for (var i = cast + 2; cast >= 0 && i + 1 < lexemes.Count; i++)
        {
            if (lexemes[i].Is("and") && lexemes[i + 1].Norm is "work" or "join" or "k" or "p" or "cont")
            {
                return phrase.Atoms.IndexOf(lexemes[i].Atom);
            }
        }

        return null;
    }
}
