using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Binding;

/// <summary>What is noted of a row's body while its parts are bound.</summary>
internal sealed class RowDraft
{
    /// <summary>Longer phrases are not read.</summary>
    public const int MostLexemes = 160;

    public RowDraft(RowContext context) => Context = context;

    public RowContext Context { get; }

    /// <summary>Shaping goes on from phrase to phrase with the same verb.</summary>
    public ShapingReader Shaping { get; } = new();

    /// <summary>True when a bracket of the row is never closed: what it parts cannot be told.</summary>
    public bool HasOpenBracket { get; init; }

    /// <summary>True when something was not understood.</summary>
    public bool HasUnread { get; set; }

    /// <summary>The first bracket that has no number of times; null for none.</summary>
    public TextSpan? BareGroup { get; set; }

    /// <summary>True when <c>{count}</c> was met.</summary>
    public bool WantsCount { get; set; }

    /// <summary>Where, among the steps, the sentence now being read begins.</summary>
    public int Sentence { get; set; }

    /// <summary>Keeps the place of a stretch that was not understood.</summary>
    public void Unread(TextSpan span, List<Step> steps)
    {
        HasUnread = true;
        steps.Add(new UnreadStep(span));
    }
}
