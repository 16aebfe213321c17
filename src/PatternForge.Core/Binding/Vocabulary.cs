using System.Collections.Immutable;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Spelling variants of the words that rows are written with, each declared once. Stitches are not here: they are in the stitch tables.</summary>
internal static class Vocabulary
{
    private static readonly Dictionary<string, string> Words = Build(
        "st: st sts stitch stitches st(s)",
        "row: row rows row(s)",
        "rnd: rnd rnds round rounds rd rds rnd(s)",
        "rep: rep reps repeat repeats repeating rep(s)",
        "times: times time x ×",
        "beg: beg begin beginning begins start starting beginnings",
        "foll: foll following follow follows folls subsequent",
        "rem: rem remain remaining remains",
        "inc: inc inc'ing inc’ing incs increase increases increasing",
        "dec: dec dec'ing dec’ing decs decrease decreases decreasing",
        "inc'd: inc'd incd increased inc’d",
        "dec'd: dec'd decd decreased dec’d",
        "alt: alt alternate alternating",
        "patt: patt pat pattern patts patterns patt(s)",
        "m: m marker markers mkr mkrs mk",
        "cont: cont continue continuing continues",
        "work: work working works worked",
        "until: until till til",
        "k: k knit knitting knits",
        "p: p purl purling purls",
        "needle: needle needles ndl ndls",
        "holder: holder holders",
        "est: est established set",
        "approx: approx approximately about",
        "measure: measures measure meas measuring",
        "end: end ends ending ended",
        "more: more further",
        "evenly: evenly",
        "center: center centre",
        "color: color colour colors colours",
        "edge: edge edges",
        "side: side sides",
        "tog: tog together",
        "sl: sl slip slipping",
        "cn: cn",
        "bo'd: bound-off cast-off",
        "co'd: cast-on",
        "even: even straight",
        "cm: cm cms",
        "in: in ins inch inches",
        "this: this these those them",
        "place: place placing pl",
        "join: join joining",
        "another: another",
        "chart: chart charts",
        "leave: leave leaving",
        "hold: hold holding held",
        "pu: pu",
        "pm: pm",
        "sm: sm slm",
        "rm: rm",
        "turn: turn turning",
        "rib: rib ribbing ribbed",
        "each: each ea",
        "loop: loop lp",
        "loops: loops lps",
        "bo: bo",
        "co: co");

    private static readonly (string[] Sequence, string Norm)[] Phrases =
    [
        (["bind|binding|cast|casting", "off"], "bo"),
        (["bound|cast", "off"], "bo"),
        (["cast|casting", "on"], "co"),
        (["pick|picking", "up", "and|&", "k|p"], "pu"),
        (["pu", "and|&", "k|p"], "pu"),
        (["pick|picking", "up"], "pu"),
        (["k", "up"], "pu"),
        (["right", "side"], "rs"),
        (["wrong", "side"], "ws"),
        (["waste|scrap|spare", "yarn"], "holder"),
        (["spare", "needle"], "holder"),
        (["st|safety", "holder|pin|pins"], "holder"),
        (["cable", "needle"], "cn"),
        (["double", "pointed", "needle"], "cn"),
        (["double-pointed", "needle"], "cn"),
        (["wrap", "and|&", "turn"], "w&t"),
        (["w", "and|&", "t"], "w&t"),
        (["place|put|insert", "m"], "pm"),
        (["place|put", "a", "m"], "pm"),
        (["sl", "m"], "sm"),
        (["pass", "m"], "sm"),
        (["remove|removing|drop", "m"], "rm"),
        (["at", "the", "same", "times"], "att"),
        (["as", "est"], "as-set"),
        (["in", "patt"], "in-patt"),
        (["draw|thread|pull", "through"], "draw-through"),
        (["draw|thread|pull|run", "yarn|end|tail|it", "through"], "draw-through"),
        (["draw|thread|pull|run", "yarn|end|tail", "end|tail", "through"], "draw-through"),
        (["main", "color"], "mc"),
        (["contrasting|contrast", "color"], "cc"),
        (["even", "numbered"], "even-numbered"),
        (["right", "needle"], "right-needle"),
        (["right-hand", "needle"], "right-needle"),
        (["left", "needle"], "left-needle"),
        (["left-hand", "needle"], "left-needle"),
    ];

