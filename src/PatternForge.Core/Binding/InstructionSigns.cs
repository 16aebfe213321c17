using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>
/// Decides whether a line without a label is an instruction or prose. Nothing that looks like an instruction may fall silently into prose,
/// and a sentence about the work is no instruction.
/// </summary>
internal static class InstructionSigns
{
    /// <summary>True when the line reads as an instruction, understood or not.</summary>
    public static bool LooksLikeInstruction(ImmutableArray<BoundRow> rows, ImmutableArray<RowNode> nodes, StitchBook book)
    {
        var steps = rows.SelectMany(r => r.Steps).ToList();
        var unread = steps.Count(s => s is UnreadStep);
        var working = steps.Count(IsWork);
        if (unread == 0)
        {
            // Words to the maker alone ("Fasten off.") are instructions; so is a lone count ("36 sts.").
            return steps.Exists(s => s is not (RemarkStep { IsSentence: true } or SentenceStep)) || rows.Any(r => !r.Claims.IsEmpty);
        }

        if (working > unread || (working > 0 && steps[0] is not UnreadStep && !IsSentence(nodes)))
        {
            return true;
        }

        if (working == 0 && IsExplanation(nodes))
        {
            return false;
        }

        return nodes.Any(n => HasSigns(n.Steps, book, 0) is var signs && (signs >= 2 || (signs == 1 && BeginsWithWork(n))));
    }

    // "Continue in this manner until 5 sts rem": one sign is enough behind a word that begins work.
    private static bool BeginsWithWork(RowNode row) =>
        row.Steps.FirstOrDefault() is PhraseNode phrase && Vocabulary.NormOf(phrase.Atoms[0]) is "cont" or "rep" or "work" or "k" or "p" or "inc" or "dec" or "sl" or "place" or "pick" or "bind" or "cast" or "join" or "turn";

    private static bool IsWork(Step step) => step switch
    {
        OperationStep { Times: null, Operation.Id: "work" or "k" or "p" or "s" or "sl" } => false,
        UnreadStep or RemarkStep or SentenceStep => false,
        _ => true,
    };

    // "Along an edge every motif gives 19 stitches: that makes 124 stitches on a side." tells what comes of it, and nothing to do.
    private static bool IsExplanation(ImmutableArray<RowNode> nodes) =>
        nodes.All(n => n.Label is null) && nodes.SelectMany(n => n.Steps).OfType<PhraseNode>().SelectMany(p => p.Atoms.Skip(1)).Count(a => a.Is("gives") || a.Is("makes") || a.Is("means") || a.Is("give")) > 1;

    // Long runs of plain words with hardly a number in them are sentences.
    private static bool IsSentence(ImmutableArray<RowNode> nodes)
    {
        var (words, numbers) = (0, 0);
        foreach (var phrase in nodes.SelectMany(n => n.Steps).OfType<PhraseNode>())
        {
            words += phrase.Atoms.Count(a => a.Kind == TokenKind.Word && a.Text.All(char.IsLetter) && a.Text.Length > 3);
            numbers += phrase.Atoms.Count(a => a.Kind == TokenKind.Number || a.Text.Any(char.IsAsciiDigit));
        }

        return words > 6 && numbers < words / 4;
    }

    /// <summary>Signs of an instruction: a stitch with its number, stitches or rows counted, a starred repeat, casting on or off.</summary>
    private static int HasSigns(ImmutableArray<StepNode> steps, StitchBook book, int depth)
    {
        var signs = 0;
        foreach (var step in steps)
        {
            switch (step)
            {
                case PhraseNode phrase:
                    signs += Signs(Vocabulary.Normalise(phrase.Atoms), book);
                    break;
                case RepeatNode repeat when depth < 4:
                    signs += 2 + HasSigns(repeat.Body, book, depth + 1);
                    break;
                case GroupNode group when depth < 4:
                    signs += HasSigns(group.Body, book, depth + 1);
                    break;
            }
        }

        return signs;
    }

    private static int Signs(List<Lexeme> lexemes, StitchBook book)
    {
        var signs = 0;
        for (var i = 0; i < lexemes.Count && signs < 4; i++)
        {
            var lexeme = lexemes[i];
            var next = i + 1 < lexemes.Count ? lexemes[i + 1] : null;
            if (lexeme.Is("bo") || lexeme.Is("co") || lexeme.Is("pu"))
            {
                signs += next is { IsNumber: true } ? 2 : 1;
            }
            else if (lexeme.IsNumber && next is not null && (next.Is("st") || next.Is("row") || next.Is("rnd")))
            {
                signs++;
            }
            else if (lexeme.Atom.Kind == TokenKind.Word && StitchReader.Split(lexeme.Atom.Text) is (var stem, >= 0) && book.Find(stem) is not null)
            {
                signs++;
            }
        }

        return signs;
    }
}
