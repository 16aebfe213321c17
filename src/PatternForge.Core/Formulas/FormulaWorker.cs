using PatternForge.Core.Model;

namespace PatternForge.Core.Formulas;

/// <summary>Works a formula out in one size. Units go along: what does not measure the same cannot be added or compared; a bare number may stand beside stitches and rows.</summary>
internal sealed class FormulaWorker(IFormulaScope scope, int size)
{
    private const decimal MostValue = 1_000_000_000m;

    /// <summary>The first thing that went wrong; null when nothing did. There may be no value without a fault: the size has none.</summary>
    public FormulaFault? Fault { get; private set; }

    /// <summary>The value of a part; null where there is none.</summary>
    public FormulaValue? Work(FormulaNode node)
    {
        try
        {
            var value = Of(node);
            return value is { } v && Math.Max(Math.Abs(v.Value), Math.Abs(v.Exact)) > MostValue ? Fail(node, FaultKind.NoAnswer, "this comes to a number beyond all bounds") : value;
        }
        catch (OverflowException)
        {
            return Fail(node, FaultKind.NoAnswer, "this comes to a number beyond all bounds");
        }
    }

    private FormulaValue? Of(FormulaNode node)
    {
        if (Fault is not null)
        {
            return null;
        }

        return node switch
        {
            NumberNode number => number.Unit is { } unit ? FormulaValue.Of(new Quantity(number.Number, unit)) : new FormulaValue(number.Number, Dimensions.None),
            NameNode name => Named(name),
            SizeNode said => scope.SizeNumber(said.Name) is { } number ? new FormulaValue(number, Dimensions.None) : Fail(said, FaultKind.NameNotFound, $"the pattern has no size `{said.Name}`"),
            SignNode sign => Signed(sign),
            PairNode pair => Pair(pair),
            FunctionNode function => Function(function),
            _ => null,
        };
    }

    private FormulaValue? Named(NameNode name)
    {
        if (string.Equals(name.Name, "size", StringComparison.OrdinalIgnoreCase))
        {
            return new FormulaValue(size + 1, Dimensions.None);
        }

        if (string.Equals(name.Name, "pi", StringComparison.OrdinalIgnoreCase))
        {
            return new FormulaValue(3.14159265358979m, Dimensions.None);
        }

        var found = scope.Find(name.Name, size);
        if (found.Fault is { } fault)
        {
            Fault ??= fault with { Start = name.Start, Length = name.End - name.Start };
        }

        return found.Value;
    }

    private FormulaValue? Signed(SignNode sign)
    {
        if (Of(sign.Of) is not { } of)
        {
            return null;
        }

        if (sign.Sign == FormulaSign.Not)
        {
            return of.IsAnswer ? FormulaValue.Answer(of.Value == 0) : Fail(sign, FaultKind.UnitsDiffer, "`not` wants a condition behind it");
        }

        return of.IsAnswer ? Fail(sign, FaultKind.UnitsDiffer, "a condition has no minus") : of with { Value = -of.Value, Exact = -of.Exact };
    }

    private FormulaValue? Pair(PairNode pair)
    {
        if (Of(pair.Left) is not { } left || Of(pair.Right) is not { } right)
        {
            return null;
        }

        if (pair.Sign is FormulaSign.And or FormulaSign.Or)
        {
            return left.IsAnswer && right.IsAnswer
                ? FormulaValue.Answer(pair.Sign == FormulaSign.And ? left.Value != 0 && right.Value != 0 : left.Value != 0 || right.Value != 0)
                : Fail(pair, FaultKind.UnitsDiffer, $"`{(pair.Sign == FormulaSign.And ? "and" : "or")}` wants a condition on either side");
        }

        if (left.IsAnswer || right.IsAnswer)
        {
            return Fail(pair, FaultKind.UnitsDiffer, "a condition cannot be reckoned with", "use `if(condition, a, b)`");
        }

        return pair.Sign switch
        {
            FormulaSign.Times => Product(pair, left, right),
            FormulaSign.Per => Quotient(pair, left, right),
            _ => Alike(pair, ref left, ref right, pair.Sign switch { FormulaSign.Plus => "added to", FormulaSign.Minus => "set against", _ => "compared with" }) ? Added(pair.Sign, left, right) : null,
        };
    }

    private static FormulaValue Added(FormulaSign sign, FormulaValue left, FormulaValue right) => sign switch
    {
        FormulaSign.Plus => left with { Value = left.Value + right.Value, Exact = left.Exact + right.Exact, Unit = left.Unit ?? right.Unit },
        FormulaSign.Minus => left with { Value = left.Value - right.Value, Exact = left.Exact - right.Exact, Unit = left.Unit ?? right.Unit },
        FormulaSign.Less => FormulaValue.Answer(left.Value < right.Value),
        FormulaSign.AtMost => FormulaValue.Answer(left.Value <= right.Value),
        FormulaSign.More => FormulaValue.Answer(left.Value > right.Value),
        FormulaSign.AtLeast => FormulaValue.Answer(left.Value >= right.Value),
        _ => FormulaValue.Answer(left.Value == right.Value),
    };

