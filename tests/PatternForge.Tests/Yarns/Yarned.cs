using System.Globalization;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Tests.Yarns;

/// <summary>Small patterns to reckon yarn with.</summary>
internal static class Yarned
{
    public const string Ball = "put-up: 100 g = 200 m";

    public static Compilation Compile(string text) => Compiler.Compile(new SourceText("yarn.pattern.md", text));

    /// <summary>What is worked out for the only yarn of a pattern, or for one by its place.</summary>
    public static EstimatedYarn Of(string text, int yarn = 0) => Compile(text).Yarn.Yarns[yarn];

    /// <summary>A scarf in sizes that have so many stitches and rows.</summary>
    public static string Scarf(int[] stitches, int[] rows, string more = "sample: {size: A, used: 80 g}", string needs = "estimated") => $"""
        ---
        title: Harbour scarf
        sizes: {Sized([.. stitches.Select((_, i) => ((char)('A' + i)).ToString())])}
        yarn:
          name: Quayside Wool
          {Ball}
          needs: {needs}
        {more}
        ---

        ## Scarf

        Cast on {Sized(stitches)} sts.

        Row 1: Knit.

        Rep Row 1 {Sized(rows)} times more.

        Bind off all sts.
        """;

    public static string Sized(int[] values) => Sized([.. values.Select(v => v.ToString(CultureInfo.InvariantCulture))]);

    private static string Sized(string[] values) => values.Length == 1 ? values[0] : $"{values[0]} ({string.Join(", ", values[1..])})";
}
