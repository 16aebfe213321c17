using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads how far a run goes: "to last 3 sts", "to 2 sts before marker", "across", "until 5 sts rem".</summary>
internal static class TargetReader
{
    /// <summary>The target at the cursor, or null with the cursor unmoved.</summary>
    public static Target? TryRead(PhraseCursor cursor, RowContext context)
    {
        var start = cursor.At;
        var target = Read(cursor, context);
        if (target is null)
        {
            cursor.At = start;
        }

        return target;
    }

    private static Target? Read(PhraseCursor c, RowContext context)
    {
        if (c.Eat("across|around"))
        {
            // "knit across 18 sts" is a number; the caller reads it.
            if (c.IsNumber())
            {
                return null;
            }

            if (c.Is("to|until"))
            {
                return Read(c, context) ?? new Target(Extent.End);
            }

            if (!c.EatAll("all", "st") && !c.EatAll("all", "the", "st"))
            {
                EatWholeRow(c);
            }

            return new Target(Extent.End);
        }

        if (c.EatAll("the", "entire|whole", "row|rnd") || c.EatAll("entire|whole", "row|rnd"))
        {
            return new Target(Extent.End);
        }

        if (c.Eat("to"))
        {
            return AfterTo(c, context);
        }

        if (c.Eat("until"))
        {
            if (OtherNeedle(c))
            {
                return new Target(Extent.OtherNeedle);
            }

            if (c.EatAll("end") || c.EatAll("the", "end"))
            {
                EatOfRow(c);
                return new Target(Extent.End);
            }

            c.Eat("you|there");
            c.Eat("have|are");
            if (c.Is("the") || c.Is("last|m|gap"))
            {
                return AfterTo(c, context);
            }

            if (c.IsNumber() && (c.Is("before", 1) || (c.Is("st", 1) && c.Is("before", 2))))
            {
                return AfterTo(c, context);
            }

            if (c.EatNumber() is { } left)
            {
                var more = c.Eat("st");
                if (c.Eat("on"))
                {
                    c.Eat("the");
                    if (!c.Eat("right-needle"))
                    {
                        return null;
                    }

                    // "... on right needle after bind-off"
                    c.At = c.Eat("after") ? c.Lexemes.Count : c.At;
                    return new Target(Extent.OnRightNeedle, context.AmountOf(left));
                }

                c.Eat("unworked|left");
                if (c.Eat("rem") || more)
                {
                    c.Eat("on|unworked");
                    c.Eat("left-needle|unworked");
                    return new Target(Extent.LastStitches, context.AmountOf(left));
                }
            }

            return null;
        }

        if (c.Eat("in|into|over|on"))
        {
            c.Eat("front|back");
            if (c.EatAll("each", "st") || c.EatAll("every", "st") || c.EatAll("all", "st") || c.EatAll("each", "rem", "st") || c.EatAll("rem", "st") || c.EatAll("all", "rem", "st"))
            {
                EatWholeRow(c);
                return new Target(Extent.End);
            }

            return null;
        }

        if (c.EatAll("each", "st") || c.EatAll("every", "st") || c.EatAll("of", "each", "st") || c.EatAll("all", "st") || c.EatAll("rem", "st") || c.EatAll("all", "rem", "st")
            || c.EatAll("all", "heel|instep|sole|front|back|sleeve|body|hold", "st") || c.EatAll("all", "of", "the", "st") || c.EatAll("all", "the", "st") || c.EatAll("the", "rem", "st") || c.EatAll("the", "remainder") || c.EatAll("the", "rest") || c.EatAll("rest") || c.EatAll("every", "rem", "st"))
        {
            EatOvers(c);
            EatWholeRow(c);
            return new Target(Extent.End);
        }

        return null;
    }

    // "all sts and yarn overs"
    private static void EatOvers(PhraseCursor c)
    {
        if (!c.EatAll("and", "yo|yos") && !c.EatAll("and", "the", "yo|yos"))
        {
            c.EatAll("and", "yarn", "over|overs");
        }
    }

    /// <summary>"of row", "across row", "of the round", "to end": words that add nothing.</summary>
    public static void EatWholeRow(PhraseCursor c)
    {
        c.Eat("across|around");
        c.EatAll("to", "end");
        EatOfRow(c);
        c.EatAll("to", "end");
    }

    private static void EatOfRow(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("of|the|this");
        c.Eat("the|this");
        if (!c.Eat("row|rnd") && !c.EatAll("entire", "row|rnd"))
        {
            c.At = start;
        }
    }

