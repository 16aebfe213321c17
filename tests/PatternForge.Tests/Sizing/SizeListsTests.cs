using PatternForge.Core.Model;
using PatternForge.Core.Sizing;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Sizing;

public class SizeListsTests
{
    [Theory]
    [InlineData("CO 80 (88, 96) sts.", "80|88|96")]
    [InlineData("CO 64[67, 69] sts.", "64|67|69")]
    [InlineData("CO 60/66/72 sts.", "60|66|72")]
    [InlineData("CO 60-66-72 sts.", "60|66|72")]
    [InlineData("CO 80 (88) [96] sts.", "80|88|96")]
    [InlineData("Row 1: K2 (3, 4), p1.", "2|3|4")]
    [InlineData("Row 1: K- (3, 4), p1.", "-|3|4")]
    [InlineData("Dec every 4th (6th, 8th) row.", "4th|6th|8th")]
    [InlineData("Work 6 1/2 (7, 7 1/2) in.", "6 1/2|7|7 1/2")]
    [InlineData("It weighs 5½ (6, 6½) oz.", "5½|6|6½")]
    public void A_list_of_the_body_is_found_with_the_place_of_each_value(string line, string values)
    {
        Assert.Equal(values, Values(Assert.Single(Of("", line).Lists, l => l.Kind == SizeListKind.Body), "", line));
    }

    [Theory]
    [InlineData("Row 1: K2, p2 (RS).")]
    [InlineData("Rows 1 (3) are knit.")]
    [InlineData("Use 4 mm (US 6) needles, made 2025-03-14.")]
    [InlineData("Row 1: Ch 3 (counts as dc), dc in next 2 sts. (3 dc)")]
    [InlineData("Row 1: (K1, p1) 3 times.")]
    public void What_is_no_list_by_size_is_left(string line)
    {
        Assert.DoesNotContain(Of("", line).Lists, l => l.Kind == SizeListKind.Body);
    }

    [Theory]
    [InlineData("numbers: {a: 80 (88, 96)}", "80|88|96")]
    [InlineData("numbers: {a: [80, 88, 96]}", "80|88|96")]
    [InlineData("numbers:\n  a:\n    - 80\n    - 88\n    - 96", "80|88|96")]
    [InlineData("numbers:\n  a: {S: 80, M: 88, L: 96}", "80|88|96")]
    [InlineData("numbers:\n  a:\n    S: 80\n    M: 88\n    L: 96", "80|88|96")]
    [InlineData("finished: {bust: 91 (102, 112) cm}", "91|102|112")]
    [InlineData("finished: {bust: 91 cm (102 cm, 112 cm)}", "91|102|112")]
    [InlineData("finished:\n  bust: 54-58 (60-64, 66-70) cm", "54-58|60-64|66-70")]
    [InlineData("notions:\n  - 5 (5, 6) buttons", "5|5|6")]
    public void A_list_of_the_header_is_found_in_every_form(string header, string values)
    {
        Assert.Equal(values, Values(Assert.Single(Of(header, "").Lists, l => l.Kind == SizeListKind.Header), header, ""));
    }

    [Fact]
    public void A_formula_is_no_list() => Assert.DoesNotContain(Of("numbers: {a: \"= max(80, 88, 96)\"}", "").Lists, l => l.Kind == SizeListKind.Header);

    [Fact]
    public void Both_systems_of_one_measurement_are_lists() =>
        Assert.Equal(["cm", "in"], Of("finished: {bust: 38 (40, 42) cm / 15 (15¾, 16½) in}", "").Lists.Where(l => l.Kind == SizeListKind.Header).Select(l => l.Measure));

    [Fact]
    public void A_row_for_some_sizes_has_its_own_lists()
    {
        const string Line = "Sizes S and M only: Row 5: K2tog, k to end. 78 (86) sts.";
        var found = Of("", Line);
        var list = Assert.Single(found.Lists, l => l.Kind == SizeListKind.Body);
        Assert.Equal("78|86", Values(list, "", Line));
        Assert.Equal("0 1", string.Join(' ', list.Values.Select(v => v.Size)));
        Assert.Equal("0 1", string.Join(' ', Assert.Single(found.Named, n => !n.Row.IsEmpty).Sizes));
    }

    [Fact]
    public void Sizes_named_in_prose_are_found()
    {
        var named = Assert.Single(Of("", "For size L, work one more repeat than for the others.").Named);
        Assert.Equal("L", string.Join(' ', named.Names));
        Assert.DoesNotContain(Of("", "With MC, make an L of cord.").Named, n => n.Path.Length == 0);
    }

    private static string Source(string header, string body) => $"---\ntitle: Vest\nsizes: S (M, L)\n{header}\n---\n\n## Back\n\n{body}\n";

    private static SizeLists Of(string header, string body) => SizeLists.Find(new SourceText("x.pattern.md", Source(header, body)), new SizeSet(["S", "M", "L"]));

    private static string Values(SizeList list, string header, string body) => string.Join('|', list.Values.Select(v => Source(header, body).Substring(v.Span.Start, v.Span.Length)));
}
