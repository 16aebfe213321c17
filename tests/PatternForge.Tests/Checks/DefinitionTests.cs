using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

/// <summary>Words that a pattern has to explain, and where it may do so.</summary>
public class DefinitionTests
{
    [Theory]
    [InlineData("shell", "shell in next st")]
    [InlineData("cluster", "cluster in next st")]
    [InlineData("bobble", "bobble in next st")]
    [InlineData("popcorn", "popcorn in next st")]
    [InlineData("puff", "puff st in next st")]
    [InlineData("fan", "fan in next st")]
    [InlineData("picot", "picot")]
    [InlineData("V-st", "V-st in next st")]
    [InlineData("MB", "MB in next st")]
    public void A_stitch_without_a_standard_form_is_asked_for_once(string word, string use)
    {
        var found = Compile(Crochet("", use)).Findings.Where(f => f.Rule.Code is "PF506" or "PF208").ToArray();
        Assert.Equal(["PF506"], found.Select(f => f.Rule.Code));
        Assert.Equal(word, found[0].Source.ToString(found[0].Span));
    }

    [Theory]
    [InlineData("stitches:\n  shell: 5 dc in one st\n", "shell in next st", "")]
    [InlineData("stitches:\n  small shell: 5 dc in one st\n", "small shell in next st", "")]
    [InlineData("abbreviations:\n  - shell = 5 double crochet in one stitch\n", "shell in next st", "")]
    [InlineData("notes: For a shell, work 5 dc in one st.\n", "shell in next st", "")]
    [InlineData("", "shell (5 dc in same st) in next st", "")]
    [InlineData("", "(2 dc, ch 1, 2 dc) in next st (shell)", "")]
    [InlineData("", "5 dc in next st: shell made", "")]
    [InlineData("", "5-dc popcorn in next st", "")]
    [InlineData("", "3-dc cluster in next st", "")]
    [InlineData("", "shell in next st", "## Special stitches\n\n**Shell:** five stitches into the same one.\n\n")]
    [InlineData("", "shell in next st", "## Special stitches\n\nA shell is worked as five stitches into one.\n\n")]
    [InlineData("", "V-st in next st", "## Stitches\n\nV-st = dc, ch 1, dc in the same st\n\n")]
    [InlineData("", "work in shell pattern to end", "")]
    [InlineData("", "*sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * across. (2 shells, 3 sc)", "")]
    [InlineData("", "5 dc in next st. Row 3: Ch 1, turn, sc in center dc of next shell", "")]
    [InlineData("", "shell of 5 dc in next st", "")]
    [InlineData("", "dc2tog in next 2 sts (beg cluster)", "")]
    [InlineData("", "sc in each st across", "## About\n\nA mat with a shell on it for a fan of the sea.\n\n")]
    public void One_that_is_explained_anywhere_is_not(string header, string use, string before) =>
        Assert.DoesNotContain(Compile(Crochet(header, use).Replace("## Piece", before + "## Piece", StringComparison.Ordinal)).Findings, f => f.Rule.Code == "PF506");

    [Fact]
    public void A_long_name_alone_explains_nothing() =>
        Assert.Contains(Compile(Crochet("abbreviations:\n  - MB = make bobble\n", "MB in next st")).Findings, f => f.Rule.Code == "PF506");

    [Fact]
    public void Rows_without_a_header_are_not_asked() => Assert.DoesNotContain(Compile("Row 1: Shell in next st.\n").Findings, f => f.Rule.Code is "PF506" or "PF507");

    [Theory]
    [InlineData("## Mesh and shells\n\nThree meshes carry one shell: there are six across.\n\n", true)]
    [InlineData("## Shell\n\nFive stitches in one.\n\n", false)]
    [InlineData("## About\n\nCount the shells. They are quicker to count than dc.\n\n", true)]
    public void A_word_beside_others_explains_nothing(string before, bool isAsked) =>
        Assert.Equal(isAsked, Compile(Crochet("", "shell in next st").Replace("## Piece", before + "## Piece", StringComparison.Ordinal)).Findings.Any(f => f.Rule.Code == "PF506"));

    [Fact]
    public void Rows_under_a_title_alone_are_a_sheet_and_no_pattern() =>
        Assert.DoesNotContain(Compile(Crochet("", "shell in next st").Replace("tools: 4 mm hook\n", "", StringComparison.Ordinal)).Findings, f => f.Rule.Code == "PF506");

