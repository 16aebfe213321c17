using System.Collections.Immutable;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>
/// The two passes of a Tunisian row as books spell them out. The return pass works the loops off one by one and changes no count; "insert hook in next
/// bar, yo and pull up a loop" is one loop in that bar; pulled through the loop on the hook as well it is bound off.
/// </summary>
internal static class TunisianPasses
{
    private const string Returns = "return|retp|ret|rp|rtp|rtnp|retpass";

    /// <summary>The row without its return pass, the loops that are spelled out told in a few words.</summary>
    public static ImmutableArray<StepNode> Shorten(ImmutableArray<StepNode> nodes)
    {
        var from = -1;
        for (var i = 0; i < nodes.Length && from < 0; i++)
        {
            from = IsReturn(nodes[i]) || (Says(nodes[i], "through") && !Says(nodes[i], "insert") && !Says(nodes[i], "bar")) ? i : -1;
        }

        while (from > 0 && nodes[from - 1] is PhraseNode { Atoms: [var first, ..] } before && (first.Is("yo") || (first.Is("ch") && before.Atoms.Length == 2)))
        {
            from--;
        }

        if (from >= 0)
        {
            // What is left of the rest is the count behind it.
            nodes = [.. nodes[..from], .. nodes.Skip(from).Where(n => IsReturn(n) || IsCount(n))];
        }

        return Loops(nodes);
    }

    /// <summary>True when loops are pulled through the one on the hook: the row is bound off.</summary>
    public static bool IsBindOff(ImmutableArray<StepNode> nodes) => nodes.Any(n => Says(n, "insert") && Says(n, "through"));

    /// <summary>True for the words that only name a pass.</summary>
    public static bool IsPassName(PhraseCursor c)
    {
        c.Eat("work");
        return c.Eat("fwdp|fwd|fp|forward") ? c.IsDone || (c.Eat("pass") && c.IsDone) : c.Eat(Returns);
    }

    private static bool IsReturn(StepNode node) => node is PhraseNode phrase && (IsWord(phrase.Atoms[0], Returns) || (phrase.Atoms.Length > 1 && phrase.Atoms[0].Is("work") && IsWord(phrase.Atoms[1], Returns)));

    private static bool IsCount(StepNode node) => node switch
    {
        GroupNode { Body: [PhraseNode inner] } => IsCount(inner),
        PhraseNode { Atoms: [{ Kind: TokenKind.Number } number, ..] } => number.Number is { IsOrdinal: false } count && count.Values[0] != 1,
        _ => false,
    };

    /// <summary>"Insert hook in next bar, yo, pull up a loop": "pull up a loop in next bar".</summary>
    private static ImmutableArray<StepNode> Loops(ImmutableArray<StepNode> nodes)
    {
        var made = ImmutableArray.CreateBuilder<StepNode>(nodes.Length);
        for (var i = 0; i < nodes.Length; i++)
        {
            if (nodes[i] is RepeatNode repeat)
            {
                made.Add(repeat.With(Loops(repeat.Body)));
                continue;
            }

            if (nodes[i] is not PhraseNode { Atoms: [var insert, var hook, ..] } place || !insert.Is("insert") || !hook.Is("hook") || place.Atoms.Length < 3)
            {
                made.Add(nodes[i]);
                continue;
            }

            var next = i + 1;
            next += next < nodes.Length && nodes[next] is PhraseNode { Atoms: [var over] } && over.Is("yo") ? 1 : 0;
            if (next < nodes.Length && nodes[next] is PhraseNode up && up.Atoms.ToList().FindIndex(a => a.Is("pull") || a.Is("draw")) is >= 0 and var pull && up.Atoms.Any(a => a.Is("up")))
            {
                made.Add(new PhraseNode([.. up.Atoms.Skip(pull), .. place.Atoms.Skip(2)], place.Before));
                i = next;
                continue;
            }

            made.Add(nodes[i]);
        }

        return made.ToImmutable();
    }

    private static bool IsWord(Atom atom, string words) => atom.Kind == TokenKind.Word && Vocabulary.AlternativesContain(words, atom.Text.ToLowerInvariant());

    private static bool Says(StepNode node, string word) => node switch
    {
        PhraseNode phrase => phrase.Atoms.Any(a => a.Is(word)),
        GroupNode group => group.Body.Any(n => Says(n, word)),
        RepeatNode repeat => repeat.Body.Any(n => Says(n, word)),
        _ => false,
    };
}
