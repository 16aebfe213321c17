using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads what stands behind a bracket of crochet stitches: the place that all of them go into, or how far they are repeated.</summary>
internal static class CrochetGroupReader
{
    /// <summary>What the words before a bracket call it: "working" for what is done in place of something, else the group's name; null for other words.</summary>
    public static string? Introduces(PhraseCursor cursor)
    {
        if (cursor.Lexemes is [var only] && only.Atom.Text.Equals("working", StringComparison.OrdinalIgnoreCase))
        {
            return "working";
        }

        cursor.Eat("work|make");
        cursor.Eat("a|an|1");
        cursor.EatNumber();
        var name = cursor.Peek();
        return cursor.Eat("shell|cluster|fan|group|v-st|corner|scallop|petal") && (cursor.IsDone || (cursor.Eat("of") && cursor.IsDone)) ? name!.Norm : null;
    }

    /// <summary>"sc in each st around, (sc, ch 2, sc) in each corner sp": where a whole row has been told, what goes into each of something else goes there instead.</summary>
    public static void Together(List<Step> steps)
    {
        for (var i = 1; i < steps.Count; i++)
        {

            if (steps.Take(i).LastOrDefault(s => s is not (RemarkStep or InsteadStep)) is not CrochetStep { Operation.Id: not "sl st", Place: { Kind: PlaceKind.Each } whole })
            {
                continue;
            }

            steps[i] = steps[i] switch
            {
                ShellStep { Place.Kind: PlaceKind.Each, Times: null } shell when shell.Place.Thing != whole.Thing => new InsteadStep(shell.Origin, shell.Body, shell.Place.Thing),
                CrochetStep { Operation.Id: not "sl st", Place: { Kind: PlaceKind.Each, Thing: { Kind: ThingKind.Space or ThingKind.Named } or { IsCorner: true } } other } stitch when other.Thing != whole.Thing => new InsteadStep(stitch.Origin, [stitch with { Place = null }], other.Thing),
                var step => step,
            };
        }
    }

    /// <summary>"3 dc, ch 2, 3 dc in next corner" without a bracket: all of it goes into that space.</summary>
    public static void InOneSpace(List<Step> steps)
    {
        for (var i = 2; i < steps.Count; i++)
        {
            if (steps[i] is CrochetStep { Each: not null, Place: { Kind: PlaceKind.Next, Count: null, Thing: { Kind: ThingKind.Space, IsCorner: true } } corner } last
                && steps[i - 1] is ChainStep chain && steps[i - 2] is CrochetStep { Each: not null, Place: null } first && first.Operation == last.Operation)
            {
                steps.RemoveRange(i - 1, 2);
                steps[i - 2] = new ShellStep(first.Origin.Cover(last.Origin), [first, chain, last with { Place = null }], corner);
                i--;
            }
        }
    }

    /// <summary>"Work in pattern as established, sk first sc of each row": the first is skipped before the rest is worked.</summary>
    public static void FirstSkipped(List<Step> steps)
    {
        if (steps.FindAll(s => s is not (RemarkStep or SentenceStep)) is [EvenRowsStep { Rows: null, Named: null } even, SkipStep { Place: { Kind: PlaceKind.First, Count: null } } skip])
        {
            steps[steps.IndexOf(even)] = skip;
            steps[steps.LastIndexOf(skip)] = new RunStep(even.Origin, StitchBook.InPattern, new Target(Extent.End));
        }
    }

    /// <summary>"[3 dc, ch 2] 3 times into ring": where else.</summary>
    public static void EatRing(PhraseCursor cursor, RowContext context)
    {
        var start = cursor.At;
        if (!context.IsCrochet || PlaceReader.TryRead(cursor, context) is not { Kind: PlaceKind.Ring })
        {
            cursor.At = start;
        }
    }

    /// <summary>The bracket's step, or null with the cursor unmoved when the words behind it are of another kind.</summary>
    public static Step? TryRead(TextSpan span, ImmutableArray<Step> body, PhraseCursor cursor, RowContext context)
    {
        var start = cursor.At;
        var isRepeat = cursor.Eat("rep");
        if (isRepeat && cursor.Eat("around|across"))
        {
            return new RepeatStep(span.Cover(cursor.SpanFrom(start)), body) { To = new Target(Extent.End) };
        }

        if (CrochetReader.TryTarget(cursor, context) is { } last)
        {
            return new RepeatStep(span.Cover(cursor.SpanFrom(start)), body) { To = last };
        }

        if (!cursor.Is("across|around|to|until") && !isRepeat && PlaceReader.TryRead(cursor, context) is { } place)
        {
            var shells = ImmutableArray.CreateBuilder<Step>();
            shells.Add(new ShellStep(span.Cover(cursor.SpanFrom(start)), body, place));
            while (cursor.Is("and") && cursor.Peek(1) is not null)
            {
                var back = cursor.At;
                cursor.At++;
                if (PlaceReader.TryRead(cursor, context) is not { } next)
                {
                    cursor.At = back;
                    break;
                }

                shells.Add(new ShellStep(shells[0].Origin, body, next));
            }

            if (TimesReader.TryRead(cursor, context) is { } often)
            {
                return new GroupStep(shells[0].Origin, shells.ToImmutable(), often);
            }

            return shells.Count == 1 ? shells[0] : new GroupStep(shells[0].Origin, shells.ToImmutable(), null);
        }

        cursor.At = isRepeat ? start + 1 : start;
        return null;
    }
}
