using System.Collections.Immutable;

namespace PatternForge.Core.Stitches;

/// <summary>A word or abbreviation of the trade that rows use and that is no operation on stitches.</summary>
/// <param name="Names">Its spellings by dialect, the usual one first.</param>
/// <param name="Us">What it means, in American spelling.</param>
/// <param name="Uk">What it means, in British spelling.</param>
/// <param name="MustBeDefined">True when the trade has no fixed way to work it, so each pattern has to say.</param>
public sealed record TradeWord(ImmutableArray<OperationName> Names, string Us, string Uk, bool MustBeDefined = false)
{
    /// <summary>The meaning in a dialect's spelling.</summary>
    public string MeaningIn(Dialect dialect) => dialect == Dialect.Uk ? Uk : Us;
}

/// <summary>
/// The trade's abbreviations beside the stitches, from the usual lists ("common practice"). Case decides only where it makes another word
/// (M the main colour, m a marker); blanks, hyphens and full stops do not matter.
/// </summary>
public static class TradeWords
{
    /// <summary>All of them, by subject.</summary>
    public static ImmutableArray<TradeWord> All { get; } =
    [
        // Sides, places and order.
        Word("right side", "RS"),
        Word("wrong side", "WS"),
        Word("right hand", "RH"),
        Word("left hand", "LH"),
        Word("beginning", "beg", "begin", "beginning"),
        Word("continue", "cont", "continue"),
        Word("following", "foll", "follow", "follows", "following"),
        Word("alternate", "alt", "alternate"),
        Word("remaining", "rem", "remain", "remaining"),
        Word("repeat", "rep", "reps", "repeat"),
        Word("previous", "prev", "previous"),
        Word("between", "bet", "btw", "btwn", "between"),
        Word("together", "tog", "together"),
        Word("approximately", "approx", "approximately"),
        Word("established", "est", "established"),
        Word("including", "incl", "inclusive"),
        Word("beginning of round", "BOR"),
        Word("end of round", "EORnd"),
        Word("end of needle", "EON"),
        Word("end of row, or every other row where the pattern says so", "EOR"),
        Word("skip", "sk", "skip"),
        BritishWord("skip", "miss"),
        Word("measures", "meas", "measure", "measures"),
        Word("as established, in pattern", "patt", "pat", "pattern"),
        Word("decreased", "dec'd", "decreased"),
        Word("increased", "inc'd", "increased"),
        Word("decreases", "decs", "decreases", "decreasing"),
        Word("increases", "incs", "increases", "increasing"),

        // Stitches, rows and loops.
        Word("stitch", "st", "stitch"),
        Word("stitches", "sts", "st(s)", "stitches"),
        Word("row", "row", "rows"),
        Word("round", "rnd", "rd", "round"),
        Word("rounds", "rnds", "rds", "rounds"),
        Word("loop", "lp", "loop"),
        Word("loops", "lps", "loops"),
        Word("space", "sp", "space"),
        Word("spaces", "sps", "sp(s)", "spaces"),
        Word("turning chain", "tch"),
        Word("back loop only", "BLO"),
        Word("front loop only", "FLO"),
        Word("forward pass: loops taken on to the hook", "FwP"),
        Word("return pass: loops worked off the hook", "RetP"),
        Word("through the back loop", "tbl"),
        Word("through the front loop", "tfl"),
        Word("back loop", "BL"),
        Word("front loop", "FL"),
        Word("knitwise", "kwise", "KW", "knitwise"),
        Word("purlwise", "pwise", "PW", "purlwise"),
        Word("with the yarn in front", "wyif", "wyf"),
        Word("with the yarn in back", "wyib", "wyb"),
        Word("slipped stitch", "sl sts"),
        Word("double stitch of a short row", "dbl st"),

        // Fabrics.
        Both("stockinette stitch: knit on the right side, purl on the wrong side", "stocking stitch: knit on the right side, purl on the wrong side", "St st", "stockinette", "stocking stitch", "stockinette stitch"),
        Both("reverse stockinette stitch: purl on the right side, knit on the wrong side", "reverse stocking stitch: purl on the right side, knit on the wrong side", "rev St st", "reverse stockinette", "reverse stocking stitch"),
        Word("garter stitch: every row knit", "g st", "gar st", "garter st", "garter stitch"),

        // Markers and tools.
        Word("marker", "mkr", "marker"),
        Word("markers", "mkrs", "markers"),
        new([Say(Dialect.Any, "m")], "marker", "marker"),
        Word("place marker", "pm"),
        Word("slip marker", "sm", "sl m"),
        Word("remove marker", "rm"),
        Word("cable needle", "cn"),
        Word("double-pointed needle", "dpn", "dp"),
        Word("double-pointed needles", "dpns", "dpn(s)"),
        Word("circular needle", "circ"),

        // Yarn and colours.
        Both("main color", "main colour", "MC"),
        Both("contrasting color", "contrasting colour", "CC"),
        Both("contrasting color 1", "contrasting colour 1", "CC1"),
        Both("contrasting color 2", "contrasting colour 2", "CC2"),
        Both("contrasting color 3", "contrasting colour 3", "CC3"),
        new([Say(Dialect.Uk, "M")], "main color", "main colour"),
        new([Say(Dialect.Uk, "C")], "contrasting color", "contrasting colour"),
        BritishWord("main shade", "MS"),
        Word("double knitting, a yarn of class 3", "DK"),

        // Measures.
        Both("centimeter", "centimetre", "cm"),
        Both("millimeter", "millimetre", "mm"),
        Word("inch", "in", "ins", "inch", "inches"),
        Word("gram", "g", "gr", "gram", "grams"),
        Word("ounce", "oz"),
        Word("yard", "yd", "yds", "yard", "yards"),

        // Names that say nothing until the pattern does.
        Undefined("make bobble", "MB", "mb"),
        Undefined("left cross of two or more stitches", "LC"),
        Undefined("right cross of two or more stitches", "RC"),
        Undefined("front cross", "FC"),
        Undefined("back cross", "BC"),
    ];

