using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>One physical row in the order of work.</summary>
/// <param name="Row">The row as it is written, at its first place where it is worked again.</param>
/// <param name="Count">The stitches that there are after it; null where they are not known.</param>
internal readonly record struct LoggedRow(BoundRow Row, int? Count)
{
    /// <summary>The most rows that are kept of one size.</summary>
    public const int Most = 20_000;
}
