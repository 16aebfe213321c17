using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>What is left plain at the ends of a row.</summary>
public enum SpreadEnds
{
    /// <summary>Worked flat: half a gap at each end, so that two pieces that are sewn together go on evenly.</summary>
    Half,

    /// <summary>Worked flat: a whole gap at each end.</summary>
    Whole,

    /// <summary>Worked in the round: the last increase or decrease ends the round.</summary>
    Round,
}

/// <summary>Increases or decreases spread over one row.</summary>
/// <param name="Stitches">Stitches before the row.</param>
/// <param name="Shaper">The increase or decrease.</param>
/// <param name="Gaps">Plain stitches before each increase or decrease, and behind the last: one more than there are increases. Edge stitches are in the first and the last.</param>
/// <param name="Edge">Edge stitches at each end.</param>
public sealed record SpreadPlan(int Stitches, Shaper Shaper, ImmutableArray<int> Gaps, int Edge)
{
    /// <summary>How many increases or decreases.</summary>
    public int Times => Gaps.Length - 1;

    /// <summary>Stitches after the row.</summary>
    public int Result => Stitches + (Times * Shaper.Change);

    /// <summary>After how many stitches of the row before each increase or decrease is done.</summary>
    public ImmutableArray<int> Places
    {
        get
        {
            var places = ImmutableArray.CreateBuilder<int>(Times);
            var at = 0;
            for (var i = 0; i < Times; i++)
            {
                places.Add(at += Gaps[i] + Shaper.Uses);
            }

            return places.MoveToImmutable();
        }
    }

    /// <summary>The stitches of the row before that belong to each increase or decrease: its gap and what it uses. Those behind the last are not in it.</summary>
    public ImmutableArray<int> Groups => [.. Gaps.Take(Times).Select(g => g + Shaper.Uses)];

    /// <summary>The row in notation, without full stop: <c>k6, M1, (k13, M1) 3 times, k6</c>.</summary>
    public string Row()
    {
        var clauses = ImmutableArray.CreateBuilder<string>(Gaps.Length);
        for (var i = 0; i < Times; i++)
        {
            clauses.Add(Gaps[i] == 0 ? Shaper.Text : $"{Shaper.PlainText(Gaps[i])}, {Shaper.Text}");
        }

        clauses.Add(Shaper.PlainText(Gaps[^1]));
        return PlanWords.Row(clauses.MoveToImmutable());
    }

    /// <summary>The row as a line of a pattern: <c>Inc Row: K6, M1, (k13, M1) 3 times, k6. (55 sts)</c>.</summary>
    public string Line(string label) => $"{label}: {PlanWords.Sentence(Row())} ({PlanWords.Sts(Result)})";

    /// <summary>The plan in a sentence.</summary>
    public string Words()
    {
        var verb = Shaper.Change > 0 ? "increase" : Shaper.Change < 0 ? "decrease" : "work";
        var inner = Gaps.Length > 2 ? $", {PlanWords.Sizes(Gaps.Skip(1).Take(Times - 1))} between" : "";
        return string.Create(CultureInfo.InvariantCulture, $"{verb} {Times} {(Times == 1 ? "time" : "times")} over {PlanWords.Sts(Stitches)}: {Gaps[0]} before the first{inner}, {Gaps[^1]} after the last; {PlanWords.Sts(Result)} after");
    }
}
