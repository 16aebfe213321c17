using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Binding;

/// <summary>Phrases that stand for whole rows, alone or together with the next ones.</summary>
internal sealed class WholeRows
{
    private readonly RowDraft _draft;

    private readonly WordBinder _words;

    public WholeRows(RowDraft draft, WordBinder words)
    {
        _draft = draft;
        _words = words;
    }

    /// <summary>A phrase, alone or with the next ones, that stands for whole rows; the last node taken, or null.</summary>
    public int? TryBind(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, PhraseCursor cursor, List<Step> steps)
    {
        _draft.Context.IsAlone = nodes.Length == 1 || steps.All(s => s is RemarkStep) && nodes.Skip(at + 1).All(n => n is not PhraseNode);
        // "Work 1 row dec 1 st at each end": rows, and what happens in them.
        var change = cursor.Lexemes.FindIndex(l => l.Is("inc") || l.Is("dec"));
        if (cursor.Is("k|p|work") && cursor.IsNumber(1) && change is > 2 and < 5 && (cursor.Is("row|rnd", change - 1) || cursor.Is("row|rnd", change - 2)))
        {
            var rows = new PhraseCursor(cursor.Lexemes.GetRange(0, cursor.Is("row|rnd", change - 1) ? change : change - 1));
            if (TryWhole(rows, steps))
            {
                cursor.At = change;
                _words.Bind(cursor, steps);
                return at;
            }
        }

        if (Reach(nodes, at, phrase, cursor) is var (reach, last))
        {
            steps.Add(reach);
            return last;
        }

        if (steps.TrueForAll(s => s is RemarkStep) && Fabric(nodes, at, cursor, steps) is { } behind)
        {
            return behind;
        }

        // "Work even in K1, P1 rib for 2 in" is cut at its comma.
        var isFabric = cursor.Is("work|cont") && (cursor.Lexemes.Count <= 2 || cursor.Lexemes.Exists(l => l.Is("in") || l.Is("row") || l.Is("rnd")));
        if (isFabric && Merged(nodes, at, phrase, steps) is { } fabric)
        {
            return fabric;
        }

        if (steps.FindLast(s => s is not RemarkStep) is RepeatRowsStep { WithPlainRows: true } paced && RowsReader.GoOn(cursor, _draft.Context, paced) is { } again)
        {
            steps.Add(again);
            return at;
        }

        if (LateTimes(cursor, steps) || TryWhole(cursor, steps) || Start(nodes, ref at, cursor, steps))
        {
            return at;
        }

        return !isFabric && cursor.Is("inc|dec|rep|beg|k|p") ? Merged(nodes, at, phrase, steps) : null;
    }

    /// <summary>"St st, 4 rows, beg K": a fabric by its name, how many rows of it and how it begins, parted by commas; null for other words.</summary>
    private int? Fabric(ImmutableArray<StepNode> nodes, int at, PhraseCursor cursor, List<Step> steps)
    {
        if (_draft.Context.IsCrochet || !IsFabric(cursor))
        {
            return null;
        }

        Amount? rows = null;
        var last = at;
        while (last + 1 < nodes.Length && nodes[last + 1] is PhraseNode { Before: Separator.Comma or Separator.Semicolon } next)
        {
            var c = new PhraseCursor(Vocabulary.Normalise(next.Atoms));
            if (c.EatNumber() is { } number && c.Eat("row|rnd"))
            {
                rows = _draft.Context.AmountOf(number);
            }
            else if (!(c.At == 0 && c.Eat("beg")) || !(c.Eat("with") | c.Eat("a") | c.Eat("k|p|rs|ws")))
            {
                break;
            }

            c.Eat("k|p|rs|ws");
            c.Eat("row|rnd");
            if (!c.IsDone)
            {
                break;
            }

            last++;
        }

        if (last + 1 < nodes.Length && nodes[last + 1].Before != Separator.Stop)
        {
            return null;
        }

        steps.Add(new EvenRowsStep(nodes[at].Span.Cover(nodes[last].Span), rows));
        return last;
    }

    private static bool IsFabric(PhraseCursor cursor)
    {
        var start = cursor.At;
        cursor.Eat("rev|reverse");
        var isFabric = (cursor.Eat("stst|stockinette|stocking|garter|seed|moss") || cursor.EatAll("st", "st")) && (cursor.Eat("st") || cursor.IsDone) && cursor.IsDone;
        cursor.At = start;
        return isFabric;
    }

