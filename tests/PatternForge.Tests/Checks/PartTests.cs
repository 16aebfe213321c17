using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

/// <summary>Which parts of a released pattern are asked for, and of which pieces.</summary>
public class PartTests
{
    private static string Missing(string header, string body = "")
    {
        var found = Compiler.Compile(new SourceText("x", $"---\n{header}\n---\n{body}")).Findings.Where(f => f.Rule.Code == "PF805").ToArray();
        return found.Length == 0 ? "" : found.Single().Message;
    }

    private static string Codes(string header, string body, params string[] of) =>
        string.Join(' ', Compiler.Compile(new SourceText("x", $"---\n{header}\n---\n{body}")).Findings.Select(f => f.Rule.Code).Where(c => of.Contains(c, StringComparer.Ordinal)));

    [Fact]
    public void A_bare_title_is_told_all_parts_in_groups() => Assert.Equal(
        "not said yet: to decide by: designer, summary, level, techniques, photos; to gather: notions; to prepare: construction; to make: videos; to finish and use: blocking, finishing, care, styling; "
        + "around it: version, corrections, terms-of-use, contact, thanks, commissions, designs",
        Missing("title: x"));

    [Theory]
    [InlineData("fits", "sizes:\n  names: S (M)\n  finished: {bust: 91 (102) cm}", true)]
    [InlineData("fits", "sizes:\n  names: S (M)\n  finished: {width: 91 (102) cm}", false)]
    [InlineData("ease", "sizes:\n  names: S (M)\n  fits: {bust: 91 (102) cm}", true)]
    [InlineData("ease", "sizes:\n  names: S (M)\n  fits: {bust: 91 (102) cm}\nshown: {size: M, ease: 5 cm}", false)]
    [InlineData("ease", "sizes: one size", false)]
    [InlineData("ease", "sizes:\n  names: S (M)\n  fits: {bust: 91 (102) cm}\n  ease: 5 cm", false)]
    [InlineData("lengthening", "sizes:\n  names: S (M)\n  fits: {bust: 91 (102) cm}", true)]
    [InlineData("lengthening", "sizes:\n  names: S (M)\n  finished: {width: 91 (102) cm}", false)]
    [InlineData("schematic", "sizes:\n  names: S (M)\n  fits: {bust: 91 (102) cm}", true)]
    [InlineData("schematic", "sizes:\n  names: S (M)\n  fits: {head: 51 (52) cm}", false)]
    [InlineData("shown", "sizes: S (M)\nphotos: [front.jpg]", true)]
    [InlineData("shown", "sizes: S (M)\nphotos: [front.jpg]\nshown: M", false)]
    [InlineData("shown", "sizes: S (M)\nphotos: [front.jpg]\nsample: {size: M}", false)]
    [InlineData("shown", "sizes: one size\nphotos: [front.jpg]", false)]
    [InlineData("shown", "sizes: S (M)", false)]
    [InlineData("blocking", "gauge: 20 sts = 10 cm in rib on 4 mm, unblocked", false)]
    [InlineData("blocking", "summary: a toy", false)]
    [InlineData("care", "care: hand wash", false)]
    [InlineData("techniques", "techniques: [cables]", false)]
    public void What_makes_no_sense_for_a_piece_is_not_asked(string part, string header, bool isAsked) =>
        Assert.Equal(isAsked, Missing("title: x\n" + header).Split([' ', ',', ';', ':'], StringSplitOptions.RemoveEmptyEntries).Contains(part, StringComparer.Ordinal));

    [Theory]
    [InlineData("## About\n\nA hat.\n", "PF804")]
    [InlineData("## Hat\n\nCO 12 sts.\n", "")]
    [InlineData("", "")]
    [InlineData("## Hat\n\n```chart\nx\n```\n", "")]
    public void A_body_without_rows_is_told(string body, string code) => Assert.Equal(code, Codes("title: x", body, "PF804"));

    [Theory]
    [InlineData("shown: {size: XL}", "PF613")]
    [InlineData("shown: {size: m}", "")]
    [InlineData("shown: size M", "")]
    [InlineData("shown: {sise: M}", "PF120")]
    [InlineData("shown: [M]", "PF121")]
    public void The_size_shown_is_one_of_the_sizes(string shown, string code) => Assert.Equal(code, Codes("title: x\nsizes: S (M)\n" + shown, "", "PF613", "PF120", "PF121"));

    [Theory]
    [InlineData("audience: babies\nnotions: [2 buttons]", "", "PF850")]
    [InlineData("audience: babies\nnotions: [2 buttons]\nomit: [cautions]", "", "PF851")]
    [InlineData("audience: babies\nnotions: [2 buttons]\nomit: [cautions]", "## Safety\n\nSew them on well.\n", "")]
    [InlineData("audience: babies\nnotions: [2 buttons]", "## Safety\n\nSew them on well.\n", "")]
    [InlineData("audience: women\nnotions: [2 buttons]", "", "")]
    [InlineData("audience: youths\nnotions: [2 buttons]", "", "")]
    [InlineData("audience: youths\nnotions: [1 m of ribbon]", "", "PF850")]
    [InlineData("audience: babies\nnotions: [tapestry needle]", "## Cord\n\nCO 3 sts.\n\nWork i-cord for 20 cm.\n", "PF850")]
    [InlineData("title: A toy\nnotions: [safety eyes]", "", "PF850")]
    [InlineData("title: A toy\nnotions: [no buttons]", "", "")]
    [InlineData("title: Potholder\nyarn: {name: Quayside, fibre: acrylic}", "", "PF852")]
    [InlineData("title: Potholder\nyarn: {name: Quayside, fibre: cotton}", "", "")]
    [InlineData("title: Tea cosy\nyarn: {name: Quayside, fibre: acrylic}", "", "")]
    public void Cautions_are_told_where_something_can_hurt(string header, string body, string code) =>
        Assert.Equal(code, Codes((header.StartsWith("title", StringComparison.Ordinal) ? "" : "title: x\n") + header, body, "PF850", "PF851", "PF852"));
}
