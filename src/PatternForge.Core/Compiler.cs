using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Charts;
using PatternForge.Core.Checks;
using PatternForge.Core.Drafts;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Planning;
using PatternForge.Core.Shapes;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;
using PatternForge.Core.Work;
using PatternForge.Core.Yarns;

namespace PatternForge.Core;

/// <summary>The pipeline, readable as a story: text in, compilation out. Never throws for bad input.</summary>
public static class Compiler
{
    /// <summary>Reads, works and checks one source file.</summary>
    /// <param name="source">The file.</param>
    /// <param name="options">Limits; the defaults when null.</param>
    /// <param name="cancel">Stops the work early by <see cref="OperationCanceledException"/>.</param>
    public static Compilation Compile(SourceText source, CompileOptions? options = null, CancellationToken cancel = default)
    {
        cancel.ThrowIfCancellationRequested();
        options ??= CompileOptions.Default;
        var refused = new FindingBag(source);
        if (source.Text.Length > options.MaxLength)
        {
            refused.Add(FileRules.TooLarge(source, options.MaxLength));
        }

        if (refused.Count > 0 || !FileRules.Check(source, refused))
        {
            return Of(MendedText.Unchanged(source), new Pattern(new PatternFacts(), []), [], [], refused.ToSorted());
        }

        var draft = PlanBlocks.Write(DraftReader.Read(source), options);
        var read = draft.Mended.Text;
        var bag = new FindingBag(read);
        var file = FileSplitter.Split(read, bag);
        var header = file.Header is { } span ? HeaderReader.Read(read, span, options, bag) : null;
        var facts = HeaderBinder.Bind(header, read, bag, options.House, options.ReadFile);
        facts = facts with { TurningChains = TurningChainReader.Read(facts.Notes) };
        var sections = BodyParser.Parse(read, file.Body, bag);
        facts = facts with { ProvedTerms = CrochetTerms.Prove(sections, read, facts) };
        var body = BodyBinder.Bind(sections, facts, read, bag, options, cancel);
        var worked = PatternWorker.Work(body.Lines, facts, bag, options, cancel);
        var pattern = ProseCounts.Fill(new Pattern(facts, body.Sections), worked, bag);
        WithoutEchoes(bag);
        if (options.Checking != Checking.RowsAlone)
        {
            TermsProof.Look(facts, bag, other => Retry(sections, other, read, options, cancel));
        }

        var charts = ChartMaker.Of(pattern, body.Lines, body.Charts, worked, options, bag);
        var outlines = new Lazy<ImmutableArray<PieceOutline>>(() => OutlineMaker.Of(new CheckContext(new Pattern(facts, body.Sections), worked, read, new FindingBag(read)), body.Lines));
        var yarn = new Lazy<YarnEstimate>(() => YarnEstimator.Of(new Pattern(facts, body.Sections), body.Lines, worked, outlines.Value, read, options));
        if (options.Checking != Checking.RowsAlone && facts.Yarns.Any(y => y.NeedsAreEstimated))
        {
            pattern = pattern with { Facts = FilledNeeds.In(facts, yarn.Value) };
        }

        var context = new CheckContext(pattern, worked, read, bag)
        {
            Abbreviations = body.Abbreviations,
            Words = body.Words,
            IsCharted = body.Lines.Any(l => l.Pattern is not null),
            Tolerances = options.Tolerances,
            Answers = options.Answers,
            House = options.House,
            LookAtPhoto = options.LookAtPhoto,
            Outlines = outlines,
            Yarn = yarn,
        };
        Lazy<ImmutableArray<CrochetDiagram>> diagrams = new(() => DiagramMaker.Of(pattern, body.Lines, worked, options));
        var colours = StripeMaker.Of(pattern, body.Lines, worked, options);
        var shares = colours?.Shares() ?? [];
        Lazy<ImmutableArray<StripeSequence>> stripes = new(() => colours?.Sequences() ?? []);
        if (options.Checking == Checking.ErrorsAlone)
        {
            CheckList.Run(context, Severity.Error);
        }
        else if (options.Checking == Checking.Whole)
        {
            CheckList.Run(context);
            YarnShareCheck.Report(pattern, shares, body.Lines, options.Tolerances.YarnShare, bag);
            DrawingNotMade.Report(pattern, body.Lines, worked, charts, diagrams, stripes, options, bag);
            SchematicRequest.Check(context);
            SchematicDiffers.Check(context);
            UnknownEditions(facts, bag);
        }

        return Of(draft.Mended, pattern, worked, body.Abbreviations, InSource(bag.ToSorted(), refused, draft, file, options.House)) with { BoundLines = body.Lines, LazyCharts = charts, LazyOutlines = outlines, LazyYarn = yarn, LazyDiagrams = diagrams, LazyStripes = stripes, Shares = shares };
    }

