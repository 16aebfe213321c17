using PatternForge.Core.Findings;

namespace PatternForge.Core.Checks;

/// <summary>Finds entries of `measured` that speak of a measurement, piece, row or gauge that the pattern does not have.</summary>
internal sealed class MeasuredNotThere : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF617", "measured-not-there", Area.Gauge, Severity.Warning,
        "`measured` names something that the pattern does not have.",
        "Under `measured` stands which piece has which of the finished measurements: `bust: Back + Front`, `circumference: Body after Rnd 6`, `length: rows of Body`. The measurement is one of those under `finished`, the piece a heading with rows under it, the row a label there, the gauge one of the pattern's gauges.")
    {
        Bad = """
            ---
            title: Harbour hat
            sizes: one size
            finished: {circumference: 50 cm}
            measured: {circumference: Crwn}
                                      ^^^^
            gauge: 20 sts and 28 rounds = 10 cm in stockinette on 4 mm, blocked
            ---

            ## Crown

            CO 100 sts. Join in the round.
            """,
        Good = """
            ---
            title: Harbour hat
            sizes: one size
            finished: {circumference: 50 cm}
            measured: {circumference: Crown}
            gauge: 20 sts and 28 rounds = 10 cm in stockinette on 4 mm, blocked
            ---

            ## Crown

            CO 100 sts. Join in the round.
            """,
    };

    public override void Run(CheckContext context)
    {
        var facts = context.Facts;
        foreach (var measured in facts.Measured)
        {
            if (PieceMeasures.Find(facts.Finished, measured.Name) is null)
            {
                if (!context.IsExcused("finished", "sizes"))
                {
                    Tell($"`{measured.Name}` is none of the finished measurements", measured.Name, facts.Finished.Select(m => m.Name));
                }
            }
            else if (measured.Gauge is { } gauge && PieceWidth.Called(facts.Gauges, gauge) is null)
            {
                Tell($"`{gauge}` is none of the pattern's gauges", gauge, facts.Gauges.Select(g => g.Name ?? g.Stitch).OfType<string>());
            }
            else
            {
                foreach (var share in measured.Pieces)
                {
                    var lines = PieceWidth.LinesOf(context, share.Piece);
                    if (lines.IsEmpty)
                    {
                        Tell($"no piece is called `{share.Piece}`", share.Piece, PieceWidth.Pieces(context));
                    }
                    else if (share.After is { } label && !lines.Any(l => string.Equals(l.Label, label, StringComparison.OrdinalIgnoreCase)))
                    {
                        Tell($"`{share.Piece}` has no row `{label}`", label, lines.Select(l => l.Label).Where(l => l.Length > 0));
                    }
                }
            }

            void Tell(string message, string said, IEnumerable<string> known)
            {
                string[] words = [.. known.Distinct(StringComparer.OrdinalIgnoreCase)];
                var near = Suggest.Nearest(said, words, 1);
                var listed = words.Length == 0 ? null : $"there are {string.Join(", ", words.Take(8).Select(w => $"`{w}`"))}";
                context.Bag.Add(Rule, measured.Origin, message, near.Count > 0 ? $"did you mean `{near[0]}`?" : listed);
            }
        }
    }
}
