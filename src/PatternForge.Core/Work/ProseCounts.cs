using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Work;

/// <summary>Fills `{count}` where it stands in prose: the stitches that there are at that place.</summary>
internal static class ProseCounts
{
    private const string Mark = "{count}";

    /// <summary>PF230.</summary>
    public static Rule Rule { get; } = new(
        "PF230", "count-not-known", Area.Notation, Severity.Warning,
        "`{count}` stands in prose where no stitches are worked.",
        "`{count}` at a row's end stands for the count that the row makes, and in prose behind rows for the count of the last of them. Where no row before it in its section comes to a count that is known, the page would print it as it stands.")
    {
        Bad = """
            ## Piece

            The body has {count} all around.
                         ^^^^^^^

            CO 40 sts.
            """,
        Good = """
            ## Piece

            CO 40 sts.

            The body has {count} all around.
            """,
    };

    /// <summary>The pattern with its prose filled in; a place where no stitches are known is reported.</summary>
    public static Pattern Fill(Pattern pattern, ImmutableArray<WorkedLine> worked, FindingBag bag)
    {
        if (!pattern.Sections.Any(s => s.Blocks.Any(b => b is ProseBlock prose && HasMark(prose.Markdown))))
        {
            return pattern;
        }

        return pattern with { Sections = [.. pattern.Sections.Select(section => Section(section, worked, bag))] };
    }

    private static Section Section(Section section, ImmutableArray<WorkedLine> worked, FindingBag bag)
    {
        WorkedLine? last = null;
        var blocks = ImmutableArray.CreateBuilder<Block>(section.Blocks.Length);
        foreach (var block in section.Blocks)
        {
            last = block is InstructionBlock line && line.Index < worked.Length ? worked[line.Index] : last;
            if (block is not ProseBlock prose || !HasMark(prose.Markdown))
            {
                blocks.Add(block);
                continue;
            }

            var count = last is { After: var after } && after.All(c => c is > 0) ? $"{CountWords.InTradeForm([.. after], [])}" : null;
            if (count is null)
            {
                var at = bag.Source.ToString(prose.Origin).IndexOf(Mark, StringComparison.Ordinal);
                var place = at < 0 ? prose.Origin : new Text.TextSpan(prose.Origin.Start + at, Mark.Length);
                bag.Add(Rule, place, "`{count}` stands in prose, and no row before it tells how many stitches there are", "write the number, or put `{count}` behind the row whose count is meant");
            }

            blocks.Add(count is null ? prose : new ProseBlock(prose.Origin, Filled(prose.Markdown, count)));
        }

        return new Section(section.Heading, section.Role, section.Level, section.Origin, blocks.ToImmutable());
    }

    // In code and in remarks it is not meant.
    private static bool HasMark(string markdown) => markdown.Contains(Mark, StringComparison.Ordinal) && !markdown.Contains('`', StringComparison.Ordinal);

    // "on the {count} sts" and "on the {count}" alike.
    private static string Filled(string markdown, string count)
    {
        var number = count[..count.LastIndexOf(' ')];
        foreach (var unit in (ReadOnlySpan<string>)[" sts", " stitches", " st", " stitch"])
        {
            markdown = markdown.Replace(Mark + unit, number + unit, StringComparison.Ordinal);
        }

        return markdown.Replace(Mark, count, StringComparison.Ordinal);
    }
}