    /// <summary>A stated count that is wrong does not run with the other sizes either: that is told once.</summary>
    private static void WithoutEchoes(FindingBag bag)
    {
        if (bag.Has(RowRules.ValuesOutOfRun))
        {
            bag.Remove([.. bag.From(0).Select(f => f.Finding).Where(f => f.Rule == RowRules.ValuesOutOfRun && bag.HasAt("PF301", f.Span))]);
        }
    }

    /// <summary>What is found when the rows are read by other facts.</summary>
    private static ImmutableArray<Finding> Retry(ImmutableArray<SectionNode> sections, PatternFacts facts, SourceText read, CompileOptions options, CancellationToken cancel)
    {
        var bag = new FindingBag(read);
        PatternWorker.Work(BodyBinder.Bind(sections, facts, read, bag, options, cancel).Lines, facts, bag, options, cancel);
        return bag.ToSorted();
    }

    /// <summary>Names editions that the header asks for and that do not exist.</summary>
    private static void UnknownEditions(PatternFacts facts, FindingBag bag)
    {
        foreach (var wanted in facts.Release.Where(r => Edition.Find(r.Value)?.Exists(facts.Sizes) != true))
        {
            if (Edition.Clash(wanted.Value) is var (first, second))
            {
                bag.Add(EditionRules.NotTogether, wanted.Origin, $"`{first}` and `{second}` cannot be had in one edition", "name one of the two, or make two editions of it");
                continue;
            }

            var known = Edition.All.Select(e => e.Name).ToArray();
            var unknown = wanted.Value.Split('+').FirstOrDefault(p => Edition.Find(p)?.Exists(facts.Sizes) != true, wanted.Value).Trim();
            var near = Suggest.Nearest(unknown, known, 1);
            bag.Add(EditionRules.Unknown, wanted.Origin, $"there is no edition `{unknown}`", near.Count > 0 ? $"did you mean `{near[0]}`?" : $"there are {string.Join(", ", known.Select(k => $"`{k}`"))}");
        }
    }

    /// <summary>The findings at the places of the file itself, with the notes on what was mended, and which of them were accepted.</summary>
    private static ImmutableArray<Finding> InSource(ImmutableArray<Finding> findings, FindingBag first, Draft draft, SplitFile file, House house)
    {
        if (draft.Mended.Text != draft.Mended.Source || first.Count > 0 || !draft.Notes.IsEmpty)
        {
            var all = new FindingBag(draft.Mended.Source);
            foreach (var finding in first.ToSorted().Concat(draft.Notes).Concat(PlanBlocks.WithoutEchoes(findings.Select(draft.Mended.ToSource), draft)))
            {
                all.Add(finding);
            }

            findings = all.ToSorted();
            file = new SplitFile(file.Header is { } header ? draft.Mended.ToSource(header) : null, draft.Mended.ToSource(file.Body));
        }

        return Acceptances.Apply(findings, draft.Mended.Source, file, house.NeverAccepted);
    }

    internal static Compilation Of(MendedText text, Pattern pattern, ImmutableArray<WorkedLine> lines, ImmutableArray<AbbreviationUse> abbreviations, ImmutableArray<Finding> findings) => new()
    {
        Source = text.Source,
        Text = text,
        Pattern = pattern,
        Lines = lines,
        Abbreviations = abbreviations,
        Findings = findings,
        Coverage = new Coverage(
            lines.Length,
            lines.Count(l => l.Status == LineStatus.Checked),
            lines.Count(l => l.Status == LineStatus.Trusted),
            lines.Count(l => l.Status == LineStatus.Unread)),
    };
}
