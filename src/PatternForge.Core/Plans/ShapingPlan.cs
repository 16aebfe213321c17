using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Core.Plans;

/// <summary>On which rows may be shaped.</summary>
public enum ShapedRows
{
    /// <summary>On every other row at most: right-side rows of flat work.</summary>
    EveryOther,

    /// <summary>On any row.</summary>
    Any,
}

/// <summary>Where a row is shaped.</summary>
public enum ShapingPlace
{
    /// <summary>At both ends: half of the stitches at each.</summary>
    BothEnds,

    /// <summary>At the end of the row alone.</summary>
    OneEnd,

    /// <summary>Before and behind each marker; in crochet at places as many stitches apart, which are counted out.</summary>
    Markers,

    /// <summary>At the spaces of chains that are the corners of crochet.</summary>
    Corners,
}

/// <summary>Shaping rows at one pace: "every 4th row 6 times".</summary>
/// <param name="Every">Every how many rows.</param>
/// <param name="Times">How many times.</param>
public readonly record struct Stretch(int Every, int Times);

/// <summary>What a shaping plan is asked for.</summary>
/// <param name="From">Stitches before.</param>
/// <param name="To">Stitches after.</param>
/// <param name="Rows">Rows that there are.</param>
public sealed record ShapingAsk(int From, int To, int Rows)
{
    /// <summary>Stitches that one shaping row adds or takes away.</summary>
    public int PerTime { get; init; } = 2;

    /// <summary>On which rows.</summary>
    public ShapedRows On { get; init; } = ShapedRows.EveryOther;

    /// <summary>True where the first row is shaped at once; false where each shaping ends its interval, the last one on the last row.</summary>
    public bool BeginsNow { get; init; }

    /// <summary>Rows at the end that are to stay plain.</summary>
    public int PlainAtEnd { get; init; }

    /// <summary>True in the round.</summary>
    public bool InRound { get; init; }

    /// <summary>True to have the longer of two intervals first, so that the edge is the steeper at its beginning.</summary>
    public bool LongerFirst { get; init; }
}

/// <summary>A schedule of increases or decreases over rows.</summary>
/// <param name="Ask">What it was asked for.</param>
/// <param name="First">The first pace; no times where nothing is shaped.</param>
/// <param name="Then">The second pace, one step longer or shorter; no times where one pace is enough. A shaping in the first row itself is in neither.</param>
/// <param name="RowsAfter">Plain rows behind the last shaping row.</param>
public sealed record ShapingPlan(ShapingAsk Ask, Stretch First, Stretch Then, int RowsAfter)
{
    /// <summary>How many shaping rows.</summary>
    public int Times => First.Times + Then.Times + (Ask.BeginsNow && Ask.From != Ask.To ? 1 : 0);

    /// <summary>Stitches before, as they change with each shaping row: negative for decreases.</summary>
    public int Change => Ask.To > Ask.From ? Ask.PerTime : -Ask.PerTime;

    /// <summary>The numbers of the shaping rows, the first row of the plan being 1.</summary>
    public ImmutableArray<int> Rows
    {
        get
        {
            var rows = ImmutableArray.CreateBuilder<int>(Times);
            var at = 0;
            if (Ask.BeginsNow && Times > 0)
            {
                rows.Add(at = 1);
            }

            foreach (var every in Enumerable.Repeat(First.Every, First.Times).Concat(Enumerable.Repeat(Then.Every, Then.Times)))
            {
                rows.Add(at += every);
            }

            return rows.MoveToImmutable();
        }
    }

    /// <summary>Stitches after each shaping row.</summary>
    public ImmutableArray<int> Counts => [.. Enumerable.Range(1, Times).Select(t => Ask.From + (t * Change))];

    /// <summary>The schedule in trade words: "every 4th row 6 times, then every 6th row 3 times".</summary>
    public string Words()
    {
        var parts = new List<string>(3);
        if (Ask.BeginsNow && Times > 0)
        {
            parts.Add("next " + PlanWords.Row(Ask.InRound));
        }

        parts.AddRange(Paces());
        return parts.Count == 0 ? "work even" : string.Join(", then ", parts);
    }

