using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Binding;

/// <summary>Reads filet crochet, which counts in meshes: "1 open mesh, 3 solid meshes", or "5 sps, 3 bls" where the pattern says what those are.</summary>
internal static class MeshReader
{
    private static readonly string[] Open = ["sp", "sps", "space", "spaces", "om"];
    private static readonly string[] Solid = ["bl", "bls", "block", "blocks", "blk", "blks", "sm"];

    /// <summary>One mesh, the unit of counts where a row is told in them.</summary>
    public static Operation Unit { get; } = StitchBook.AnyCrochet with { Id = "meshes", Names = [new OperationName(Dialect.Any, "meshes")], Spoken = "mesh", IsSpecial = true };

    /// <summary>The step at the cursor, or null with the cursor unmoved.</summary>
    public static MeshStep? TryRead(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        c.Eat("work|make");
        var number = c.EatNumber();
        if (IsOpen(c, context, number is not null) is { } open && (c.IsDone || c.Is("and|then|across|over")))
        {
            c.At = c.Is("over") ? c.Lexemes.Count : c.At; // "3 solid meshes over next 3 open meshes"
            return new MeshStep(c.SpanFrom(start), number is null ? null : context.AmountOf(number), open);
        }

        c.At = start;
        return null;
    }

    private static bool? IsOpen(PhraseCursor c, RowContext context, bool isCounted)
    {
        if (c.Is("open|solid|closed|filled") && c.Is("mesh|meshes|sp|sps|space|spaces|square|squares|block|blocks", 1))
        {
            c.At += 2;
            return c.Lexemes[c.At - 2].Is("open");
        }

        // The short words are meshes only where the pattern defines them as stitches of its own.
        if (isCounted && c.Peek()?.Atom.Text.ToLowerInvariant() is { } word && (Open.Contains(word) || Solid.Contains(word)) && context.Book.FindPlural(word) is { IsSpecial: true })
        {
            c.At++;
            return Open.Contains(word);
        }

        return null;
    }

    /// <summary>True for the word that counts meshes.</summary>
    public static bool IsUnit(PhraseCursor c) => c.Is("mesh|meshes");
}