    private static readonly FirstWords<(string[] Sequence, string Norm)> PhrasesByFirst = Index();

    /// <summary>Every spelling of the words above.</summary>
    public static IEnumerable<string> Spellings => Words.Keys;

    /// <summary>True for one of those spellings, ignoring case.</summary>
    public static bool IsSpelling(string word) => Words.ContainsKey(word.ToLowerInvariant());

    /// <summary>The phrase's words in one spelling; words that belong together are one lexeme.</summary>
    public static List<Lexeme> Normalise(ImmutableArray<Atom> atoms)
    {
        var single = new List<Lexeme>(atoms.Length);
        foreach (var atom in atoms)
        {
            single.Add(new Lexeme(NormOf(atom), atom, atom.Span));
        }

        var begin = 0;
        while (begin < single.Count && PhrasesByFirst.Of(single[begin].Norm) is null)
        {
            begin++;
        }

        if (begin == single.Count)
        {
            return single; // no words that belong together
        }

        var joined = new List<Lexeme>(single.Count);
        joined.AddRange(single);
        joined.RemoveRange(begin, joined.Count - begin);
        for (var i = begin; i < single.Count;)
        {
            var taken = 1;
            if (PhrasesByFirst.Of(single[i].Norm) is { } candidates)
            {
                foreach (var (sequence, norm) in candidates)
                {
                    if (i + sequence.Length <= single.Count && Matches(single, i, sequence))
                    {
                        joined.Add(new Lexeme(norm, single[i].Atom, single[i].Span.Cover(single[i + sequence.Length - 1].Span)));
                        taken = sequence.Length;
                        break;
                    }
                }
            }

            if (taken == 1)
            {
                joined.Add(single[i]);
            }

            i += taken;
        }

        return joined;
    }

    /// <summary>The one spelling of a single word.</summary>
    public static string NormOf(Atom atom)
    {
        if (atom.Kind is not (TokenKind.Word or TokenKind.Times))
        {
            return atom.Kind == TokenKind.Number ? "{n}" : atom.Text;
        }

        return atom.Spelling.Norm ??= NormOf(atom.Text);
    }

    private static string NormOf(string text)
    {
        if (text.Contains('.', StringComparison.Ordinal))
        {
            return NormOf(text.Replace(".", "", StringComparison.Ordinal));
        }

        Span<char> lower = text.Length <= 64 ? stackalloc char[text.Length] : new char[text.Length];
        text.AsSpan().ToLowerInvariant(lower);
        return Words.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(lower, out var norm) ? norm : lower.SequenceEqual(text) ? text : lower.ToString();
    }

    private static bool Matches(List<Lexeme> lexemes, int at, string[] sequence)
    {
        for (var i = 0; i < sequence.Length; i++)
        {
            if (!AlternativesContain(sequence[i], lexemes[at + i].Norm))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when the word is one of <c>a|b|c</c>.</summary>
    public static bool AlternativesContain(ReadOnlySpan<char> alternatives, ReadOnlySpan<char> word)
    {
        // The lists are short: going through them sign by sign is quicker than looking for each bar.
        var at = 0;
        while (at + word.Length <= alternatives.Length)
        {
            var same = 0;
            while (same < word.Length && alternatives[at + same] == word[same])
            {
                same++;
            }

            at += same;
            if (same == word.Length && (at == alternatives.Length || alternatives[at] == '|'))
            {
                return true;
            }

            while (at < alternatives.Length && alternatives[at] != '|')
            {
                at++;
            }

            at++;
        }

        return false;
    }

    // The longest first, and those of one length in the order of the list.
    private static FirstWords<(string[] Sequence, string Norm)> Index()
    {
        var index = new FirstWords<(string[] Sequence, string Norm)>();
        for (var length = Phrases.Max(p => p.Sequence.Length); length > 0; length--)
        {
            foreach (var phrase in Phrases)
            {
                if (phrase.Sequence.Length == length)
                {
                    index.Add(phrase.Sequence[0], phrase);
                }
            }
        }

        return index;
    }

    private static Dictionary<string, string> Build(params ReadOnlySpan<string> lines)
    {
        var words = new Dictionary<string, string>(256, StringComparer.Ordinal);
        foreach (var line in lines)
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            var norm = line[..colon];
            foreach (var word in line[(colon + 1)..].Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                words.Add(word, norm);
            }
        }

        return words;
    }
}
