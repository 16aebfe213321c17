using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>
/// Reads a starting line (NOTATION 4b): "Begin with 34 (38, 42) sts.", "Begin with 80 sts, in the round, with markers after sts 14, 40 and 54.",
/// "... with 10 sts on each of 2 needles".
/// </summary>
internal static class StartReader
{
    /// <summary>The starting line that begins at a phrase, and the last node it takes; null when it is something else.</summary>
    public static StartStep? TryRead(ImmutableArray<StepNode> nodes, int at, RowContext context, out int last)
    {
        last = at;
        var atoms = ImmutableArray.CreateBuilder<Atom>();
        for (var i = at; i < nodes.Length && nodes[i] is PhraseNode phrase && (i == at || phrase.Before is Separator.Comma or Separator.None); i++)
        {
            atoms.AddRange(phrase.Atoms);
            last = i;
        }

        var c = new PhraseCursor(Vocabulary.Normalise(atoms.ToImmutable()));
        if (!c.EatAll("beg", "with") || c.EatNumber() is not { } number)
        {
            return null;
        }

        if (!c.Eat("st"))
        {
            return context.IsCrochet ? Parts(c, number, context) : null;
        }

        var step = new StartStep(c.SpanFrom(0), context.AmountOf(number));
        while (!c.IsDone)
        {
            if (c.EatAll("in", "the", "rnd"))
            {
                step = step with { InTheRound = true };
            }
            else if (c.EatAll("in", "row"))
            {
                step = step with { InTheRound = false };
            }
            else if (c.Eat("with") || c.Eat("and"))
            {
                c.Eat("a");
                if (c.Eat("m"))
                {
                    if (!(c.Eat("after") && c.Eat("st")))
                    {
                        return null;
                    }

                    var markers = ImmutableArray.CreateBuilder<Amount>();
                    while (c.EatNumber() is { } place)
                    {
                        markers.Add(context.AmountOf(place));
                        c.Eat("and");
                    }

                    step = step with { Markers = markers.ToImmutable() };
                }
                else if (NeedleCounts(c, context) is { } counts)
                {
                    step = step with { Needles = counts };
                }
                else if (c.EatNumber() is { } each && c.Eat("st") && c.EatAll("on", "each", "of") && c.EatNumber() is { } needles && c.Eat("needle"))
                {
                    var amount = context.AmountOf(each);
                    var count = (int)Math.Clamp(needles.Number?.Values[0] ?? 1, 1, 8);
                    step = step with { Needles = [.. Enumerable.Repeat(amount, count)] };
                }
                else
                {
                    return null;
                }
            }
            else
            {
                return null;
            }
        }

        return step with { Origin = c.SpanFrom(0) };
    }

    /// <summary>"15, 30 and 15 sts on needles 1, 2 and 3".</summary>
    private static ImmutableArray<Amount>? NeedleCounts(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var counts = ImmutableArray.CreateBuilder<Amount>();
        while (c.EatNumber() is { } count && counts.Count < 8)
        {
            counts.Add(context.AmountOf(count));
            c.Eat("and");
        }

        if (counts.Count < 2 || !c.Eat("st") || !c.EatAll("on", "needle") || !c.IsNumber())
        {
            c.At = start;
            return null;
        }

        while (c.EatNumber() is not null)
        {
            c.Eat("and");
        }

        return counts.ToImmutable();
    }

    /// <summary>"Begin with 24 dc and 12 ch-2 sps": stitches and spaces by kind.</summary>
    private static StartStep? Parts(PhraseCursor c, Lexeme number, RowContext context)
    {
        var parts = ImmutableArray.CreateBuilder<StartPart>();
        var stitches = new int?[context.SizeCount];
        Array.Fill(stitches, 0);
        bool? ring = null;
        for (var next = number; next is not null; next = c.EatNumber())
        {
            var amount = context.AmountOf(next);
            if (MeshReader.IsUnit(c))
            {
                c.At++;
                parts.Add(new StartPart(MeshReader.Unit, null, amount));
                stitches = [.. stitches.Select((n, i) => n + amount[i])];
                continue;
            }

            var named = context.IsCrochet && c.Is("pop|pops|pc|cl|cls|popcorn|popcorns|cluster|clusters|bobble|bobbles|puff|puffs") ? new Thing(ThingKind.Named, StitchBook.OneStitch(c.Peek()!.Norm)) : (Thing?)null;
            if ((ThingReader.TryRead(c, context) ?? named) is not { } thing)
            {
                return null;
            }

            c.At += thing == named ? 1 : 0;

            parts.Add(new StartPart(thing.Named, thing.Kind == ThingKind.Space ? thing.Length ?? 1 : null, amount));
            for (var i = 0; i < stitches.Length; i++)
            {
                stitches[i] = thing.Kind == ThingKind.Space ? stitches[i] : stitches[i] + amount[i];
            }

            c.Eat("and");
            if (c.EatAll("in", "the", "rnd"))
            {
                ring = true;
            }

            c.Eat("and");
        }

        return c.IsDone ? new StartStep(c.SpanFrom(0), new Amount(PerSize.Each([.. stitches]), c.SpanFrom(0))) { Parts = parts.ToImmutable(), InTheRound = ring } : null;
    }
}
