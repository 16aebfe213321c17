using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>An abbreviation that the pattern's own list explains twice, in two ways.</summary>
internal sealed class AbbreviationTwice : PatternCheck
{
    /// <inheritdoc/>
    public override Rule Rule { get; } = new(
        "PF503", "abbreviation-of-two-meanings", Area.Abbreviations, Severity.Error,
        "The pattern's own list gives an abbreviation two meanings.",
        "A maker who meets it in a row cannot know which is meant. Give each meaning an abbreviation of its own; capitals make another one only where they are kept up in every row.")
    {
        Bad = """
            ---
            title: Two meanings
            craft: knitting
            abbreviations:
              - k = knit
              - m = marker
              - m = make 1
                ^^^^^^^^^^
              - st = stitch
              - CO = cast on
            ---
            ## Piece

            CO 12 sts.

            Row 1: K6, slip m, k6.
            """,
        Good = """
            ---
            title: One meaning
            craft: knitting
            abbreviations:
              - k = knit
              - m = marker
              - st = stitch
              - CO = cast on
            ---
            ## Piece

            CO 12 sts.

            Row 1: K6, slip m, k6.
            """,
    };

    /// <inheritdoc/>
    public override void Run(CheckContext context)
    {
        foreach (var group in (context.Facts.Abbreviations ?? []).Where(a => a.Meaning is not null).GroupBy(a => a.Name, StringComparer.Ordinal))
        {
            var first = group.First();
            if (group.FirstOrDefault(a => Plain(a.Meaning!) != Plain(first.Meaning!)) is { } second)
            {
                context.Bag.Add(new Finding(Rule, context.Source, second.Origin, $"`{second.Name}` is explained twice: as \"{first.Meaning}\" and as \"{second.Meaning}\"")
                {
                    Help = "keep the meaning that the rows use, and give the other an abbreviation of its own",
                    Labels = [new Label(first.Origin, "the other meaning")],
                });
            }
        }
    }

    private static string Plain(string words) => string.Concat(words.Where(char.IsLetterOrDigit)).ToLowerInvariant();
}
