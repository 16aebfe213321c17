using System.Collections.Concurrent;

namespace PatternForge.Core.Stitches;

/// <summary>What the stitches of a crossing are.</summary>
public enum CrossingKind
{
    /// <summary>All of them knit (C4F, 2/2 LC).</summary>
    AllKnit,

    /// <summary>Knit stitches over purl stitches (T4B, 2/1 LPC).</summary>
    OverPurl,

    /// <summary>Two stitches change places without a cable needle (LT, RT).</summary>
    Twist,
}

/// <summary>A crossing: the stitches on top and underneath, those that stay in the middle, and which way the top ones lean on the side that shows.</summary>
/// <param name="Name">The usual spelling: "C4F", "2/1 LPC", "LT".</param>
/// <param name="Total">All stitches of the crossing; it uses and makes as many.</param>
/// <param name="Over">Stitches that lie on top; null where the name tells the total alone and it is odd.</param>
/// <param name="Middle">Stitches between the two groups that stay where they are; usually none.</param>
/// <param name="Lean">Left when held in front, right when held behind.</param>
/// <param name="Kind">What the stitches are.</param>
public sealed record Crossing(string Name, int Total, int? Over, int Middle, Lean Lean, CrossingKind Kind)
{
    /// <summary>Stitches that lie underneath; null where the name does not tell.</summary>
    public int? Under => Total - Middle - Over;
}

/// <summary>
/// Reads the names of crossings for any numbers of stitches. In "C4F", "T3B", "CR4L" and "6-st RC" the figure is all the stitches;
/// in "2/1 LPC" the figures are the two groups. F (held in front) and L lean left, B (held behind) and R lean right. Common practice.
/// </summary>
public static class CableNames
{
    /// <summary>The fewest stitches that can cross.</summary>
    public const int Fewest = 2;

    /// <summary>The most stitches that a crossing may have.</summary>
    public const int Most = 40;

    private static readonly ConcurrentDictionary<string, Operation> Known = new(StringComparer.Ordinal);

    /// <summary>The crossing that a name stands for; null when it is no name of a crossing or its numbers make no sense.</summary>
    public static Crossing? Read(ReadOnlySpan<char> name)
    {
        Span<char> room = stackalloc char[24];
        var length = SpokenForms.Squeeze(name, room);
        if (length <= 0)
        {
            return null;
        }

        var word = room[..length];
        for (var i = 0; i < length; i++)
        {
            word[i] = char.ToUpperInvariant(word[i]);
        }

        return word switch
        {
            "LT" or "LEFTTWIST" or "TWISTLEFT" => Twist("LT", Lean.Left),
            "RT" or "RIGHTTWIST" or "TWISTRIGHT" => Twist("RT", Lean.Right),
            _ => char.IsAsciiDigit(word[0]) ? ReadGroups(word) : ReadTotal(word),
        };
    }

    /// <summary>The crossing as an operation that takes and makes the same number of stitches; null when the name is no crossing.</summary>
    public static Operation? Find(ReadOnlySpan<char> name) =>
        Read(name) is { } crossing ? Known.GetOrAdd(crossing.Name, static (_, c) => ToOperation(c), crossing) : null;

    /// <summary>The crossing in words that <see cref="Read"/> reads again: "cable 6 back", "2 over 1 left purl cross"; null where it has none.</summary>
    public static string? InWords(ReadOnlySpan<char> name)
    {
        if (Read(name) is not { } crossing)
        {
            return null;
        }

        var said = crossing.Name;
        var side = crossing.Lean == Lean.Left ? "left" : "right";
        if (said is "LT" or "RT")
        {
            return side + " twist";
        }

        var total = crossing.Total.ToString(System.Globalization.CultureInfo.InvariantCulture);
        if (said[0] is 'C' or 'T' && char.IsAsciiDigit(said[1]))
        {
            var end = said[^1] switch { 'F' => "front", 'B' => "back", _ => side };
            return $"{(said[0] == 'C' ? "cable" : "twist")} {total} {end}";
        }

        var blank = said.IndexOf(' ', StringComparison.Ordinal);
        if (blank < 0 || !said.AsSpan(0, blank).Contains('/'))
        {
            return null;
        }

        var purl = said.EndsWith("PC", StringComparison.Ordinal) || said.EndsWith("PT", StringComparison.Ordinal) ? " purl" : "";
        return $"{said[..blank].Replace("/", " over ", StringComparison.Ordinal)} {side}{purl} {(said[^1] == 'T' ? "twist" : "cross")}";
    }

    private static Crossing Twist(string name, Lean lean) => new(name, 2, 1, 0, lean, CrossingKind.Twist);

    // C4F, T3B, CR4L, CABLE6FRONT: the figure is the total.
    private static Crossing? ReadTotal(ReadOnlySpan<char> word)
    {
        var letters = word.StartsWith("CABLE") || word.StartsWith("TWIST") ? 5 : word.StartsWith("CR") ? 2 : word.StartsWith("TW") ? 2 : word[0] is 'C' or 'T' ? 1 : 0;
        var rest = word[letters..];
        if (letters == 0 || !TakeNumber(ref rest, out var total) || total is < Fewest or > Most || SideOf(rest) is not { } lean)
        {
            return null;
        }

        var kind = word[0] == 'T' ? CrossingKind.OverPurl : CrossingKind.AllKnit;
        var prefix = letters == 5 ? word[..1].ToString() : letters == 1 ? word[..1].ToString() : word[..2] is "CR" ? "Cr" : "Tw";
        return new Crossing($"{prefix}{total}{rest[0]}", total, total % 2 == 0 ? total / 2 : null, 0, lean, kind);
    }

