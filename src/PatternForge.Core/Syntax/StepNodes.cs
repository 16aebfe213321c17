using System.Collections.Immutable;
using PatternForge.Core.Text;

namespace PatternForge.Core.Syntax;

/// <summary>What stood between a node and the one before it.</summary>
public enum Separator
{
    /// <summary>Nothing but blanks.</summary>
    None,

    /// <summary>A comma.</summary>
    Comma,

    /// <summary>A semicolon or colon.</summary>
    Semicolon,

    /// <summary>A dash.</summary>
    Dash,

    /// <summary>A full stop.</summary>
    Stop,
}

/// <summary>A part of a row as it is written, before anybody asks what stitches it means.</summary>
public abstract class StepNode
{
    /// <summary>Holds its place.</summary>
    protected StepNode(TextSpan span, Separator before)
    {
        Span = span;
        Before = before;
    }

    /// <summary>Where it stands.</summary>
    public TextSpan Span { get; }

    /// <summary>What stood between it and the node before.</summary>
    public Separator Before { get; }
}

/// <summary>Words and numbers up to the next separator or bracket.</summary>
public sealed class PhraseNode : StepNode
{
    /// <summary>Holds a phrase of at least one atom.</summary>
    public PhraseNode(ImmutableArray<Atom> atoms, Separator before)
        : base(atoms[0].Span.Cover(atoms[^1].Span), before) => Atoms = atoms;

    /// <summary>The words and numbers.</summary>
    public ImmutableArray<Atom> Atoms { get; }
}

/// <summary>A bracket and what is in it; what it means (a repeat, a count, a remark) is not yet known.</summary>
public sealed class GroupNode : StepNode
{
    /// <summary>Holds a bracket.</summary>
    public GroupNode(TextSpan span, Separator before, ImmutableArray<StepNode> body)
        : base(span, before) => Body = body;

    /// <summary>What is inside.</summary>
    public ImmutableArray<StepNode> Body { get; }
}

/// <summary>A repeat mark that has not found its partner.</summary>
public sealed class MarkNode : StepNode
{
    /// <summary>Holds a mark.</summary>
    public MarkNode(TextSpan span, Separator before, string mark)
        : base(span, before) => Mark = mark;

    /// <summary>The mark as written: <c>*</c>, <c>**</c>, <c>†</c>.</summary>
    public string Mark { get; }
}

/// <summary>A starred repeat: its body and the words that say how far or how often.</summary>
public sealed class RepeatNode : StepNode
{
    /// <summary>Holds a repeat.</summary>
    public RepeatNode(TextSpan span, Separator before, ImmutableArray<StepNode> body, ImmutableArray<Atom> extent, bool saysRepeat, ImmutableArray<StepNode> lastPass = default)
        : base(span, before)
    {
        LastPass = lastPass.IsDefault ? [] : lastPass;
        Body = body;
        Extent = extent;
        SaysRepeat = saysRepeat;
    }

    /// <summary>What is repeated.</summary>
    public ImmutableArray<StepNode> Body { get; }

    /// <summary>The beginning of the body that is worked once more at the end ("ending last rep at **"); empty for none.</summary>
    public ImmutableArray<StepNode> LastPass { get; }

    /// <summary>The words behind "rep from *" or behind the closing star; empty where nothing is said, which means to the end.</summary>
    public ImmutableArray<Atom> Extent { get; }

    /// <summary>True for "rep from *": a number behind it may mean that many more. False for <c>*...* 3 times</c>.</summary>
    public bool SaysRepeat { get; }

    /// <summary>The same repeat of other steps.</summary>
    public RepeatNode With(ImmutableArray<StepNode> body) => new(Span, Before, body, Extent, SaysRepeat, LastPass);
}
