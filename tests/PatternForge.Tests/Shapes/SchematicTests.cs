using System.Xml.Linq;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Drawings;

namespace PatternForge.Tests.Shapes;

public class SchematicTests
{
    [Fact]
    public void The_back_of_a_pullover_in_five_sizes_is_drawn_as_it_was_approved() => Golden.Match(Svg(Outlines.Pullover, "Schematic: Back"), "schematics/pullover-back.svg");

    [Fact]
    public void A_hat_is_drawn_as_a_tube_as_it_was_approved() => Golden.Match(Svg(Outlines.Hat, "Schematic: Ostrey Light Hat"), "schematics/hat.svg");

    [Fact]
    public void A_sock_from_the_toe_with_a_heel_of_short_rows_is_drawn_as_it_was_approved() => Golden.Match(Svg(Outlines.Of("tests", "PatternForge.Tests", "Rendering", "Sources", "eddy-line-socks.pattern.md"), "Schematic: Sock"), "schematics/toe-up-sock.svg");

    [Fact]
    public void A_garment_in_sizes_gets_one_schematic_a_piece_by_itself_and_none_where_they_are_left_out()
    {
        Assert.Equal(["Schematic: Back", "Schematic: Front", "Schematic: Sleeve (make 2)"], Drawings(Outlines.Pullover).Select(d => d.Title));
        var left = Compiler.Compile(new SourceText("p.pattern.md", File.ReadAllText(RepositoryRoot.Path("tests", "catalogue", "ferry-steps-pullover.pattern.md"))));
        Assert.Empty(Drawings(left));
    }

