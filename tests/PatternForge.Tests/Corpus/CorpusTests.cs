using PatternForge.Core.Findings;

namespace PatternForge.Tests.Corpus;

public class CorpusTests
{
    public static TheoryData<string> Clean => [.. PatternFiles.In("tests", "corpus", "clean")];

    public static TheoryData<string> Faulty => [.. PatternFiles.In("tests", "corpus", "faulty")];

    [Theory]
    [MemberData(nameof(Clean))]
    public void Correct_rows_give_no_error_and_no_warning(string name)
    {
        var compilation = PatternFiles.Compile("tests", "corpus", "clean", name);

        Assert.Empty(compilation.Findings.Where(f => f.Severity != Severity.Note).Select(f => $"{f.Rule.Code} line {f.Source.Lines.PositionOf(f.Span.Start).Line}: {f.Message}"));
    }

    [Theory]
    [MemberData(nameof(Clean))]
    public void Correct_rows_are_all_checked(string name)
    {
        Assert.Equal("", PatternFiles.NotChecked(PatternFiles.Compile("tests", "corpus", "clean", name)));
    }

    [Theory]
    [MemberData(nameof(Faulty))]
    public void A_draft_with_a_mistake_gets_the_finding_that_stands_beside_it(string name)
    {
        var told = PatternFiles.Tell(PatternFiles.Compile("tests", "corpus", "faulty", name));

        Assert.NotEqual("", told);
        Golden.MatchBeside(told, RepositoryRoot.Path("tests", "corpus", "faulty", name.Replace(".pattern.md", ".expected.txt", StringComparison.Ordinal)));
    }
}
