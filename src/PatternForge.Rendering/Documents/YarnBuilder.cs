using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>Makes the yarns and the table of amounts.</summary>
internal static class YarnBuilder
{
    private static readonly ImmutableArray<(string Unit, Func<Need, decimal?> Read)> Columns =
    [
        ("m", n => n.Metres),
        ("yd", n => n.Metres / Unit.Yard.InBase),
        ("g", n => n.Grams),
        ("balls", n => n.Balls),
        ("m left", n => n.Left),
    ];

    private static readonly ImmutableArray<(string Unit, Func<Need, decimal?> Read)> InYards =
    [
        ("yd", n => n.Metres / Unit.Yard.InBase),
        ("oz", n => n.Grams / Unit.Ounce.InBase),
        ("balls", n => n.Balls),
        ("yd left", n => n.Left is { } left ? Math.Floor(left / Unit.Yard.InBase) : null),
    ];

    private static ImmutableArray<(string Unit, Func<Need, decimal?> Read)> ColumnsIn(UnitSystem? only) =>
        only switch { UnitSystem.Imperial => InYards, UnitSystem.Metric => Columns.RemoveAt(1), _ => Columns };

    // Ounces go up to the next quarter, all others to the next whole one.
    private static string Up(decimal value, string unit) => unit is "oz" ? TradeSteps.Number(new Quantity(Math.Ceiling(Math.Round(value * 4, 6)) / 4, Unit.Ounce), Unit.Ounce) : Up(value);

    private sealed record Need(decimal? Metres, decimal? Grams, decimal? Balls)
    {
        /// <summary>The whole metres that are left of the last ball; null where no length was asked for.</summary>
        public decimal? Left { get; init; }
    }

    /// <summary>One yarn.</summary>
    public static YarnView Build(Yarn yarn, int sizes, decimal margin = YarnEstimate.UsualMargin, UnitSystem? only = null) => new()
    {
        Label = Wording.Said(yarn.Label),
        Name = Wording.Said(yarn.Name) ?? "Yarn of your choice",
        Fibre = Wording.Said(yarn.Fibre),
        Weight = Wording.Weight(yarn.WeightClass, yarn.Weight) is { } weight ? Wording.Capital(weight) : null,
        PutUp = PutUp(yarn.PutUpMass, yarn.PutUpLength, only),
        Grist = Grist(yarn.PutUpMass, yarn.PutUpLength, only),
        Needs = sizes == 1 ? OneSize(NeedOf(yarn, 0), BallsOf(yarn), only) : Needs(yarn, sizes, only),
        Strands = yarn.Strands > 1 ? $"{yarn.Strands} strands held together" : null,
        Estimate = Estimate(yarn, margin),
        Colours = [.. yarn.Colours.Select(Wording.Said).OfType<string>()],
        Alternatives = [.. yarn.Alternatives.Select(a => new AlternativeView
        {
            Name = a.Name,
            Note = Wording.Said(a.Note),
            PutUp = PutUp(a.PutUpMass, a.PutUpLength, only),
            Grist = Grist(a.PutUpMass, a.PutUpLength, only),
            Needs = yarn.EstimatedBy is null ? null : Instead(yarn, a, sizes, only),
        })],
    };

    /// <summary>"Worked out from what the sample took (412 g), by the stitches of each size; 10 % are added. It may be out by 5 %."</summary>
    private static string? Estimate(Yarn yarn, decimal margin)
    {
        if (yarn.EstimatedBy is not { } by)
        {
            return null;
        }

        var rough = by.Basis == AmountBasis.Published ? "A rough amount: w" : "W";
        var added = margin == 0 ? "nothing is added" : string.Create(CultureInfo.InvariantCulture, $"{margin * 100:0.#} % are added");
        return string.Create(CultureInfo.InvariantCulture, $"{rough}orked out from {by.Method}; {added}. The likely error is {by.LikelyError * 100:0.#} %.");
    }

