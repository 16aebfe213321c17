using System.Collections.Frozen;
using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>The lines of a text that has been read, for another text that says the same in other words: each is found where it stood, and only its words are taken anew.</summary>
/// <param name="lines">The lines as they were read.</param>
/// <param name="back">The place in the text that was read of a place in the other.</param>
/// <param name="forward">The other way; null for a place inside words that have changed.</param>
public sealed class KnownLines(ImmutableArray<BoundLine> lines, Func<TextSpan, TextSpan> back, Func<int, int?> forward)
{
    private readonly FrozenDictionary<int, BoundLine> _at = lines.GroupBy(l => l.Origin.Start).ToFrozenDictionary(g => g.Key, g => g.First());

    /// <summary>True when the words of a line could not be told from its label.</summary>
    public bool IsLost { get; private set; }

    /// <summary>The line that a block is; null for prose.</summary>
    /// <param name="content">Where the block stands in the other text.</param>
    /// <param name="index">The number that the line would have.</param>
    /// <param name="source">The other text.</param>
    /// <param name="facts">Its header.</param>
    public BoundLine? Line(TextSpan content, int index, SourceText source, PatternFacts facts)
    {
        if (!_at.TryGetValue(back(content).Start, out var known))
        {
            return null;
        }

        var start = forward(known.TextStart);
        var (from, to) = (forward(known.LabelPlace.Start), forward(known.LabelPlace.End));
        if (start is null || from is null || to is null || start < content.Start || start > content.End || known.Index != index)
        {
            IsLost = true;
            return known;
        }

        return known with
        {
            Origin = content,
            Label = known.LabelPlace.Length > 0 ? PrintedText.Fill(PrintedText.Label(source.ToString(TextSpan.FromBounds(from.Value, to.Value))), facts) : known.Label,
            Text = PrintedText.Row(source.ToString(TextSpan.FromBounds(start.Value, content.End)), facts),
        };
    }
}