    /// <summary>"Continue decreasing in this manner, working 1 fewer st between decs, until 8 sts rem": to the count that the sentence names; null for other words.</summary>
    private (ReachStep Step, int Last)? Reach(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, PhraseCursor cursor)
    {
        var verb = cursor.Is("cont") ? (cursor.Is("to", 1) ? 2 : 1) : 0;
        if (verb == 0 || !cursor.Is("dec|inc", verb) || cursor.Peek(verb + 1) is { IsNumber: true })
        {
            return null;
        }

        List<Lexeme> words = [.. cursor.Lexemes];
        var last = at;
        while (last + 1 < nodes.Length && nodes[last + 1] is PhraseNode { Before: not (Separator.Stop or Separator.Dash) } more)
        {
            words.AddRange(Vocabulary.Normalise(more.Atoms));
            last++;
        }

        var c = new PhraseCursor(words) { At = words.FindIndex(l => l.Is("until")) };
        if (c.At < 0 || !c.Eat("until"))
        {
            return null;
        }

        c.Eat("you|there");
        c.Eat("have|are");
        return c.EatNumber() is { } count && (c.Eat("st") || c.Eat("rem"))
            ? (new ReachStep(phrase.Span.Cover(nodes[last].Span), _draft.Context.AmountOf(count), words[verb].Is("dec")), last)
            : null;
    }

    /// <summary>"Rep Rnds 1 and 2, with 2 more sts between increases each time, 8 more times": the number of times comes last.</summary>
    private bool LateTimes(PhraseCursor cursor, List<Step> steps)
    {
        var at = steps.FindLastIndex(s => s is not RemarkStep);
        if (at < 0 || steps[at] is not RepeatRowsStep { Until: RowsUntil.Open } rows)
        {
            return false;
        }

        if (cursor.Is("with") && cursor.Lexemes.Exists(l => l.Is("more") || l.Is("fewer") || l.Is("less")))
        {
            steps[at] = rows with { Grows = true };
            cursor.At = cursor.Lexemes.Count;
            return true;
        }

        cursor.Eat("another");
        var times = TimesReader.TryRead(cursor, _draft.Context);
        if (times is null && cursor.IsNumber() && cursor.Is("more", 1) && cursor.Is("times", 2))
        {
            times = _draft.Context.AmountOf(cursor.EatNumber()!);
            cursor.At += 2;
        }

        cursor.Eat("more");
        if (times is null || !cursor.IsDone)
        {
            cursor.At = 0;
            return false;
        }

        steps[at] = rows with { Until = RowsUntil.Times, Value = times };
        return true;
    }

    private int? Merged(ImmutableArray<StepNode> nodes, int at, PhraseNode phrase, List<Step> steps)
    {
        var atoms = phrase.Atoms;
        for (var more = 1; more <= 2 && at + more < nodes.Length && nodes[at + more] is PhraseNode { Before: Separator.Comma or Separator.None } joined; more++)
        {
            atoms = atoms.AddRange(joined.Atoms);
            var added = Vocabulary.Normalise(joined.Atoms);
            var merged = new PhraseCursor(Vocabulary.Normalise(atoms));
            if (merged.Lexemes.Count <= RowDraft.MostLexemes && added.Exists(l => l.Is("rib") || l.Is("row") || l.Is("rnd") || l.Is("patt") || l.Is("stst")) && TryWhole(merged, steps))
            {
                return at + more;
            }
        }

        return null;
    }

    private bool TryWhole(PhraseCursor cursor, List<Step> steps)
    {
        var step = _draft.Shaping.TryRead(cursor, _draft.Context) ?? RowsReader.TryRead(cursor, _draft.Context);
        if (step is null || !cursor.IsDone)
        {
            cursor.At = 0;
            return false;
        }

        steps.Add(step);
        return true;
    }

    private bool Start(ImmutableArray<StepNode> nodes, ref int at, PhraseCursor cursor, List<Step> steps)
    {
        if (!cursor.Is("beg") || !cursor.Is("with", 1))
        {
            return false;
        }

        var start = StartReader.TryRead(nodes, at, _draft.Context, out var taken);
        if (start is null)
        {
            return false;
        }

        steps.Add(start);
        at = taken;
        return true;
    }
}
