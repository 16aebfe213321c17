using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Reads one stitch with its number or its extent: "k2", "ssk", "k to last 3 sts", "K2tog 3 times", "inc in next st", "sl 1 wyif".</summary>
internal static class StitchReader
{
    private const int MostAtoms = 7;
    private const string PlainStitch = "k|p|work|patt|rib|in-patt";

    /// <summary>The step at the cursor, or null with the cursor unmoved.</summary>
    public static Step? TryRead(PhraseCursor cursor, RowContext context)
    {
        var start = cursor.At;
        var used = context.Used.Count;
        var step = IncreaseReader.TryRead(cursor, context) ?? InYarn(cursor, context) ?? Named(cursor, context);
        if (step is null)
        {
            cursor.At = start;
            context.Used.RemoveRange(used, context.Used.Count - used);
        }

        return step;
    }

    /// <summary>True when a stitch stands at the cursor, so many words ahead; nothing is noted.</summary>
    public static bool IsNext(PhraseCursor cursor, RowContext context, int ahead = 0)
    {
        var (at, used, bad, claims) = (cursor.At, context.Used.Count, context.HasBadNumber, context.Claims.Count);
        cursor.At += ahead;
        var found = cursor.At < cursor.Lexemes.Count && TryRead(cursor, context) is not null;
        cursor.At = at;
        context.HasBadNumber = bad;
        context.Claims.RemoveRange(claims, context.Claims.Count - claims);
        context.Used.RemoveRange(used, context.Used.Count - used);
        return found;
    }

    private static Step? Named(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        var (operation, count) = OperationAt(c, context);
        if (operation is null)
        {
            return null;
        }

        var namesOne = count is null && context.LastName.Contains('1', StringComparison.Ordinal);
        StitchWords.Modifiers(c);
        if (operation.Id == "w&t")
        {
            return new TurnStep(c.SpanFrom(start), Wraps: true);
        }

        if (operation is { Takes: 1, Makes: 1, Family: Family.Basic } && StitchWords.Wrapped(c))
        {
            context.Use(operation, c.SpanFrom(start));
            return new OperationStep(c.SpanFrom(start), operation, count);
        }

        StitchWords.NextSo(c);

        if (c.Is("across") && c.IsNumber(1))
        {
            c.At++;
        }

        if (count is null && c.IsNumber() && !(c.Peek(1)?.Is("times") == true))
        {
            count = context.AmountOf(c.EatNumber()!);
        }

        StitchWords.Modifiers(c);
        var noun = c.At;
        StitchWords.Noun(c);
        var ofPiece = count is not null && StitchWords.OfPiece(c);
        var isOfPart = ofPiece || count is not null && c.Lexemes[noun..c.At].Exists(l => l.Is("instep") || l.Is("sole") || l.Is("hold"));
        if (operation.Family == Family.Slip && count is not null)
        {
            context.SlippedTogether = c.Eat("tog"); // "sl 2 tog knitwise"
        }
        else if (operation.Id == "psso" && context.SlippedTogether)
        {
            // What was slipped together is passed over together.
            operation = context.Book.PassTwoOver;
            context.SlippedTogether = false;
        }

        StitchWords.Modifiers(c);
        Step? step = null;
        if (count is null && TargetReader.TryRead(c, context) is { } target)
        {
            StitchWords.Modifiers(c);
            step = new RunStep(c.SpanFrom(start), operation, target);
        }
        else
        {
            Place(c, context, operation, ref count, out var toEnd);
            step = toEnd && count is null
                ? new RunStep(c.SpanFrom(start), operation, new Target(Extent.End))
                : new OperationStep(c.SpanFrom(start), operation, Multiply(count, TimesReader.TryRead(c, context)));
            if (namesOne && IsBarePlain(step))
            {
                step = new OperationStep(step.Origin, operation, RowContext.Constant(1, step.Origin)); // "k1 tbl" is one, not all of them
            }
        }

        StitchWords.Modifiers(c);
        context.Use(operation, c.SpanFrom(start));
        if (operation.Family == Family.Slip && StitchWords.YarnInFront(c, start) is { } inFront)
        {
            step = step with { YarnInFront = inFront };
        }

        return isOfPart && step is OperationStep { Operation: { Takes: 1, Makes: 1 }, Times: { } stitches } ? new AcrossPieceStep(step.Origin, operation, stitches) : step; // "k28 instep sts" may have been held
    }

    /// <summary>True when a step is a plain stitch without a number, which alone in a row means all of them ("Knit.").</summary>
    public static bool IsBarePlain(Step step) =>
        step is OperationStep { Times: null, Operation: { Takes: 1, Makes: 1, Family: Family.Basic or Family.Brioche } };

