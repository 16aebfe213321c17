using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Work;

namespace PatternForge.Core.Checks;

/// <summary>A ball whose lower half does not mirror its upper half.</summary>
internal sealed class BallHalvesDiffer : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF633", "ball-halves-differ", Area.Gauge, Severity.Note,
        "The two halves of a ball differ.",
        "A ball is closed through the same counts through which it grew, in reverse. Only pieces that are called a ball or a sphere are looked at, and only where every round is counted; the last round may be left out where the yarn is drawn through it.")
    {
        Bad = """
            ---
            title: Harbour ball
            craft: crochet
            terms: us
            sizes: one size
            ---

            ## Ball

            With A, make a magic ring.

            Rnd 1: 6 sc in ring. (6 sc)

            Rnd 2: 2 sc in each st around. (12 sc)

            Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)

            Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24 sc)

            Rnds 5-8: Sc in each st around. (24 sc)

            Rnd 9: *Sc in next st, sc2tog; rep from * around. (16 sc)
            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^

            Rnd 10: Sc2tog around. (8 sc)
            """,
        Good = """
            ---
            title: Harbour ball
            craft: crochet
            terms: us
            sizes: one size
            ---

            ## Ball

            With A, make a magic ring.

            Rnd 1: 6 sc in ring. (6 sc)

            Rnd 2: 2 sc in each st around. (12 sc)

            Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)

            Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24 sc)

            Rnds 5-8: Sc in each st around. (24 sc)

            Rnd 9: *Sc in next 2 sts, sc2tog; rep from * around. (18 sc)

            Rnd 10: *Sc in next st, sc2tog; rep from * around. (12 sc)

            Rnd 11: Sc2tog around. (6 sc)
            """,
        Sources = [Reference.Sources.CommonPractice],
    };

    public override void Run(CheckContext context)
    {
        foreach (var rounds in RoundShapes.Balls(context))
        {
            for (var size = 0; size < context.Facts.Sizes.Count; size++)
            {
                if (Differ(rounds, size) is not { } line)
                {
                    continue;
                }

                var (up, down) = Halves(rounds, size);
                context.Bag.Add(new Finding(Rule, context.Source, line.Origin, $"the ball grows by {string.Join(", ", up.Select(h => h.Count))} and closes by {string.Join(", ", down.Select(h => h.Count).Reverse())}: its halves differ")
                {
                    Help = "a ball closes through the same counts by which it grew; if it is meant to be longer at one end, another heading than a ball says so",
                });
                break;
            }
        }
    }

    /// <summary>The counts on the way to the widest round and those behind it, both from the ends inwards.</summary>
    private static ((int Count, WorkedLine Line)[] Up, (int Count, WorkedLine Line)[] Down) Halves(ImmutableArray<WorkedLine> rounds, int size)
    {
        var most = rounds.Max(l => l.After[size] ?? 0);
        var counts = rounds.Select(l => (Count: l.After[size] ?? 0, Line: l)).ToArray();
        return ([.. counts.TakeWhile(c => c.Count < most)], [.. counts.Reverse().TakeWhile(c => c.Count < most)]);
    }

    private static WorkedLine? Differ(ImmutableArray<WorkedLine> rounds, int size)
    {
        if (rounds.Any(l => l.After[size] is not > 0 || (l.Rows[size] != 1 && l.Before[size] != l.After[size])))
        {
            return null;
        }

        // From the widest round outwards; the last round may be drawn together without being worked.
        var (up, down) = Halves(rounds, size);
        (up, down) = ([.. up.Reverse()], [.. down.Reverse()]);
        for (var i = 0; i < up.Length && i < down.Length; i++)
        {
            if (up[i].Count != down[i].Count)
            {
                return down[i].Line;
            }
        }

        return down.Length > 0 && up.Length > 1 && Math.Abs(up.Length - down.Length) > 1 ? down[^1].Line : null;
    }
}