    /// <summary>The whole schedule as one instruction in notation, "Dec 1 st at each end of every 4th row 6 times, then every 6th row 3 times"; null at markers and corners, which need rows of their own.</summary>
    /// <param name="place">Where is shaped.</param>
    /// <param name="edge">The edge's name where one alone is shaped: "neck edge".</param>
    public string? Sentence(ShapingPlace place, string edge = "end")
    {
        if (place is ShapingPlace.Markers or ShapingPlace.Corners || (place == ShapingPlace.BothEnds && Ask.PerTime % 2 != 0))
        {
            return null;
        }

        if (Times == 0)
        {
            return Plain(RowsAfter);
        }

        var each = place == ShapingPlace.BothEnds ? Ask.PerTime / 2 : Ask.PerTime;
        return $"{(Change > 0 ? "Inc" : "Dec")} {PlanWords.Sts(each)} at {(place == ShapingPlace.BothEnds ? "each end" : edge)} of {Words()}";
    }

    /// <summary>Rows, stitches at a time and how often, in the manner of Japanese patterns: 8-2-1, 10-2-10.</summary>
    public ImmutableArray<(int Rows, int Stitches, int Times)> List() =>
        [.. new[] { Ask.BeginsNow && Times > 0 ? new Stretch(1, 1) : default, First, Then }.Where(s => s.Times > 0).Select(s => (s.Every, Ask.PerTime, s.Times))];

    /// <summary>The schedule as lines of a pattern: plain rows, the shaping row in full, and its repeats.</summary>
    /// <param name="work">How a shaping row is worked.</param>
    public ImmutableArray<string> Lines(ShapingWork work)
    {
        if (work.IsCounted)
        {
            return Counted(work);
        }

        var lines = ImmutableArray.CreateBuilder<string>(4);
        if (Times > 0 && work.Row(Change, Ask.From) is { } row)
        {
            var name = $"{(Change > 0 ? "Inc" : "Dec")} {(Ask.InRound ? "Rnd" : "Row")}";
            var side = Ask is { InRound: false, On: ShapedRows.EveryOther } && !work.IsCrochet ? " (RS)" : "";
            var before = Ask.BeginsNow ? 0 : (First.Times > 0 ? First.Every : Then.Every) - 1;
            if (before > 0)
            {
                lines.Add(Plain(before) + ".");
            }

            lines.Add($"{name}{side}: {PlanWords.Sentence(row)} ({PlanWords.Sts(Ask.PerTime)} {(Change > 0 ? "inc'd" : "dec'd")})");
            var (first, then) = Ask.BeginsNow ? (First, Then) : First.Times > 0 ? (First with { Times = First.Times - 1 }, Then) : (First, Then with { Times = Then.Times - 1 });
            var paces = new[] { first, then }.Where(s => s.Times > 0).Select(Pace).ToArray();
            if (paces.Length > 0)
            {
                lines.Add($"Rep {name} {string.Join(", then ", paces)}. ({PlanWords.Sts(Ask.To)})");
            }
        }

        if (RowsAfter > 0)
        {
            lines.Add(Plain(RowsAfter) + ".");
        }

        return lines.ToImmutable();
    }

    // Rows that are counted out differ from each other: each stands by itself.
    private ImmutableArray<string> Counted(ShapingWork work)
    {
        var lines = ImmutableArray.CreateBuilder<string>(2 * (Times + 1));
        var (stitches, at) = (Ask.From, 0);
        foreach (var row in Rows)
        {
            if (work.Row(Change, stitches) is not { } words)
            {
                return [];
            }

            AddPlain(row - at - 1);
            (stitches, at) = (stitches + Change, row);
            lines.Add($"Next {PlanWords.Row(Ask.InRound)}: {PlanWords.Sentence(words)} ({PlanWords.Sts(stitches)})");
        }

        AddPlain(RowsAfter);
        return lines.ToImmutable();

        void AddPlain(int rows)
        {
            if (rows > 0)
            {
                lines.Add(Plain(rows) + ".");
            }
        }
    }

    private IEnumerable<string> Paces() => new[] { First, Then }.Where(s => s.Times > 0).Select(Pace);

    private string Pace(Stretch stretch) => $"{PlanWords.Every(stretch.Every, Ask.InRound)} {PlanWords.Times(stretch.Times)}";

    private string Plain(int rows) => string.Create(CultureInfo.InvariantCulture, $"Work {PlanWords.Counted(rows, PlanWords.Row(Ask.InRound))} even");
}
