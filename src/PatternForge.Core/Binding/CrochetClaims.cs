using System.Collections.Immutable;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Where a crochet row may state its counts. "24 dc" is a count behind a full stop at the row's end, and one in each of 24 stitches anywhere else.</summary>
internal static class CrochetClaims
{
    /// <summary>True when the phrase at a node may be a count: behind a stop or dash, or behind another count, with no stitches after it.</summary>
    public static bool IsPlace(ImmutableArray<StepNode> nodes, int at, bool isTop, RowContext context)
    {
        var phrase = (PhraseNode)nodes[at];
        if (!isTop)
        {
            return false;
        }

        if (nodes.Length == 1)
        {
            return phrase.Atoms is not [{ Kind: TokenKind.Number }, { Kind: TokenKind.Word }] || ClaimReader.TryRead(Vocabulary.Normalise(phrase.Atoms), context, introduced: false) is { Of: null };
        }

        var follows = (phrase.Before == Separator.Comma && phrase.Atoms[0].Kind == TokenKind.Number && phrase.Atoms.Any(a => a.Is("total") || a.Is("altogether") || a.Is("remain") || a.Is("remaining"))) || phrase.Before is Separator.Stop or Separator.Dash or Separator.Semicolon
            || (phrase.Before == Separator.None && at > 0 && nodes[at - 1] is GroupNode or RepeatNode && phrase.Atoms[^1].Kind == TokenKind.Word)
            || (phrase.Before == Separator.Comma && at > 0 && nodes[at - 1] is PhraseNode { Before: Separator.Stop or Separator.Dash or Separator.Semicolon } && IsCount(nodes[at - 1], context));
        return follows && nodes.Skip(at + 1).All(n => n is not RepeatNode && (n is not PhraseNode next || IsCount(next, context) || !CrochetReader.IsNext(new PhraseCursor(Vocabulary.Normalise(next.Atoms)), context)));
    }

    private static bool IsCount(StepNode node, RowContext context) => node is PhraseNode phrase && ClaimReader.TryRead(Vocabulary.Normalise(phrase.Atoms), context, introduced: false) is not null;
}
