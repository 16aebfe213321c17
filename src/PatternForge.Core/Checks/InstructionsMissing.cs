using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Checks;

/// <summary>Misses rows where there is a body.</summary>
internal sealed class InstructionsMissing : PatternCheck
{
    public override Rule Rule { get; } = new(
        "PF804", "instructions-missing", Area.Completeness, Severity.Warning,
        "The pattern has a body, but nothing in it reads as an instruction.",
        "Rows begin with a label (`Row 1:`, `Rnd 2:`) or with words of the work (`Cast on`, `Ch 31`), one a line or list item. Where none is found, nothing can be worked or counted, and a maker has nothing to follow.")
    {
        Bad = """
            ---
            ^^^
            title: Harbour hat
            ---
            ## About

            A hat for windy harbours.
            """,
        Good = """
            ---
            title: Harbour hat
            ---
            ## About

            A hat for windy harbours.

            ## Hat

            CO 96 sts.
            """,
    };

    public override void Run(CheckContext context)
    {
        var blocks = context.Pattern.Sections.SelectMany(s => s.Blocks).ToArray();
        if (context.HeaderPlace is { } place && context.Lines.IsEmpty && blocks.Length > 0 && !context.Bag.Has(BodyRules.RemarkNotClosed) && !blocks.OfType<FencedBlock>().Any() && !context.IsExcused("instructions"))
        {
            context.Bag.Add(Rule, place, "no line of this pattern reads as an instruction", "write one row a line, with its label: `Row 1: Knit.`");
        }
    }
}
