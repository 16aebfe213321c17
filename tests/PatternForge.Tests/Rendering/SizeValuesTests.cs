using System.Net;
using CsCheck;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Formats;

namespace PatternForge.Tests.Rendering;

public class SizeValuesTests
{
    private static readonly string[] Pieces = ["1", "88", "4.5", "½", " ", "(", ")", "[", "]", ", ", "/", "-", "–", "k", "th", "<", "&"];

    [Theory]
    [InlineData("CO 80 (88, 96) sts.", 3, "80 88 96")]
    [InlineData("K20 (21, 22), turn.", 3, "20 21 22")]
    [InlineData("80(88:96) sts", 3, "80 88 96")]
    [InlineData("82 (90: 94) sts", 3, "82 90 94")]
    [InlineData("64[67, 69] sts", 3, "64 67 69")]
    [InlineData("80 (88, 96) [104, 112] sts", 5, "80 88 96 104 112")]
    [InlineData("6 (6- 7- 8) sts", 4, "6 6 7 8")]
    [InlineData("work 60/66/72 sts", 3, "60 66 72")]
    [InlineData("11.5 (12, 12.5) cm", 3, "11.5 12 12.5")]
    [InlineData("4½ (5, 5½) in", 3, "4½ 5 5½")]
    [InlineData("4 1/2 (5, 5 1/2) in", 3, "4 1/2 5 5 1/2")]
    [InlineData("every 4th (6th, 8th) row", 3, "4th 6th 8th")]
    [InlineData("k 3 (–, 5) sts", 3, "3 – 5")]
    [InlineData("rep - (12, 13) times", 3, "- 12 13")]
    [InlineData("k2 (3), p4 (5)", 2, "2 3 4 5")]
    public void A_list_of_just_one_number_a_size_is_found(string text, int sizes, string expected)
    {
        var found = SizeValues.Find(text, sizes);
        Assert.Equal(expected, string.Join(' ', found.Select(v => text.Substring(v.Start, v.Length))));
        Assert.All(found.Select((v, i) => (v.Size, Expected: (i % sizes) + 1)), pair => Assert.Equal(pair.Expected, pair.Size));
    }

    [Theory]
    [InlineData("CO 80 (88, 96) sts.", 1)]
    [InlineData("CO 80 (88, 96) sts.", 2)]
    [InlineData("CO 80 (88, 96) sts.", 4)]
    [InlineData("2/2 RC, k4", 2)]
    [InlineData("4 mm (US 6) needle", 2)]
    [InlineData("Rnd 3: k8. (24 sts)", 2)]
    [InlineData("K2 (k1, p1, k1) in next st", 4)]
    [InlineData("Rows 1-3", 3)]
    [InlineData("80 (88, 96", 3)]
    [InlineData("80 (88, 96]", 3)]
    [InlineData("80 (88,, 96)", 3)]
    public void Anything_else_is_left_alone(string text, int sizes) => Assert.Empty(SizeValues.Find(text, sizes));

    [Fact]
    public void Marks_change_no_word_and_no_sign() =>
        Gen.Select(Gen.OneOf(Gen.Int[0, Pieces.Length - 1].Select(i => Pieces[i]), Gen.String).Array[0, 40], Gen.Int[1, 9], Gen.Int[0, 4])
            .Sample((parts, sizes, digits) =>
            {
                var text = string.Concat(parts);
                var html = SizeMarks.ToHtml(new SizedText(text, sizes, digits));
                var plain = SizeMarks.ToHtml(new SizedText(text, 1));
                Assert.Equal(WebUtility.HtmlDecode(plain), WebUtility.HtmlDecode(WithoutMarks(html)));
            });

    [Fact]
    public void Numbers_that_stand_in_columns_leave_room_for_lacking_digits_before_the_bracket() =>
        Assert.Equal(
            "<span class=\"room1\"></span><span class=\"sz s1\">88</span><span class=\"or\"> <span class=\"room1\"></span>(</span><span class=\"sz s2\">96</span><span class=\"or\">, </span><span class=\"sz s3\">104</span><span class=\"or\">)</span> sts",
            SizeMarks.ToHtml(new SizedText("88 (96, 104) sts", 3, 3)));

    [Fact]
    public void A_long_text_of_numbers_and_brackets_is_gone_through_once()
    {
        var text = string.Concat(Enumerable.Repeat("1 (2, 3) [", 100_000));
        Assert.Equal(300_000, SizeValues.Find(text, 3).Count);
        Assert.Empty(SizeValues.Find(text, 64));
    }

    [Fact]
    public void Lists_in_prose_are_marked_and_those_in_set_words_are_not() =>
        Assert.Equal(
            "<p>work <strong><span class=\"sz s1\">8</span><span class=\"or\"> (</span><span class=\"sz s2\">9</span><span class=\"or\">)</span></strong> rows <code>8 (9)</code></p>",
            Prose.ToHtml(new ProseText("work **8 (9)** rows `8 (9)`", 2)));

    private static string WithoutMarks(string html)
    {
        var text = html.Replace("</span>", "", StringComparison.Ordinal);
        for (var at = text.IndexOf("<span", StringComparison.Ordinal); at >= 0; at = text.IndexOf("<span", StringComparison.Ordinal))
        {
            text = text.Remove(at, text.IndexOf('>', at) - at + 1);
        }

        return text;
    }
}
