using System.Collections.Frozen;
using System.Text;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>
/// The pattern in centimetres, metres of yarn and grams, in inches, yards and ounces, or in both. Lengths and amounts in rows and prose are told anew, rounded in the steps
/// of the trade; what a designer gave in both by hand is kept as it is given. The figures of the header (sizes, ease, gauge, yarn) stay as they were measured, so that nothing is reckoned with rounded
/// ones; the page tells them in the units of the edition. Needles, hooks and what else is sold by the millimetre keep their millimetres.
/// </summary>
/// <param name="to">The units; null for both.</param>
internal sealed class UnitsEdition(UnitSystem? to) : Edition
{
    private static readonly string[] Measured = ["gauge", "tension", "ease", "sizes", "size"];

    /// <inheritdoc/>
    public override string Name => to switch { UnitSystem.Metric => "metric", UnitSystem.Imperial => "inches", _ => "both-units" };

    /// <inheritdoc/>
    public override string Title => to switch { UnitSystem.Metric => "centimetres, metres and grams", UnitSystem.Imperial => "inches, yards and ounces", _ => "both units everywhere" };

    /// <inheritdoc/>
    public override EditionForm Form => new(Name, null, false) { Units = to };

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Units;

    /// <inheritdoc/>
    public override string Subject => "units";

