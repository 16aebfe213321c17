using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Core.Corrections;

/// <summary>Tells what the steps of a row ask of one size, so that every way to write the same stitches is told alike.</summary>
/// <param name="source">The text that the steps stand in.</param>
/// <param name="terms">Whose names to tell stitches by.</param>
/// <param name="size">The size.</param>
/// <param name="sizes">How many sizes the pattern has.</param>
internal sealed class StepReader(SourceText source, Dialect terms, int size, int sizes)
{
    /// <summary>The steps of a row.</summary>
    public ImmutableArray<StepToken> Of(ImmutableArray<Step> steps) => StepToken.Tidy(steps.Where(s => s is not SentenceStep).Select(One));

    private StepToken One(Step step)
    {
        var token = Plain(step);
        var beside = (step.Colour is { } colour ? $"/{colour}" : "") + (step.YarnInFront is { } front ? front ? "/wyif" : "/wyib" : "");
        return beside.Length == 0 ? token : token with { Unit = token.Unit + beside, Said = token.Said + " " + beside[1..].Replace('/', ' ') };
    }

    private StepToken Plain(Step step) => step switch
    {
        OperationStep { Operation: var o } s => Worked(o) with { Times = In(s.Times) },
        RunStep s when s.To.Extent is Extent.End or Extent.LastStitches => Worked(s.Operation) with { Left = LeftOf(s.To) },
        RunStep s => Worked(s.Operation) with { Unit = $"{s.Operation.Id} {Place(s.To)}", Said = $"{Name(s.Operation)} {Place(s.To)}", IsPlain = false, Adds = false, Takes = null },
        IncreaseStep s => Thing("inc", "inc") with { Times = In(s.Times), Adds = true },
        GroupStep s => new StepToken { Body = Of(s.Body), Times = In(s.Times) },
        InOneStitchStep s => Thing($"in-one({StepToken.KeyOf(Of(s.Body))})", $"({Said(Of(s.Body))}) in next st") with { Times = In(s.Times), Adds = true, Takes = 1 },
        RepeatStep s => Repeat(s),
        MarkerStep s => Thing($"marker {s.Action} {s.Name}", s.Action switch { MarkerAction.Place => "pm", MarkerAction.Slip => "sm", _ => "rm" } + (s.Name is null ? "" : $" {s.Name}")),
        TurnStep s => Thing(s.Wraps ? "wrap-turn" : "turn", s.Wraps ? "w&t" : "turn"),
        CastOnStep s => Thing("co", "cast on") with { Unit = $"cast on {s.AtEnd}", Said = "CO ", IsPlain = true, Times = In(s.Stitches), Takes = 0 },
        BindOffStep { Stitches: { } n } => Thing("bind off", terms == Dialect.Uk ? "cast off " : "BO ") with { IsPlain = true, Times = In(n) },
        BindOffStep s => Thing("bind off" + (s.To is { } to ? " " + Place(to) : " all"), terms == Dialect.Uk ? "cast off" : "bind off"),
        HoldStep s => Thing($"hold {Number(s.Stitches)} {s.FromRight}", $"hold {Number(s.Stitches)} sts"),
        ReturnStep s => Thing($"return {Number(s.Stitches)}", $"return {Number(s.Stitches)} held sts"),
        AcrossPieceStep s => Thing($"across {s.Operation.Id}", $"{Name(s.Operation)} across ") with { IsPlain = true, Times = In(s.Stitches) },
        PickUpStep s => Thing("pick up", "pick up ") with { IsPlain = true, Times = In(s.Stitches), Wording = Wording(s) },
        CableNeedleStep s => Thing($"cn {Number(s.Stitches)} {s.WorkedAs?.Id} {s.InFront}", s.WorkedAs is { } o ? $"{Name(o)}{Number(s.Stitches)} from cn" : $"{Number(s.Stitches)} to cn {(s.InFront == true ? "in front" : s.InFront == false ? "at back" : "")}".TrimEnd()),
        JoinStep s => Thing($"join {s.IntoRound}", s.IntoRound ? "join in the round" : "work in rows"),
        SlideStep => Thing("slide", "do not turn"),
        NeedleStep => Thing("needle", "next needle"),
        NeedleCountStep s => Thing("on needle", "on this needle ") with { IsPlain = true, Times = In(s.Stitches) },
        PatternRowStep s => Thing($"pattern {s.Pattern.Name.ToLowerInvariant()} {s.Row} {Number(s.Over)} {(s.To is { } to ? Place(to) : "")}", $"Row {s.Row} of {s.Pattern.Name}"),
        CrochetStep s => Crocheted(s),
        ShellStep s => Thing($"shell({StepToken.KeyOf(Of(s.Body))}) {Place(s.Place)}", $"({Said(Of(s.Body))}) {PlaceSaid(s.Place)}") with { Times = In(s.Times), Adds = true },
        InsteadStep s => Thing($"instead({StepToken.KeyOf(Of(s.Body))}) {Key(s.Thing)}", $"({Said(Of(s.Body))}) in each {Said(s.Thing)}"),
        ChainStep s => Thing($"ch {s.Counts} {s.As?.Id} {s.Over} {s.Throughout}", "ch ") with { IsPlain = true, Times = In(s.Chains), Takes = 0 },
        MeshStep s => Thing(s.IsOpen ? "open mesh" : "solid mesh", s.IsOpen ? "open mesh" : "solid mesh") with { Times = In(s.Meshes), Adds = true },
        SkipStep s => Thing($"skip {Place(s.Place, withCount: false)} {s.SaysNext}", "skip " + Said(s.Place.Thing) + " ") with { IsPlain = true, Times = In(s.Place.Count), Takes = TakesOf(s.Place, 1) },
        NamedIncreaseStep s => Thing($"{s.Stitch.Id} {s.Change.Id} {Number(s.Number)} {Number(s.Times)}", $"{Name(s.Stitch)} {Name(s.Change)}"),
        CloseStep s => Thing($"close {s.TopOf}", "join with sl st"),
        BeginAtStep s => Thing($"begin {Place(s.Place)} {s.IsJoin}", $"join yarn {PlaceSaid(s.Place)}"),
        FreeSideStep => Thing("free side", "along the free side"),
        RingStep => Thing("ring", "ring"),
        LeaveStep s => Thing($"leave {s.IsTurningChain}", "leave the rest unworked"),
        FastenOffStep => Thing("fasten off", "fasten off"),
        OtherSideStep => Thing("other side", "along the other side"),
        SkippedChainsStep s => Thing($"skipped chains {s.Counts}", "skipped chains"),
        _ => InWords(step),
    };

