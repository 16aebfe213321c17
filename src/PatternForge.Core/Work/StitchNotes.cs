using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Work;

/// <summary>
/// Writes down, stitch by stitch, what a row does, as a chart shows it: a slipped stitch that is lifted over another becomes one decrease, and what is worked
/// over a cable needle one crossing. Nobody keeps such notes unless a chart is made.
/// </summary>
internal sealed class StitchNotes
{
    /// <summary>The most stitches that a row of a chart may have.</summary>
    public const int Most = 1_000;

    private static readonly Lazy<(Operation Knit, Operation BindOff)> Plainest = new(() => (ById("k"), ById("bo")));

    private readonly List<Operation> _stitches = [];
    private readonly List<string?> _colours = [];
    private int _heldAt = -1;
    private int _held;
    private bool? _inFront;
    private bool? _moved;
    private readonly List<Operation> _fromHeld = [];

    /// <summary>False when something was worked that no chart can show.</summary>
    public bool IsWhole { get; private set; } = true;

    /// <summary>How many operations came before the first repeat of the row; null where nothing is repeated.</summary>
    public int? RepeatAt { get; private set; }

    /// <summary>The operations in the order in which they were worked.</summary>
    public ImmutableArray<Operation> Stitches => [.. _stitches];

    /// <summary>The yarn of each of them.</summary>
    public ImmutableArray<string?> Colours => [.. _colours];

    /// <summary>The yarn that is worked with now; null where the row does not say.</summary>
    public string? Colour { get; set; }

    /// <summary>Where the yarn lies at the next slipped stitch, as its own words say; null where they do not.</summary>
    public bool? YarnInFront { get; set; }

    /// <summary>Something that cannot be shown has been worked.</summary>
    public void Spoil() => IsWhole = false;

    /// <summary>A repeat begins.</summary>
    public void Repeats() => RepeatAt ??= _stitches.Count;

    /// <summary>An operation is worked so many times.</summary>
    public void Add(Operation operation, int times)
    {
        if (operation.Family == Family.ShortRow || times > Most - _stitches.Count)
        {
            Spoil();
            return;
        }

        if (operation.Id is "ytf" or "yb")
        {
            _moved = operation.Id == "ytf";
        }
        else if (operation.Family == Family.Slip)
        {
            operation = KnitSlips.With(operation, YarnInFront ?? _moved);
        }
        else
        {
            _moved = null; // the next stitch takes it where it needs it
        }

        for (var i = 0; i < times && IsWhole; i++)
        {
            if (operation.PassesOver > 0 && operation.Takes == 0)
            {
                PassOver(operation.PassesOver);
            }
            else if (operation is { Takes: 1, Makes: 0, Family: Family.Decrease })
            {
                Merge(2, Lean.Right, operation);
            }
            else if (operation.Takes > 0 || operation.Makes > 0)
            {
                Push(operation);
            }
        }
    }

    /// <summary>Stitches are worked plain that nobody told.</summary>
    public void Plain(int count) => Add(Plainest.Value.Knit, count);

    /// <summary>So many are bound off.</summary>
    public void BindOff(int count) => Add(Plainest.Value.BindOff, count);

    /// <summary>Several stitches are made in one.</summary>
    public void IntoOne(InOneStitchStep step, Probed made, int times)
    {
        if (times > 0)
        {
            Add(Composite(1, made.Makes, $"{made.Makes} stitches in one", $"increase-1-{made.Makes}", Family.Increase, Lean.None, Words(step.Body)), times);
        }
    }

    /// <summary>Stitches go to the cable needle.</summary>
    public void Hold(int count, bool? inFront)
    {
        if (_heldAt >= 0 || inFront is null)
        {
            Spoil();
        }

        (_heldAt, _held, _inFront) = (_stitches.Count, count, inFront);
    }

    /// <summary>Stitches are worked from it; the crossing is done when none is left there.</summary>
    public void FromHeld(Operation operation, int count, bool isEmpty)
    {
        _fromHeld.AddRange(Enumerable.Repeat(operation, Math.Min(count, CableNames.Most)));
        if (!isEmpty || _heldAt < 0)
        {
            return;
        }

        Operation[] between = [.. _stitches.Skip(_heldAt)];
        var (over, under) = _inFront == true ? (_fromHeld.ToArray(), between) : (between, [.. _fromHeld]);
        Drop(between.Length);
        var purled = under.Length > 0 && under.All(o => o.Id == "p");
        var isPlain = over.All(o => o.Id == "k") && (purled || under.All(o => o.Id == "k")) && _held == _fromHeld.Count;
        var name = $"{over.Length}/{under.Length} {(_inFront == true ? "L" : "R")}{(purled ? "P" : "")}C";
        if (isPlain && CableNames.Find(name) is { } crossing)
        {
            Push(crossing);
        }
        else
        {
            Spoil();
        }

        _heldAt = -1;
        _fromHeld.Clear();
    }

    /// <summary>The stitches before the last one are lifted over it.</summary>
    private void PassOver(int count)
    {
        var purl = _stitches.Count > 0 && _stitches[^1].Gives == StitchKind.Purl;
        var together = _stitches.Count > 0 && _stitches[^1].Family == Family.Decrease;
        var from = count == 2 && !together && _stitches.Count > 2 ? 3 : 2;
        var id = (from, together, purl) switch
        {
            (3, _, false) => "s2kp",
            (2, true, false) when _stitches[^1].Id == "k2tog" => "sk2p",
            (2, true, false) when _stitches[^1].Id == "p2tog" => "sp2p",
            (2, false, false) when _stitches[^1].Id == "k" => "skp",
            (2, false, true) => "spp",
            _ => null,
        };
        if (id is null || count > 2 || (count == 2 && from == 2) || _stitches.Count < from || _stitches.Skip(_stitches.Count - from).Take(from - 1).Any(o => o is not { Takes: 1, Makes: 1 }))
        {
            Spoil();
            return;
        }

        Drop(from);
        Push(ById(id));
    }

    /// <summary>The last operation and the one that comes over it are one decrease.</summary>
    private void Merge(int takes, Lean lean, Operation over)
    {
        if (_stitches.Count == 0 || _stitches[^1] is not { Takes: 1, Makes: 1 } last)
        {
            Spoil();
            return;
        }

        _stitches[^1] = Composite(takes, 1, $"{last.Spoken}, {over.Spoken}", "lean-right-2", Family.Decrease, lean, $"{last.Names[0].Text}1, {over.Names[0].Text}");
    }

    private void Push(Operation operation)
    {
        _stitches.Add(operation);
        _colours.Add(Colour);
    }

    private void Drop(int count)
    {
        _stitches.RemoveRange(_stitches.Count - count, count);
        _colours.RemoveRange(_colours.Count - count, count);
    }

    private static Operation Composite(int takes, int makes, string spoken, string symbol, Family family, Lean lean, string name) => new()
    {
        Id = name,
        Craft = Craft.Knitting,
        Names = [new OperationName(Dialect.Any, name)],
        Spoken = spoken,
        Definition = "",
        Takes = takes,
        Makes = makes,
        Family = family,
        Gives = family == Family.Increase ? StitchKind.Increase : StitchKind.Decrease,
        Lean = lean,
        Symbol = symbol,
    };

    private static string Words(ImmutableArray<Step> body)
    {
        var words = body.OfType<OperationStep>().Select(s => s.Operation.Names[0].Text + (s.Operation is { Takes: 1, Makes: 1 } ? "1" : ""));
        return $"({string.Join(", ", words)}) in next st";
    }

    private static Operation ById(string id) => KnitOperations.All.First(o => o.Id == id);
}
