using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Shapes;

/// <summary>Patterns whose pieces are drawn in the tests.</summary>
internal static class Outlines
{
    /// <summary>A pattern of the repository, compiled; with its schematics not left out.</summary>
    public static Compilation Of(params string[] path)
    {
        var text = File.ReadAllText(RepositoryRoot.Path(path)).ReplaceLineEndings("\n").Replace("schematic, ", "", StringComparison.Ordinal);
        return Compiler.Compile(new SourceText(path[^1], text));
    }

    public static Compilation Pullover => Of("tests", "catalogue", "ferry-steps-pullover.pattern.md");

    public static Compilation Hat => Of("examples", "ostrey-light-hat.pattern.md");

    /// <summary>A piece in stockinette at 20 stitches and 28 rows to 10 cm.</summary>
    public static Compilation Piece(string rows, string header = "sizes: one size", string gauge = "20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked") =>
        Compiler.Compile(new SourceText("piece.pattern.md", $"---\ntitle: Harbour piece\n{header}\ngauge: {gauge}\n---\n\n## Front\n\n{rows}\n"));

    /// <summary>Pieces in stockinette, each under a heading of its own.</summary>
    public static Compilation Pieces(string body) =>
        Compiler.Compile(new SourceText("pieces.pattern.md", $"---\ntitle: Harbour pieces\nsizes: one size\ngauge: 20 sts and 28 rows = 10 cm in stockinette on 4 mm, blocked\n---\n\n{body}"));

    public static PieceOutline Only(Compilation compilation) => Assert.Single(compilation.Outlines);

    public static PieceOutline Named(Compilation compilation, string name) => compilation.Outlines.Single(o => o.Name.StartsWith(name, StringComparison.Ordinal));
}
