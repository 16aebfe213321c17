using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads what is done with a marker: "pm", "slip marker A", "place marker for beg of rnd".</summary>
internal static class MarkerReader
{
    /// <summary>The step at the cursor, or null with the cursor unmoved.</summary>
    public static MarkerStep? TryRead(PhraseCursor c)
    {
        var start = c.At;
        var action = c.Is("pm") ? MarkerAction.Place : c.Is("sm") ? MarkerAction.Slip : c.Is("rm") ? MarkerAction.Remove : (MarkerAction?)null;
        if (action is null)
        {
            return null;
        }

        c.At++;
        string? name = null;
        if (c.Peek() is { } after && after.Atom.Kind == TokenKind.Word && (after.Atom.Text.Length == 1 && char.IsUpper(after.Atom.Text[0])))
        {
            name = after.Atom.Text.ToLowerInvariant();
            c.At++;
        }

        if (c.Is("for|to|on|at|here|around") || (c.Is("in") && c.Is("last|first|this|same|each|next|center|the", 1) && !c.Is("st|row|rnd", 3) && (c.Peek(3) is null || c.Is("made|and", 3))))
        {
            while (!c.IsDone && !c.Is("and"))
            {
                c.At++;
            }
        }

        return new MarkerStep(c.SpanFrom(start), action.Value, name);
    }
}
