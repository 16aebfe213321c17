using System.Collections.Frozen;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Spelling variants of the words that rows are written with, each declared once. Stitches are not here: they are in the stitch tables.</summary>
internal static class Vocabulary
{
    private static readonly FrozenDictionary<string, string> Words = Build(
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
        (["even", "numbered"], "even-numbered"),
        (["right", "needle"], "right-needle"),
        (["right-hand", "needle"], "right-needle"),
        (["left", "needle"], "left-needle"),
        (["left-hand", "needle"], "left-needle"),
    ];

    private static readonly FrozenDictionary<string, (string[] Sequence, string Norm)[]> PhrasesByFirst = Phrases
        .SelectMany(p => p.Sequence[0].Split('|').Select(first => (first, p)))
        .GroupBy(p => p.first, StringComparer.Ordinal)
        .ToFrozenDictionary(g => g.Key, g => g.Select(x => x.p).OrderByDescending(x => x.Sequence.Length).ToArray(), StringComparer.Ordinal);

    /// <summary>Every spelling of the words above.</summary>
    public static IEnumerable<string> Spellings => Words.Keys;

    /// <summary>True for one of those spellings, ignoring case.</summary>
    public static bool IsSpelling(string word) => Words.ContainsKey(word.ToLowerInvariant());

    /// <summary>The phrase's words in one spelling; words that belong together are one lexeme.</summary>
    public static List<Lexeme> Normalise(IReadOnlyList<Atom> atoms)
    {
        var single = new List<Lexeme>(atoms.Count);
        foreach (var atom in atoms)
        {
            single.Add(new Lexeme(NormOf(atom), atom, atom.Span));
        }

        var joined = new List<Lexeme>(single.Count);
        for (var i = 0; i < single.Count;)
        {
            var taken = 1;
            if (PhrasesByFirst.TryGetValue(single[i].Norm, out var candidates))
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

        if (atom.Text.Contains('.', StringComparison.Ordinal))
        {
            return NormOf(new Atom(atom.Kind, atom.Span, atom.Text.Replace(".", "", StringComparison.Ordinal), atom.SpaceBefore));
        }

        Span<char> lower = atom.Text.Length <= 64 ? stackalloc char[atom.Text.Length] : new char[atom.Text.Length];
        atom.Text.AsSpan().ToLowerInvariant(lower);
        return Words.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(lower, out var norm) ? norm : lower.ToString();
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
        for (var at = 0; at + word.Length <= alternatives.Length;)
        {
            var end = at + word.Length;
            if ((end == alternatives.Length || alternatives[end] == '|') && alternatives.Slice(at, word.Length).SequenceEqual(word))
            {
                return true;
            }

            var bar = alternatives[at..].IndexOf('|');
            if (bar < 0)
            {
                return false;
            }

            at += bar + 1;
        }

        return false;
    }

    private static FrozenDictionary<string, string> Build(params ReadOnlySpan<string> lines)
    {
        var words = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var line in lines)
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            foreach (var word in line[(colon + 1)..].Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                words.Add(word, line[..colon]);
            }
        }

        return words.ToFrozenDictionary(StringComparer.Ordinal);
    }
}