    /// <inheritdoc/>
    public override bool KeepsSteps => to is not null;

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain)
    {
        var text = plain.Text.Text;
        var stretches = Stretches.Of(plain);
        var structured = stretches.Header?.Entries.Where(e => Array.Exists(Measured, m => m.Equals(e.Name.Trim(), StringComparison.OrdinalIgnoreCase))).Select(e => e.Span).ToArray() ?? [];
        var called = plain.Pattern.Facts.Numbers.DistinctBy(n => n.Name, StringComparer.OrdinalIgnoreCase).ToDictionary(n => n.Name, n => n.Values, StringComparer.OrdinalIgnoreCase);
        var edits = new List<Edit>();
        var findings = new List<Finding>();
        foreach (var stretch in stretches.Found)
        {
            if (stretch.Kind is StretchKind.Weight or StretchKind.YarnLabel || Array.Exists(structured, s => s.Contains(stretch.Span)) || text.Slice(stretch.Span) is ['=', ..])
            {
                continue;
            }

            var said = text.ToString(stretch.Span);
            var run = new WordRun(text, stretch);
            var places = new List<MeasurePlace>();
            foreach (var place in new MeasureScan(said, stretch.Kind == StretchKind.Row, at => run.Behind(stretch.Span.Start + at) - stretch.Span.Start, called).All())
            {
                places.Add(place);
                Tell(said, stretch, place, edits);
            }

            Left(plain, said, stretch, places, run, findings);
        }

        return new RewrittenSource(plain.Text, edits, [.. findings]);
    }

    /// <summary>Words of the header that are kept as they were measured, told in one system for the page.</summary>
    internal static string Told(string said, UnitSystem to)
    {
        var edits = new List<Edit>();
        var stretch = new Stretch(new TextSpan(0, said.Length), StretchKind.Prose);
        foreach (var place in new MeasureScan(said, isRow: false, at => at, FrozenDictionary<string, PerSize<Quantity?>>.Empty).All())
        {
            new UnitsEdition(to).Tell(said, stretch, place, edits);
        }

        foreach (var edit in edits.OrderByDescending(e => e.Span.Start))
        {
            said = string.Concat(said.AsSpan(0, edit.Span.Start), edit.NewText, said.AsSpan(edit.Span.End));
        }

        return said;
    }

    private void Tell(string said, Stretch stretch, MeasurePlace place, List<Edit> edits)
    {
        var (first, second) = (place.First, place.Second);
        if (to is not { } system)
        {
            if (second is null)
            {
                var behind = InOther(said, stretch, first, first.System == UnitSystem.Metric ? UnitSystem.Imperial : UnitSystem.Metric);
                behind = Sign(said, first.Start) + behind;
                var isList = behind.Contains('(', StringComparison.Ordinal) || said.AsSpan(0, first.Start).LastIndexOf('(') > said.AsSpan(0, first.Start).LastIndexOf(')');
                edits.Add(new Edit(At(stretch, first.End, first.End), isList ? $" / {behind}" : $" ({behind})"));
            }

            return;
        }

        if (second is null)
        {
            if (first.System != system)
            {
                Put(said, stretch, first, InOther(said, stretch, first, system), first.End, edits);
            }

            return;
        }

        if (first.System == system)
        {
            edits.Add(new Edit(At(stretch, first.End, place.End), ""));
        }
        else
        {
            Put(said, stretch, first, said[second.Start..second.End], place.End, edits);
        }
    }

    private static void Put(string said, Stretch stretch, MeasureTold told, string now, int end, List<Edit> edits)
    {
        edits.Add(new Edit(At(stretch, told.Start, end), now));
        var before = said.AsSpan(0, told.Start).TrimEnd(' ');
        if (before.Length == told.Start)
        {
            return;
        }

        var word = before[(before.LastIndexOfAny(' ', '\n', '(') + 1)..];
        var digits = now.AsSpan();
        var isVowel = digits.StartsWith("8") || ((digits.StartsWith("11") || digits.StartsWith("18")) && (digits.Length < 3 || !char.IsAsciiDigit(digits[2])));
        if ((word is "a" && isVowel) || (word is "an" && !isVowel))
        {
            edits.Add(new Edit(At(stretch, before.Length - word.Length, before.Length), isVowel ? "an" : "a"));
        }
    }

    private static string Sign(string said, int at) => at > 0 && said[at - 1] is '-' or '−' or '–' && (at == 1 || !char.IsLetterOrDigit(said[at - 2])) ? said[at - 1].ToString() : "";

    private static TextSpan At(Stretch stretch, int start, int end) => new(stretch.Span.Start + start, end - start);

    /// <summary>The same in the other system: the form of the list stays, its numbers and its unit change.</summary>
    private static string InOther(string said, Stretch stretch, MeasureTold told, UnitSystem system)
    {
        var unit = UnitFor(said, told, system);
        var isNeedle = told.Unit.Dimension == Dimension.Length && IsNeedle(said, stretch, told.End);
        var all = new StringBuilder();
        string last;
        if (told.Called is { } called)
        {
            var values = called.Values.Select(v => v is null ? "–" : Number(v, unit, system, isNeedle)).ToArray();
            last = values[0];
            all.Append(values.Distinct(StringComparer.Ordinal).Count() == 1 ? values[0] : $"{values[0]} ({string.Join(", ", values.Skip(1))})");
            all.Append(' ');
        }
        else
        {
            var at = told.Start;
            last = "";
            foreach (var number in told.Numbers)
            {
                var now = Number(new Quantity(number.Value, told.Unit), unit, system, isNeedle);
                if (number.IsUpTo && now == last)
                {
                    at = number.End; // both ends are the same in steps of the trade
                    continue;
                }

                all.Append(said, at, number.Start - at).Append(now);
                (at, last) = (number.End, now);
            }

            all.Append(said, at, told.UnitStart - at);
            if (said[told.UnitStart] is '"' or '″' or '”' or '\\' or '\'')
            {
                all.Append(' ');
            }
        }

        return all.Append(Written(said, told, unit, isOne: last is "1" || "½¼¾⅛⅜⅝⅞".Contains(last, StringComparison.Ordinal))).ToString();
    }

    private static string Number(Quantity quantity, Unit unit, UnitSystem system, bool isNeedle)
    {
        if (isNeedle && TradeSteps.Circular(quantity, system) is { } usual)
        {
            return TradeSteps.Number(new Quantity(usual, unit), unit);
        }

        // Metres and yards may be those of a fabric.
        return quantity.Unit.Dimension == unit.Dimension ? TradeSteps.Number(quantity with { UpTo = null }, unit) : TradeSteps.Number(new Quantity(Math.Round(quantity.InBase * 100m / unit.InBase), unit), unit);
    }

    private static Unit UnitFor(string said, MeasureTold told, UnitSystem system) =>
        told.Unit.Dimension == Dimension.YarnLength && Following(said, told.End) is "wide" or "long" or "deep" or "square" or "tall" or "across" or "high" ? (system == UnitSystem.Metric ? Unit.Centimetre : Unit.Inch) : TradeSteps.In(system, told.Unit);

    private static bool IsNeedle(string said, Stretch stretch, int end)
    {
        var behind = said.AsSpan(end, Math.Min(40, said.Length - end));
        behind = behind.IndexOfAny('.', ';') is >= 0 and var stop ? behind[..stop] : behind;
        return behind.Contains("circular", StringComparison.OrdinalIgnoreCase) || behind.Contains("cable", StringComparison.OrdinalIgnoreCase)
            || (stretch.Kind == StretchKind.Tool && said.Contains("circular", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The unit as words or as its sign, as the designer writes them; "inches" in full where "in" would be read as a preposition.</summary>
    private static string Written(string said, MeasureTold told, Unit unit, bool isOne)
    {
        var word = told.Called is not null && told.UnitStart == told.End ? "" : said[told.UnitStart..told.End].TrimEnd('.');
        var next = Following(said, told.End);
        var inFull = word.Length > 3 || (unit == Unit.Inch && next is "in" or "in-between" or "each" or "next" or "the" or "every" or "same" or "into");
        if (!inFull)
        {
            return unit.Symbol;
        }

        var name = unit == Unit.Inch ? "inch" : unit == Unit.Centimetre ? "centimetre" : unit == Unit.Yard ? "yard" : unit == Unit.Metre ? "metre" : unit == Unit.Ounce ? "ounce" : "gram";
        name = word.EndsWith("ter", StringComparison.Ordinal) || word.EndsWith("ters", StringComparison.Ordinal) ? name.Replace("tre", "ter", StringComparison.Ordinal) : name;
        var isPlural = !isOne && !(told.UnitStart > 0 && said[told.UnitStart - 1] == '-');
        return !isPlural ? name : name == "inch" ? "inches" : name + "s";
    }

    private static string Following(string said, int at)
    {
        while (at < said.Length && char.IsWhiteSpace(said[at]))
        {
            at++;
        }

        var end = at;
        while (end < said.Length && char.IsLetter(said[end]))
        {
            end++;
        }

        return said[at..end].ToLowerInvariant();
    }

    /// <summary>Words of the other units without a number that could be told otherwise: "half an inch".</summary>
    private void Left(Compilation plain, string said, Stretch stretch, List<MeasurePlace> places, WordRun run, List<Finding> findings)
    {
        if (to is not { } system)
        {
            return;
        }

        string[] others = system == UnitSystem.Metric ? ["inch", "inches", "yard", "yards", "ounce", "ounces"] : ["centimetre", "centimetres", "centimeter", "centimeters", "cm", "metre", "metres"];
        for (var i = 0; i < run.Count; i++)
        {
            if (!run.Is(i, others))
            {
                continue;
            }

            var at = run.SpanOf(i).Start - stretch.Span.Start;
            if (!places.Exists(p => p.First.Start <= at && at < p.End))
            {
                findings.Add(Say(plain, EditionRules.UnitLeft, run.SpanOf(i), $"`{run.Said(i)}` stands as it was written: no number in digits stands before it", "write the length in digits, \"1.5 cm\" or \"½ in\", or leave the unit out"));
            }
        }
    }
}