    /// <summary>The amounts of all yarns in several sizes; null when none is known, or when there is one size, whose amounts stand with the yarns.</summary>
    public static AmountsView? Amounts(PatternFacts facts, UnitSystem? only = null)
    {
        var sizes = facts.Sizes;
        if (sizes.Count == 1)
        {
            return null;
        }

        var yarns = new List<AmountYarnView>();
        var units = new List<string>();
        var rows = sizes.Names.Select(_ => new List<string>()).ToArray();
        foreach (var yarn in facts.Yarns)
        {
            var needs = Enumerable.Range(0, sizes.Count).Select(i => NeedOf(yarn, i)).ToArray();
            var used = ColumnsIn(only).Where(c => needs.Any(n => c.Read(n) is not null)).ToArray();
            if (used.Length == 0)
            {
                continue;
            }

            yarns.Add(new AmountYarnView { Name = Wording.Said(yarn.Label) ?? Wording.Said(yarn.Name) ?? "Yarn", Columns = used.Length });
            units.AddRange(used.Select(c => c.Unit is "balls" ? BallsOf(yarn) : c.Unit));
            for (var i = 0; i < rows.Length; i++)
            {
                rows[i].AddRange(used.Select(c => c.Read(needs[i]) is { } value ? Up(value, c.Unit) : Wording.None));
            }
        }

        return yarns.Count == 0 ? null : new AmountsView
        {
            Sentences = [.. rows.Select((cells, i) => Sentence(SizesBuilder.NameOf(sizes, i), cells, yarns, units))],
            Yarns = [.. yarns],
            Units = [.. units],
            Rows = [.. rows.Select((cells, i) => new AmountRowView { Size = SizesBuilder.NameOf(sizes, i), Cells = [.. cells] })],
        };
    }

    // "Size S: MC 300 m, 329 yd, 150 g, 2 balls; CC 40 m."
    private static string Sentence(string size, List<string> cells, List<AmountYarnView> yarns, List<string> units)
    {
        var (said, at) = (new List<string>(), 0);
        foreach (var yarn in yarns)
        {
            var amounts = Enumerable.Range(at, yarn.Columns).Where(i => cells[i] != Wording.None).Select(i => Counted(cells[i], units[i]));
            said.Add((yarns.Count > 1 ? yarn.Name + " " : "") + string.Join(", ", amounts));
            at += yarn.Columns;
        }

        return $"Size {size}: {string.Join("; ", said)}.";
    }

    /// <summary>"300 m, 329 yd, 150 g, 2 balls".</summary>
    private static string? OneSize(Need need, string balls, UnitSystem? only)
    {
        var columns = ColumnsIn(only);
        var (over, leftOver) = columns[^1] is var last && last.Read(need) is { } value ? (value.ToString(CultureInfo.InvariantCulture), last.Unit) : ("", "");
        var left = over.Length > 0 ? $" ({over} {leftOver})" : "";
        var parts = columns.Where(c => !c.Unit.EndsWith(" left", StringComparison.Ordinal) && c.Read(need) is not null).Select(c => Counted(Up(c.Read(need)!.Value, c.Unit), c.Unit is "balls" ? balls : c.Unit)).ToArray();
        return parts.Length == 0 ? null : string.Join(", ", parts) + left;
    }

    private static string Counted(string number, string unit) => $"{number} {(number is "1" && unit.Length > 2 ? unit.TrimEnd('s') : unit)}";

    /// <summary>What the designer calls a put-up, in the plural: balls, skeins, hanks.</summary>
    private static string BallsOf(Yarn yarn) => yarn.Needs?.Values.FirstOrDefault(q => q is { Unit.Dimension: Dimension.Count })?.Unit.Symbol is { Length: > 2 } word
        ? word.EndsWith('s') ? word : word + "s"
        : "balls";

    /// <summary>The amount as the designer typed it, in trade form.</summary>
    private static string? Needs(Yarn yarn, int sizes, UnitSystem? only)
    {
        if (yarn.Needs is not { } needs)
        {
            return null;
        }

        var values = Enumerable.Range(0, sizes).Select(i => SizesBuilder.At(needs, i)).ToArray();
        if (values.FirstOrDefault(q => q is not null)?.Unit is not { } typed)
        {
            return null;
        }

        var unit = only is { } system ? TradeSteps.In(system, typed) : typed;
        var numbers = values.Select(q => q is null ? Wording.None : q.Unit.Dimension == unit.Dimension && (q.Unit == unit || only is not null) ? Measures.Number(q, unit) : q.ToString().TrimEnd());
        return $"{Wording.TradeForm([.. numbers])} {unit.Symbol}".TrimEnd();
    }

