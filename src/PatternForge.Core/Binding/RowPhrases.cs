using PatternForge.Core.Model;

namespace PatternForge.Core.Binding;

/// <summary>
/// What a phrase may say beside stitches: casting on and off, holders, markers, joins, turns, remarks. Each way to say it is one line.
/// A phrase is tried against the lines in order; patterns are explained at <see cref="PhrasePattern"/>.
/// </summary>
internal static class RowPhrases
{
    private delegate Step? Maker(PhraseMatch match, RowContext context);

    private sealed record Entry(PhrasePattern Pattern, Maker Make);

    private static readonly Lazy<FirstWords<Entry>> ByFirstWord = new(Index);

    private static IEnumerable<(string Pattern, Maker Make)> Table()
    {
        // Casting on.
        yield return ("at end of? row|rnd co a? more? {n} st? ...", (m, c) => new CastOnStep(m.Span, c.AmountOf(m.Numbers[0]), AtEnd: true));
        yield return ("co a? more? {n} more? st? at end ...", (m, c) => new CastOnStep(m.Span, c.AmountOf(m.Numbers[0]), AtEnd: true));
        yield return ("co a? more? {n} more? {w}? st? ...", (m, c) => new CastOnStep(m.Span, c.AmountOf(m.Numbers[0]), AtEnd: false));
        yield return ("provisionally co {n} st? ...", (m, c) => new CastOnStep(m.Span, c.AmountOf(m.Numbers[0]), AtEnd: false));

        // Binding off and closing; worked stitches that go back to be worked again leave nothing to count.
        yield return ("sl this? {n}? st back to|onto left-needle ...", (m, _) => m.Words.Any(w => w.Norm is "again" or "k" or "p") ? null : new UncountedStep(m.Span));
        yield return ("work an? {w}? i-cord bo ...", (m, _) => new UncountedStep(m.Span));
        yield return ("bo the? all|rem all|rem|the? {n} {w}? st ...", (m, c) => new BindOffStep(m.Span, null, null, c.AmountOf(m.Numbers[0])));
        yield return ("bo next|first|center|the? next|center? {n} center? st? ...", BindOff);
        yield return ("bo all|rem|the|using|with|in ...", All);
        yield return ("bo {w}? {w}? {w}? {w}? {w}? {w}?", All);
        yield return ("cut|break ... draw-through the? all|rem? rem? {n} st ...", (m, c) => new BindOffStep(m.Span, null, null, c.AmountOf(m.Numbers[0])));
        yield return ("cut|break ... draw-through ...", All);
        yield return ("and? draw-through the? all|rem? rem? {n} st ...", (m, c) => new BindOffStep(m.Span, null, null, c.AmountOf(m.Numbers[0])));
        yield return ("and? draw-through ...", All);
        yield return ("graft the? {n} {w}? st ... to|with the? {n} {w}? st ...", (m, _) => new UncountedStep(m.Span)); // which of them are on the needles, the words do not say
        yield return ("graft|close the? all|rem? rem? {n} st ...", (m, c) => new BindOffStep(m.Span, null, null, c.AmountOf(m.Numbers[0])));
        yield return ("graft ...", All);

        // Cable needle; its "hold in front" is no holder.
        yield return ("sl the? next? {n} st? to|on|onto a? cn ...", (m, c) => CableNeedleReader.Held(m.Span, c.AmountOf(m.Numbers[0]), c));

        // Holders.
        yield return ("place|return|transfer|move|sl|put the? {n} {w}? st from ... hold|holder|yarn ... needle ...", (m, c) => new ReturnStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("place|return|transfer|move|sl|put the? hold|rem? {w}? st from ... hold|holder|yarn ... needle ...", (m, _) => new ReturnStep(m.Span, null));
        yield return ("place|sl|put|leave|transfer|move this {n}? {w}? st on|onto|to|in ... hold|holder ...", (m, c) => new HoldStep(m.Span, m.Numbers.Count > 0 ? c.AmountOf(m.Numbers[0]) : null, FromRight: true));
        yield return ("place|sl|put|leave|transfer|move the? next|foll|first|rem {n} {w}? st ... hold|holder ...", (m, c) => new HoldStep(m.Span, c.AmountOf(m.Numbers[0]), FromRight: false));
        yield return ("place|sl|put|leave|transfer|move the? {n} {w}? st ... hold|holder ...", (m, c) => new HoldStep(m.Span, c.AmountOf(m.Numbers[0]), FromRight: false));
        yield return ("place|sl|put|leave|transfer|move the? all|rem? rem? st ... hold|holder ...", (m, _) => new HoldStep(m.Span, null, FromRight: false));
        yield return ("place|return|transfer|move|sl the? hold {n} st ... needle ...", (m, c) => new ReturnStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("place|return|transfer|move|sl the? hold ... st ... needle ...", (m, _) => new ReturnStep(m.Span, null));
        yield return ("place|return|transfer|move|sl the? {n} hold st ... needle ...", (m, c) => new ReturnStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("sl this {n}? st back to left-needle and k|p this again ...", Remark);

        // Pieces joined: their stitches are worked from where they were held.
        yield return ("k|p|work across? the? next? {n} {w}? {w}? st of|from the? first|second|left|right|other|rem? {w}? sleeve|sleeves|front|fronts|back|body|piece|leg|half|cuff ...", (m, c) => new AcrossPieceStep(m.Span, c.Book.Knit, c.AmountOf(m.Numbers[0])));
        yield return ("k|p|work across the? {n} first|second|left|right|other|rem? sleeve|front|back|body|leg|half st ...", (m, c) => new AcrossPieceStep(m.Span, c.Book.Knit, c.AmountOf(m.Numbers[0])));

        yield return ("{w} is|are work back|flat|over|on ...", Remark);

        // Picking up; a ratio ("3 sts for every 4 rows") tells no number.
        yield return ("with rs|ws facing pu {n} st? for|in|per every|each|the? ...", (m, _) => m.Numbers.Count > 1 || m.Words.Any(w => w.Norm is "row" or "rnd") ? new UncountedStep(m.Span) : null);
        yield return ("pu {n} st? for|in|per every|each|the? ...", (m, _) => m.Numbers.Count > 1 || m.Words.Any(w => w.Norm is "row" or "rnd") ? new UncountedStep(m.Span) : null);
        yield return ("k|p|work? {n} st from the? {w}? {w}? {w}? hold|holder ...", (m, c) => new PickUpStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("{n} st from the? {w}? {w}? {w}? hold|holder ...", (m, c) => new PickUpStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("with rs|ws facing pu {n} ...", (m, c) => new PickUpStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("pu {n} {w}? st ...", (m, c) => new PickUpStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("then? {n} st along|up|down ...", (m, c) => new PickUpStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("k|p|work the? {n} provisional st ...", (m, c) => new PickUpStep(m.Span, c.AmountOf(m.Numbers[0])));

        // Cable needle.
        yield return ("hold|leave in|at|to front|back ...", Remark);
        yield return ("and hold|leave in|at|to front|back ...", Remark);

        // Ring, rows, turns.
        yield return ("join ... and >", Join);
        yield return ("join ...", Join);
        yield return ("turn work|and|the? ...", (m, _) => m.Words.Any(w => w.Norm is "hold" or "holder") ? null : new TurnStep(m.Span, Wraps: false));
        yield return ("turn work? >", (m, _) => new TurnStep(m.Span, Wraps: false));
        yield return ("wrap next|foll|first? {n}? st? and|&? turn|t", (m, _) => new TurnStep(m.Span, Wraps: true));
        yield return ("wrap next|foll|first? {n}? st?", Remark);
        yield return ("w1|wst", Remark);
        yield return ("w&t", (m, _) => new TurnStep(m.Span, Wraps: true));
        yield return ("do not turn ...", (m, _) => new SlideStep(m.Span));
        yield return ("slide ...", (m, _) => new SlideStep(m.Span));
        yield return ("work back and forth ...", (m, _) => new JoinStep(m.Span, IntoRound: false));
        yield return ("cont in rnd ...", (m, _) => new JoinStep(m.Span, IntoRound: true));

        // Increases and decreases somewhere in the row.
        yield return ("inc {n} st? evenly ...", (m, c) => new SpreadStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("dec {n} st? evenly ...", (m, c) => new SpreadStep(m.Span, RowContext.Negative(c.AmountOf(m.Numbers[0]))));
        yield return ("inc {n} st? in|at the? center ...", (m, c) => new SpreadStep(m.Span, c.AmountOf(m.Numbers[0])));
        yield return ("dec {n} st? in|at the? center ...", (m, c) => new SpreadStep(m.Span, RowContext.Negative(c.AmountOf(m.Numbers[0]))));
        yield return ("inc {n} st? at? each end and {n} st? in|at the? center ...", (m, c) => EndsAndCentre(m, c, 1));
        yield return ("dec {n} st? at? each end and {n} st? in|at the? center ...", (m, c) => EndsAndCentre(m, c, -1));
        yield return ("inc {n} st? at? the? each|both end|side|edge of? the? row|rnd?", (m, c) => new SpreadStep(m.Span, RowContext.Times(c.AmountOf(m.Numbers[0]), 2)));
        yield return ("dec {n} st? at? the? each|both end|side|edge of? the? row|rnd?", (m, c) => new SpreadStep(m.Span, RowContext.Times(c.AmountOf(m.Numbers[0]), -2)));

        yield return ("inc in|into the? first and last st ...", (m, _) => new SpreadStep(m.Span, RowContext.Constant(2, m.Span)));
        yield return ("dec in|at the? first and last st ...", (m, _) => new SpreadStep(m.Span, RowContext.Constant(-2, m.Span)));
        yield return ("k|p twice in|into the? first|next|last|each|every|same st >", (m, c) => Twice(m, c));

        // Old words that stand alone.
        yield return ("o|over", (m, c) => Old(m, c, b => b.YarnOver, 1));
        yield return ("o|over twice", (m, c) => Old(m, c, b => b.YarnOver, 2));
        yield return ("th o", (m, c) => Old(m, c, b => b.YarnOver, 1));
        yield return ("n|narrow", (m, c) => Old(m, c, b => b.KnitTwoTogether, 1));
        yield return ("plain", (m, c) => new RunStep(m.Span, c.Book.Knit, new Target(Extent.End)));

        // Words that change nothing.
        yield return ("cut|break yarn|wool|off|mc|cc|a|b|c and >", Remark);
        yield return ("pu wrap|wraps ...", Remark);
        foreach (var words in new[]
                 {
                     "change ...", "changing ...", "switch ...", "switching ...", "weave ...", "fasten off ...", "being careful ...", "taking care ...", "making sure ...", "stuff ...", "note ...", "tip ...", "cut|break yarn|wool|off ...",
                     "cut|break mc|cc|a|b|c|the ...", "leave|leaving a ...", "leave an ...", "leaving ...", "drop yarn|mc|cc|a|b ...", "attach ...", "rejoin yarn|mc|cc|to|with ...", "carry ...", "rs|ws facing ...", "with rs|ws facing",
                     "with the? rs|ws facing ...", "and? secure ...", "do not stretch ...", "do not ...", "resolving ...", "knitting|picking|hiding wraps ...", "using ...", "with ...", "end with|after|on a? rs|ws row ...", "end with ...", "needle {n}",
                     "on needle {n}", "for ...", "removing ...", "on {w}? {w}? needle ...", "needle", "beg at|from ...", "beg stuffing ...", "move m ...", "make a sl knot ...", "make a slipknot ...", "mark ...", "keeping ...", "wrapping ...", "as-set", "as before", "as you|they ...", "row|rnd is now ...", "beg of rnd ...", "all sizes", "pull ...", "and? pull|draw tight ...", "and? fasten ...", "{n} st? on|per each? needle ...", "{n} on each of {n} needle", "{n} st on each of {n} needle",
                     "and? hide ...", "this {n}? row|rnd form|forms|est|sets|establish ...", "last {n} row|rnd form|forms|est|sets|establish ...", "this is|counts|forms|form|sets|est ...", "you will ...", "repeat m", "tie ...", "sew ...", "block ...", "tighten ...", "set aside ...", "shape neck|armhole|armholes|shoulder|shoulders|front|back|cap|top|raglan|crown|toe|heel|sleeve ...", "work new|added|extra|inc st ...", "taking|bringing|incorporating ...", "work both|each side|sides|front|fronts ...", "beg with row|rnd {n} ...", "all sizes ...", "divide ... evenly ...", "distribute ...", "arrange ...", "cont with ...",
                 })
        {
            yield return (words, Remark);
        }
    }

    /// <summary>The step that the words from the cursor to the end of the phrase say, or null with the cursor unmoved.</summary>
    public static Step? TryRead(PhraseCursor cursor, RowContext context)
    {
        if (cursor.Peek() is not { } first)
        {
            return null;
        }

        foreach (var key in (ReadOnlySpan<string>)[first.Norm, ""])
        {
            if (ByFirstWord.Value.Of(key) is not { } entries)
            {
                continue;
            }

            foreach (var entry in entries)
            {
                if (entry.Pattern.Match(cursor.Lexemes, cursor.At) is { } match && entry.Make is not null && entry.Make(match, context) is { } step)
                {
                    cursor.At = match.End - (step is CastOnStep or BindOffStep { Stitches: not null } or TurnStep or CableNeedleStep ? StitchesBehind(match, context) : 0);
                    return step;
                }
            }
        }

        return null;
    }

    // "CO 8 sts k72": a comma is missing, and the words behind it are stitches.
    private static int StitchesBehind(PhraseMatch match, RowContext context)
    {
        for (var i = 1; i < match.Words.Count; i++)
        {
            if (StitchWords.IsCounted(match.Words[i], context.Book))
            {
                return match.Words.Count - i;
            }
        }

        return 0;
    }

    // "Join second ball of yarn", "join CC": no ring.
    private static Step Join(PhraseMatch match, RowContext context) =>
        match.Words.Skip(1).Any(w => w.Norm is "ball" or "yarn" or "wool" or "mc" or "cc" or "strand" or "color" or "new" or "contrast" or "shade" || (w.Atom.Text.Length == 1 && char.IsUpper(w.Atom.Text[0]))) ? new RemarkStep(match.Span) : new JoinStep(match.Span, IntoRound: true);

    // "BO 4 sts each side" and "at neck edge twice" are shaping over rows, not stitches of this one.
    private static BindOffStep? BindOff(PhraseMatch match, RowContext context) =>
        match.Words.Any(w => w.Norm is "each" or "every" or "both" or "neck" or "armhole" or "rows" or "twice" or "once" or "times") ? null : new BindOffStep(match.Span, context.AmountOf(match.Numbers[0]), null, null);

    private static BindOffStep All(PhraseMatch match, RowContext context) => new(match.Span, null, null, null);

    /// <summary>Words to the maker; "using 4 mm needles cast on 34 sts" stops before the casting on.</summary>
    private static RemarkStep Remark(PhraseMatch match, RowContext context)
    {
        if (match.Words[0].Norm is "with" or "using" or "on" or "make" or "beg" or "in" or "at")
        {
            var words = match.Words;
            var work = Enumerable.Range(1, Math.Max(0, words.Count - 2)).FirstOrDefault(i => words[i].Norm is "co" or "bo" or "pu" && words[i + 1].IsNumber);
            match.End -= work > 0 ? match.Words.Count - work : 0;
        }

        return new RemarkStep(match.Span);
    }

    // "o", "n" and "over" alone between commas, as old books have them, where the pattern does not define them otherwise.
    private static OperationStep? Old(PhraseMatch match, RowContext context, Func<StitchBook, Stitches.Operation> find, int times)
    {
        var said = match.Words[0].Atom.Text;
        if (context.Book.IsSpecial(said))
        {
            return null;
        }

        context.LastName = "";
        context.Use(find(context.Book), match.Span);
        return new OperationStep(match.Span, find(context.Book), RowContext.Constant(times, match.Span));
    }

    /// <summary>"K twice in next st": two of one. "Each st" says how far, which is another matter.</summary>
    private static OperationStep? Twice(PhraseMatch match, RowContext context)
    {
        var name = match.Words[0].Norm == "p" ? "pfb" : "kfb";
        if (match.Words.Any(w => w.Norm is "each" or "every") || context.Book.Find(name) is not { } increase)
        {
            return null;
        }

        context.LastName = "";
        context.Use(increase, match.Span);
        return new OperationStep(match.Span, increase, null);
    }

    private static SpreadStep EndsAndCentre(PhraseMatch match, RowContext context, int sign)
    {
        var (ends, centre) = (context.AmountOf(match.Numbers[0]), context.AmountOf(match.Numbers[1]));
        var both = Enumerable.Range(0, context.SizeCount).Select(i => ends[i] is { } e && centre[i] is { } c ? (int?)(sign * ((2 * e) + c)) : null);
        return new SpreadStep(match.Span, new Amount(PerSize.Each([.. both]), match.Span));
    }

    private static FirstWords<Entry> Index()
    {
        var index = new FirstWords<Entry>();
        foreach (var (words, make) in Table())
        {
            if (make is not null)
            {
                var pattern = new PhrasePattern(words);
                index.Add(pattern.FirstWords ?? "", new Entry(pattern, make));
            }
        }

        return index;
    }
}