    private static Lean? SideOf(ReadOnlySpan<char> rest) => rest switch
    {
        "F" or "L" or "FRONT" or "LEFT" => Lean.Left,
        "B" or "R" or "BACK" or "RIGHT" => Lean.Right,
        _ => null,
    };

    // 2/2 LC, 2/1 RPC, 2/1/2 LPC: the figures are the groups; 6-st LC: the figure is the total.
    private static Crossing? ReadGroups(ReadOnlySpan<char> word)
    {
        Span<int> groups = stackalloc int[3];
        var count = 0;
        do
        {
            if (count == 3 || !TakeNumber(ref word, out groups[count]) || groups[count] is < 1 or > Most)
            {
                return null;
            }

            count++;
        }
        while (TakeSlash(ref word));

        var told = count == 1 && word.StartsWith("ST");
        if (count == 1 && !told)
        {
            return null;
        }

        if (EndOf(told ? word[2..] : word) is not { } end)
        {
            return null;
        }

        var (letters, lean, kind) = end;
        var total = groups[0] + (count > 1 ? groups[1] : 0) + (count > 2 ? groups[2] : 0);
        if (total is < Fewest or > Most)
        {
            return null;
        }

        return told
            ? new Crossing($"{total}-st {letters}", total, total % 2 == 0 ? total / 2 : null, 0, lean, kind)
            : count == 2
                ? new Crossing($"{groups[0]}/{groups[1]} {letters}", total, groups[0], 0, lean, kind)
                : new Crossing($"{groups[0]}/{groups[1]}/{groups[2]} {letters}", total, groups[0], groups[1], lean, kind);
    }

    private static (string Letters, Lean Lean, CrossingKind Kind)? EndOf(ReadOnlySpan<char> rest) => rest switch
    {
        "LC" or "LKC" or "LEFTCROSS" => ("LC", Lean.Left, CrossingKind.AllKnit),
        "RC" or "RKC" or "RIGHTCROSS" => ("RC", Lean.Right, CrossingKind.AllKnit),
        "LPC" or "LEFTPURLCROSS" => ("LPC", Lean.Left, CrossingKind.OverPurl),
        "RPC" or "RIGHTPURLCROSS" => ("RPC", Lean.Right, CrossingKind.OverPurl),
        "LT" or "LEFTTWIST" => ("LT", Lean.Left, CrossingKind.Twist),
        "RT" or "RIGHTTWIST" => ("RT", Lean.Right, CrossingKind.Twist),
        "LPT" or "LEFTPURLTWIST" => ("LPT", Lean.Left, CrossingKind.OverPurl),
        "RPT" or "RIGHTPURLTWIST" => ("RPT", Lean.Right, CrossingKind.OverPurl),
        _ => null,
    };

    private static bool TakeNumber(ref ReadOnlySpan<char> rest, out int number)
    {
        number = 0;
        var digits = 0;
        while (digits < rest.Length && digits < 3 && char.IsAsciiDigit(rest[digits]))
        {
            number = (number * 10) + (rest[digits] - '0');
            digits++;
        }

        rest = rest[digits..];
        return digits > 0;
    }

    private static bool TakeSlash(ref ReadOnlySpan<char> rest)
    {
        if (rest.StartsWith("OVER") && rest.Length > 4 && char.IsAsciiDigit(rest[4]))
        {
            rest = rest[4..]; // "2 over 1 left cross"
            return true;
        }

        if (rest.IsEmpty || rest[0] is not ('/' or '\u2044'))
        {
            return false;
        }

        rest = rest[1..];
        return true;
    }

    private static Operation ToOperation(Crossing crossing)
    {
        var side = crossing.Lean == Lean.Left ? "left" : "right";
        var held = crossing.Lean == Lean.Left ? "in front" : "behind";
        return new Operation
        {
            Id = crossing.Name,
            Craft = Craft.Knitting,
            Names = [new OperationName(Dialect.Any, crossing.Name)],
            Spoken = $"{crossing.Total}-stitch {(crossing.Kind == CrossingKind.Twist ? "twist" : "cross")} {side}",
            Definition = Define(crossing, held, side),
            Takes = crossing.Total,
            Makes = crossing.Total,
            Family = Family.Cable,
            Gives = StitchKind.Cable,
            Difficulty = crossing.Kind == CrossingKind.AllKnit && crossing.Middle == 0 ? Difficulty.Intermediate : Difficulty.Complex,
            Lean = crossing.Lean,
            Symbol = crossing.Kind switch
            {
                CrossingKind.Twist => $"twist-{side}",
                CrossingKind.OverPurl => $"cross-{side}-over-purl",
                _ => $"cross-{side}",
            },
        };
    }

    private static string Define(Crossing crossing, string held, string side)
    {
        if (crossing.Kind == CrossingKind.Twist && crossing.Total == 2)
        {
            return crossing.Lean == Lean.Left
                ? "Knit the second stitch through its back leg, then the first, and let both go; the top one leans left."
                : "Knit the second stitch, then the first, and let both go; the top one leans right.";
        }

        var overPurl = crossing.Kind == CrossingKind.OverPurl;
        var under = overPurl ? "purl" : "knit";
        if (crossing is not { Over: { } over, Under: { } below })
        {
            return $"Cross {crossing.Total} stitches with a cable needle held {held}, {(overPurl ? "knit over purl" : "all knit")}; the top ones lean {side}.";
        }

        var middle = crossing.Middle > 0 ? $", leave the {crossing.Middle} in the middle behind" : "";
        return crossing.Lean == Lean.Left
            ? $"Hold {over} on a cable needle in front{middle}, {under} {below}, then knit the {over} from the cable needle; the top ones lean left."
            : $"Hold {below + crossing.Middle} on a cable needle behind, knit {over}, then {under} those held; the top ones lean right.";
    }
}
