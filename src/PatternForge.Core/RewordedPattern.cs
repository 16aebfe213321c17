using System.Collections.Immutable;
using PatternForge.Core.Binding;
using PatternForge.Core.Drafts;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;
using PatternForge.Core.Work;
using PatternForge.Core.Yarns;

namespace PatternForge.Core;

/// <summary>A pattern whose rows say the same in other words as one that has been worked: header, prose and the words of the rows are read, and nothing is worked again.</summary>
internal static class RewordedPattern
{
    private const string Count = "{count}";

    /// <summary>The pattern in other words; null where its rows cannot be told from those of the pattern as it is written.</summary>
    /// <param name="plain">The pattern as it is written, without errors.</param>
    /// <param name="mended">Its text in other words.</param>
    /// <param name="options">How the pattern was compiled.</param>
    /// <param name="cancel">Stops the work early.</param>
    public static Compilation? Of(Compilation plain, MendedText mended, CompileOptions options, CancellationToken cancel)
    {
        if (ReferenceEquals(mended, plain.Text))
        {
            return plain;
        }

        // Shapings are told from the text of their rows.
        if (plain.HasErrors || plain.BoundLines.Length != plain.Lines.Length || plain.Lines.Any(l => l.Together is not null || !l.Mirrored.IsEmpty))
        {
            return null;
        }

        var read = mended.Text;
        var bag = new FindingBag(read);
        var file = FileSplitter.Split(read, bag);
        var header = file.Header is { } span ? HeaderReader.Read(read, span, options, bag) : null;
        var facts = HeaderBinder.Bind(header, read, bag, options.House, options.ReadFile);
        facts = FilledNeeds.As(facts with { TurningChains = plain.Pattern.Facts.TurningChains, ProvedTerms = plain.Pattern.Facts.ProvedTerms }, plain.Pattern.Facts);
        var known = new KnownLines(plain.BoundLines, mended.ToBefore, mended.ToAfter);
        var body = BodyBinder.Bind(BodyParser.Parse(read, file.Body, bag), facts, read, bag, options, cancel, known);
        if (known.IsLost || body.Lines.Length != plain.Lines.Length || !HasSamePieces(plain.Pattern, body.Sections) || !Fences(plain.Pattern).Select(f => After(f.Origin)).SequenceEqual(Fences(new Pattern(facts, body.Sections)).Select(f => (TextSpan?)f.Origin)))
        {
            return null;
        }

        ImmutableArray<WorkedLine> lines = [.. plain.Lines.Select((l, i) => l with { Origin = body.Lines[i].Origin, Piece = body.Lines[i].Piece, Label = body.Lines[i].Label, Text = Filled(body.Lines[i].Text, plain.BoundLines[i].Text, l.Text) })];
        return Compiler.Of(MendedText.Unchanged(read), ProseCounts.Fill(new Pattern(facts, body.Sections), lines, bag), lines, plain.Abbreviations, []) with
        {
            BoundLines = body.Lines,
            LazyCharts = new(() => [.. plain.Charts.Select(c => c with { Block = After(c.Block) })]),
            LazyDiagrams = new(() => [.. plain.Diagrams.Select(d => d with { Block = After(d.Block) })]),
            LazyStripes = new(() => [.. plain.Stripes.Select(s => s with { Block = After(s.Block) })]),
            LazyOutlines = plain.LazyOutlines,
            LazyYarn = plain.LazyYarn,
            Shares = plain.Shares,
        };

        TextSpan? After(TextSpan? place) => place is { } p && mended.ToAfter(p.Start) is { } start && mended.ToAfter(p.End) is { } end ? TextSpan.FromBounds(start, end) : null;
    }

    /// <summary>True where all headings are the same, by which pieces are called.</summary>
    public static bool HasSamePieces(Pattern plain, ImmutableArray<Section> sections) => plain.Sections.Select(s => s.Heading).SequenceEqual(sections.Select(s => s.Heading), StringComparer.Ordinal);

    private static IEnumerable<FencedBlock> Fences(Pattern pattern) => pattern.Sections.SelectMany(s => s.Blocks).OfType<FencedBlock>();

    /// <summary>The count is the one that was filled in before.</summary>
    private static string Filled(string text, string asRead, string asWorked) =>
        text.Contains(Count, StringComparison.Ordinal) && asRead.IndexOf(Count, StringComparison.Ordinal) is >= 0 and var at && asWorked.Length - asRead.Length + Count.Length is > 0 and var length
            ? text.Replace(Count, asWorked.Substring(at, length), StringComparison.Ordinal)
            : text;
}