    /// <summary>So many times so many; the one that is there where the other is null.</summary>
    public static Amount? Multiply(Amount? a, Amount? b)
    {
        if (a is null || b is null)
        {
            return a ?? b;
        }

        var each = Math.Max(a.Values.Values.Length, b.Values.Values.Length);
        var values = ImmutableArray.CreateBuilder<int?>(each);
        for (var i = 0; i < each; i++)
        {
            values.Add((int?)Math.Clamp((long)(a[i] ?? 0) * (b[i] ?? 0), 0, 1_000_000_000));
        }

        return new Amount(PerSize.Each(values.ToImmutable()), a.Origin.Cover(b.Origin));
    }

    /// <summary>The longest run of words that names a stitch.</summary>
    private static (Operation? Operation, Amount? Count) OperationAt(PhraseCursor c, RowContext context)
    {
        if (StitchWords.AsTheyAppear(c))
        {
            context.LastName = "";
            return (StitchBook.InPattern, null);
        }

        if (c.Is("work|patt|rib") && !context.Book.IsSpecial(c.Peek()!.Atom.Text))
        {
            c.At++;
            context.LastName = "";
            return (StitchBook.InPattern, null);
        }

        if (c.Is("cont") && c.Is("in-patt|as-set", 1))
        {
            c.At++;
            context.LastName = "";
            return (StitchBook.InPattern, null);
        }

        if (c.Is("edge") && c.Is("st", 1))
        {
            c.At += 2;
            context.LastName = "";
            return (StitchBook.InPattern, RowContext.Constant(1, c.Peek(-1)!.Span));
        }

        for (var length = LongestName(c, context); length >= 1; length--)
        {
            if (!MayEndName(c, length, context))
            {
                continue;
            }

            var span = c.Lexemes[c.At].Span.Cover(c.Lexemes[c.At + length - 1].Span);
            if (span.Length > 60)
            {
                continue;
            }

            var name = length == 1 ? c.Lexemes[c.At].Atom.Text : context.Source.ToString(span);
            if (c.Lexemes[c.At].Norm == "bo" || c.Lexemes[c.At].Norm == "co")
            {
                return default;
            }

            if (length == 1 && c.Lexemes[c.At].Atom.Number is { } list && c.Lexemes[c.At].Atom.Kind == TokenKind.Word)
            {
                // "k2 (3, 4)": the list belongs to the number at the word's end.
                var (stem, _) = Split(name);
                if (stem.Length > 0 && context.Book.Find(stem) is { } counted)
                {
                    c.At++;
                    context.LastName = stem;
                    return (counted, context.AmountOf(list));
                }

                continue;
            }

            if (context.Book.Find(name) is { } operation)
            {
                c.At += length;
                context.LastName = name;
                return (operation, null);
            }

            if (length == 1)
            {
                // "k1A, k1B": the letter is the yarn.
                var (stem, digits) = Split(WithoutYarn(name, context));
                if (stem.Length > 0 && digits >= 0 && context.Book.Find(stem) is { Takes: > 0 } or { Makes: > 0 } && context.Book.Find(stem) is { } known)
                {
                    c.At++;
                    context.LastName = stem;
                    return (known, RowContext.Constant(digits, span));
                }
            }
        }

        return default;
    }

    /// <summary>"k2A", "k3CC": the stitches without the letters of their yarn.</summary>
    private static string WithoutYarn(string name, RowContext context)
    {
        if (name.Length > 2 && name[^1] is >= 'A' and <= 'J' && char.IsAsciiDigit(name[^2]))
        {
            return name[..^1];
        }

        var digit = name.AsSpan().LastIndexOfAnyInRange('0', '9');
        return digit > 0 && digit < name.Length - 1 && context.IsYarn(name.AsSpan(digit + 1)) ? name[..(digit + 1)] : name;
    }

    /// <summary>"2 MC, 3 CC", "2A": so many stitches in that yarn, where the header has it; null with the cursor unmoved.</summary>
    private static OperationStep? InYarn(PhraseCursor c, RowContext context)
    {
        var start = c.At;
        if (start > 0 || context.IsCrochet)
        {
            return null;
        }

        if (c.EatNumber() is { } number && c.Peek() is { Atom.Kind: TokenKind.Word } yarn && context.IsYarn(yarn.Atom.Text) && c.At++ > 0 && (c.IsDone || c.Is("and|then")))
        {
            return new OperationStep(c.SpanFrom(start), StitchBook.InPattern, context.AmountOf(number));
        }

        c.At = start;
        if (c.Peek() is { Atom: { Kind: TokenKind.Word, Text: [>= '0' and <= '9', ..] text } } word && text.AsSpan().IndexOfAnyExceptInRange('0', '9') is > 0 and < 4 and var digits && context.IsYarn(text.AsSpan(digits)) && (c.Peek(1) is null || c.Is("and|then", 1)))
        {
            c.At++;
            return new OperationStep(word.Span, StitchBook.InPattern, RowContext.Constant(int.Parse(text.AsSpan(0, digits), CultureInfo.InvariantCulture), word.Span));
        }

        return null;
    }

