using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>Reads places that are known from what was worked before: "same st", "skipped st", "dc just made"; and "indicated sp", known from the row that a special stitch stands in.</summary>
internal static class PlaceBack
{
    private static readonly Thing Anything = new(ThingKind.Any);

    /// <summary>"in sc just made", "in top of last dc made".</summary>
    public static Place? JustMade(PhraseCursor c, RowContext context, TextSpan origin)
    {
        var start = c.At;
        c.EatAll("top", "of");
        c.Eat("the");
        c.Eat("last|previous");
        if (ThingReader.TryRead(c, context) is { Kind: ThingKind.Named or ThingKind.Stitch } thing && (c.EatAll("just", "made") || c.EatAll("just", "work") || c.Eat("made")))
        {
            return new Place(PlaceKind.JustMade, thing, origin);
        }

        c.At = start;
        return null;
    }

    /// <summary>"skipped st", "each of 2 skipped sts", "st just skipped": back to places passed over before; null with the cursor unmoved.</summary>
    private static (Amount? Count, bool Said)? Skipped(PhraseCursor c, RowContext context)
    {
        const string Stitches = "st|ch|dc|sc|tr|htr|hdc|dtr";
        var start = c.At;
        c.Eat("each|both");
        c.Eat("of");
        c.Eat("the");
        c.Eat("first|last|next|prev|previous");
        var number = c.EatNumber();
        if (c.Eat("skipped|missed|unworked|sk") && (c.Eat(Stitches) || c.IsDone))
        {
            return (number is null ? null : context.AmountOf(number), true);
        }

        if (c.Eat(Stitches) && c.Eat("just|previously") && c.Eat("skipped|missed"))
        {
            return (number is null ? null : context.AmountOf(number), true);
        }

        c.At = start;
        return null;
    }

    /// <summary>"same st as join", "st at base of ch-3"; null with the cursor unmoved.</summary>
    public static Place? Same(PhraseCursor c, RowContext context, TextSpan origin)
    {
        var start = c.At;
        if (c.Eat("same"))
        {
            c.Eat("corner");
            if (!(c.EatAll("ch|chain", "sp|space")) && ThingReader.TryChainLength(c) is null)
            {
                c.Eat("place|st|sp|space|ch|chain|loop|corner|dc|sc|hdc|tr|htr|dtr|shell|ring");
                if (c.Is("or|and") && c.Is("sp|space|ch-sp|chain-space|loop|ch|chain", 1))
                {
                    c.At += 2; // "in same st or sp"
                    c.Eat("sp|space");
                }
            }

            c.Eat("corner");
            c.Eat("sp|space|st|loop");
            if (c.Is("as|at|where|with"))
            {
                PlaceReader.SkipToNext(c);
            }

            return new Place(PlaceKind.Same, Anything, origin);
        }

        if (Skipped(c, context) is { } skipped)
        {
            return new Place(PlaceKind.Same, Anything, origin) { Count = skipped.Count };
        }

        if (c.EatAll("st", "at", "base") || c.EatAll("base", "of") || c.EatAll("st", "at", "the", "base") || c.EatAll("st", "at", "center") || c.EatAll("st", "at", "beg"))
        {
            PlaceReader.SkipToNext(c);
            return new Place(PlaceKind.Same, Anything, origin);
        }

        c.At = start;
        return null;
    }

    /// <summary>A special stitch is "worked in indicated sp"; the row says which. Null with the cursor unmoved.</summary>
    public static Place? Indicated(PhraseCursor c, TextSpan origin)
    {
        const string Said = "indicated|designated|specified|given|stated|directed";
        var start = c.At;
        if (!c.Eat(Said))
        {
            c.Eat("a|any|one|1|same");
            c.Eat("ch|chain|corner");
            c.Eat("st|sp|space|loop|place");
            if (c.Eat("or") && !c.Is(Said))
            {
                c.Eat("ch|chain|corner");
                c.Eat("sp|space|st|loop|ch-sp");
            }

            if (c.At > start && (c.Eat(Said) || (c.Eat("as") && c.Eat(Said))))
            {
                return new Place(PlaceKind.Next, Anything, origin);
            }

            c.At = start;
            return null;
        }

        c.Eat("ch|st|chain|corner");
        c.Eat("st|sp|space|loop|place");
        if (c.Is("or|and") && c.Is("sp|space|st|ch-sp|chain-space|ch|chain|loop", 1))
        {
            c.At += 2;
            c.Eat("sp|space");
        }

        return new Place(PlaceKind.Next, Anything, origin);
    }
}
