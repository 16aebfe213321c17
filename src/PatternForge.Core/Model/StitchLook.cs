using PatternForge.Core.Stitches;

namespace PatternForge.Core.Model;

/// <summary>How a knitted stitch looks on the right side of the fabric, whichever side it was worked on: what the squares of a chart show.</summary>
public static class StitchLook
{
    // Several stitches look alike; these are each other's own counterparts, worked by the same moves.
    private static readonly (string Knit, string Purl)[] Counterparts = [("k1b", "p1b"), ("ssk", "ssp"), ("skp", "spp"), ("sssk", "sssp"), ("sk2p", "sp2p")];

    /// <summary>The identifier of its chart mark. Worked on the wrong side, knit and purl change places, and what leans keeps leaning: published chart keys give k2tog and p2tog as one mark (common practice).</summary>
    public static string Of(Operation operation, FabricSide side)
    {
        var symbol = operation.Id == "bo" ? "bind-off" : operation.Symbol ?? "";
        return side == FabricSide.Right || symbol.Length == 0 ? symbol : symbol switch
        {
            "knit" => "purl",
            "purl" => "knit",
            "make-1-purl" or "make-1-purl-left" or "make-1-purl-right" or "lifted-purl-left" or "lifted-purl-right" => symbol.Replace("-purl", "", StringComparison.Ordinal),
            "make-1" or "make-1-left" or "make-1-right" => "make-1-purl" + symbol["make-1".Length..],
            "lifted-left" or "lifted-right" => "lifted-purl" + symbol["lifted".Length..],
            "knit-twisted" or "knit-below" => "purl" + symbol["knit".Length..],
            "purl-twisted" or "purl-below" => "knit" + symbol["purl".Length..],
            "slip-front" => "slip", // the yarn lies on the side that faces the maker: here the wrong one
            "slip" when operation == KnitSlips.Back => "slip-front",
            "brioche-knit" => "brioche-purl",
            "brioche-purl" => "brioche-knit",
            _ when symbol.StartsWith("purl-", StringComparison.Ordinal) => symbol["purl-".Length..],
            _ when symbol.StartsWith("lean-", StringComparison.Ordinal) || symbol.StartsWith("centre-", StringComparison.Ordinal) || symbol.StartsWith("increase-", StringComparison.Ordinal) => "purl-" + symbol,
            _ => symbol,
        };
    }

    /// <summary>What to work on a side so that it looks as this operation does on the right side; the operation itself where nothing else is known.</summary>
    public static Operation For(Operation shown, FabricSide side)
    {
        if (side == FabricSide.Right || shown.IsSpecial || shown.Symbol is null)
        {
            return shown;
        }

        if (shown == KnitSlips.Front || shown == KnitSlips.Back)
        {
            return shown == KnitSlips.Front ? KnitSlips.Back : KnitSlips.Front;
        }

        var pair = Array.Find(Counterparts, p => p.Knit == shown.Id || p.Purl == shown.Id);
        var named = pair.Knit is null ? null : pair.Knit == shown.Id ? pair.Purl : pair.Knit;
        foreach (var operation in KnitOperations.All)
        {
            if (named is not null && operation.Id != named)
            {
                continue;
            }

            if (operation.Takes == shown.Takes && operation.Makes == shown.Makes && Of(operation, side) == shown.Symbol)
            {
                return operation;
            }
        }

        return shown;
    }
}
