using System.Collections.Frozen;
using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;

namespace PatternForge.Core.Binding;

/// <summary>All stitches that a pattern's rows may name: those its header defines, then those of its craft.</summary>
internal sealed class StitchBook
{
    /// <summary>A stitch in whatever pattern is in force.</summary>
    public static Operation InPattern { get; } = new()
    {
        Id = "work",
        Craft = Craft.Knitting,
        Names = [new OperationName(Dialect.Any, "work")],
        Spoken = "work in pattern",
        Definition = "Work the stitch as the pattern in force has it.",
        Takes = 1,
        Makes = 1,
        Family = Family.Basic,
        Gives = StitchKind.InPattern,
        Symbol = "work",
    };

    /// <summary>A crochet stitch whose kind is not said ("17 stitches").</summary>
    public static Operation AnyCrochet { get; } = InPattern with { Craft = Craft.Crochet, Id = "st", Names = [new OperationName(Dialect.Any, "st")], Spoken = "stitch", Gives = StitchKind.Crochet };

    private readonly Dictionary<string, ImmutableArray<Step>> _shells = new(StringComparer.Ordinal);
    private const int MostRemembered = 4_096;

    private readonly Craft _craft;
    private readonly Dialect _dialect;

    // Rows name few stitches, and each of them many times.
    private readonly Dictionary<string, Operation?> _found = new(StringComparer.Ordinal);
    private FrozenDictionary<string, Operation> _special = FrozenDictionary<string, Operation>.Empty;

    public StitchBook(PatternFacts facts)
    {
        _craft = facts.Craft;
        _dialect = facts.TermsInForce ?? Dialect.Any;
        Knit = Get("k");
        Purl = Get("p");
        Kfb = Get("kfb");
        MakeOne = Get("m1");
        YarnOver = Get("yo");
        Slip = Get("sl");
        KnitTwoTogether = Get("k2tog");
        PassTwoOver = Get("p2sso");
        YarnToFront = Get("ytf");
    }

    public Operation Knit { get; }

    public Operation Purl { get; }

    public Operation Kfb { get; }

    public Operation MakeOne { get; }

    public Operation YarnOver { get; }

    public Operation Slip { get; }

    public Operation KnitTwoTogether { get; }

    public Operation PassTwoOver { get; }

    public Operation YarnToFront { get; }

    /// <summary>Longest name of a special stitch in words.</summary>
    public int LongestSpecial { get; private set; } = 1;

    public void Define(IEnumerable<Operation> special)
    {
        var byName = new Dictionary<string, Operation>(StringComparer.Ordinal);
        foreach (var operation in special)
        {
            byName.TryAdd(Squeeze(operation.Id), operation);
            LongestSpecial = Math.Max(LongestSpecial, operation.Id.Count(c => c is ' ' or '/') * 2 + 1);
        }

        _special = byName.ToFrozenDictionary(StringComparer.Ordinal);
        _found.Clear();
    }

    /// <summary>Keeps the stitches of a group that the header defines ("shell: (2 dc, ch 2, 2 dc) in indicated sp").</summary>
    public void DefineShell(string id, ImmutableArray<Step> body) => _shells[id] = body;

    /// <summary>The stitches of a group that the header defines; null when the stitch is no group.</summary>
    public ImmutableArray<Step>? ShellOf(Operation operation) => _shells.TryGetValue(operation.Id, out var body) ? body : null;

    /// <summary>A bobble or the like, which is one stitch whatever it is made of.</summary>
    public static Operation OneStitch(string name) => AnyCrochet with { Id = name, Names = [new OperationName(Dialect.Any, name)], Spoken = name, Family = Family.Special };

    /// <summary>True when the header defines a stitch of this name.</summary>
    public bool IsSpecial(string name) => _special.ContainsKey(Squeeze(name));

    /// <summary>The operation of that name, whatever its spelling; null when nobody knows it.</summary>
    public Operation? Find(string name)
    {
        if (name.Length > 48)
        {
            return null;
        }

        if (!_found.TryGetValue(name, out var operation))
        {
            operation = LookUp(name);
            if (_found.Count < MostRemembered)
            {
                _found.Add(name, operation);
            }
        }

        return operation;
    }

    private Operation? LookUp(string name) =>
        _special.TryGetValue(Squeeze(name), out var special) ? special : InTable(name) ?? (_craft == Craft.Crochet && WithoutLoop(name) is { } plain ? InTable(plain) : null);

    // "sc-blo", "scblo", "BLsc": the stitch without the loop it goes into, which changes no count.
    private static string? WithoutLoop(string name) => LoopNames.StitchIn(name) is var (start, length) ? name.Substring(start, length) : null;

    private Operation? InTable(string name) => OperationTable.Find(_craft, _dialect, name) ?? OperationTable.Find(_craft, Dialect.Any, name) ?? (_craft == Craft.Tunisian ? OperationTable.Find(Craft.Crochet, _dialect, name) : null);

    /// <summary>The operation of that name or of its plural ("dcs"); null when nobody knows it.</summary>
    public Operation? FindPlural(string name) => Find(name) ?? (name.Length > 2 && name.EndsWith('s') ? Find(name[..^1]) : null);

    /// <summary>Names near a misspelt one.</summary>
    public IEnumerable<string> Names => _special.Values.Select(o => o.Id).Concat(OperationTable.NamesOf(_craft, _dialect, spoken: false));

    private static string Squeeze(string name)
    {
        Span<char> room = stackalloc char[Math.Min(name.Length, 64)];
        var length = 0;
        foreach (var c in name)
        {
            if (c is not (' ' or '-' or '.') && length < room.Length)
            {
                room[length++] = char.ToLowerInvariant(c);
            }
        }

        return room[..length].ToString();
    }

    private static Operation Get(string id) => OperationTable.Find(Craft.Knitting, Dialect.Any, id) ?? throw new InvalidOperationException($"The stitch table lacks {id}.");
}
