using PatternForge.Core;
using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Corpus;

/// <summary>The catalogue of planted mistakes (tests/catalogue): each is found once, at its place, in its sizes, and by nothing else.</summary>
public class CatalogueTests
{
    private const int MostMarked = 89;

    public static TheoryData<string> Names => [.. CatalogueEntry.All.Select(e => e.Name)];

    public static TheoryData<string> Bases => [.. CatalogueEntry.All.Select(e => e.Base).Concat(PatternFiles.In("tests", "catalogue").Select(f => "tests/catalogue/" + f.Replace(".pattern.md", "", StringComparison.Ordinal))).Distinct(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Bases))]
    public void The_clean_patterns_stay_clean(string name)
    {
        var compilation = Compile(name, Read(name));

        Assert.Equal("", PatternFiles.Tell(compilation));
        Assert.Equal("", PatternFiles.NotChecked(compilation));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_planted_mistake_is_found_once_at_its_place_and_in_its_sizes(string name)
    {
        var entry = CatalogueEntry.All.Single(e => e.Name == name);
        var (text, first, last) = Planted(entry);
        var compilation = Compile(entry.Base, text);

        Assert.Equal(entry.Found + (entry.Line is null ? "" : "\n@ " + entry.Line), string.Join('\n', compilation.Findings.Select(f => Said(compilation, f, first, last, entry))));
        Assert.Contains(entry.Message ?? "", compilation.Findings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void There_are_many_of_many_kinds_in_both_crafts()
    {
        Assert.True(CatalogueEntry.All.Count >= 110);
        Assert.True(CatalogueEntry.All.Select(e => e.Found.Split(' ')[0]).Distinct(StringComparer.Ordinal).Count() >= 50);
        Assert.Equal(CatalogueEntry.All.Count, CatalogueEntry.All.Select(e => e.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.All(["craft: knitting", "craft: crochet"], craft => Assert.True(CatalogueEntry.All.Count(e => Read(e.Base).Contains(craft, StringComparison.Ordinal)) >= 30));
    }

    // As the catalogue writes it, so that what was found can be taken over where it is right.
    private static string Said(Compilation compilation, Finding finding, int first, int last, CatalogueEntry entry)
    {
        var (line, _) = finding.Source.Lines.PositionOf(finding.Span.Start);
        var marked = finding.Source.ToString(finding.Span).Split('\n')[0].TrimEnd('\r');
        var sizes = finding.Sizes is { IsEmpty: false } some ? string.Join(", ", some.Select(s => compilation.Pattern.Facts.Sizes.Names[s])) : "all";
        var said = $"{finding.Rule.Code} {sizes}: {(marked.Length > MostMarked + 1 ? marked[..MostMarked] + "…" : marked)}";
        if (line >= first && line <= last && entry.Line is null)
        {
            return said;
        }

        var words = finding.Source.ToString(finding.Source.Lines.SpanOf(line, finding.Source.Text)).Trim();
        return $"{said}\n@ {(entry.Line is { } begins && words.StartsWith(begins, StringComparison.Ordinal) ? begins : words)}";
    }

    private static string Read(string name) =>
        File.ReadAllText(RepositoryRoot.Path([.. (name + ".pattern.md").Split('/')])).ReplaceLineEndings("\n");

    private static Compilation Compile(string name, string text) => Compiler.Compile(new SourceText(name + ".pattern.md", text));

    /// <summary>The pattern with its mistake, and the first and the last line of the last change, from 1.</summary>
    private static (string Text, int First, int Last) Planted(CatalogueEntry entry)
    {
        var (text, first, last) = (Read(entry.Base), 0, 0);
        Assert.NotEmpty(entry.Edits);
        foreach (var edit in entry.Edits)
        {
            var places = new List<int>();
            for (var at = text.IndexOf(edit.Old, StringComparison.Ordinal); at >= 0; at = text.IndexOf(edit.Old, at + 1, StringComparison.Ordinal))
            {
                places.Add(at);
            }

            Assert.True(edit.Which is { } which ? which <= places.Count : places.Count == 1, $"`{edit.Old}` stands {places.Count} times in {entry.Base}");
            var start = places[(edit.Which ?? 1) - 1];
            text = text[..start] + edit.New + text[(start + edit.Old.Length)..];
            first = 1 + text[..start].Count(c => c == '\n');
            last = first + edit.New.Count(c => c == '\n');
        }

        return (text, first, last);
    }
}