    /// <summary>What a size takes, as length, mass and whole balls: the one that is typed, the others by way of the put-up.</summary>
    private static Need NeedOf(Yarn yarn, int size)
    {
        if (yarn.Needs is not { } needs || SizesBuilder.At(needs, size) is not { } written)
        {
            return new Need(null, null, null);
        }

        var amount = written.UpTo is { } upTo ? written with { Value = upTo } : written;
        if (Measures.Base(amount) is not { } said)
        {
            return new Need(null, null, null);
        }

        var (ballMass, ballLength) = (Measures.Base(yarn.PutUpMass), Measures.Base(yarn.PutUpLength));
        decimal? balls = amount.Unit.Dimension switch
        {
            Dimension.Count => said,
            Dimension.YarnLength => said / ballLength,
            Dimension.Mass => said / ballMass,
            _ => null,
        };
        return new Need(
            amount.Unit.Dimension == Dimension.YarnLength ? said : balls * ballLength,
            amount.Unit.Dimension == Dimension.Mass ? said : balls * ballMass,
            balls is { } n ? Math.Ceiling(Math.Round(n, 6)) : null)
        {
            Left = amount.Unit.Dimension != Dimension.Count && balls is { } part && ballLength is { } length ? Math.Floor(Math.Round((Math.Ceiling(Math.Round(part, 6)) * length) - (part * length), 3)) : null,
        };
    }

    /// <summary>The same metres in another yarn, by its own metres in a gram: "51 (100) g, 1 (2) balls"; null where either length is not known.</summary>
    private static string? Instead(Yarn yarn, YarnAlternative other, int sizes, UnitSystem? only)
    {
        var metres = Enumerable.Range(0, sizes).Select(i => NeedOf(yarn, i).Metres).OfType<decimal>().ToArray();
        if (metres.Length < sizes || Measures.Base(other.PutUpMass) is not (> 0 and var grams) || Measures.Base(other.PutUpLength) is not (> 0 and var length))
        {
            return null;
        }

        string[] Each(Func<decimal, decimal> of) => [.. metres.Select(m => Up(of(m)))];
        var balls = Each(m => m / length);
        var weight = only == UnitSystem.Imperial ? $"{Wording.TradeForm([.. metres.Select(m => Up(m / length * grams / Unit.Ounce.InBase, "oz"))])} oz" : $"{Wording.TradeForm(Each(m => m / length * grams))} g";
        return $"{weight}, {Wording.TradeForm(balls)} {(balls.All(b => b is "1") ? "ball" : "balls")}";
    }

    /// <summary>Amounts are rounded up: a metre too much is better than one too few.</summary>
    private static string Up(decimal value) => Math.Ceiling(Math.Round(value, 6)).ToString(CultureInfo.InvariantCulture);

    private static string? PutUp(Quantity? mass, Quantity? length, UnitSystem? only) => (mass, length) switch
    {
        (null, null) => null,
        ({ } g, null) => Measures.Both(g, only),
        (null, { } m) => Measures.Both(m, only),
        ({ } g, { } m) when only is not null => $"{Measures.Both(g, only)} = {Measures.Both(m, only)}",
        ({ } g, { } m) => $"{Measures.Text(g, Unit.Gram)} = {Measures.Text(m, Unit.Metre)} ({Measures.Text(g, Unit.Ounce)} = {Measures.Text(m, Unit.Yard)})",
    };

    /// <summary>Metres in a gram and yards in an ounce, from the put-up.</summary>
    private static string? Grist(Quantity? mass, Quantity? length, UnitSystem? only)
    {
        if (Measures.Base(mass) is not { } grams || Measures.Base(length) is not { } whole)
        {
            return null;
        }

        var metres = whole / grams;
        var yards = metres / Unit.Yard.InBase * Unit.Ounce.InBase;
        return only switch
        {
            UnitSystem.Metric => string.Create(CultureInfo.InvariantCulture, $"{metres:0.0#} m per g"),
            UnitSystem.Imperial => string.Create(CultureInfo.InvariantCulture, $"{yards:0} yd per oz"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{metres:0.0#} m per g ({yards:0} yd per oz)"),
        };
    }
}
