using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Model;

/// <summary>One pattern as it was read: the facts of its header and the sections of its body, in order.</summary>
public sealed record Pattern(PatternFacts Facts, ImmutableArray<Section> Sections);

/// <summary>A heading and what stands under it, up to the next heading of any level.</summary>
public sealed class Section
{
    /// <summary>Holds a section.</summary>
    public Section(string heading, string role, int level, TextSpan origin, ImmutableArray<Block> blocks)
    {
        Heading = heading;
        Role = role;
        Level = level;
        Origin = origin;
        Blocks = blocks;
    }

    /// <summary>The heading's words, without its <c>{#role}</c>; empty for text before the first heading.</summary>
    public string Heading { get; }

    /// <summary>The role in kebab-case: from <c>{#role}</c>, else from the heading's own words ("Terms of use" is <c>terms-of-use</c>).</summary>
    public string Role { get; }

    /// <summary>1 for <c>#</c> to 6; 0 before the first heading.</summary>
    public int Level { get; }

    /// <summary>Where the heading stands.</summary>
    public TextSpan Origin { get; }

    /// <summary>Prose, instruction lines and fenced blocks in order.</summary>
    public ImmutableArray<Block> Blocks { get; }

    /// <summary>True when the section holds at least one instruction line.</summary>
    public bool HasInstructions => Blocks.Any(b => b is InstructionBlock);
}

/// <summary>One thing in a section.</summary>
public abstract class Block
{
    /// <summary>Holds its place.</summary>
    protected Block(TextSpan origin) => Origin = origin;

    /// <summary>Where it stands.</summary>
    public TextSpan Origin { get; }
}

/// <summary>Prose in Markdown, remarks taken out, <c>{name}</c> filled in.</summary>
public sealed class ProseBlock : Block
{
    /// <summary>Holds prose.</summary>
    public ProseBlock(TextSpan origin, string markdown)
        : base(origin) => Markdown = markdown;

    /// <summary>The Markdown text.</summary>
    public string Markdown { get; }
}

/// <summary>A fenced block: its first word and its lines.</summary>
public sealed class FencedBlock : Block
{
    /// <summary>The word of a block that asks for the shaping of the line before it to be laid out.</summary>
    public const string Shaping = "shaping";

    /// <summary>The word of a block that holds a chart, or asks for one.</summary>
    public const string Chart = "chart";

    /// <summary>The word of a block that asks for the stripes of a piece.</summary>
    public const string Stripes = "stripes";

    /// <summary>Holds a fenced block.</summary>
    public FencedBlock(TextSpan origin, string info, string text)
        : base(origin)
    {
        Info = info;
        Text = text;
    }

    /// <summary>The word after the fence ("chart", "sizes"); empty when there is none.</summary>
    public string Info { get; }

    /// <summary>What stands between the fences.</summary>
    public string Text { get; }
}

/// <summary>An instruction line. What it did to the stitches is the worked line with the same <see cref="Index"/>.</summary>
public sealed class InstructionBlock : Block
{
    /// <summary>Holds an instruction line by its number in the file.</summary>
    public InstructionBlock(TextSpan origin, int index)
        : base(origin) => Index = index;

    /// <summary>Its number among all instruction lines of the file, from 0.</summary>
    public int Index { get; }
}
