using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Tests.Work;

/// <summary>A part of a made row: what it takes and makes in each size by plain addition, and how a designer writes it.</summary>
internal abstract record MadePart
{
    public abstract int Takes(int size);

    public abstract int Makes(int size);

    public abstract string Write(MetamorphicStyle style);

    /// <summary>The same in one size, written out with no repeat and no size list.</summary>
    public abstract IEnumerable<MadePart> Unrolled(int size);

    public static int Takes(ImmutableArray<MadePart> parts, int size) => parts.Sum(p => p.Takes(size));

    public static int Makes(ImmutableArray<MadePart> parts, int size) => parts.Sum(p => p.Makes(size));
}

/// <summary>A stitch or a few of them that are always worked together: "k2tog", "{sc} in next st".</summary>
internal sealed record MadeStitch(string Words, int Taken, int Made) : MadePart
{
    public override int Takes(int size) => Taken;

    public override int Makes(int size) => Made;

    public override string Write(MetamorphicStyle style) => style.Words(Words);

    public override IEnumerable<MadePart> Unrolled(int size) => [this];
}

/// <summary>So many plain stitches, one number a size: "k5 (6, 7)"; the number stands for the <c>#</c> of the words.</summary>
internal sealed record MadeRun(string Words, ImmutableArray<int> Stitches) : MadePart
{
    public override int Takes(int size) => Stitches[size];

    public override int Makes(int size) => Stitches[size];

    public override string Write(MetamorphicStyle style) => style.Words(Words, Stitches);

    public override IEnumerable<MadePart> Unrolled(int size) => Stitches[size] == 0 ? [] : [new MadeRun(Words, [Stitches[size]])];
}

/// <summary>Ways to write that something is worked so many times.</summary>
internal enum TimesForm
{
    /// <summary>"[A] 3 times".</summary>
    Times,

    /// <summary>"[A] x 3".</summary>
    Cross,

    /// <summary>"*A; rep from * 2 more times".</summary>
    MoreFromStar,
}

/// <summary>Parts worked so many times, one number a size; never none.</summary>
internal sealed record MadeTimes(ImmutableArray<MadePart> Parts, ImmutableArray<int> Times, TimesForm Form) : MadePart
{
    public override int Takes(int size) => Takes(Parts, size) * Times[size];

    public override int Makes(int size) => Makes(Parts, size) * Times[size];

    public override string Write(MetamorphicStyle style)
    {
        var inner = style.Join(Parts);
        return Form switch
        {
            TimesForm.Cross => $"{style.Group(inner)} x {style.List(Times)}",
            TimesForm.MoreFromStar when Times.All(t => t > 1) => $"{style.Star}{inner}; rep from {style.Star.Trim()} {style.List([.. Times.Select(t => t - 1)])} more times",
            _ when Times.All(t => t == 2) => $"{style.Group(inner)} twice",
            _ => $"{style.Group(inner)} {style.List(Times)} times",
        };
    }

    public override IEnumerable<MadePart> Unrolled(int size) => Enumerable.Range(0, Times[size]).SelectMany(_ => Parts.SelectMany(p => p.Unrolled(size)));
}

/// <summary>Ways to write that something is worked as long as there are stitches.</summary>
internal enum ToEndForm
{
    /// <summary>"*A; rep from * to last 3 sts, B".</summary>
    Star,

    /// <summary>"*A, rep from * to last 3 sts, B".</summary>
    StarAndComma,

    /// <summary>"[A] to last 3 sts, B".</summary>
    Bracket,
}

/// <summary>Parts worked to the end, or until just the stitches of the tail are left.</summary>
internal sealed record MadeToEnd(ImmutableArray<MadePart> Parts, ImmutableArray<int> Times, ImmutableArray<MadePart> Tail, ToEndForm Form) : MadePart
{
    public override int Takes(int size) => (Takes(Parts, size) * Times[size]) + Takes(Tail, size);

    public override int Makes(int size) => (Makes(Parts, size) * Times[size]) + Makes(Tail, size);

