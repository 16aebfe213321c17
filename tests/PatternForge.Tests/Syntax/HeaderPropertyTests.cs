using CsCheck;
using PatternForge.Core;
using PatternForge.Core.Binding;
using PatternForge.Core.Findings;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Syntax;

public class HeaderPropertyTests
{
    private static readonly string[] Scraps =
    [
        ":", ": ", "- ", "-", "[", "]", "{", "}", "\"", "'", "#", " #", "|", ">", "*", "&", "!", "%", "@", "`", ",", "?", "? ", "\t", "\n", "\r\n", "\r", "\n\n", "  ", "---", "\n---\n", "...", "\\",
        "<<: ", "!!str ", "&a ", "*a", "~", "½", "1/2", "–", "🧶", "\uD83E", "\0", "\u0085", "\u2028", "\uFEFF", "\uE000", "999999999999", "0", "(", ")", "cm", "in", "sts", "= ", "%YAML 1.2\n", "key: value\n", "\n  - ",
        "\u0001", "\x7F", "\uFFFE", "x x: y",
    ];

    private static readonly Gen<string> Scrap = Gen.Int[0, Scraps.Length - 1].Select(i => Scraps[i]);

    // One edit: drop some characters at a place and put a scrap there. Both are drawn as parts of the whole, so they shrink well.
    private static readonly Gen<string> Mutated =
        Gen.Select(Gen.Double[0, 1], Gen.Int[0, 12], Scrap).List[1, 8].Select(Mutate);

    private static string Mutate(List<(double Place, int Drop, string Scrap)> edits)
    {
        var text = Headers.Pullover;
        foreach (var (place, drop, scrap) in edits)
        {
            var at = (int)(place * text.Length);
            text = text[..at] + scrap + text[Math.Min(text.Length, at + drop)..];
        }

        return text;
    }

    [Fact]
    public void Any_mutated_header_is_read_and_bound_without_an_exception_and_every_place_is_inside_the_file() =>
        Mutated.Sample(
            text =>
            {
                var (source, header, bag) = HeaderText.Read(text);
                HeaderBinder.Bind(header, source, bag);
                if (header is not null)
                {
                    InsideOf(new TextSpan(0, text.Length), header);
                }

                foreach (var finding in bag.ToSorted())
                {
                    Assert.True(Inside(text, finding.Span), $"{finding.Rule.Code} {finding.Span}");
                    Assert.All(finding.Labels, l => Assert.True(Inside(text, l.Span)));
                    Assert.All(finding.Fix?.Edits ?? [], e => Assert.True(Inside(text, e.Span)));
                    Assert.DoesNotContain('\n', finding.Message);
                }

                return true;
            },
            iter: 6000,
            threads: 1);

    [Fact]
    public void Random_text_is_read_without_an_exception() =>
        Scrap.List[0, 60].Select(parts => "---\n" + string.Concat(parts)).Sample(
            text =>
            {
                var (source, header, bag) = HeaderText.Read(text);
                HeaderBinder.Bind(header, source, bag);
                HeaderAcceptances.Find(source, FileSplitter.Split(source, new FindingBag(source)).Body);
                return bag.ToSorted().All(f => Inside(text, f.Span));
            },
            iter: 4000,
            threads: 1);

    [Fact]
    public void A_pattern_with_a_mutated_header_is_compiled_without_an_exception() =>
        Mutated.Sample(
            text =>
            {
                var file = text + "\n\n## Body\n\nCO {cast-on} sts.\n\nRow 1: k to end. (92 (100, 108, 116, 124) sts)\n";
                return Compiler.Compile(new SourceText("x.pattern.md", file)).Findings.All(f => Inside(file, f.Span));
            },
            iter: 1500,
            threads: 1);

    private static bool Inside(string text, TextSpan span) => span.Start >= 0 && span.Length >= 0 && span.End <= text.Length;

    private static void InsideOf(TextSpan outer, HeaderNode node)
    {
        Assert.True(outer.Contains(node.Span), $"{node.Span} is not inside {outer}");
        switch (node)
        {
            case HeaderList list:
                Assert.All(list.Items, i => InsideOf(node.Span, i));
                break;
            case HeaderMap map:
                foreach (var entry in map.Entries)
                {
                    InsideOf(node.Span, entry.Key);
                    InsideOf(node.Span, entry.Value);
                }

                break;
            case HeaderScalar scalar:
                for (var i = 0; i < scalar.Text.Length; i++)
                {
                    Assert.True(node.Span.Contains(scalar.SpanOf(i, 1)));
                }

                break;
            default:
                break;
        }
    }
}
