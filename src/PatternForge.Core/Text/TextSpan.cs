namespace PatternForge.Core.Text;

/// <summary>A stretch of a source text in UTF-16 units, end exclusive. Offsets count from the start of the file.</summary>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>The offset just after the last character.</summary>
    public int End => Start + Length;

    /// <summary>True when the span holds no characters: a place between two characters.</summary>
    public bool IsEmpty => Length == 0;

    /// <summary>The span from <paramref name="start"/> up to, but without, <paramref name="end"/>; empty when they are out of order.</summary>
    public static TextSpan FromBounds(int start, int end) => new(start, Math.Max(0, end - start));

    /// <summary>The smallest span that holds both.</summary>
    public TextSpan Cover(TextSpan other) => FromBounds(Math.Min(Start, other.Start), Math.Max(End, other.End));

    /// <summary>True when <paramref name="inner"/> lies wholly inside this span.</summary>
    public bool Contains(TextSpan inner) => Start <= inner.Start && inner.End <= End;
}
