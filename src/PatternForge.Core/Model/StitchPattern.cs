using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>
/// A named stitch pattern: a section whose rows repeat over a multiple of stitches ("Lace panel, multiple of 6 + 2"), to be worked elsewhere by name.
/// </summary>
/// <param name="Name">What it is called, as its heading says.</param>
/// <param name="Section">The number of its section in the body, from 1.</param>
/// <param name="Multiple">Stitches of one repeat; 0 for a panel, which has one width.</param>
/// <param name="Plus">Stitches beside the repeats; the width of a panel.</param>
/// <param name="Origin">Where the multiple is stated.</param>
public sealed record StitchPattern(string Name, int Section, int Multiple, int Plus, TextSpan Origin)
{
    /// <summary>Repeats that its own rows are worked over, to see that they come out.</summary>
    private const int RepeatsTried = 2;

    /// <summary>Chains to add for the foundation, in crochet ("add 2 for base chain"); 0 for none.</summary>
    public int Chains { get; init; }

    /// <summary>The stitches that its own rows are worked over where no cast-on stands among them.</summary>
    public int Least => (Multiple * RepeatsTried) + Plus;

    /// <summary>True when it can be worked over so many stitches.</summary>
    public bool Fits(int stitches) => Multiple == 0 ? stitches == Plus : stitches > 0 && stitches >= Plus && (stitches - Plus) % Multiple == 0;

    /// <summary>The nearest numbers of stitches that it can be worked over: below and above; the first is null where there is none.</summary>
    public (int? Below, int Above) Nearest(int stitches)
    {
        if (Multiple == 0)
        {
            return (stitches > Plus ? Plus : null, Plus);
        }

        var repeats = Math.Max(0, stitches - Plus) / Multiple;
        var below = Plus + (repeats * Multiple);
        return (below > 0 && below <= stitches ? below : null, below > stitches ? below : below + Multiple);
    }

    /// <summary>Its multiple as the trade writes it: "6 + 2", "2", "12" for a panel of 12 stitches.</summary>
    public string InTradeForm => Multiple == 0 ? $"{Plus}" : Plus == 0 ? $"{Multiple}" : $"{Multiple} + {Plus}";
}

/// <summary>A row of a stitch pattern worked over part of a row: "work Row 1 of Lace panel over next 38 sts".</summary>
/// <param name="Origin">Where it stands.</param>
/// <param name="Pattern">The pattern.</param>
/// <param name="Row">Which row of it; null for the next one, whichever that is.</param>
/// <param name="Over">Over how many stitches; null where <paramref name="To"/> says how far.</param>
/// <param name="To">Up to where; null where a number, or the width of the panel, tells.</param>
public sealed record PatternRowStep(TextSpan Origin, StitchPattern Pattern, int? Row, Amount? Over, Target? To) : Step(Origin);