    [Fact]
    public void A_block_asks_for_one_piece_in_one_size()
    {
        var drawing = Assert.Single(Drawings(With(Outlines.Pullover, "```schematic\nof: Sleeve\nsize: L\n```")));
        Assert.Equal("Schematic: Sleeve (make 2), size L", drawing.Title);
        Assert.Contains("lower edge, 23 cm", drawing.Description, StringComparison.Ordinal);
        Assert.DoesNotContain("(", drawing.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_block_that_holds_other_text_is_set_as_it_stands()
    {
        var view = ViewBuilder.Build(With(Outlines.Pullover, "```schematic\n+-----+\n|     |\n```"));
        Assert.Empty(view.Drawings);
        Assert.Contains(view.Instructions.Concat(view.After).Concat(view.Closing).SelectMany(s => s.Parts).SelectMany(p => p.Blocks), b => b is { Kind: "text", Text: var text } && text!.Contains("+-----+", StringComparison.Ordinal));
    }

    [Fact]
    public void The_declared_length_of_the_pullover_is_the_one_that_is_drawn()
    {
        var compilation = Outlines.Pullover;
        var declared = compilation.Pattern.Facts.Finished.Single(m => m.Name == "length");
        var drawn = Outlines.Named(compilation, "Back").Measures.Single(m => m.Name == "whole length");
        for (var size = 0; size < 5; size++)
        {
            Assert.InRange(drawn.Cm[size], declared.Values[size]!.InBase - 0.5m, declared.Values[size]!.InBase + 0.5m);
        }
    }

    [Theory]
    [MemberData(nameof(Pieces))]
    public void Dimension_lines_and_letters_keep_clear_of_the_outline_and_of_each_other(string file, string piece)
    {
        var outline = Outlines.Named(Outlines.Of(file.Split('/')), piece);
        for (var size = 0; size < outline.Sizes.Length; size++)
        {
            var layout = SchematicLayout.Of(outline, size);
            var edges = layout.Outline.Select((p, i) => (From: p, To: layout.Outline[(i + 1) % layout.Outline.Length])).ToArray();
            var letters = layout.Lines.Select(l => (Left: l.LetterX - 5, Top: l.LetterY - 10, Right: l.LetterX + 5, Bottom: l.LetterY + 1)).ToArray();
            foreach (var line in layout.Lines)
            {
                Assert.DoesNotContain(edges, e => Meets(e.From, e.To, (Math.Min(line.X1, line.X2), Math.Min(line.Y1, line.Y2), Math.Max(line.X1, line.X2), Math.Max(line.Y1, line.Y2))));
                Assert.True(line.X2 > line.X1 || line.Y2 > line.Y1);
            }

            for (var i = 0; i < letters.Length; i++)
            {
                Assert.DoesNotContain(edges, e => Meets(e.From, e.To, letters[i]));
                Assert.True(letters[i].Left >= 0 && letters[i].Top >= 0 && letters[i].Right <= layout.Width && letters[i].Bottom <= layout.Height);
                for (var j = 0; j < i; j++)
                {
                    Assert.False(letters[i].Left < letters[j].Right && letters[j].Left < letters[i].Right && letters[i].Top < letters[j].Bottom && letters[j].Top < letters[i].Bottom);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Pieces))]
    public void A_schematic_is_well_formed_asks_for_nothing_and_fits_a_telephone(string file, string piece)
    {
        var compilation = Outlines.Of(file.Split('/'));
        var outline = Outlines.Named(compilation, piece);
        Drawing Draw() => SchematicDrawing.Of(outline, "piece", compilation.Pattern.Facts.Sizes, null, 0, cm => string.Join(" ", cm.Select(v => $"{v:0}")));
        var drawing = Draw();
        foreach (var svg in new[] { drawing.Sheets[0], drawing.Alone })
        {
            var root = XDocument.Parse(svg).Root!;
            Assert.Equal("title", root.Elements().First().Name.LocalName);
            Assert.Equal(drawing.Description, root.Elements().Skip(1).First().Value);
            Assert.DoesNotContain("href", svg, StringComparison.Ordinal);
            Assert.DoesNotContain("url(", svg, StringComparison.Ordinal);
        }

        Assert.True(drawing.Width <= 340);
        Assert.Equal(outline.Measures.Length, drawing.Key.Length);
        Assert.Equal((drawing.Sheets[0], drawing.Alone), (Draw().Sheets[0], Draw().Alone));
    }

    public static TheoryData<string, string> Pieces() => new()
    {
        { "tests/catalogue/ferry-steps-pullover.pattern.md", "Back" },
        { "tests/catalogue/ferry-steps-pullover.pattern.md", "Front" },
        { "tests/catalogue/ferry-steps-pullover.pattern.md", "Sleeve" },
        { "tests/catalogue/sandbar-top.pattern.md", "Back and front" },
        { "examples/ostrey-light-hat.pattern.md", "Ostrey Light Hat" },
        { "examples/tidewrack-scarf.pattern.md", "Tidewrack Scarf" },
        { "examples/skerry-seal-pup.pattern.md", "Body" },
        { "examples/fairwater-jumper.pattern.md", "Yoke and body" },
        { "examples/fairwater-jumper.pattern.md", "Sleeves" },
        { "examples/shingle-bank-vest.pattern.md", "Front" },
        { "examples/bilge-keel-socks.pattern.md", "Sock" },
        { "tests/PatternForge.Tests/Rendering/Sources/eddy-line-socks.pattern.md", "Sock" },
    };

    private static IEnumerable<DrawingView> Drawings(Compilation compilation) => ViewBuilder.Build(compilation).Drawings.Where(d => d.Title.StartsWith("Schematic", StringComparison.Ordinal));

    private static string Svg(Compilation compilation, string title) => Drawings(compilation).Single(d => d.Title == title).Alone;

    private static Compilation With(Compilation compilation, string block) => Compiler.Compile(new SourceText("p.pattern.md", $"{compilation.Source.Text}\n{block}\n"));

    /// <summary>True where a stretch of the outline comes into a box, made larger by a unit all around.</summary>
    private static bool Meets((double X, double Y) from, (double X, double Y) to, (double Left, double Top, double Right, double Bottom) box)
    {
        for (var i = 0; i <= 400; i++)
        {
            var (x, y) = (from.X + ((to.X - from.X) * i / 400), from.Y + ((to.Y - from.Y) * i / 400));
            if (x > box.Left - 1 && x < box.Right + 1 && y > box.Top - 1 && y < box.Bottom + 1)
            {
                return true;
            }
        }

        return false;
    }
}
