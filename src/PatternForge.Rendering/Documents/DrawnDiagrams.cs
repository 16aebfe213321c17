using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Rendering.Documents;

/// <summary>The diagrams of one pattern that have been drawn: a form of it in other units shows the same ones, which are dear to lay out.</summary>
internal sealed class DrawnDiagrams
{
    private readonly Dictionary<(ImmutableArray<DiagramRow> Rows, string Id, Dialect Terms, string Words), Drawing?> _drawn = [];

    /// <summary>The drawing of a diagram; null where nobody could read it.</summary>
    /// <param name="diagram">The diagram.</param>
    /// <param name="id">Its identifier.</param>
    /// <param name="terms">Whose names to use.</param>
    /// <param name="words">Its rows as they are written.</param>
    /// <param name="facts">The header.</param>
    public Drawing? Of(CrochetDiagram diagram, string id, Dialect terms, string words, PatternFacts facts)
    {
        var key = (diagram.Rows, id, terms, words);
        if (!_drawn.TryGetValue(key, out var drawing))
        {
            _drawn[key] = drawing = DiagramDrawing.Of(diagram, id, terms, facts.Sizes, words, facts.Yarns);
        }

        return drawing;
    }
}