    private FormulaValue? Product(PairNode pair, FormulaValue left, FormulaValue right) => left.Dimensions.Times(right.Dimensions) is { } of
        ? new FormulaValue(left.Value * right.Value, of, left.Exact * right.Exact) { Unit = left.Unit ?? right.Unit }
        : Fail(pair, FaultKind.NoAnswer, "this multiplies measures too often to mean anything");

    private FormulaValue? Quotient(PairNode pair, FormulaValue left, FormulaValue right)
    {
        if (right.Value == 0 || right.Exact == 0)
        {
            return Fail(pair.Right, FaultKind.NoAnswer, "this comes to 0, and nothing can be divided by it");
        }

        return left.Dimensions.Per(right.Dimensions) is { } of
            ? new FormulaValue(left.Value / right.Value, of, left.Exact / right.Exact) { Unit = left.Unit ?? right.Unit }
            : Fail(pair, FaultKind.NoAnswer, "this divides measures too often to mean anything");
    }

    // Stitches and rows go with bare numbers: "sts(bust) + 2".
    private bool Alike(FormulaNode at, ref FormulaValue left, ref FormulaValue right, string done)
    {
        if (left.Dimensions == right.Dimensions)
        {
            return true;
        }

        if (left.Dimensions == Dimensions.None && right.Dimensions.IsCount)
        {
            left = left with { Dimensions = right.Dimensions };
            return true;
        }

        if (right.Dimensions == Dimensions.None && left.Dimensions.IsCount)
        {
            right = right with { Dimensions = left.Dimensions };
            return true;
        }

        var (one, other) = (left.Dimensions, right.Dimensions);
        var help = (one, other) switch
        {
            var (a, b) when a == Dimensions.None || b == Dimensions.None => "give the bare number its unit, `2 cm` or `2 in`",
            var (a, b) when (a == Dimensions.OfLength && b == Dimensions.OfStitches) || (a == Dimensions.OfStitches && b == Dimensions.OfLength) => "`sts(...)` makes stitches of a length, `width(...)` a length of stitches",
            var (a, b) when (a == Dimensions.OfLength && b == Dimensions.OfRows) || (a == Dimensions.OfRows && b == Dimensions.OfLength) => "`rows(...)` makes rows of a length, `length(...)` a length of rows",
            var (a, b) when (a == Dimensions.OfLength && b == Dimensions.OfYarn) || (a == Dimensions.OfYarn && b == Dimensions.OfLength) => "`m` and `yd` are lengths of yarn; fabric and body are measured in `cm`, `mm` or `in`",
            _ => null,
        };
        Fail(at, FaultKind.UnitsDiffer, $"{other.Words()} cannot be {done} {one.Words()}", help);
        return false;
    }

    private FormulaValue? Function(FunctionNode call)
    {
        if (call.Function == FormulaFunction.If)
        {
            return Choice(call);
        }

        if (call.Function == FormulaFunction.Table)
        {
            return Step(call);
        }

        if (call.Function.AsksGauge)
        {
            return ByGauge(call);
        }

        if (Of(call.Parts[0]) is not { } first || !IsNumber(call.Parts[0], first))
        {
            return null;
        }

        if (call.Function.Rounds)
        {
            return Rounded(call, first);
        }

        return call.Function == FormulaFunction.Root ? Root(call, first) : Extreme(call, first);
    }

    private bool IsNumber(FormulaNode at, FormulaValue value)
    {
        if (value.IsAnswer)
        {
            Fail(at, FaultKind.UnitsDiffer, "a condition is no number", "use `if(condition, a, b)`");
        }

        return !value.IsAnswer;
    }

    private FormulaValue? Choice(FunctionNode call)
    {
        if (Of(call.Parts[0]) is not { } condition)
        {
            return null;
        }

        if (!condition.IsAnswer)
        {
            return Fail(call.Parts[0], FaultKind.UnitsDiffer, "`if` wants a condition first", $"it is written `{FormulaFunction.If.Form}`");
        }

        return Of(call.Parts[condition.Value != 0 ? 1 : 2]);
    }

    private FormulaValue? Step(FunctionNode call)
    {
        if (Of(call.Parts[0]) is not { } of || Of(call.Parts[1]) is not { } value)
        {
            return null;
        }

        for (var i = 2; i + 1 < call.Parts.Length; i += 2)
        {
            if (Of(call.Parts[i]) is not { } limit || !Alike(call.Parts[i], ref of, ref limit, "compared with"))
            {
                return null;
            }

            if (of.Value >= limit.Value)
            {
                if (Of(call.Parts[i + 1]) is not { } next || !Alike(call.Parts[i + 1], ref value, ref next, "set beside"))
                {
                    return null;
                }

                value = next;
            }
        }

        return value;
    }

