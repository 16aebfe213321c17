using System.Collections.Immutable;

namespace PatternForge.Core.Reference;

/// <summary>A technique that rows show, and where it stands on the scale of project levels.</summary>
/// <param name="Name">What makers call it.</param>
/// <param name="Step">0 basic, 1 easy, 2 intermediate: used by itself.</param>
/// <param name="Words">Beginnings of words, in small letters, by which a pattern may have named it.</param>
public sealed record Technique(string Name, int Step, ImmutableArray<string> Words);

/// <summary>
/// Techniques on the published scale. The scale itself speaks of simple, involved and complex stitch patterns, shaping and colour work; which technique is which is
/// common practice, where the older scale of the same council helps (cables, lace and simple intarsia in the third of four steps).
/// Several involved ones at the same time are its fourth step.
/// </summary>
public static class TechniqueLevels
{
    /// <summary>Cables.</summary>
    public static Technique Cables { get; } = new("cables", 2, ["cabl", "cross", "twist", "travell", "travel"]);

    /// <summary>Lace: yarn overs and decreases over several rows.</summary>
    public static Technique Lace { get; } = new("lace", 2, ["lace", "yarn over", "yarnover", "yarn-over", "eyelet", "openwork", "yo ", "yos"]);

    /// <summary>Short rows.</summary>
    public static Technique ShortRows { get; } = new("short rows", 2, ["short row", "short-row", "wrap", "w&t", "double stitch", "shadow wrap"]);

    /// <summary>Brioche.</summary>
    public static Technique Brioche { get; } = new("brioche", 2, ["brioche", "fisherman", "tuck", "half-fisherman", "shaker"]);

    /// <summary>Several colours in one row.</summary>
    public static Technique ColourWork { get; } = new("colour work within a row", 2, ["colour", "color", "strand", "intarsia", "fair isle", "jacquard", "tapestry", "mosaic", "float", "carr"]);

    /// <summary>Cut openings.</summary>
    public static Technique Steeks { get; } = new("steeks", 2, ["steek", "cut"]);

    /// <summary>Grafting.</summary>
    public static Technique Grafting { get; } = new("grafting", 1, ["graft", "kitchener", "weav", "three-needle"]);

    /// <summary>Holes made by a few yarn overs.</summary>
    public static Technique Eyelets { get; } = new("eyelets", 1, ["eyelet", "yarn over", "yarnover", "yo ", "buttonhole", "lace"]);

    /// <summary>Bobbles.</summary>
    public static Technique Bobbles { get; } = new("bobbles and clusters", 1, ["bobble", "cluster", "popcorn", "puff", "nupp"]);

    /// <summary>Stitches round the post.</summary>
    public static Technique PostStitches { get; } = new("post stitches", 1, ["post", "raised", "relief", "cabl"]);

    /// <summary>Filet.</summary>
    public static Technique Filet { get; } = new("filet", 1, ["filet", "mesh"]);

    /// <summary>Another colour in another row.</summary>
    public static Technique Stripes { get; } = new("changing colours", 1, ["colour", "color", "stripe", "join"]);

    /// <summary>Picked up edges.</summary>
    public static Technique PickingUp { get; } = new("picking up stitches", 1, ["pick", "knit up"]);

    /// <summary>Tunisian crochet.</summary>
    public static Technique Tunisian { get; } = new("Tunisian crochet", 1, ["tunisian"]);
}
