using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Core.Editions;

/// <summary>The pattern in American or in British terms. In a pattern that has them already nothing changes.</summary>
internal sealed class TermsEdition(Dialect to) : Edition
{
    // Where a sentence names one of these, it speaks of the terms themselves and cannot be said in the others.
    private static readonly string[] Sides = ["US", "USA", "U.S.", "UK", "U.K.", "American", "British", "Americans", "Britain", "America"];
    private static readonly string[] OfTerms = ["terms", "term", "terminology", "notation", "abbreviations", "stitches", "names", "english"];

    /// <inheritdoc/>
    public override string Name => to == Dialect.Us ? "us" : "uk";

    /// <inheritdoc/>
    public override string Title => to == Dialect.Us ? "American terms" : "British terms";

    /// <inheritdoc/>
    public override EditionForm Form => new(Name, to, false);

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Terms;

    /// <inheritdoc/>
    public override string Subject => "terms";

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain)
    {
        var facts = plain.Pattern.Facts;
        var edits = new List<Edit>();
        var findings = new List<Finding>();
        if (facts.Craft != Craft.Knitting && facts.TermsInForce is null)
        {
            var place = facts.HeaderOrigin ?? default;
            return Refused(plain, Say(plain, EditionRules.NotPossible, place, "the stitches cannot be named: the pattern does not say whose terms it is written in", "write `terms: us` or `terms: uk` in the header"));
        }

        var stretches = Stretches.Of(plain);
        Declare(plain, stretches, edits);
        var tools = new ToolTermWords(plain.Text.Text, to, facts.Craft != Craft.Knitting);
        foreach (var stretch in stretches.Found)
        {
            tools.Look(stretch, edits);
        }

        findings.AddRange(tools.Undecided.Where(u => !IsTold(plain, u.Place)).Select(u => Say(plain, EditionRules.ToolLeft, u.Place, u.Why, "give its millimetres beside it")));
        if (facts.TermsInForce == to)
        {
            return new RewrittenSource(plain.Text, edits, [.. findings]);
        }

        if (Clash(plain) is { } clash)
        {
            return Refused(plain, clash);
        }

        var words = WordsOf(facts, to);
        foreach (var stretch in stretches.Found)
        {
            Rewrite(plain, stretch, words, tools.Places, edits, findings);
        }

        return new RewrittenSource(plain.Text, edits, [.. findings]);
    }

    // A size that can be read in several ways has been told of for the pattern itself.
    private static bool IsTold(Compilation plain, TextSpan place) => plain.Text.ToSource(place) is var told && plain.Findings.Any(f => f.Rule.Code == "PF710" && f.Span.Start <= told.Start && told.End <= f.Span.End);

    private static RewrittenSource Refused(Compilation plain, Finding why) => new(plain.Text, [], [why], isRefused: true);

    /// <summary>The words of one side for a pattern.</summary>
    internal static ITermWords[] WordsOf(PatternFacts facts, Dialect to)
    {
        var keepsSk = facts.Abbreviations is { } own && own.Any(a => AbbreviationUse.KeyOf(a.Name) == "sk");
        var shared = new SharedTermWords(to, keepsSk);
        return facts.Craft == Craft.Knitting ? [new KnittingTermWords(to, facts.Terms is not null), shared] : [CrochetTermWords.For(to), new CrochetYarnOverWords(to), shared];
    }

    /// <summary>Says the terms in the header, or says them otherwise.</summary>
    private void Declare(Compilation plain, Stretches stretches, List<Edit> edits)
    {
        var facts = plain.Pattern.Facts;
        var isOwn = facts.Terms is { } said && said.Origin != (facts.HeaderOrigin ?? default); // what a project file settles has the place of the opening line
        if (facts.Terms is { } declared && isOwn)
        {
            if (declared.Value != to)
            {
                edits.Add(new Edit(declared.Origin, Name));
            }
        }
        else if (stretches.Header is not null)
        {
            edits.Add(new Edit(new TextSpan(stretches.HeaderStart, 0), $"terms: {Name}\n"));
        }
        else if (facts.TermsInForce is not null)
        {
            edits.Add(new Edit(new TextSpan(0, 0), $"---\nterms: {Name}\n---\n\n")); // the rows of a file without a header have shown them
        }
    }

    /// <summary>A special stitch under a name that the other terms have for another stitch.</summary>
    private Finding? Clash(Compilation plain)
    {
        var facts = plain.Pattern.Facts;
        if (facts.Craft == Craft.Knitting || facts.TermsInForce is not { } from)
        {
            return null;
        }

        foreach (var stitch in facts.Stitches)
        {
            if (OperationTable.Find(Craft.Crochet, stitch.Name) is { } meaning && meaning.In(from) is null && meaning.In(to) is { } other)
            {
                return Say(plain, EditionRules.NotPossible, stitch.Origin, $"`{stitch.Name}`, which the pattern defines for itself, is the name of another stitch ({OperationTable.SpokenIn(other, to)})", "call the pattern's own stitch otherwise");
            }
        }

        return null;
    }

    private void Rewrite(Compilation plain, Stretch stretch, ITermWords[] words, List<TextSpan> tools, List<Edit> edits, List<Finding> findings)
    {
        if (stretch.Kind == StretchKind.YarnLabel)
        {
            return;
        }

        var run = new WordRun(plain.Text.Text, stretch);
        if (run.IsRow)
        {
            Rewrite(run, 0, run.Count, words, edits);
            return;
        }

        foreach (var (from, count) in run.Sentences())
        {
            if (Side(run, from, count, tools) is not { } side)
            {
                Rewrite(run, from, count, words, edits);
                continue;
            }

            var wanted = new List<Edit>();
            Rewrite(run, from, count, words, wanted);
            if (wanted.Count > 0 || run.Is(side + 1, OfTerms) || run.Is(side + 2, OfTerms))
            {
                findings.Add(Say(plain, EditionRules.TermsTold, run.SpanOf(side), $"this sentence still stands as it was written: it speaks of {run.Said(side)} terms itself", "say it in the header (`terms`), which the page prints in each edition, and take the sentence out"));
            }
        }
    }

    private static int? Side(WordRun run, int from, int count, List<TextSpan> tools)
    {
        for (var i = from; i < from + count; i++)
        {
            var word = run.Word(i);
            if (Array.Exists(Sides, s => string.Equals(s, word, StringComparison.Ordinal)) && run.KindOf(i + 1) != TokenKind.Number && !run.Is(i + 1, "size", "sizes", "shoe") && !tools.Exists(t => t.Contains(run.SpanOf(i))))
            {
                return i; // "US 7" is a needle
            }
        }

        return null;
    }

    /// <summary>The edits that say words in the terms of one side.</summary>
    internal static void Rewrite(WordRun run, int from, int count, ITermWords[] words, List<Edit> edits)
    {
        for (var i = from; i < from + count; i++)
        {
            foreach (var known in words)
            {
                var (tokens, now) = known.At(run, i);
                if (tokens == 0)
                {
                    continue;
                }

                if (now is not null)
                {
                    Wordings.Replace(run, i, tokens, now, edits);
                    Wordings.Article(run, i, now, edits);
                }

                i += tokens - 1;
                break;
            }
        }
    }
}