    private static Target? AfterTo(PhraseCursor c, RowContext context)
    {
        c.Eat("the");
        if (c.EatAll("end", "of", "needle") || c.EatAll("end", "of", "the", "needle") || c.EatAll("end", "of", "this", "needle"))
        {
            c.EatNumber();
            return new Target(Extent.Needle);
        }

        if (c.Eat("end"))
        {
            EatOfRow(c);
            return new Target(Extent.End);
        }

        if (Gap(c))
        {
            return new Target(Extent.Gap);
        }

        var within = c.Eat("within");
        if (c.Eat("last"))
        {
            if (c.Eat("m"))
            {
                return new Target(Extent.LastMarker);
            }

            if (c.EatNumber() is { } left)
            {
                c.Eat("st");
                if (c.EatAll("on", "needle") || c.EatAll("of", "needle"))
                {
                    c.EatNumber();
                    return new Target(Extent.Needle, context.AmountOf(left));
                }

                return new Target(Extent.LastStitches, context.AmountOf(left));
            }

            if (c.Eat("st"))
            {
                var one = RowContext.Constant(1, c.Peek(-1)!.Span);
                if (c.EatAll("on", "needle") || c.EatAll("of", "needle"))
                {
                    c.EatNumber();
                    return new Target(Extent.Needle, one);
                }

                return new Target(Extent.LastStitches, one);
            }

            return null;
        }

        if (Marker(c) is { } marker)
        {
            return marker;
        }

        if (c.EatNumber() is { } before)
        {
            c.Eat("st");
            var amount = context.AmountOf(before);
            if (c.Eat("before") || (within && c.Eat("of|from")))
            {
                c.Eat("the");
                if (Marker(c) is { } at)
                {
                    return at with { Stitches = amount };
                }

                if (c.Eat("end"))
                {
                    if (c.EatAll("of", "needle") || c.EatAll("of", "the", "needle"))
                    {
                        c.EatNumber();
                        return new Target(Extent.Needle, amount);
                    }

                    EatOfRow(c);
                    return new Target(Extent.LastStitches, amount);
                }

                if (Gap(c))
                {
                    return new Target(Extent.Gap, amount);
                }

                return null;
            }

            if (c.Eat("from"))
            {
                c.Eat("the");
                if (c.Eat("end"))
                {
                    EatOfRow(c);
                    return new Target(Extent.LastStitches, amount);
                }
            }

            return null;
        }

        return null;
    }

    /// <summary>"until all sts of the next group are worked", "until all held sts have been used".</summary>
    private static bool OtherNeedle(PhraseCursor c)
    {
        var start = c.At;
        if (c.EatAll("all", "st") || c.EatAll("all", "the", "st") || c.EatAll("all", "hold", "st"))
        {
            c.Eat("of|from|on");
            c.Eat("the");
            c.Eat("next|other|foll|previous|left-needle|first");
            c.Eat("group|rectangle|triangle|needle|holder|section|square|block");
            if (c.Eat("are|have"))
            {
                c.Eat("been");
                if (c.Eat("work|used|decreased|dec'd|joined|gone"))
                {
                    c.Eat("up");
                    return true;
                }
            }
        }

        c.At = start;
        return false;
    }

    /// <summary>"gap", "last wrapped st", "previous turn", "DS": a place that a short row left.</summary>
    private static bool Gap(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("the");
        c.Eat("last|prev|previous|next|first");
        if (c.Eat("gap|bo'd|turn|turned|wrapped|wrap|double|dbl|ds|mds"))
        {
            c.Eat("st|edge|point");
            return true;
        }

        c.At = start;
        return false;
    }

    private static Target? Marker(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("the");
        if (c.EatAll("last", "m"))
        {
            return new Target(Extent.LastMarker);
        }

        c.Eat("next|first|foll|second|third|fourth");
        string? name = null;
        if (c.Eat("center"))
        {
            name = "centre";
        }

        // "marker A", "m1": the name stands behind it.
        if (c.Eat("m"))
        {
            if (c.Peek() is { } after && after.Atom.Text.Length == 1 && char.IsUpper(after.Atom.Text[0]))
            {
                name = after.Atom.Text.ToLowerInvariant();
                c.At++;
            }

            return new Target(Extent.Marker, MarkerName: name == "centre" ? null : name);
        }

        c.At = start;
        return null;
    }
}
