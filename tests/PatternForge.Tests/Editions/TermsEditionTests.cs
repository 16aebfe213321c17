using PatternForge.Core.Editions;

namespace PatternForge.Tests.Editions;

public class TermsEditionTests
{
    // Published tables of American and British crochet terms; common practice where two have the same.
    [Theory]
    [InlineData("Row 2: Ch 1, turn, sc in next 2 sts, hdc in next st, dc in last 3 sts.", "Row 2: Ch 1, turn, dc in next 2 sts, htr in next st, tr in last 3 sts.")]
    [InlineData("Row 2: Ch 1, turn, Sc2tog, FPdc around next st, sk 1 st, dtr in last 2 sts.", "Row 2: Ch 1, turn, Dc2tog, FPtr around next st, miss 1 st, trtr in last 2 sts.")]
    [InlineData("Row 2: Ch 1, turn, single crochet in next 2 sts, half double crochet in next st, treble crochet in last 3 sts.", "Row 2: Ch 1, turn, double crochet in next 2 sts, half treble in next st, double treble in last 3 sts.")]
    [InlineData("Row 2: Ch 1, turn, BLsc in next 3 sts, sc-blo in last 3 sts.", "Row 2: Ch 1, turn, BLdc in next 3 sts, dc-blo in last 3 sts.")]
    public void Crochet_is_said_in_British_terms(string us, string uk)
    {
        var (american, british) = (Crochet("us", us), Crochet("uk", uk));
        Assert.Equal(british, EditionsOf.Text(american, "uk"));
        Assert.Equal(american.Replace("sk 1", "skip 1", StringComparison.Ordinal), EditionsOf.Text(british, "us"));
    }

    // Published tables of American and British knitting terms.
    [Theory]
    [InlineData("Bind off all sts.", "Cast off all sts.")]
    [InlineData("BO 4 sts, k to end.", "Cast off 4 sts, k to end.")]
    [InlineData("Work in stockinette stitch for 6 rows.", "Work in stocking stitch for 6 rows.")]
    [InlineData("Work in seed st for 6 rows.", "Work in moss st for 6 rows.")]
    [InlineData("Work even for 6 rows.", "Work straight for 6 rows.")]
    [InlineData("Row 2: K1 with the contrasting color, k to end.", "Row 2: K1 with the contrasting colour, k to end.")]
    public void Knitting_is_said_in_British_terms(string us, string uk) => Assert.Equal(Knitting("uk", uk), EditionsOf.Text(Knitting("us", us), "uk"));

    [Theory]
    [InlineData("Row 2: K1, yfwd, k2tog, yrn, p2tog, k to end.", "Row 2: K1, yo, k2tog, yo, p2tog, k to end.")]
    [InlineData("Row 2: K1, yf, sl 1, yb, k to end.", "Row 2: K1, ytf, sl 1, yb, k to end.")]
    [InlineData("Row 2: K1, yf, k2tog, k to end.", "Row 2: K1, yo, k2tog, k to end.")]
    [InlineData("Work in moss st for 6 rows.", "Work in seed st for 6 rows.")]
    [InlineData("Work in double moss stitch for 6 rows.", "Work in moss stitch for 6 rows.")]
    public void Knitting_is_said_in_American_terms(string uk, string us) => Assert.Equal(Knitting("us", us), EditionsOf.Text(Knitting("uk", uk), "us"));

