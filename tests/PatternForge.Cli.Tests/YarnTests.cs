using System.Text.Json;

namespace PatternForge.Cli.Tests;

public class YarnTests
{
    private const string Pattern =
        """
        ---
        title: Harbour scarf
        sizes: Short (Long)
        yarn:
          name: Quayside Wool
          put-up: 100 g = 200 m
          needs: estimated
          alternatives: [{name: Brackwater Plain, put-up: 50 g = 80 m}]
        sample: {size: Short, used: 51 g}
        ---
        ## Scarf
        Cast on 40 sts.

        Row 1: Knit.

        Rep Row 1 99 (199) times more.

        Bind off all sts.
        """;

    [Fact]
    public void The_yarn_of_every_size_is_told_with_its_method_and_its_error()
    {
        Assert.Equal(
            """
            Quayside Wool
                                                      Short  Long
              stitches                                 4080  8080
              by stitches, g                             51   101
              by stitches, m                            102   202
              with 10 % more, g                          57   112
              with 10 % more, m                         113   223
              balls of 100 g = 200 m                      1     2
              Brackwater Plain, g                        71   139
              Brackwater Plain, balls of 50 g = 80 m      2     3
              from what the sample of size Short took (51 g), by the stitches of each size; likely error 5 %

            not by area: Scarf cannot be measured: the header has no gauge

            """,
            Counts("--yarn").Out,
            ignoreLineEndingDifferences: true);
    }

    [Fact]
    public void The_counts_as_json_tell_the_shares_of_the_yarns_and_what_they_come_to()
    {
        const string Stripes = "---\ntitle: Harbour scarf\nsizes: Short (Long)\nyarn:\n  - {label: A, name: Quayside Wool, put-up: 50 g = 120 m, needs: 80 (170) m}\n  - {label: B, name: Quayside Wool, put-up: 50 g = 120 m, needs: 100 (180) m}\n---\n\n## Scarf\n\nWith A, CO 40 (44) sts.\n\nRow 1: With A, knit.\n\nRow 2: With B, knit.\n\nRow 3: Knit.\n";
        using var folder = new TemporaryFolder();
        using var all = JsonDocument.Parse(Outcome.WithInput(folder, Stripes, ["counts", "-", "--format", "json"]).Out);
        var shares = all.RootElement.GetProperty("shares")[0];

        Assert.Equal("""{"part":"Scarf","yarns":["A","B"],"stitches":[[40,80],[44,88]],"shares":[[0.3333,0.6667],[0.3333,0.6667]],"metres":[[60.0,120.0],[116.7,233.3]],"grams":[[25.0,50.0],[48.6,97.2]]}""", shares.GetRawText());
        using var one = JsonDocument.Parse(Outcome.WithInput(folder, Stripes, ["counts", "-", "--format", "json", "--size", "Long"]).Out);
        Assert.Equal("[[44,88]]", one.RootElement.GetProperty("shares")[0].GetProperty("stitches").GetRawText());
    }

    [Fact]
    public void Yarn_json_has_the_promised_keys()
    {
        using var told = JsonDocument.Parse(Counts("--yarn", "--format", "json", "--size", "Long").Out);
        Assert.Equal(["version", "path", "sizes", "margin", "areas", "yarns"], told.RootElement.EnumerateObject().Select(p => p.Name));
        var yarn = told.RootElement.GetProperty("yarns")[0];
        Assert.Equal(["name", "label", "basis", "method", "likelyError", "reason", "sizes"], yarn.EnumerateObject().Select(p => p.Name));
        Assert.Equal("sample", yarn.GetProperty("basis").GetString());
        var size = Assert.Single(yarn.GetProperty("sizes").EnumerateArray());
        Assert.Equal(["stitches", "weighted", "grams", "metres", "gramsByArea", "metresByArea", "gramsWithMargin", "metresWithMargin", "balls", "alternatives"], size.EnumerateObject().Select(p => p.Name));
        Assert.Equal(101m, size.GetProperty("grams").GetDecimal());
        Assert.Equal(2, size.GetProperty("balls").GetInt32());
    }

    [Theory]
    [InlineData("--format", "csv")]
    [InlineData("--numbers", "--size", "Long")]
    public void What_cannot_be_told_together_is_refused(params string[] more) => Assert.Equal(2, Counts(["--yarn", .. more]).Code);

    private static Outcome Counts(params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        return Outcome.WithInput(folder, Pattern, ["counts", "-", .. arguments]);
    }
}
