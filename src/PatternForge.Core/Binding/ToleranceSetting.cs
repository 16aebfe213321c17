using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>One threshold that a project file may set: its name, what it is for, its bounds, and the property of <see cref="Tolerances"/> that holds it.</summary>
/// <param name="Name">Its key under `tolerances`.</param>
/// <param name="About">What it bounds, for the documents.</param>
/// <param name="IsShare">True for a share of one, written as 0.05 or 5%; false for a number of things.</param>
/// <param name="Most">The largest value that makes sense; the smallest is 0.</param>
/// <param name="Read">The value in force.</param>
/// <param name="Set">The thresholds with another value.</param>
internal sealed record ToleranceSetting(string Name, string About, bool IsShare, decimal Most, Func<Tolerances, decimal> Read, Func<Tolerances, decimal, Tolerances> Set)
{
    /// <summary>Every threshold that can be set. A new property of <see cref="Tolerances"/> gets its line here.</summary>
    public static ImmutableArray<ToleranceSetting> All { get; } =
    [
        new("measurement", "a worked width or length against the finished measurement", true, 1, t => t.Measurement, (t, v) => t with { Measurement = v }),
        new("grist", "an alternative yarn's metres per gram against the main yarn's", true, 1, t => t.Grist, (t, v) => t with { Grist = v }),
        new("ease", "a finished measurement against the body and the ease", true, 1, t => t.Ease, (t, v) => t with { Ease = v }),
        new("body", "a body measurement against the ends of the published table", true, 1, t => t.Body, (t, v) => t with { Body = v }),
        new("units", "the same value in two units, given by hand", true, 1, t => t.Units, (t, v) => t with { Units = v }),
        new("longest-float", "stitches that a yarn is carried over on the back", false, 1_000, t => t.LongestFloat, (t, v) => t with { LongestFloat = (int)v }),
        new("yarn-share", "times that a yarn's part of the amounts may be smaller than its part of the stitches", false, 100, t => t.YarnShare, (t, v) => t with { YarnShare = (int)v }),
        new("photo-side", "the shortest side of a photo, in pixels", false, 20_000, t => t.PhotoSide, (t, v) => t with { PhotoSide = (int)v }),
    ];

    /// <summary>A value as a project file writes it.</summary>
    public string Written(decimal value) => IsShare ? string.Create(CultureInfo.InvariantCulture, $"{value * 100:0.##}%") : value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>The value that a text says; null where it says none within the bounds.</summary>
    public decimal? ValueOf(string text)
    {
        var said = text.AsSpan().Trim();
        var isPercent = IsShare && said.EndsWith("%");
        said = isPercent ? said[..^1].TrimEnd() : said;
        if (!decimal.TryParse(said, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
        {
            return null;
        }

        value = isPercent ? value / 100 : value;
        return value <= Most && (IsShare || value == decimal.Truncate(value)) ? value : null;
    }
}
