using PatternForge.Core;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Checks;

/// <summary>Care beside the words of labels (ISO 3758, ASTM D5489) and beside the fibre (common practice of textile care).</summary>
public class CareTests
{
    private static readonly string[] Codes = ["PF740", "PF741", "PF742", "PF743", "PF840", "PF841", "PF842", "PF120"];

    private static string Found(string fibre, string care)
    {
        var text = $"---\ntitle: x\nyarn: {{name: Quayside Yarn, fibre: \"{fibre}\", put-up: 100 g = 200 m, needs: 100 m}}\n{care}\n---\n";
        return string.Join(' ', Compiler.Compile(new SourceText("x", text)).Findings.Select(f => f.Rule.Code).Where(c => Codes.Contains(c, StringComparer.Ordinal)));
    }

    [Theory]
    [InlineData("100% wool", "machine wash, 40 °C", "PF740")]
    [InlineData("100% superwash wool", "machine wash, 40 °C", "")]
    [InlineData("100% superwash wool", "machine wash hot", "PF740")]
    [InlineData("80% wool, 20% nylon", "hand wash, at most 30 °C", "")]
    [InlineData("100% merino", "machine wash, wool programme, 30 °C", "")]
    [InlineData("100% cotton", "machine wash, 60 °C", "")]
    [InlineData("55% silk, 45% linen", "wash at 60 °C", "PF740")]
    [InlineData("100% acrylic", "machine wash, 40 °C", "")]
    [InlineData("100% acrylic", "wash at 60C", "PF740")]
    [InlineData("100% wool", "wash in lukewarm water, then do not wring", "")]
    [InlineData("100% wool", "do not machine wash", "")]
    [InlineData("100% wool", "hand wash, 86 F", "")]
    [InlineData("100% wool", "wash at 140 F", "PF740")]
    [InlineData("100% seaweed", "wash at 95 °C", "")]
    public void The_wash_is_no_hotter_and_no_harder_than_the_fibre_bears(string fibre, string washing, string code) =>
        Assert.Equal(code, Found(fibre, $"care:\n  washing: {washing}"));

    [Theory]
    [InlineData("100% wool", "drying: tumble dry low", "PF741")]
    [InlineData("100% wool", "drying: do not tumble dry", "")]
    [InlineData("100% wool", "drying: dry flat, never tumble", "")]
    [InlineData("100% superwash merino", "drying: tumble dry low", "")]
    [InlineData("100% cotton", "drying: tumble dry", "")]
    [InlineData("100% silk", "bleaching: chlorine bleach", "PF742")]
    [InlineData("100% silk", "bleaching: oxygen bleach only", "")]
    [InlineData("100% silk", "bleaching: non-chlorine bleach only", "")]
    [InlineData("100% silk", "bleaching: do not bleach", "")]
    [InlineData("100% cotton", "bleaching: any bleach", "")]
    [InlineData("100% acrylic", "ironing: iron at most 150 °C", "PF743")]
    [InlineData("100% acrylic", "ironing: cool iron", "")]
    [InlineData("100% wool", "ironing: hot iron", "PF743")]
    [InlineData("100% wool", "ironing: at most 150 °C, with a damp cloth", "")]
    [InlineData("100% linen", "ironing: hot iron", "")]
    public void Drying_bleaching_and_ironing_suit_the_fibre(string fibre, string care, string code) =>
        Assert.Equal(code, Found(fibre, $"care:\n  {care}"));

    [Theory]
    [InlineData("care: hand wash cold, dry flat", "")]
    [InlineData("care: machine wash, tumble dry", "PF740 PF741")]
    [InlineData("care: [hand wash at most 30 °C, do not bleach, do not tumble dry, reshape and dry flat, iron at most 110 °C, do not dry clean]", "")]
    [InlineData("care: as the label of the yarn says", "")]
    [InlineData("care: love it", "")]
    [InlineData("care: {washing: with love}", "PF840")]
    [InlineData("care: {wahsing: hand wash}", "PF120")]
    [InlineData("care: {washing: hand wash at 35 °C}", "PF841")]
    [InlineData("care: {washing: hand wash at 20 °C}", "")]
    [InlineData("care: {washing: 'do not wash, wash at 30 °C'}", "PF842")]
    [InlineData("care: {washing: 'hand wash, do not wring'}", "")]
    [InlineData("care: {drying: 'do not tumble dry, dry flat'}", "")]
    [InlineData("care: {ironing: at most 110 °C with steam}", "PF842")]
    public void Words_of_labels_are_known_and_do_not_contradict_each_other(string care, string codes) =>
        Assert.Equal(codes, Found("100% wool", care));
}
