using System.Globalization;
using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Finds fibre contents whose shares do not make a hundred.</summary>
internal sealed class FibreNotWhole : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF715", "fibre-not-whole", Area.Yarn, Severity.Warning,
        "The shares of the fibres do not make a hundred.",
        "The label of a yarn names all its fibres, and their shares make a hundred in a hundred. Where they do not, one is missing or mistyped, and a maker with an allergy, or one who looks for another yarn, goes wrong by it.")
    {
        Bad = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                ^^^^^^^^^^^^^^^^^^^
                fibre: 75% wool, 15% nylon
            ---
            """,
        Good = """
            ---
            title: Harbour hat
            yarn:
              - name: Quayside Wool
                fibre: 75% wool, 25% nylon
            ---
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        foreach (var yarn in context.Facts.Yarns)
        {
            // Shares of single thirds are rounded on labels.
            if (yarn.Fibre is { } fibre && Sum(fibre) is { } sum && Math.Abs(sum - 100) > 1)
            {
                context.Bag.Add(Rule, yarn.Origin, string.Create(CultureInfo.InvariantCulture, $"the fibres of {YarnWords.Of(yarn)} make {sum:0.#} %, not 100: `{(fibre.Length > 60 ? fibre[..60] + "…" : fibre)}`"), "check the shares, and whether a fibre is missing");
            }
        }
    }

    private static decimal? Sum(string fibre)
    {
        decimal sum = 0;
        var shares = 0;
        for (var at = 0; at < fibre.Length; at++)
        {
            if (!char.IsAsciiDigit(fibre[at]))
            {
                continue;
            }

            var end = at;
            while (end < fibre.Length && (char.IsAsciiDigit(fibre[end]) || fibre[end] == '.'))
            {
                end++;
            }

            var number = fibre.AsSpan(at, end - at).TrimEnd('.');
            at = end;
            while (end < fibre.Length && char.IsWhiteSpace(fibre[end]))
            {
                end++;
            }

            if (end < fibre.Length && fibre[end] == '%' && number.Length <= 6 && decimal.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share))
            {
                (sum, shares) = (sum + share, shares + 1);
            }
        }

        // "100% wool; core 80%, ..." tells shares of parts: nothing to add up.
        return shares == 0 || (shares > 1 && fibre.Contains("100", StringComparison.Ordinal)) ? null : sum;
    }
}