    [Theory]
    [InlineData("us", "K6, M1, k6", "M1")]
    [InlineData("us", "K6, inc, k5", "inc")]
    [InlineData("us", "K6, k1b, k5", "k1b")]
    [InlineData("uk", "K6, M1, k6", "M1")]
    public void An_abbreviation_of_two_meanings_is_noted_with_both(string terms, string row, string word)
    {
        var found = Assert.Single(Compile(Knitting(terms, "", row)).Findings, f => f.Rule.Code == "PF507");
        Assert.StartsWith(word, found.Source.ToString(found.Span), StringComparison.OrdinalIgnoreCase);
        Assert.Contains(" to some and ", found.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("us", "abbreviations: [CO, k, st, M1 = make 1 by lifting the bar]\n", "K6, M1, k6")]
    [InlineData("us", "notes: For M1, lift the bar and knit it through the back loop.\n", "K6, M1, k6")]
    [InlineData("us", "", "K6, M1L, k6. 1 st inc'd")]
    [InlineData("us", "", "K6, kfb, k5")]
    [InlineData("uk", "", "K6, yfwd, k6")]
    [InlineData("us", "", "K6, yo, k6")]
    public void One_that_is_explained_or_that_lists_agree_on_is_not(string terms, string header, string row) =>
        Assert.DoesNotContain(Compile(Knitting(terms, header, row)).Findings, f => f.Rule.Code == "PF507");

    [Theory]
    [InlineData("p", "knit")]
    [InlineData("k", "purl")]
    [InlineData("yo", "knit into the front and the back of the next stitch")]
    [InlineData("k2tog", "knit into front and back of stitch")]
    [InlineData("ssk", "knit 2 stitches together")]
    [InlineData("kfb", "yarn over")]
    public void A_meaning_that_is_certainly_another_stitchs_is_told(string name, string meaning) =>
        Assert.Contains(Compile(Meaning(name, meaning)).Findings, f => f.Rule.Code == "PF504");

    [Theory]
    [InlineData("k", "knit")]
    [InlineData("k", "knit stitch")]
    [InlineData("p", "purl (knit from the back)")]
    [InlineData("yo", "yarn over the needle")]
    [InlineData("yo", "yarn over, which makes a stitch")]
    [InlineData("yo", "bring yarn over needle to make one")]
    [InlineData("k2tog", "knit two stitches together as one")]
    [InlineData("ssk", "slip, slip, knit the two together")]
    [InlineData("ssk", "left-leaning decrease")]
    [InlineData("kfb", "increase in one stitch")]
    [InlineData("skp", "slip 1, knit 1, pass slipped stitch over")]
    [InlineData("sl", "slip")]
    [InlineData("m1", "knit front and back")]
    [InlineData("inc", "make 1")]
    [InlineData("k1b", "knit 1 below")]
    [InlineData("cdd", "double decrease")]
    public void Free_wording_is_not(string name, string meaning) =>
        Assert.DoesNotContain(Compile(Meaning(name, meaning)).Findings, f => f.Rule.Code == "PF504");

    [Theory]
    [InlineData("sc", "double crochet")]
    [InlineData("dc", "half double crochet")]
    public void So_it_is_in_crochet(string name, string meaning) =>
        Assert.Contains(Compile($"---\ntitle: Mat\ncraft: crochet\nterms: us\nabbreviations:\n  - {name} = {meaning}\n---\n\n## Mat\n\nRnd 1: 6 {name} in ring.\n").Findings, f => f.Rule.Code is "PF504" or "PF505");

    private static string Meaning(string name, string meaning) => $"---\ntitle: Piece\nterms: us\nabbreviations:\n  - {name} = {meaning}\n---\n\n## Piece\n\nCO 24 sts.\n\nRow 1: Knit.\n";

    private static string Knitting(string terms, string header, string row) => $"---\ntitle: Piece\nterms: {terms}\ntools: 4 mm needles\n{header}---\n\n## Piece\n\nCO 12 sts.\n\nRow 1: {row}.\n";

    private static string Crochet(string header, string use) => $"---\ntitle: Piece\ncraft: crochet\nterms: us\ntools: 4 mm hook\n{header}---\n\n## Piece\n\nCh 20.\n\nRow 1: Sc in 2nd ch from hook and in each ch across.\n\nRow 2: Ch 1, turn, sc in next 3 sts, {use}.\n";

    private static Compilation Compile(string text) => Compiler.Compile(new SourceText("made.pattern.md", text));
}
