using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Syntax;

public class FileSplitterTests
{
    private static (string? Header, string Body, FindingBag Bag) Split(string file)
    {
        var source = new SourceText("x.pattern.md", file);
        var bag = new FindingBag(source);
        var split = FileSplitter.Split(source, bag);
        return (split.Header is { } header ? source.ToString(header) : null, source.ToString(split.Body), bag);
    }

    [Theory]
    [InlineData("---\na: b\n---\nbody", "a: b\n", "body")]
    [InlineData("---\r\na: b\r\n---\r\nbody", "a: b\r\n", "body")]
    [InlineData("\uFEFF---\na: b\n---\nbody", "a: b\n", "body")]
    [InlineData("\n  \n---\na: b\n--- \nbody", "a: b\n", "body")]
    [InlineData("---\n---\nbody", "", "body")]
    [InlineData("---\na: b\n---", "a: b\n", "")]
    [InlineData("---\ra: b\r---\rbody", "a: b\r", "body")]
    [InlineData("---\na: b\n----\nbody\n---\n", "a: b\n", "body\n---\n")]
    public void The_header_stands_between_two_lines_at_the_top(string file, string header, string body)
    {
        var split = Split(file);
        Assert.Equal((header, body, 0), (split.Header, split.Body, split.Bag.Count));
    }

    [Theory]
    [InlineData("## Brim\nCO 12 sts.", "## Brim")]
    [InlineData("\n\n  CO 12 sts.  \n---\n", "CO 12 sts.")]
    [InlineData("", "")]
    [InlineData("--\na: b", "--")]
    public void A_file_without_a_header_is_all_body(string file, string place)
    {
        var split = Split(file);
        var finding = Assert.Single(split.Bag.ToSorted());
        Assert.Equal(("PF101", place, (string?)null, file), (finding.Rule.Code, finding.Source.ToString(finding.Span), split.Header, split.Body));
    }

    [Theory]
    [InlineData("---\na: b\n\n## Brim\nCO 12 sts.", "a: b\n\n", "## Brim\nCO 12 sts.")]
    [InlineData("---\na: b\n# Brim\nc: d\n\n# Brim\nCO 12 sts.", "a: b\n# Brim\nc: d\n\n", "# Brim\nCO 12 sts.")]
    [InlineData("---\na: b\n\nCast on 12 sts.\n", "a: b\n\n", "Cast on 12 sts.\n")]
    [InlineData("---\na: b\n\nc:\n  - d", "a: b\n\nc:\n  - d", "")]
    [InlineData("---", "", "")]
    public void A_header_without_a_closing_line_ends_where_the_body_seems_to_begin(string file, string header, string body)
    {
        var split = Split(file);
        var finding = Assert.Single(split.Bag.ToSorted());
        Assert.Equal(("PF102", "---"), (finding.Rule.Code, finding.Source.ToString(finding.Span)));
        Assert.Equal((header, body), (split.Header, split.Body));
    }

    [Fact]
    public void The_repair_of_an_open_header_closes_it()
    {
        var file = "---\na: b\n\n## Brim";
        var edit = Assert.Single(Split(file).Bag.ToSorted()[0].Fix!.Edits);
        var mended = file[..edit.Span.Start] + edit.NewText + file[edit.Span.End..];
        Assert.Equal(("a: b\n\n", "## Brim", 0), (Split(mended).Header, Split(mended).Body, Split(mended).Bag.Count));
    }
}
