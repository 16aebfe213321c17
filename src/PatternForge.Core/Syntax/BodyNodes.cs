using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>A heading and the blocks under it, as written.</summary>
public sealed class SectionNode
{
    /// <summary>Holds a section.</summary>
    public SectionNode(string heading, string? role, int level, TextSpan span, ImmutableArray<BlockNode> blocks)
    {
        Heading = heading;
        DeclaredRole = role;
        Level = level;
        Span = span;
        Blocks = blocks;
    }

    /// <summary>The heading's words; empty before the first heading.</summary>
    public string Heading { get; }

    /// <summary>The role in <c>{#...}</c>; null when the heading has none.</summary>
    public string? DeclaredRole { get; }

    /// <summary>1 to 6; 0 before the first heading.</summary>
    public int Level { get; }

    /// <summary>Where the heading stands.</summary>
    public TextSpan Span { get; }

    /// <summary>What stands under it.</summary>
    public ImmutableArray<BlockNode> Blocks { get; }
}

/// <summary>The kinds of block.</summary>
public enum BlockKind
{
    /// <summary>A paragraph, or one labelled line of one.</summary>
    Text,

    /// <summary>A list item.</summary>
    ListItem,

    /// <summary>A fenced block.</summary>
    Fence,

    /// <summary>A table, a quotation, a rule: never an instruction.</summary>
    Other,
}

/// <summary>One block of the body: its kind, its whole place, and the place of its words (without list mark or fence).</summary>
public sealed record BlockNode(BlockKind Kind, TextSpan Span, TextSpan Content, string Info = "");

/// <summary>One row of an instruction line: its label, if any, and its parts.</summary>
public sealed class RowNode
{
    /// <summary>Holds a row.</summary>
    public RowNode(LabelNode? label, TextSpan span, TextSpan body, ImmutableArray<StepNode> steps)
    {
        Label = label;
        Span = span;
        Body = body;
        Steps = steps;
    }

    /// <summary>The label; null when it has none.</summary>
    public LabelNode? Label { get; }

    /// <summary>Label and body.</summary>
    public TextSpan Span { get; }

    /// <summary>What stands after the label; empty when nothing does.</summary>
    public TextSpan Body { get; }

    /// <summary>The parts of the body.</summary>
    public ImmutableArray<StepNode> Steps { get; }
}
