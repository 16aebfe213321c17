using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>A place among the atoms of a line.</summary>
internal sealed class AtomCursor
{
    public AtomCursor(List<Atom> atoms, int at)
    {
        All = atoms;
        At = at;
    }

    public List<Atom> All { get; }

    public int At { get; set; }

    public Atom? Peek(int ahead = 0) => At + ahead < All.Count ? All[At + ahead] : null;

    public bool IsKind(TokenKind kind, int ahead = 0) => Peek(ahead)?.Kind == kind;

    public bool EatKind(TokenKind kind)
    {
        if (!IsKind(kind))
        {
            return false;
        }

        At++;
        return true;
    }

    /// <summary>Takes the next atom if it is one of these words, ignoring case.</summary>
    public bool Eat(params ReadOnlySpan<string> words)
    {
        foreach (var word in words)
        {
            if (Peek()?.Is(word) == true)
            {
                At++;
                return true;
            }
        }

        return false;
    }

    /// <summary>True where a sign stands that ends a label, or nothing at all.</summary>
    public bool EndsLabel() => Peek() is null || Peek()!.Kind is TokenKind.Colon or TokenKind.Stop or TokenKind.Dash or TokenKind.Comma;

    /// <summary>From an atom to the one before the cursor, without the signs at its end.</summary>
    public TextSpan Covered(int start)
    {
        var last = At - 1;
        while (last > start && All[last].Kind is TokenKind.Colon or TokenKind.Stop or TokenKind.Dash or TokenKind.Comma or TokenKind.Mark)
        {
            last--;
        }

        return All[start].Span.Cover(All[last].Span);
    }
}