    [Theory]
    [InlineData("Work the edge in single and double crochet.", "Work the edge in double crochet and treble.")]
    [InlineData("An sc is shorter than a dc; see https://example.com/sc and `dc`.", "A dc is shorter than a tr; see https://example.com/sc and `dc`.")]
    [InlineData("The [dc video](https://example.com/dc.html) shows the dc.", "The [tr video](https://example.com/dc.html) shows the tr.")]
    [InlineData("DC is where the designer lives. Check your gauge; a needle gauge helps.", "DC is where the designer lives. Check your tension; a needle gauge helps.")]
    [InlineData("Use a US 7 hook for the dc.", "Use a 4.5 mm (UK 7) hook for the tr.")]
    [InlineData("Shown in Gray Seal, a gray yarn.", "Shown in Gray Seal, a grey yarn.")]
    public void Prose_is_changed_where_its_words_have_one_meaning(string us, string uk)
    {
        var text = EditionsOf.Text(Crochet("us", "Row 2: Ch 1, turn, sc in each st across.").Replace("## Piece", $"## About\n\n{us}\n\n## Piece", StringComparison.Ordinal), "uk");
        Assert.Contains(uk, text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sentence_about_the_terms_themselves_is_left_and_told()
    {
        const string Sentence = "In this pattern dc is the British tr.";
        var plain = EditionsOf.Compile(Crochet("us", "Row 2: Ch 1, turn, sc in each st across.").Replace("## Piece", $"## About\n\n{Sentence} Then dc again.\n\n## Piece", StringComparison.Ordinal));
        var made = EditionsOf.In(plain, "uk");
        Assert.Contains(Sentence + " Then tr again.", made.Source.Text.Text, StringComparison.Ordinal);
        Assert.Equal(["PF409"], made.Findings.Select(f => f.Rule.Code));
    }

    [Fact]
    public void Words_of_two_meanings_are_left_where_the_terms_are_not_declared()
    {
        var text = Knitting("us", "Work in moss st for 6 rows.").Replace("terms: us\n", "", StringComparison.Ordinal);
        Assert.Contains("Work in moss st", EditionsOf.Text(text, "uk"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_headers_own_words_are_said_in_the_other_terms_and_names_are_not()
    {
        const string Header = "---\ntitle: Single Crochet Mat\ncraft: crochet\nterms: us\nsummary: A mat in single crochet.\ngauge: 14 sc and 16 rows = 10 cm in single crochet on 5 mm, blocked\n"
            + "yarn:\n  - name: Bulky Gray\n    weight: bulky\n    colours: [Gray]\n    alternatives:\n      - name: Any Color\n        note: a gray bulky yarn\nstitches:\n  v-st: (dc, ch 1, dc) in next st\nabbreviations:\n  - sc = single crochet\n  - dc = double crochet\n---\n\n## Mat\n\nRnd 1: 6 sc in magic ring. (6 sc)\n";
        const string British = "---\ntitle: Single Crochet Mat\ncraft: crochet\nterms: uk\nsummary: A mat in double crochet.\ngauge: 14 dc and 16 rows = 10 cm in double crochet on 5 mm, blocked\n"
            + "yarn:\n  - name: Bulky Gray\n    weight: chunky\n    colours: [Gray]\n    alternatives:\n      - name: Any Color\n        note: a grey chunky yarn\nstitches:\n  v-st: (tr, ch 1, tr) in next st\nabbreviations:\n  - dc = double crochet\n  - tr = treble\n---\n\n## Mat\n\nRnd 1: 6 dc in magic ring. (6 dc)\n";
        Assert.Equal(British, EditionsOf.Text(Header, "uk"));
    }

    [Fact]
    public void Crochet_without_terms_has_no_edition_in_either()
    {
        var made = EditionsOf.In(EditionsOf.Compile("---\ntitle: Ring\ncraft: crochet\n---\n\n## Ring\n\nRnd 1: 12 dc in ring.\n"), "uk");
        Assert.Null(made.Compilation);
        Assert.Equal([EditionRules.NotPossible], made.Findings.Select(f => f.Rule));
    }

    [Theory]
    [InlineData("examples/net-loft-scarf.pattern.md", "uk")]
    [InlineData("examples/porthole-blanket.pattern.md", "us")]
    [InlineData("examples/net-loft-scarf.pattern.md", "spelled-out")]
    [InlineData("examples/ostrey-light-hat.pattern.md", "spelled-out")]
    public void A_whole_example_reads_as_its_makers_would_write_it(string file, string edition) =>
        Golden.Match(EditionsOf.Text(File.ReadAllText(RepositoryRoot.Path(file.Split('/'))), edition), $"editions/{Path.GetFileName(file).Replace(".pattern.md", "", StringComparison.Ordinal)}.{edition}.pattern.md");

    private static string Crochet(string terms, string row) => $"---\ntitle: Harbour piece\ncraft: crochet\nterms: {terms}\n---\n\n## Piece\n\nBegin with 6 sts.\n\n{row}\n";

    private static string Knitting(string terms, string row) => $"---\ntitle: Harbour piece\ncraft: knitting\nterms: {terms}\n---\n\n## Piece\n\nCast on 24 sts.\n\nRow 1: Knit.\n\n{row}\n";
}
