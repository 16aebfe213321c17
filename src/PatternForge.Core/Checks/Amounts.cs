using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Amounts of yarn in metres and grams, by way of the put-up.</summary>
internal static class Amounts
{
    /// <summary>The metres that a size needs; null where they cannot be told.</summary>
    public static decimal? Metres(Yarn yarn, int size) => At(yarn.Needs, size) is not { } said ? null : said.Unit.Dimension switch
    {
        Dimension.YarnLength => Upper(said) * said.Unit.InBase,
        Dimension.Mass => Upper(said) * said.Unit.InBase * yarn.MetresPerGram,
        Dimension.Count => Upper(said) * yarn.PutUpLength?.InBase,
        _ => null,
    };

    /// <summary>The grams that a size needs; null where they cannot be told.</summary>
    public static decimal? Grams(Yarn yarn, int size) => At(yarn.Needs, size) is not { } said ? null : said.Unit.Dimension switch
    {
        Dimension.Mass => Upper(said) * said.Unit.InBase,
        Dimension.YarnLength => yarn.MetresPerGram is > 0 and var grist ? Upper(said) * said.Unit.InBase / grist : null,
        Dimension.Count => Upper(said) * yarn.PutUpMass?.InBase,
        _ => null,
    };

    /// <summary>The metres of the largest amount, and the words for its size (" for size L"; empty where there is one size).</summary>
    public static (decimal? Metres, string Size) Most(PatternFacts facts, Yarn yarn)
    {
        (decimal? Metres, string Size) most = (null, "");
        for (var size = 0; size < facts.Sizes.Count; size++)
        {
            if (Metres(yarn, size) is { } metres && !(metres <= most.Metres))
            {
                most = (metres, facts.Sizes.Count > 1 ? $" for size {facts.Sizes.Names[size]}" : "");
            }
        }

        return most;
    }

    private static decimal Upper(Quantity said) => said.UpTo ?? said.Value;

    private static Quantity? At(PerSize<Quantity?>? needs, int size) => needs is null || (!needs.IsShared && size >= needs.Values.Length) ? null : needs[size];
}
