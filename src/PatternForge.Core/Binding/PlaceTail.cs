using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>Reads what stands behind a place: "to last 2 sts", "to next ch-1 sp", "and ch-1 sp", "across", "around armhole".</summary>
internal static class PlaceTail
{
    public static Place Read(PhraseCursor c, RowContext context, Place place)
    {
        if (place.Kind == PlaceKind.Each)
        {
            place = Also(c, context, place);
            place = Until(c, context, place) ?? place;
        }

        if (RowsBelow(c) && place.Kind == PlaceKind.Next)
        {
            place = place with { Thing = new Thing(ThingKind.Stitch) }; // "around dc 2 rows below": the stitch behind it is passed over
        }

        OfWhat(c);
        if (c.Eat("across|around|along"))
        {
            TargetReader.EatWholeRow(c);
            c.Eat("back");
            if (place.Kind == PlaceKind.Each && place.Until == default)
            {
                place = Until(c, context, place) ?? place;
            }

            if (place.Count is not null)
            {
                // "each of 38 sts around armhole": the number is given, the edge is only named.
                while (!c.IsDone && !c.Is("and|then|rep") && !c.IsNumber())
                {
                    c.At++;
                }
            }
        }

        c.EatAll("to", "end");
        OfWhat(c);
        return place;
    }

    private static Place Also(PhraseCursor c, RowContext context, Place place)
    {
        var at = c.At;
        if (c.Eat("and"))
        {
            c.Eat("in");
            c.Eat("each|every|all");
            if (ThingReader.TryRead(c, context) is { } also && (also.Kind != ThingKind.Chain || c.IsDone || c.Is("across|around|to|and")))
            {
                return place with { Also = also };
            }
        }

        c.At = at;
        return place;
    }

    /// <summary>"to last 2 sts", "to next ch-2 sp", "up to centre"; null with the cursor unmoved for other words.</summary>
    public static Place? Until(PhraseCursor c, RowContext context, Place place)
    {
        var at = c.At;
        if (PlaceReader.UntilRemain(c, context, place.Origin) is { } remain)
        {
            return place with { Kind = PlaceKind.EachToLast, Until = remain.Until, Count = remain.Count };
        }

        c.Eat("up");
        if (!c.Eat("to|until|before"))
        {
            c.At = at;
            return null;
        }

        c.Eat("within");
        c.Eat("the");
        if (c.Eat("last"))
        {
            var left = c.EatNumber();
            if (ThingReader.TryRead(c, context) is { } tail)
            {
                return place with { Kind = PlaceKind.EachToLast, Until = tail, Count = left is null ? RowContext.Constant(1, place.Origin) : context.AmountOf(left) };
            }
        }

        if (c.Eat("tch|t-ch") || c.EatAll("turn|beg", "ch|chain"))
        {
            return place; // the turning chain is told of by what follows
        }

        if (c.Eat("center"))
        {
            ThingReader.TryRead(c, context);
            return place with { Kind = PlaceKind.EachToCentre };
        }

        if (c.Eat("end|beg"))
        {
            c.At--;
            c.EatAll("end");
            OfWhat(c);
            return place;
        }

        if (c.Eat("next|first|foll") && ThingReader.TryRead(c, context) is { } next)
        {
            return place with { Kind = PlaceKind.EachToNext, Until = next };
        }

        if (ToMarker(c))
        {
            return place with { Kind = PlaceKind.Unclear }; // a marker in a stitch of crochet is not followed from row to row
        }

        if (BeforeNext(c, context) is var (until, less))
        {
            return place with { Kind = PlaceKind.EachToNext, Until = until, Count = less };
        }

        if (c.Is("corner|ch-1|ch-2|ch-3|ch-sp") && ThingReader.TryRead(c, context) is { Kind: ThingKind.Space } corner)
        {
            return place with { Kind = PlaceKind.EachToNext, Until = corner };
        }

        c.At = at;
        return null;
    }

    // "to m", "to 2 sts before next marker"
    private static bool ToMarker(PhraseCursor c)
    {
        var at = c.At;
        if (c.EatNumber() is not null && !(c.Eat("st|sc|dc|hdc|tr|htr") && c.Eat("before")))
        {
            c.At = at;
            return false;
        }

        c.Eat("the");
        c.Eat("next|first|last|foll|marked");
        c.Eat("st");
        c.Eat("with");
        if (c.Eat("m|marker|markers"))
        {
            return true;
        }

        c.At = at;
        return false;
    }

    // "to 2 sts before next ch-2 sp"
    private static (Thing Until, Amount Less)? BeforeNext(PhraseCursor c, RowContext context)
    {
        var at = c.At;
        if (c.EatNumber() is { } number && c.Eat("st|sc|dc|hdc|tr|htr") && c.Eat("before"))
        {
            c.Eat("the");
            c.Eat("next|foll");
            if (ThingReader.TryRead(c, context) is { Kind: ThingKind.Space } space)
            {
                return (space, context.AmountOf(number));
            }
        }

        c.At = at;
        return null;
    }

    private static bool RowsBelow(PhraseCursor c)
    {
        var at = c.At;
        if (c.EatNumber() is not null && c.Eat("row|rnd") && c.Eat("below|down"))
        {
            return true;
        }

        c.At = at;
        return false;
    }

    // "of row below", "of previous rnd", "of foundation chain": words that add nothing.
    private static void OfWhat(PhraseCursor c)
    {
        var at = c.At;
        if (c.Eat("of|from|on|in"))
        {
            c.Eat("the");
            c.Eat("previous|prev|last|first|foundation|base|starting|beg|next");
            if (c.Eat("row|rnd|ch|chain|chains"))
            {
                c.Eat("below");
                c.EatNumber();
                return;
            }
        }

        c.At = at;
    }
}
