namespace PatternForge.Tests.Syntax;

public class HeaderReaderTests
{
    private static string Tree(string header, out string[] codes)
    {
        var (source, map, bag) = HeaderText.Read(HeaderText.Fenced(header));
        codes = HeaderText.Codes(bag);
        return HeaderText.Dump(source, map);
    }

    [Theory]
    [InlineData("title: Harbour hat\nsizes: S (M, L)", "{title=Harbour hat; sizes=S (M, L)}")]
    [InlineData("sizes:\n  names: XS (S) # remark\n  finished:\n    bust: 36½ (40)\"", "{sizes={names=XS (S); finished={bust=36½ (40)\"}}}")]
    [InlineData("yarn:\n- name: \"Sea, deep\"\n  needs: 2 balls\n- name: 'it''s'", "{yarn=[{name=Sea, deep«\"Sea, deep\"»; needs=2 balls}, {name=it's«'it''s'»}]}")]
    [InlineData("summary: >\n  A hat\n  for cold days\ntitle: x", "{summary=A hat for cold days⏎«>⏎  A hat⏎  for cold days»; title=x}")]
    [InlineData("abbreviations: [k, p, \"st(s)\", w&t]", "{abbreviations=[k, p, st(s)«\"st(s)\"», w&t]}")]
    [InlineData("bust: 82 (90: 94: 102) cm", "{bust=82 (90: 94: 102) cm}")]
    [InlineData("bust: [82, 90, 94] cm", "{bust=[82, 90, 94] cm}")]
    [InlineData("bust: [82, 90, 94]", "{bust=[82, 90, 94]}")]
    [InlineData("gauge:", "{gauge=}")]
    [InlineData("stitches: {LT: \"knit 2nd st, then 1st\", 3/3 LC: sl 3}", "{stitches={LT=knit 2nd st, then 1st«\"knit 2nd st, then 1st\"»; 3/3 LC=sl 3}}")]
    [InlineData("links: https://example.com/a:b#c", "{links=https://example.com/a:b#c}")]
    [InlineData("note: [a,\n  b,\n  c]\nx: y", "{note=[a, b, c]; x=y}")]
    [InlineData("summary: It runs\n  on here\nx: y", "{summary=It runs on here«It runs⏎  on here»; x=y}")]
    [InlineData("summary: \"It runs\n  on: here\"\nx: y", "{summary=It runs on: here«\"It runs⏎  on: here\"»; x=y}")]
    [InlineData("title: 手編み 🧶 hat", "{title=手編み 🧶 hat}")]
    public void A_sound_header_is_read_without_a_finding(string header, string tree)
    {
        Assert.Equal(tree, Tree(header, out var codes));
        Assert.Empty(codes);
    }

    [Theory]
    [InlineData("title: Harbour: a hat", "PF109", "{title=Harbour: a hat}")]
    [InlineData("title: \"Harbour\" hat", "PF109", "{title=\"Harbour\" hat}")]
    [InlineData("title: \"Harbour hat\ncraft: knitting", "PF110", "{title=\"Harbour hat; craft=knitting}")]
    [InlineData("title: \"Harbour: a hat # x\ncraft: knitting", "PF110", "{title=\"Harbour: a hat; craft=knitting}")]
    [InlineData("tools: US #7 needles\ncraft: knitting", "PF111", "{tools=US #7 needles; craft=knitting}")]
    [InlineData("notes:\n  - *Sl 1, k1\n  - k2", "PF106", "{notes=[*Sl 1, k1, k2]}")]
    [InlineData("notes: [&a, *b, !c]", "PF106 PF106 PF106", "{notes=[&a, *b, !c]}")]
    [InlineData("title: @home", "PF109", "{title=@home}")]
    [InlineData("title: x\ncraft: knitting\ntitle: y", "PF104", "{title=x; craft=knitting}")]
    [InlineData("sizes:\n\tnames: S\n\tease: 2 cm", "PF105", "{sizes={names=S; ease=2 cm}}")]
    [InlineData("title: x\nsizes: [S, M\ncraft: knitting", "PF103", "{title=x; sizes=[S, M]; craft=knitting}")]
    [InlineData("title: x\nHarbour\ncraft: knitting", "PF103", "{title=x; craft=knitting}")]
    [InlineData("title: x\n  terms: us\ncraft: knitting", "PF103", "{title=x; craft=knitting}")]
    [InlineData("yarn:\n  - name: A\n   fibre: wool\n  - name: B\ncraft: knitting", "PF103", "{yarn=[{name=A}, {name=B}]; craft=knitting}")]
    [InlineData("[a, b]: c\nx: y", "PF112", "{x=y}")]
    [InlineData("just some text", "PF112", "{}")]
    [InlineData("- a\n- b", "PF112", "{}")]
    public void A_fault_is_found_and_the_rest_is_read(string header, string expected, string tree)
    {
        var read = Tree(header, out var codes);
        Assert.Equal((tree, expected), (read, string.Join(' ', codes)));
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Every_key_and_text_has_its_exact_place_whatever_the_line_ends_tabs_and_signs_outside_the_basic_plane(string lineEnd)
    {
        var file = string.Join(lineEnd, "---", "🧶 key:\t🧶 value # 🧶", "list:", "\t- \"🧶 quoted, text\"\t# remark", "\t- it's\ta [🧶] text", "map: {a: 1 (2, 3), '🧶': b}", "---", "");
        var (source, map, _) = HeaderText.Read(file);

        Assert.Equal(
            "{🧶 key=🧶 value; list=[🧶 quoted, text«\"🧶 quoted, text\"», it's a [🧶] text«it's\ta [🧶] text»]; map={a=1 (2, 3); 🧶«'🧶'»=b}}",
            HeaderText.Dump(source, map));
    }

    [Fact]
    public void A_part_of_a_text_has_its_exact_place_in_quotes_and_over_folded_lines()
    {
        var (source, map, _) = HeaderText.Read("---\r\na: \"it \\\"is\\\" here\"\r\nb: 'it''s here'\r\nc: it goes\r\n  on here\r\nd: |\r\n  one\r\n  here\r\n---\r\n");

        foreach (var entry in map!.Entries)
        {
            var text = Assert.IsType<PatternForge.Core.Syntax.HeaderScalar>(entry.Value);
            Assert.Equal("here", source.ToString(text.SpanOf(text.Text.IndexOf("here", StringComparison.Ordinal), 4)));
        }
    }
}
