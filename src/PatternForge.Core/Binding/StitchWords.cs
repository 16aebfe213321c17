using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Words around a stitch: how it is worked, with which yarn, and what is counted. None of them changes a count.</summary>
internal static class StitchWords
{
    /// <summary>True for a stitch with its number in one word: "k72", "p2tog" too.</summary>
    public static bool IsCounted(Lexeme lexeme, StitchBook book) =>
        lexeme.Atom.Kind == TokenKind.Word && lexeme.Atom.Text.Any(char.IsAsciiDigit) && (book.Find(lexeme.Atom.Text) is not null || (StitchReader.Split(lexeme.Atom.Text) is (var stem, >= 0) && book.Find(stem) is not null));

    /// <summary>Words that say how and change no count.</summary>
    public static void Modifiers(PhraseCursor c)
    {
        while (!c.IsDone)
        {
            if (c.Eat("tbl|wyif|wyib|kwise|pwise|knitwise|purlwise|loosely|tightly|firmly|very|plain|individually|singly|only"))
            {
                continue;
            }

            if (c.EatAll("through", "back", "loop|loops") || c.EatAll("through", "the", "back", "loop|loops") || c.EatAll("with", "yarn", "in", "front|back") || c.EatAll("with", "yarn", "at", "front|back")
                || c.EatAll("as", "if", "to", "k|p") || c.EatAll("as", "though", "to", "k|p") || c.EatAll("one", "at", "a", "times")
                || c.EatAll("as-set") || c.EatAll("in-patt", "as-set") || c.EatAll("in-patt") || c.EatAll("in", "patt"))
            {
                continue;
            }

            if (Color(c))
            {
                continue;
            }

            if (c.Is("back") && c.At > 0 && c.At == c.Lexemes.Count - 1)
            {
                c.At++;
                continue;
            }

            if (c.Is("in") && c.Is("rib|stst|garter|seed|moss|rev", 1))
            {
                c.At += 2;
                while (c.Eat("st|stst"))
                {
                }

                continue;
            }

            return;
        }
    }

    /// <summary>Where the words of a slipped stitch say that the yarn lies, before or behind its name; null where they do not.</summary>
    public static bool? YarnInFront(PhraseCursor c, int start)
    {
        for (var i = start > 0 && (c.Lexemes[start - 1].Is("wyif") || c.Lexemes[start - 1].Is("wyib")) ? start - 1 : start; i < c.At; i++)
        {
            var isSaid = i > 1 && c.Lexemes[i - 2].Is("yarn");
            if (c.Lexemes[i].Is("wyif") || (isSaid && c.Lexemes[i].Is("front")))
            {
                return true;
            }

            if (c.Lexemes[i].Is("wyib") || (isSaid && c.Lexemes[i].Is("back")))
            {
                return false;
            }
        }

        return null;
    }

    /// <summary>"k1 MC", "k3 in A", "k2 with CC": the yarn that a stitch is worked with.</summary>
    private static bool Color(PhraseCursor c)
    {
        if (c.At == 0)
        {
            return false;
        }

        var ahead = c.Is("in|with") ? 1 : 0;
        var isYarn = c.Is("mc|cc|cc1|cc2|cc3|ms|c1|c2|c3", ahead) || (c.Peek(ahead)?.Atom is { Kind: TokenKind.Word, Text: [>= 'A' and <= 'J'] } && (ahead == 1 || (c.At > 0 && char.IsAsciiDigit(c.Peek(-1)!.Atom.Text[^1]))));
        c.At += isYarn ? ahead + 1 : 0;
        return isYarn;
    }

    /// <summary>"sts", "heel sts", "more sts", "of the held sts": what is counted.</summary>
    public static void Noun(PhraseCursor c)
    {
        if (c.Eat("st"))
        {
            return;
        }

        // up to two words before "sts", none of which is a number or a place
        for (var words = 1; words <= 2; words++)
        {
            if (c.Peek(words)?.Is("st") == true && IsCommon(c.Peek()) && (words == 1 || IsCommon(c.Peek(1))))
            {
                c.At += words + 1;
                return;
            }
        }
    }

    /// <summary>"(K30) of the front", "of left front sts": the piece that the stitches belong to; false with the cursor unmoved.</summary>
    public static bool OfPiece(PhraseCursor c)
    {
        var start = c.At;
        if (c.Eat("of"))
        {
            c.Eat("the");
            c.Eat("left|right|upper|lower");
            if (c.Eat("front|back|sleeve|body|yoke|neck|shoulder|underarm|thumb|gusset|heel"))
            {
                c.Eat("st");
                if (c.IsDone || c.Is("and|then"))
                {
                    return true;
                }
            }
        }

        c.At = start;
        return false;
    }

    private static bool IsCommon(Lexeme? word) =>
        word is { IsNumber: false, Atom.Kind: TokenKind.Word } && word.Norm is not ("to" or "in" or "into" or "until" or "k" or "p" or "next" or "each" or "across" or "and" or "at" or "all" or "every" or "rem");

    // "the next 12 sts", "held 12 sts": words before the number.
    public static void NextSo(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("across");
        c.Eat("the");
        c.Eat("next|first|foll|rem|hold|last");
        c.Eat("hold");
        if (!c.IsNumber())
        {
            c.At = start;
        }
    }

    /// <summary>"k wrapped st together with its wrap", "k DS": one stitch that a short row left.</summary>
    public static bool Wrapped(PhraseCursor c)
    {
        var start = c.At;
        c.Eat("the");
        c.Eat("next|foll");
        if (!c.Eat("wrapped|double|dbl|ds|mds"))
        {
            c.At = start;
            return false;
        }

        c.Eat("st");
        c.Eat("tog");
        if (c.Eat("with"))
        {
            c.Eat("its|the|this");
            c.Eat("wrap|wraps");
        }

        c.EatAll("as", "one");
        return true;
    }

    /// <summary>"knit the knits and purl the purls", "k the knit sts and p the purl sts", "work sts as they appear".</summary>
    public static bool AsTheyAppear(PhraseCursor c)
    {
        var start = c.At;
        bool One()
        {
            var at = c.At;
            c.Eat("the");
            if (!c.Eat("k|p"))
            {
                return false;
            }

            c.Eat("all");
            c.Eat("the");
            return c.Eat("k|p") && c.At - at >= 2 && (c.Eat("st") || c.At >= at);
        }

        if (c.EatAll("work", "st") || c.EatAll("work", "all", "st") || c.EatAll("work", "each", "st") || (c.Is("k|p") && c.Is("the|all|k|p", 1) && One() && c.Eat("and|&") && One()))
        {
            if (c.EatAll("as", "it|they") && (c.Eat("appear|face|appears|faces|present|presents|come|show") || c.Eat("appear")))
            {
                c.Eat("you|themselves");
                return true;
            }

            if (!c.Lexemes[start].Is("work"))
            {
                return true;
            }
        }

        c.At = start;
        return false;
    }
}
