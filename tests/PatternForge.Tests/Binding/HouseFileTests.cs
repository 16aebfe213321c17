using System.Reflection;
using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Stitches;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Binding;

public class HouseFileTests
{
    private static HouseFile Read(string text) => HouseFile.Read(new SourceText(HouseFile.Name, text));

    private static string[] Told(string text) => [.. Read(text).Findings.Select(f => $"{f.Rule.Code} {f.Source.ToString(f.Span)}: {f.Message}")];

    [Fact]
    public void Everything_that_can_be_settled_is_read()
    {
        var file = Read(
            """
            # the house
            defaults:
              designer: Ilsa Merrowby
              contact: hello@example.com
              craft: crochet
              terms: uk
              omit: [videos, thanks]
            tolerances:
              measurement: 3%
              grist: 0.2
              photo-side: 900
            style:
              round: round
              letters: K2tog
              inches: 4"
            never-accept: [PF301, repeat-does-not-fit]
            """);
        Assert.Empty(file.Findings);
        var house = file.House;
        Assert.Equal<string>(["designer", "contact", "craft", "terms", "omit"], [.. house.DefaultKeys]);
        Assert.Equal(("Ilsa Merrowby", "hello@example.com", Craft.Crochet, Dialect.Uk), (house.Defaults.Designer, house.Defaults.Contact, house.Defaults.Craft, house.Defaults.Terms?.Value));
        Assert.Equal((0.03m, 0.2m, 900), (house.Tolerances.Measurement, house.Tolerances.Grist, house.Tolerances.PhotoSide));
        Assert.Equal((1, 1, 2, null), (house.Style.FormOf(StyleMatter.Round), house.Style.FormOf(StyleMatter.Letters), house.Style.FormOf(StyleMatter.Inches), house.Style.FormOf(StyleMatter.Dash)));
        Assert.Equal<string>(["PF301", "PF302"], [.. house.NeverAccepted]);
    }

    [Theory]
    [InlineData("")]
    [InlineData("# nothing yet\n")]
    [InlineData("---\ndefaults: {designer: X}\n")]
    [InlineData("defaults:\n  designer: X # accept PF160: not needed\n")]
    public void What_settles_nothing_wrong_is_read_in_silence_but_for_needless_acceptances(string text) =>
        Assert.DoesNotContain(Read(text).Findings, f => f.Rule.Code != "PF142");

    [Fact]
    public void What_cannot_be_settled_is_told_at_its_place_with_the_nearest_key()
    {
        Assert.Equal(["PF160 defualts: `defualts` is no key of a project file"], Told("defualts: {designer: X}"));
        Assert.Equal("did you mean `defaults`?", Read("defualts: {designer: X}").Findings[0].Help);
        Assert.Equal(["PF160 designer: `designer` is no key of a project file"], Told("designer: X"));
        Assert.Contains("stands under `defaults`", Read("designer: X").Findings[0].Help, StringComparison.Ordinal);
        Assert.Equal(["PF162 sizes: `sizes` is each pattern's own and has no default"], Told("defaults: {sizes: S (M)}"));
        Assert.Equal(["PF161 120%: `measurement` wants a share from 0% to 100%, but says `120%`"], Told("tolerances: {measurement: 120%}"));
        Assert.Equal(["PF161 12.5: `photo-side` wants a whole number up to 20000, but says `12.5`"], Told("tolerances: {photo-side: 12.5}"));
        Assert.Equal(["PF161 PF999: `PF999` is no code and no name of a finding"], Told("never-accept: [PF999]"));
        Assert.Equal(["PF122 french: `french` is no `terms` that is known here"], Told("defaults: {terms: french}"));
    }

    [Fact]
    public void A_default_reaches_the_pattern_and_its_findings_stand_in_the_pattern()
    {
        var house = Read("defaults:\n  craft: crochet\n  terms: uk\n  notes: [Ch 3 counts as tr throughout.]\n").House;
        var compilation = Compiler.Compile(
            new SourceText("x.pattern.md", "---\ntitle: Harbour square\nsizes: one size\n---\n\n## Square\n\nCh 12.\n\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sts)\n"),
            CompileOptions.Default.Under(house));
        Assert.Equal((Craft.Crochet, Dialect.Uk, 1), (compilation.Pattern.Facts.Craft, compilation.Pattern.Facts.TermsInForce, compilation.Pattern.Facts.Notes.Length));
        Assert.Contains(compilation.Findings, f => f.Rule.Code == "PF402");
        Assert.All(compilation.Findings, f => Assert.Equal("x.pattern.md", f.Source.Path));
    }

    [Fact]
    public void A_header_whose_value_could_not_be_made_out_gets_no_default()
    {
        var house = Read("defaults: {terms: uk}").House;
        var facts = Compiler.Compile(new SourceText("x.pattern.md", "---\ntitle: X\nterms: french\n---\n"), CompileOptions.Default.Under(house)).Pattern.Facts;
        Assert.Null(facts.Terms);
    }

    [Fact]
    public void Every_threshold_can_be_set()
    {
        var settable = HouseFile.Keys.Where(k => k.Path.StartsWith("tolerances.", StringComparison.Ordinal)).Select(k => k.Path["tolerances.".Length..].Replace("-", "", StringComparison.Ordinal));
        var properties = typeof(Tolerances).GetProperties(BindingFlags.Public | BindingFlags.Instance).Select(p => p.Name.ToLowerInvariant());
        Assert.Equal(properties.Order(StringComparer.Ordinal), settable.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_threshold_that_is_set_is_the_one_in_force()
    {
        const string Text = "---\ntitle: X\nsizes: one size\n---\n\n## Piece\n\nCO 12 sts.\n\nKnit every row until piece measures 40 cm (17 in).\n";
        int Found(string units) => Compiler.Compile(new SourceText("x.pattern.md", Text), CompileOptions.Default.Under(Read($"tolerances: {{units: {units}}}").House)).Findings.Count(f => f.Rule.Code == "PF440");
        Assert.Equal((1, 0), (Found("1%"), Found("10%")));
    }

    [Fact]
    public void Any_text_gives_findings_and_never_a_fault() => Gen.String[Gen.Char["abdefaults:toleranc style\n{}[]-#'\"%0.5é\uD83E\0"], 0, 120].Sample(text =>
    {
        var file = Read("defaults:\n  " + text);
        return file.Findings.All(f => f.Span.Start >= 0 && f.Span.End <= file.Source.Text.Length);
    });
}
