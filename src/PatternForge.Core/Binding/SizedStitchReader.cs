using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads a list in which the stitch itself differs by size: "0 (0-P 1-P 1)", "0 (K1, P2)". 0 is a size that skips it.</summary>
internal static class SizedStitchReader
{
    /// <summary>A step for each stitch of the list, worked in its sizes only; null when the nodes are something else.</summary>
    public static ImmutableArray<Step>? TryRead(ImmutableArray<StepNode> nodes, int at, RowContext context)
    {
        if (nodes[at] is not PhraseNode { Atoms: [{ Kind: TokenKind.Number, Number: { IsList: false } first }] } zero || first.Values[0] != 0
            || at + 1 >= nodes.Length || nodes[at + 1] is not GroupNode { Before: Separator.None } group || !context.Scope.IsEmpty)
        {
            return null;
        }

        var items = Items(group);
        if (items.Count + 1 != context.SizeCount)
        {
            return null;
        }

        var span = zero.Span.Cover(group.Span);
        var steps = new List<(Operation Operation, int?[] Times)>();
        for (var i = 0; i < items.Count; i++)
        {
            if (items[i] is [{ Kind: TokenKind.Number, Number: { IsList: false } number }] && number.Values[0] == 0)
            {
                continue;
            }

            var cursor = new PhraseCursor(Vocabulary.Normalise(items[i]));
            if (StitchReader.TryRead(cursor, context) is not OperationStep stitch || !cursor.IsDone)
            {
                return null;
            }

            var known = steps.FindIndex(s => s.Operation.Id == stitch.Operation.Id);
            if (known < 0)
            {
                known = steps.Count;
                steps.Add((stitch.Operation, new int?[context.SizeCount]));
                Array.Fill(steps[known].Times, 0);
            }

            steps[known].Times[i + 1] = stitch.Times?[0] ?? 1;
        }

        return steps.Count == 0 ? null : [.. steps.Select(s => new OperationStep(span, s.Operation, new Amount(PerSize.Each([.. s.Times]), span)))];
    }

    /// <summary>What stands between the list's commas, colons or dashes.</summary>
    private static List<ImmutableArray<Atom>> Items(GroupNode group)
    {
        List<ImmutableArray<Atom>> items = [];
        foreach (var node in group.Body)
        {
            if (node is not PhraseNode phrase)
            {
                return [];
            }

            var from = 0;
            for (var i = 0; i <= phrase.Atoms.Length; i++)
            {
                if (i == phrase.Atoms.Length || phrase.Atoms[i].Kind == TokenKind.Dash)
                {
                    if (i == from)
                    {
                        return [];
                    }

                    items.Add(phrase.Atoms[from..i]);
                    from = i + 1;
                }
            }
        }

        return items;
    }
}