    private static readonly Lazy<NameTable<TradeWord>> Us = new(() => NamesIn(Dialect.Us));
    private static readonly Lazy<NameTable<TradeWord>> Uk = new(() => NamesIn(Dialect.Uk));

    /// <summary>The word that a dialect writes so; <see cref="Dialect.Any"/> asks both. Null when it is not a word of the trade.</summary>
    public static TradeWord? Find(Dialect dialect, ReadOnlySpan<char> name)
    {
        Span<char> room = stackalloc char[SpokenForms.LongestName];
        var length = SpokenForms.Squeeze(name, room);
        if (length <= 0)
        {
            return null;
        }

        var squeezed = room[..length];
        return dialect switch
        {
            Dialect.Us => Us.Value.Find(squeezed),
            Dialect.Uk => Uk.Value.Find(squeezed),
            _ => Us.Value.Find(squeezed) ?? Uk.Value.Find(squeezed),
        };
    }

    /// <summary>The spellings that a dialect uses, for suggestions; <see cref="Dialect.Any"/> gives those of both.</summary>
    public static IEnumerable<string> NamesOf(Dialect dialect) =>
        All.SelectMany(w => w.Names).Where(n => dialect == Dialect.Any || n.Dialect == Dialect.Any || n.Dialect == dialect).Select(n => n.Text).Distinct(StringComparer.Ordinal);

    private static OperationName Say(Dialect dialect, string text) => new(dialect, text);

    private static TradeWord Word(string meaning, params string[] names) => new([.. names.Select(n => Say(Dialect.Any, n))], meaning, meaning);

    private static TradeWord BritishWord(string meaning, params string[] names) => new([.. names.Select(n => Say(Dialect.Uk, n))], meaning, meaning);

    private static TradeWord Both(string us, string uk, params string[] names) => new([.. names.Select(n => Say(Dialect.Any, n))], us, uk);

    private static TradeWord Undefined(string meaning, params string[] names) => new([.. names.Select(n => Say(Dialect.Any, n))], meaning, meaning, MustBeDefined: true);

    private static NameTable<TradeWord> NamesIn(Dialect dialect)
    {
        var names = new NameTable<TradeWord>(All.Length * 3, ReferenceEquals);
        foreach (var word in All)
        {
            foreach (var name in word.Names)
            {
                if (name.Dialect == dialect || name.Dialect == Dialect.Any)
                {
                    names.Add(name.Text, word);
                }
            }
        }

        return names;
    }
}