    /// <summary>What is told by its words: numbers and the words that tell stitches make the difference, the others are wording.</summary>
    private StepToken InWords(Step step)
    {
        var words = Words.Of(source, step.Origin, size, sizes);
        var key = step is UnreadStep or UncountedStep ? Words.Key(words) : Words.TellingKey(words);
        var told = step switch
        {
            RepeatRowsStep s => $" {string.Join(',', s.Numbers)} {Number(s.Last)} {s.Name} {s.Pattern?.Name.ToLowerInvariant()} {s.Until} {Number(s.Value)} {s.WithPlainRows} {s.Grows} {StepToken.KeyOf(Of(s.Ending))}",
            ShapingStep s => " " + string.Join(';', s.Stretches.Select(t => $"{Number(t.Change)} {Number(t.Rows)} {Number(t.ToCount)} {Number(t.Every)} {t.BeginsNow}")),
            AsPieceStep s => $" {s.Piece} {s.ToMark} {s.UpTo} {s.IsReversed}",
            MatchSideStep s => $" {s.IsReversed}",
            EvenRowsStep s => $" {Number(s.Rows)} {Number(s.Named)}",
            _ => "",
        };

        // Of a repeat, a shaping and the like the model tells all but lengths: other words for it are wording.
        if (step is RepeatRowsStep { Until: not RowsUntil.Length } or AsPieceStep or MatchSideStep)
        {
            key = "";
        }

        var kind = step.GetType().Name;
        return new StepToken { Unit = $"{kind}:{key}{told}", Said = Words.OneLine(source.ToString(step.Origin)), Wording = Words.Key(words) };
    }

    private StepToken Worked(Operation operation) => new()
    {
        Unit = operation.Id,
        Said = Name(operation),
        IsPlain = operation is { Takes: 1, Makes: 1 } or { Family: Family.Slip } && char.IsAsciiLetter(Name(operation)[^1]) && Name(operation).Length <= 3,
        Adds = true,
        Takes = operation.Takes,
    };

    private static StepToken Thing(string unit, string said) => new() { Unit = unit, Said = said };

    private StepToken Repeat(RepeatStep s)
    {
        var body = Of(s.Body);
        var ending = s.Ending.IsEmpty ? [] : Of(s.Ending);
        var repeat = s.To is { Extent: Extent.End or Extent.LastStitches } to ? new StepToken { Body = body, Left = LeftOf(to) }
            : s.To is { } place ? Thing($"[{StepToken.KeyOf(body)}] {Place(place)}", $"[{Said(body)}] {Place(place)}")
            : s.IsTwoWays ? Thing($"[{StepToken.KeyOf(body)}] two ways {Number(s.Times)}", $"[{Said(body)}]; rep {Number(s.Times)} times")
            : new StepToken { Body = body, Times = s.IsMore ? (int)Math.Min((long)In(s.Times) + 1, int.MaxValue) : In(s.Times) };
        return ending.IsEmpty ? repeat
            : Thing($"{repeat.Key} ending({StepToken.KeyOf(ending)}) {s.SaysEnding && s.EndsLastRepeat}", $"{repeat.Words}, ending {Said(ending)}");
    }

