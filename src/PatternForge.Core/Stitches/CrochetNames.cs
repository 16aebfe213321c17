namespace PatternForge.Core.Stitches;

/// <summary>What crochet stitches are called when they are counted.</summary>
public static class CrochetNames
{
    /// <summary>The plain stitch that a decrease or post stitch is made of; the stitch itself where it is plain.</summary>
    public static Operation Plain(Operation stitch) => stitch.CountsAs is { } id ? OperationTable.Find(stitch.Craft, Dialect.Us, id) ?? stitch : stitch;

    /// <summary>The name under which a stitch is counted in a pattern's terms: a decrease as the plain stitch that it is made of.</summary>
    public static string Of(Operation stitch, Dialect terms)
    {
        var plain = stitch.Takes > 1 ? Plain(stitch) : stitch;
        return plain.IsSpecial ? plain.Id : OperationTable.NameIn(plain, terms) ?? plain.Id;
    }
}
