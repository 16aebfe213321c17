namespace PatternForge.Core.Stitches;

/// <summary>What crochet stitches are called when they are counted.</summary>
public static class CrochetNames
{
    /// <summary>The name under which a stitch is counted in a pattern's terms: a decrease as the plain stitch that it is made of.</summary>
    public static string Of(Operation stitch, Dialect terms)
    {
        var plain = stitch is { CountsAs: { } id, Takes: > 1 } ? OperationTable.Find(Craft.Crochet, Dialect.Us, id) ?? stitch : stitch;
        return plain.IsSpecial ? plain.Id : OperationTable.NameIn(plain, terms) ?? plain.Id;
    }
}