    /// <summary>"k5" is k and 5. A word without digits at its end gives -1.</summary>
    public static (string Stem, int Digits) Split(string word)
    {
        var cut = word.Length;
        while (cut > 0 && char.IsAsciiDigit(word[cut - 1]))
        {
            cut--;
        }

        if (cut == word.Length || cut == 0)
        {
            return (word, -1);
        }

        var digits = int.TryParse(word.AsSpan(cut), NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? Math.Min(value, 1_000_000_000) : 1_000_000_000;
        return (word[..cut].TrimEnd('-'), digits);
    }

    /// <summary>How many words from here may be one name. Words that are stitches by themselves are not parts of a longer one: "k1 yo k1" is three stitches, "k2 tog" is one.</summary>
    private static int LongestName(PhraseCursor c, RowContext context)
    {
        var most = Math.Min(MostAtoms, c.Lexemes.Count - c.At);
        var begins = most > 1 && context.Book.Find(c.Lexemes[c.At].Atom.Text) is null && Split(c.Lexemes[c.At].Atom.Text) is (_, < 0);
        for (var i = 0; i < most; i++)
        {
            var lexeme = c.Lexemes[c.At + i];
            if ((lexeme.Atom.Kind is not (TokenKind.Word or TokenKind.Number or TokenKind.Slash) && (i == 0 || !IsJoint(lexeme.Atom))) || lexeme.Number is { IsList: true })
            {
                return i;
            }

            if (i > 0 && !begins && lexeme.Atom.Kind == TokenKind.Word && lexeme.Norm is not ("tog" or "st" or "m"))
            {
                var (stem, digits) = Split(lexeme.Atom.Text);
                if (context.Book.Find(lexeme.Atom.Text) is not null || (digits >= 0 && context.Book.Find(stem) is not null))
                {
                    return i;
                }
            }
        }

        return most;
    }

    private static bool IsJoint(Atom atom) => atom is { Kind: TokenKind.Dash, SpaceBefore: false };

    private static bool MayEndName(PhraseCursor c, int length, RowContext context)
    {
        var (first, last) = (c.Lexemes[c.At], c.Lexemes[c.At + length - 1]);
        if (length == 1 || last.Atom.Kind == TokenKind.Word)
        {
            return last.Atom.Kind == TokenKind.Word;
        }

        return !IsJoint(last.Atom) && ((first.Norm is "yo" or "m" or "make" && c.Peek(length)?.Is("times") != true) || context.Book.IsSpecial(context.Source.ToString(first.Span.Cover(last.Span))));
    }

    private static void Place(PhraseCursor c, RowContext context, Operation operation, ref Amount? count, out bool toEnd)
    {
        toEnd = false;
        var start = c.At;
        if (count is null && c.Is("over") && c.IsNumber(1) && c.Is("st", 2) && c.Peek(1)!.Number?.Values[0] == operation.Takes)
        {
            c.At += 3; // "LT over 2 sts": the stitches of one crossing
            return;
        }

        if (!c.Eat("in|into|over|of"))
        {
            return;
        }

        c.Eat("the");
        if (operation is { Takes: 1, Makes: 1 } && (c.EatAll("row|st", "below") || c.EatAll("st", "one", "row", "below")))
        {
            return;
        }

        if (c.Eat("next|first|last|same|foll|this") || c.EatOrdinal())
        {
            if (c.EatNumber() is { } many)
            {
                count ??= context.AmountOf(many);
            }

            if (c.Eat("st|m") || c.Eat("yo|yo2"))
            {
                return;
            }
        }
        else if (c.Eat("each|every"))
        {
            if (c.EatAll("of", "next") || c.EatAll("of", "the", "next") || c.Eat("next"))
            {
                if (c.EatNumber() is { } each)
                {
                    count ??= context.AmountOf(each);
                }

                c.Eat("st");
                return;
            }

            if (c.Eat("st"))
            {
                TargetReader.EatWholeRow(c);
                toEnd = true;
                return;
            }
        }

        c.At = start;
    }
}
