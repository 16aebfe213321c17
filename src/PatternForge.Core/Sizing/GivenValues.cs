using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Sizing;

/// <summary>The measurements that were given for a new size, each with the list of the header that it goes into.</summary>
internal sealed class GivenValues
{
    private readonly IReadOnlyList<SizeList> _lists;
    private readonly SourceText _text;
    private readonly Dictionary<SizeList, NewValue> _values = [];

    /// <summary>None yet, of the lists of a source.</summary>
    public GivenValues(IReadOnlyList<SizeList> lists, SourceText text)
    {
        _lists = lists;
        _text = text;
    }

    /// <summary>The list that tells how far the new size is from its neighbours: the first given one that every size has a number in; null for none.</summary>
    public SizeList? Main { get; private set; }

    /// <summary>What was given for a list; null for nothing.</summary>
    public NewValue? For(SizeList list) => _values.GetValueOrDefault(list);

    /// <summary>Takes one value; answers why it cannot be taken, null when it can.</summary>
    public string? Take(string name, string said, PatternFacts facts)
    {
        var wanted = KeySet.Plain(name);
        var own = _lists.Where(l => l.Kind == SizeListKind.Header && IsNamed(l.Path, wanted)).ToArray();
        own = own.Length > 1 && own.FirstOrDefault(l => l.Path.StartsWith("fits.", StringComparison.Ordinal)) is { } body ? [body] : own;
        if (own.Length == 0)
        {
            var names = _lists.Where(l => l.Kind == SizeListKind.Header).Select(l => l.Path).Distinct(StringComparer.Ordinal).ToArray();
            return Formula(wanted, facts) is { } formula ? $"`{name}` follows by its formula, {formula}: give what it is worked out from"
                : Suggest.Nearest(wanted, names.Concat(names.Select(n => n[(n.LastIndexOf('.') + 1)..])), 1) is [var near, ..] ? $"the header has no list `{name}`: did you mean `{near}`?"
                : $"the header has no list `{name}`: {(names.Length == 0 ? "it has none at all" : $"there are {string.Join(", ", names)}")}";
        }

        if (own.Length > 1 && own.Select(l => l.Path).Distinct(StringComparer.Ordinal).Count() > 1)
        {
            return $"`{name}` may be {string.Join(" or ", own.Select(l => $"`{l.Path}`"))}: say which";
        }

        var list = own[0];
        if (ValueListReader.Read(said, QuantityBinder.SkipLeadingWords(said), 1) is not { Values: [{ Number: { } number } value] } read || read.End < said.TrimEnd().Length)
        {
            return $"`{said}` is no value for `{name}`: write it as in {_text.ToString(list.Values[0].Whole)}{(list.Measure.Length > 0 && list.Values[0].Whole == list.Values[0].Span ? " " + list.Measure : "")}";
        }

        var upTo = value.UpTo;
        if (value.Unit is { } unit && ValueListReader.UnitOf(list.Measure) is { } into && unit != into)
        {
            if (unit.Dimension != into.Dimension || unit.Dimension == Dimension.Count)
            {
                return $"`{name}` is told in {(list.Measure.Length > 0 ? list.Measure : "bare numbers")}, not in {unit.Symbol}";
            }

            number = Rounded(number * unit.InBase / into.InBase);
            upTo = upTo is { } top ? Rounded(top * unit.InBase / into.InBase) : null;
        }
        else if (value.Unit is not null && list.Measure.Length == 0)
        {
            return $"`{name}` is told in bare numbers, not in {value.Unit.Symbol}";
        }

        _values[list] = new NewValue(number, upTo, "as given");
        Main ??= list.Values.All(v => v.Number is not null) && list.Values.Zip(list.Values.Skip(1)).All(p => p.First.Number < p.Second.Number) ? list : null;

        // The same measure told once more in the other system, "38 (40) cm / 15 (16) in", follows it.
        foreach (var second in own.Skip(1))
        {
            if (ValueListReader.UnitOf(list.Measure) is { } first && ValueListReader.UnitOf(second.Measure) is { } other && first.Dimension == other.Dimension)
            {
                var inches = number * first.InBase / other.InBase;
                _values[second] = new NewValue(other == Unit.Inch ? Math.Round(inches * 4) / 4 : Rounded(inches), null, "as given");
            }
        }

        return null;
    }

    /// <summary>Where the main measurement puts the new size; null where none was given.</summary>
    public int? PlaceByMain() => Main is { } main && _values[main].Number is { } own ? main.Values.Count(v => v.Number < own) : null;

    /// <summary>The place of the new size with its distance from the neighbours; null, with the reason, where what was given does not belong there.</summary>
    public (NewPlace? Place, string? Wrong) Place(int index, int sizes)
    {
        var place = NewPlace.At(index, sizes);
        if (Main is not { } main || _values[main].Number is not { } own || main.Values[place.From].Number is not { } from || main.Values[place.To].Number is not { } to || from == to)
        {
            return (place, null);
        }

        var share = (own - from) / (to - from);
        return Fits(share, place) ? (place with { Share = share }, null)
            : (null, $"`{main.Path}` of {own:0.##}{(main.Measure.Length > 0 ? " " + main.Measure : "")} does not belong {(place.IsBetween ? "between these sizes" : index == 0 ? "before the first size" : "behind the last size")}: they have {string.Join(", ", main.Values.Select(v => $"{v.Number:0.##}"))}");
    }

    /// <summary>True where a distance agrees with a place.</summary>
    public static bool Fits(decimal share, NewPlace place) => place.IsBetween ? share is > 0 and < 1 : place.Share > 1 ? share is > 1 and < 20 : share is < 0 and > -20;

    private static bool IsNamed(string path, string wanted) => path == wanted || path.EndsWith("." + wanted, StringComparison.Ordinal);

    private static string? Formula(string wanted, PatternFacts facts) =>
        facts.Numbers.Where(n => n.WorkedFrom is not null).Select(n => (Path: "numbers." + KeySet.Plain(n.Name), Formula: n.WorkedFrom!.Formula))
            .Concat(facts.Finished.Where(m => m.WorkedFrom is not null).Select(m => (Path: "finished." + KeySet.Plain(m.Name), Formula: m.WorkedFrom!.Formula)))
            .Concat(facts.Fits.Where(m => m.WorkedFrom is not null).Select(m => (Path: "fits." + KeySet.Plain(m.Name), Formula: m.WorkedFrom!.Formula)))
            .FirstOrDefault(n => IsNamed(n.Path, wanted)).Formula;

    private static decimal Rounded(decimal value) => Math.Round(value * 2, MidpointRounding.AwayFromZero) / 2;
}