    public override string Write(MetamorphicStyle style)
    {
        var inner = style.Join(Parts);
        var where = style.Until(Tail, Times.Length);
        return Form switch
        {
            ToEndForm.Bracket => $"{style.Group(inner)} {where}",
            ToEndForm.StarAndComma => $"{style.Star}{inner}{style.Comma}rep from {style.Star.Trim()} {where}",
            _ => $"{style.Star}{inner}; rep from {style.Star.Trim()} {where}",
        };
    }

    public override IEnumerable<MadePart> Unrolled(int size) =>
        Enumerable.Range(0, Times[size]).SelectMany(_ => Parts.SelectMany(p => p.Unrolled(size))).Concat(Tail.SelectMany(p => p.Unrolled(size)));
}

/// <summary>Plain stitches up to the tail: "k to last 3 sts, k2tog, k1". <paramref name="One"/> is the same for a number of stitches.</summary>
internal sealed record MadePlainTo(string Words, string One, ImmutableArray<int> Stitches, ImmutableArray<MadePart> Tail) : MadePart
{
    public override int Takes(int size) => Stitches[size] + Takes(Tail, size);

    public override int Makes(int size) => Stitches[size] + Makes(Tail, size);

    public override string Write(MetamorphicStyle style) => $"{style.Words(Words)} {style.Until(Tail, Stitches.Length)}";

    public override IEnumerable<MadePart> Unrolled(int size) => new MadeRun(One, [Stitches[size]]).Unrolled(0).Concat(Tail.SelectMany(p => p.Unrolled(size)));
}

/// <summary>A row with known counts.</summary>
/// <param name="Craft">Its craft.</param>
/// <param name="Sizes">How many sizes.</param>
/// <param name="Round">In the round, or to and fro.</param>
/// <param name="Parts">What is worked, in order; the one that goes to the end, if any, is the last.</param>
/// <param name="Stated">In which form the count stands behind it; 0 for none.</param>
internal sealed record MadeRow(MadeCraft Craft, int Sizes, bool Round, ImmutableArray<MadePart> Parts, int Stated)
{
    public ImmutableArray<int> Before => [.. Enumerable.Range(0, Sizes).Select(s => MadePart.Takes(Parts, s))];

    public ImmutableArray<int> After => [.. Enumerable.Range(0, Sizes).Select(s => MadePart.Makes(Parts, s))];

    /// <summary>True when a stitch more before its last part is taken up by plain working to the end or by a repeat over single stitches.</summary>
    public bool TakesUpAnything => Parts[^1] is MadePlainTo || (Parts[^1] is MadeToEnd all && Enumerable.Range(0, Sizes).Any(s => MadePart.Takes(all.Parts, s) == 1));

    /// <summary>True when the row cannot come out in any size with this put in before its last part, and for one reason: there is no room for it, or the stated count tells.</summary>
    public bool FailsWith(MadeStitch more)
    {
        var reasons = Enumerable.Range(0, Sizes).Select(Reason).Distinct().ToArray();
        return reasons.Length == 1 && reasons[0] > 0;

        // 0 none, 1 no room, 2 the count.
        int Reason(int size)
        {
            int? each = Parts[^1] is MadePlainTo ? 1 : Parts[^1] is MadeToEnd { Parts: var parts } && MadePart.Takes(parts, size) == 1 ? MadePart.Makes(parts, size) : null;
            var change = more.Made - (more.Taken * (each ?? 0));
            return more.Taken > 0 && each is null ? 1 : change != 0 && Stated != 0 ? 2 : 0;
        }
    }

    /// <summary>The row with one part more, at a place among its own; what its count states stays as it was.</summary>
    public string WriteWith(MadePart more, int at, MetamorphicStyle style) => Write(Parts.Insert(at, more), style);

