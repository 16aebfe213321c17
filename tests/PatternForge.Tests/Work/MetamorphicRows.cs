using System.Collections.Immutable;
using CsCheck;
using PatternForge.Core.Stitches;

namespace PatternForge.Tests.Work;

/// <summary>Makes rows with known counts: knitting, and crochet rows and rounds.</summary>
internal static class MetamorphicRows
{
    private static readonly MadeCraft Knitting = new(
        "knitting",
        [
            new("k1", 1, 1), new("p1", 1, 1), new("sl 1", 1, 1), new("k1 tbl", 1, 1), new("k2tog", 2, 1), new("ssk", 2, 1), new("p2tog", 2, 1), new("skp", 2, 1), new("k3tog", 3, 1), new("sk2p", 3, 1), new("cdd", 3, 1),
            new("kfb", 1, 2), new("pfb", 1, 2), new("m1", 0, 1), new("m1L", 0, 1), new("m1R", 0, 1), new("k1, {yo}, k1", 2, 3), new("k1, {yo}, k2tog", 3, 3), new("ssk, {yo}, k1", 3, 3), new("p1, {yop}, p1", 2, 3), new("p1, {yopk}, k1", 2, 3),
            new("k1, {yokp}, p1", 2, 3), new("C4F", 4, 4), new("C6B", 6, 6), new("k1, p1", 2, 2), new("sl 1, k1, psso", 2, 1), new("sl 1, k2tog, psso", 3, 1), new("k1, m1, k1", 2, 3), new("p2tog tbl", 2, 1),
        ],
        ["k#", "p#", "k#", "sl #"],
        ("k", "k#"),
        new("k1", 1, 1),
        new("m1", 0, 1));

    private static readonly MadeCraft Crochet = new(
        "crochet",
        [
            new("{sc} in next st", 1, 1), new("2 {sc} in next st", 1, 2), new("3 {dc} in next st", 1, 3), new("{hdc} in next st", 1, 1), new("{dc} in next 2 sts", 2, 2), new("{tr} in each of next 2 sts", 2, 2), new("{sc2tog}", 2, 1),
            new("{dc2tog}", 2, 1), new("{dc3tog}", 3, 1), new("{sk} next st, {dc} in next st", 2, 1), new("inc", 1, 2), new("{sc2tog} over next 2 sts", 2, 1), new("2 {hdc} in next st", 1, 2), new("({hdc}, {dc}, {hdc}) in next st", 1, 3),
            new("{sk} 2 sts, 5 {dc} in next st, {sk} 2 sts, {sc} in next st", 6, 6), new("{fpdc} around next st", 1, 1),
        ],
        ["{sc} in next # sts", "{sc} in each of next # sts", "{dc} in next # sts", "# {sc}"],
        ("{sc} in each st", "{sc} in next # sts"),
        new("{sc} in next st", 1, 1),
        new("2 {sc} in next st", 1, 2));

    /// <summary>Knitted rows and rounds.</summary>
    public static Gen<MadeRow> Knitted { get; } = Rows(Knitting);

    /// <summary>Crocheted rows and rounds.</summary>
    public static Gen<MadeRow> Crocheted { get; } = Rows(Crochet);

    /// <summary>One of several values.</summary>
    public static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    /// <summary>Names in the terms of a dialect: crochet as the table of operations has them, knitting where the two differ.</summary>
    public static IReadOnlyDictionary<string, string> NamesIn(Dialect terms)
    {
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var operation in OperationTable.All(Craft.Crochet))
        {
            if (OperationTable.NameIn(operation, terms) is { } name)
            {
                names[operation.Id] = name;
            }
        }

        names["sk"] = terms == Dialect.Uk ? "miss" : "skip";
        (names["yo"], names["yop"], names["yopk"], names["yokp"]) = terms == Dialect.Uk ? ("yfwd", "yrn", "yon", "yfrn") : ("yo", "yo", "yo", "yo");
        (names["bo"], names["stst"]) = terms == Dialect.Uk ? ("cast off", "stocking stitch") : ("bind off", "stockinette stitch");
        return names;
    }

    /// <summary>Some number for each size: mostly growing with the sizes, as in real patterns.</summary>
    private static Gen<ImmutableArray<int>> PerSize(int sizes, int from, int to) =>
        Gen.OneOf(
            Gen.Int[from, to].Select(n => Enumerable.Repeat(n, sizes).ToImmutableArray()),
            Gen.Select(Gen.Int[from, to], Gen.Int[1, 3]).Select((n, step) => Enumerable.Range(0, sizes).Select(i => n + (step * i)).ToImmutableArray()),
            Gen.Int[from, to].Array[sizes].Select(ImmutableArray.Create));

    private static Gen<MadeRow> Rows(MadeCraft craft) =>
        Gen.Select(OneOf(1, 1, 2, 3, 4, 9), Gen.Bool).SelectMany((sizes, round) =>
        {
            var stitch = Gen.Int[0, craft.Stitches.Length - 1].Select(i => (MadePart)craft.Stitches[i]);
            var run = Gen.Select(Gen.Int[0, craft.Runs.Length - 1], PerSize(sizes, 2, 9)).Select((i, n) => (MadePart)new MadeRun(craft.Runs[i], n));
            var leaf = Gen.OneOf(stitch, stitch, run);
            var unit = leaf.Array[1, 4].Select(p => ImmutableArray.Create(p)).Where(p => Enumerable.Range(0, sizes).All(s => MadePart.Takes(p, s) > 0));
            var inner = Times(unit, TimesForm.Times, TimesForm.Cross);
            var nested = Gen.Select(leaf.Array[0, 2], inner, leaf.Array[0, 2]).Select((a, b, c) => ImmutableArray.Create<MadePart>([.. a, b, .. c]));
            var repeated = Gen.OneOf(unit, unit, nested);
            var edge = Gen.OneOf(leaf, leaf, inner).Array[0, 3].Select(p => ImmutableArray.Create(p));
            var tail = leaf.Array[0, 2].Select(p => ImmutableArray.Create(p)).Where(p => p.IsEmpty || Enumerable.Range(0, sizes).All(s => MadePart.Takes(p, s) > 0));
            var middle = Gen.OneOf(
                Times(repeated, TimesForm.Times, TimesForm.Cross, TimesForm.MoreFromStar).Select(p => ImmutableArray.Create(p)),
                Gen.Select(Times(repeated, TimesForm.Times), edge).Select((p, after) => after.Insert(0, p)),
                Gen.Select(repeated, PerSize(sizes, 1, 7), tail, OneOf(ToEndForm.Star, ToEndForm.StarAndComma, ToEndForm.Bracket)).Select((p, n, t, form) => ImmutableArray.Create<MadePart>(new MadeToEnd(p, n, t, form))),
                Gen.Select(PerSize(sizes, 1, 30), tail).Select((n, t) => ImmutableArray.Create<MadePart>(new MadePlainTo(craft.PlainTo.Words, craft.PlainTo.One, n, t))));
            return Gen.Select(edge, middle, Gen.Int[0, MadeCraft.StatedForms - 1]).Select((before, rest, stated) => new MadeRow(craft, sizes, round, [.. before, .. rest], stated))
                .Where(row => row.After.All(n => n > 3) && row.Before.All(n => n > 1));

            Gen<MadePart> Times(Gen<ImmutableArray<MadePart>> parts, params TimesForm[] forms) =>
                Gen.Select(parts, PerSize(sizes, 1, 6), OneOf(forms)).Select((p, n, form) => (MadePart)new MadeTimes(p, n, form));
        });
}