    private FormulaValue? Extreme(FunctionNode call, FormulaValue best)
    {
        foreach (var part in call.Parts.Skip(1))
        {
            if (Of(part) is not { } other || !IsNumber(part, other) || !Alike(part, ref best, ref other, "compared with"))
            {
                return null;
            }

            best = (call.Function == FormulaFunction.Min ? other.Value < best.Value : other.Value > best.Value) ? other : best;
        }

        return best;
    }

    private FormulaValue? Root(FunctionNode call, FormulaValue of)
    {
        if (of.Value < 0 || of.Exact < 0)
        {
            return Fail(call, FaultKind.NoAnswer, "what is less than nothing has no square root");
        }

        return of.Dimensions.Root() is { } kind
            ? new FormulaValue((decimal)Math.Sqrt((double)of.Value), kind, (decimal)Math.Sqrt((double)of.Exact)) { Unit = of.Unit }
            : Fail(call, FaultKind.UnitsDiffer, $"{of.Dimensions.Words()} has no square root that measures anything");
    }

    private FormulaValue? ByGauge(FunctionNode call)
    {
        string? named = null;
        if (call.Parts.Length == 2 && (named = (call.Parts[1] as NameNode)?.Name ?? (call.Parts[1] as SizeNode)?.Name) is null)
        {
            return Fail(call.Parts[1], FaultKind.NotUnderstood, "the name of a gauge is wanted here");
        }

        if (Of(call.Parts[0]) is not { } of || !IsNumber(call.Parts[0], of))
        {
            return null;
        }

        var (gauge, fault) = scope.Gauge(named);
        if (gauge is null)
        {
            var place = call.Parts.Length == 2 ? call.Parts[1] : call;
            Fault ??= fault! with { Start = place.Start, Length = place.End - place.Start };
            return null;
        }

        var across = call.Function == FormulaFunction.Stitches || call.Function == FormulaFunction.Width;
        if ((across ? gauge.StitchesPerCm : gauge.RowsPerCm) is not ({ } perCm and > 0))
        {
            return Fail(call, FaultKind.NoAnswer, $"the gauge does not say how many {(across ? "stitches" : "rows")} there are", "give the gauge with both: `20 sts and 28 rows = 10 cm`");
        }

        var counted = across ? Dimensions.OfStitches : Dimensions.OfRows;
        var fromLength = call.Function == FormulaFunction.Stitches || call.Function == FormulaFunction.Rows;
        if (of.Dimensions != (fromLength ? Dimensions.OfLength : counted) && (fromLength || of.Dimensions != Dimensions.None))
        {
            return Fail(call.Parts[0], FaultKind.UnitsDiffer, $"`{call.Function.Name}` wants {(fromLength ? "a length" : counted.Words())}, and this is {of.Dimensions.Words()}", of.Dimensions == Dimensions.None ? "give the number its unit: `5 cm`" : null);
        }

        return fromLength
            ? new FormulaValue(of.Value * perCm, counted, of.Exact * perCm)
            : new FormulaValue(of.Value / perCm, Dimensions.OfLength, of.Exact / perCm);
    }

    private FormulaValue? Rounded(FunctionNode call, FormulaValue of)
    {
        var (step, offset) = (1m, 0m);
        if (call.Rounding is { Parity: not Parity.Any } parity)
        {
            (step, offset) = (2, parity.Parity == Parity.Odd ? 1 : 0);
        }
        else if ((call.Rounding?.Multiple ?? (call.Parts.Length == 2 ? call.Parts[1] : null)) is { } said)
        {
            if (Of(said) is not { } multiple || !Alike(said, ref of, ref multiple, "rounded to"))
            {
                return null;
            }

            step = multiple.Value;
            if (call.Rounding?.Plus is { } more)
            {
                if (Of(more) is not { } plus || !Alike(more, ref of, ref plus, "added to"))
                {
                    return null;
                }

                offset = plus.Value;
            }

            if (step <= 0)
            {
                return Fail(said, FaultKind.NoAnswer, "what is rounded to must be more than 0");
            }
        }
        else if (!of.Dimensions.IsCount)
        {
            return Fail(call, FaultKind.UnitsDiffer, $"{of.Dimensions.Words()} can be rounded to a step of its own unit alone", $"write for instance `{call.Function.Name}(..., 0.5 cm)`");
        }

        var steps = (of.Value - offset) / step;
        var whole = call.Function == FormulaFunction.RoundUp ? Math.Ceiling(WithoutDust(steps))
            : call.Function == FormulaFunction.RoundDown ? Math.Floor(WithoutDust(steps))
            : Math.Floor(WithoutDust(steps) + 0.5m);
        return of with { Value = (whole * step) + offset };
    }

    // What division leaves behind the tenth place is no part of the number: 40.0000000000001 rounds up to 40.
    private static decimal WithoutDust(decimal value) => decimal.Round(value, 10);

    private FormulaValue? Fail(FormulaNode at, FaultKind kind, string message, string? help = null)
    {
        Fault ??= new(kind, at.Start, Math.Max(1, at.End - at.Start), message, help);
        return null;
    }
}