    /// <summary>The row with one part more inside its last repeat, where that cannot come out in any size; null where there is no such repeat.</summary>
    public string? WriteWithInRepeat(MadeStitch more, MetamorphicStyle style)
    {
        var at = Parts.Length - 1;
        if (Parts[at] is not MadeToEnd)
        {
            at = Parts[at] is MadePlainTo ? -1 : Parts.ToList().FindLastIndex(p => p is MadeTimes);
        }

        MadePart? wrong = at < 0 ? null : Parts[at] switch
        {
            MadeTimes times => times with { Parts = times.Parts.Add(more) },
            MadeToEnd all when Enumerable.Range(0, Sizes).All(s => MadePart.Takes(all.Parts, s) * all.Times[s] % (MadePart.Takes(all.Parts, s) + more.Taken) != 0) => all with { Parts = all.Parts.Add(more) },
            _ => null,
        };
        return wrong is null ? null : Write(Parts.SetItem(at, wrong), style);
    }

    public string Write(MetamorphicStyle style) => Write(Parts, style);

    /// <summary>The row in one size with every repeat written out by hand.</summary>
    public MadeRow Unrolled(int size) => this with { Sizes = 1, Parts = [.. Parts.SelectMany(p => p.Unrolled(size))] };

    /// <summary>The row in one size, its repeats left as they are.</summary>
    public MadeRow In(int size) => Permuted([size]);

    /// <summary>The row with its sizes in another order.</summary>
    public MadeRow Permuted(ImmutableArray<int> order) => this with { Sizes = order.Length, Parts = Permuted(Parts, order) };

    private string Write(ImmutableArray<MadePart> parts, MetamorphicStyle style) => style.Finish(style.Join(parts), MadeCraft.State(this, style));

    private static ImmutableArray<MadePart> Permuted(ImmutableArray<MadePart> parts, ImmutableArray<int> order)
    {
        ImmutableArray<int> Of(ImmutableArray<int> values) => [.. order.Select(i => values[i])];
        return [.. parts.Select(part => part switch
        {
            MadeRun run => run with { Stitches = Of(run.Stitches) },
            MadeTimes times => times with { Parts = Permuted(times.Parts, order), Times = Of(times.Times) },
            MadeToEnd all => all with { Parts = Permuted(all.Parts, order), Times = Of(all.Times), Tail = Permuted(all.Tail, order) },
            MadePlainTo plain => plain with { Stitches = Of(plain.Stitches), Tail = Permuted(plain.Tail, order) },
            _ => part,
        })];
    }
}

/// <summary>The words of a craft that rows are made of.</summary>
/// <param name="Name">As the header says it.</param>
/// <param name="Stitches">Words of one stitch or a few, what they take and make.</param>
/// <param name="Runs">Plain stitches by number.</param>
/// <param name="PlainTo">Plain stitches up to a place, and the same by number.</param>
/// <param name="One">One plain stitch, to put into a row.</param>
/// <param name="More">An increase that takes nothing of what is there, or takes one stitch; what it adds is one.</param>
internal sealed record MadeCraft(
    string Name, ImmutableArray<MadeStitch> Stitches, ImmutableArray<string> Runs, (string Words, string One) PlainTo, MadeStitch One, MadeStitch More)
{
    public const int StatedForms = 14;

    /// <summary>The count as the row states it.</summary>
    public static string State(MadeRow row, MetamorphicStyle style)
    {
        var (after, before) = (row.After, row.Before);
        var list = style.List(after);
        int[] changes = [.. after.Zip(before, (a, b) => a - b).Distinct()];
        var change = changes.Length == 1 && changes[0] != 0 && row.Stated == 12
            ? string.Create(CultureInfo.InvariantCulture, $". {Math.Abs(changes[0])} st{(Math.Abs(changes[0]) == 1 ? "" : "s")} {(changes[0] < 0 ? $"dec{style.Apostrophe}d" : $"inc{style.Apostrophe}d")}")
            : null;
        return change ?? row.Stated switch
        {
            0 => "",
            1 => $". {list} sts",
            2 => $" {style.Dash} {list} sts",
            3 => $" ({list} sts)",
            4 => $". ({list} sts)",
            5 => $" [{list} sts]",
            6 => $" = {list} sts",
            7 => $"; {list} sts",
            8 => $". {list} sts rem",
            9 => $"{style.Comma}{list} sts",
            10 => $". {list} stitches",
            11 => $". You should now have {list} sts",
            13 => $" {style.Dash} {list} sts total",
            _ => $". {list} sts",
        };
    }
}