    private StepToken Crocheted(CrochetStep s)
    {
        var name = Name(s.Operation) + (s.Loop == StitchLoop.Both ? "" : s.Loop == StitchLoop.Front ? " in front loop" : " in back loop");
        var unit = s.Operation.Id + (s.Loop == StitchLoop.Both ? "" : $" {s.Loop}");
        var each = s.Each is null ? 1 : In(s.Each);

        // "5 sc", "sc in next 5 sts" and "sc in each of next 5 sts" are the same stitches.
        if (s.Place is null)
        {
            return new StepToken { Unit = unit, Said = name, Times = each, Takes = Math.Max(1, s.Operation.Takes), Adds = true };
        }

        if (s.Place is { Kind: PlaceKind.Next, FromStart: null, Also: null, Thing.Kind: ThingKind.Stitch } next)
        {
            return each == 1
                ? new StepToken { Unit = unit, Said = name, Times = next.Count is null ? 1 : In(next.Count), Takes = Math.Max(1, s.Operation.Takes), Adds = true }
                : new StepToken { Unit = $"{each} {unit} in one", Said = $"{each} {name} in next st", Times = next.Count is null ? 1 : In(next.Count), Takes = 1, Adds = true };
        }

        if (s.Place is { Kind: PlaceKind.Each, Also: null, Thing.Kind: ThingKind.Stitch } && each == 1)
        {
            return new StepToken { Unit = unit, Said = name, Left = 0, Takes = Math.Max(1, s.Operation.Takes), Adds = true };
        }

        if (s.Place is { Kind: PlaceKind.EachToLast, Also: null, Thing.Kind: ThingKind.Stitch, Until.Kind: ThingKind.Stitch } rest && each == 1)
        {
            return new StepToken { Unit = unit, Said = name, Left = rest.Count is null ? 1 : In(rest.Count), Takes = Math.Max(1, s.Operation.Takes), Adds = true };
        }

        return new StepToken { Unit = $"{each} {unit} {Place(s.Place)}", Said = $"{(each == 1 ? "" : each.ToString(CultureInfo.InvariantCulture) + " ")}{name} {PlaceSaid(s.Place)}" };
    }

    private static int? TakesOf(Place place, int each) => place is { Kind: PlaceKind.Next, Thing.Kind: ThingKind.Stitch } ? each : null;

    private string Place(Place place, bool withCount = true) =>
        $"{place.Kind} {Key(place.Thing)} {(withCount ? Number(place.Count) : "")} {place.FromStart} {(place.Also is { } also ? Key(also) : "")} {(place.Kind is PlaceKind.EachToLast or PlaceKind.EachToNext ? Key(place.Until) : "")}{(place.Kind is PlaceKind.Unclear or PlaceKind.Edge or PlaceKind.Own ? Words.Key(Words.Of(source, place.Origin, size, sizes)) : "")}";

    private string PlaceSaid(Place place) => Words.OneLine(source.ToString(place.Origin)) is { Length: > 0 } said ? said : $"in {Said(place.Thing)}";

    private static string Key(Thing thing) => $"{thing.Kind}/{thing.Named?.Id}/{thing.Length}/{thing.IsCorner}";

    private string Said(Thing thing) => thing.Kind switch
    {
        ThingKind.Named when thing.Named is { } named => Name(named),
        ThingKind.Chain => "ch",
        ThingKind.Space => thing.Length is { } length ? $"ch-{length} sp" : "sp",
        ThingKind.Gap => "gap",
        _ => "st",
    };

    private string Place(Target to) => $"to {to.Extent switch
    {
        Extent.End => "end",
        Extent.LastStitches => $"last {Number(to.Stitches)} sts",
        Extent.LastSpaces => $"last {Number(to.Stitches)} sps",
        _ => (to.Stitches is null ? "" : $"{Number(to.Stitches)} sts before ") + (to.Extent switch
        {
            Extent.Marker => to.MarkerName is null ? "next marker" : $"marker {to.MarkerName}",
            Extent.LastMarker => "last marker",
            Extent.Gap => "the gap",
            Extent.Needle => "end of needle",
            Extent.OtherNeedle => "the other needle",
            Extent.OnRightNeedle => "on right needle",
            _ => "there",
        }),
    }}";

    private int LeftOf(Target to) => to.Extent == Extent.End ? 0 : to.Stitches is { } stitches ? In(stitches) : 1;

    private string Name(Operation operation) => operation.IsSpecial ? operation.Names.FirstOrDefault()?.Text ?? operation.Id : OperationTable.NameIn(operation, terms) ?? operation.Names.FirstOrDefault()?.Text ?? operation.Id;

    private string Wording(Step step) => Words.Key(Words.Of(source, step.Origin, size, sizes));

    private static string Said(ImmutableArray<StepToken> tokens) => string.Join(", ", tokens.Select(t => t.Words));

    /// <summary>A number in this size: once where none is said, none where the size skips it.</summary>
    private int In(Amount? amount) => amount is null ? 1 : amount.Values.Values.Length == 1 || amount.Values.Values.Length == sizes ? amount[size] ?? 0 : 0;

    private string Number(Amount? amount) => amount is null ? "" : In(amount).ToString(CultureInfo.InvariantCulture);
}
