using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Tells the measurements of the trade by their many names.</summary>
internal static class MeasureNames
{
    private static readonly (string Plain, ImmutableArray<string> Names)[] Known =
    [
        ("bust", ["bust", "chest", "bust/chest", "chest/bust", "bust circumference", "chest circumference", "full bust", "bust or chest", "bust / chest"]),
        ("waist", ["waist", "waist circumference"]),
        ("hips", ["hips", "hip", "hip circumference"]),
        ("head", ["head", "head circumference", "around the head", "head size"]),
        ("hand", ["hand", "hand circumference", "palm", "palm circumference", "around the hand"]),
        ("foot", ["foot", "foot circumference", "around the foot"]),
        ("upper arm", ["upper arm", "upper arm circumference", "bicep", "biceps", "upper-arm"]),
        ("cross back", ["cross back", "cross-back", "shoulder width", "back width at the shoulders"]),
        ("back waist length", ["back waist length", "nape to waist"]),
        ("back hip length", ["back hip length"]),
        ("armhole depth", ["armhole depth", "armhole"]),
        ("arm length to underarm", ["arm length to underarm", "arm length", "underarm to wrist", "inside arm", "sleeve length to underarm"]),
        ("center back neck to wrist", ["center back neck to wrist", "centre back neck to wrist", "wingspan half", "neck to wrist"]),
        ("around", ["circumference", "around", "girth", "finished circumference", "hat circumference", "cowl circumference"]),
        ("width", ["width", "wide"]),
        ("length", ["length", "long"]),
    ];

    /// <summary>The plain name of a measurement; null where it is none of those known.</summary>
    public static string? Plain(string name)
    {
        var said = name.Trim();
        foreach (var (plain, names) in Known)
        {
            if (names.Contains(said, StringComparer.OrdinalIgnoreCase))
            {
                return plain;
            }
        }

        return null;
    }

    /// <summary>True when two names mean the same measurement.</summary>
    public static bool AreSame(string one, string other) =>
        string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase) || (Plain(one) is { } plain && plain == Plain(other));

    /// <summary>A size's value as the centimetres from and to which it goes; null where it has none.</summary>
    public static (decimal Least, decimal Most)? Cm(PerSize<Quantity?> values, int size) =>
        (values.IsShared || size < values.Values.Length) && values[size] is { Unit.Dimension: Dimension.Length } q ? (q.InBase, q.UpTo is { } upTo ? upTo * q.Unit.InBase : q.InBase) : null;
}
