using PatternForge.Core.Findings;
using PatternForge.Core.Model;

namespace PatternForge.Core.Checks;

/// <summary>Finds a fenced block that asks for a table of shaping where there is none to lay out.</summary>
internal sealed class ShapingBlockEmpty : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF220", "shaping-block-empty", Area.Notation, Severity.Warning,
        "A block asks for shaping to be laid out, but the line before it has none.",
        "A fenced block `shaping` is replaced, on the page, by a table of the shapings that go on at the same time in the line before it, or by the rows that its \"reversing shaping\" stands for. The line must say one of the two, and its words must tell in which rows (\"every 4th row 6 times\").")
    {
        Bad = """
            Row 1: Knit.

            ```shaping
            ^^^^^^^^^^
            ```
            """,
        Good = """
            Dec 1 st at armhole edge every RS row twice and at the same time dec 1 st at neck edge every 4th row 2 times.

            ```shaping
            ```
            """,
    };

    public override void Run(CheckContext context)
    {
        foreach (var section in context.Pattern.Sections)
        {
            InstructionBlock? before = null;
            foreach (var block in section.Blocks)
            {
                before = block as InstructionBlock ?? before;
                if (block is FencedBlock { Info: FencedBlock.Shaping } && (before is null || context.Lines[before.Index] is { Together: null, Mirrored.IsEmpty: true }))
                {
                    var opening = context.Source.Text.AsSpan(block.Origin.Start).IndexOfAny('\r', '\n');
                    context.Bag.Add(Rule, new(block.Origin.Start, opening < 0 ? block.Origin.Length : opening), "no shaping of the line before this block can be laid out", "put it behind a line that says \"at the same time\" or \"reversing shaping\", with rows that can be told");
                }
            }
        }
    }
}
