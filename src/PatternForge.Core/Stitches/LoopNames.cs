namespace PatternForge.Core.Stitches;

/// <summary>Crochet names that say which loop or post a stitch goes into beside the stitch itself: "sc-blo", "BLsc", "BPdc2tog".</summary>
public static class LoopNames
{
    private static readonly string[] Loops = ["blo", "flo", "tbl", "tfl", "bl", "fl"];

    /// <summary>Where the stitch itself stands in such a name, as start and length; null when no loop is named. The loop changes no count.</summary>
    public static (int Start, int Length)? StitchIn(string name)
    {
        if (name.Length > 4 && name.EndsWith("tog", StringComparison.OrdinalIgnoreCase) && (name.StartsWith("fp", StringComparison.OrdinalIgnoreCase) || name.StartsWith("bp", StringComparison.OrdinalIgnoreCase)))
        {
            return (2, name.Length - 2); // "BPdc2tog": round the posts
        }

        foreach (var loop in Loops)
        {
            if (name.Length <= loop.Length + 1)
            {
                continue;
            }

            if (loop.Length == 3 && name.EndsWith(loop, StringComparison.OrdinalIgnoreCase))
            {
                return (0, name.AsSpan(0, name.Length - loop.Length).TrimEnd("- /").Length);
            }

            if (name.StartsWith(loop, StringComparison.OrdinalIgnoreCase))
            {
                var rest = name.AsSpan(loop.Length).TrimStart("- /");
                return (name.Length - rest.Length, rest.Length);
            }
        }

        return null;
    }
}
