using PatternForge.Core.Findings;
using PatternForge.Core.Text;

namespace PatternForge.Core.Drafts;

/// <summary>One repair of a draft: what stood there and how it is read.</summary>
/// <param name="Span">What is read otherwise; empty where something is only put in.</param>
/// <param name="NewText">How it is read; empty where it is left out.</param>
/// <param name="Why">The note that tells of it; null where it is mere typography and nothing is told.</param>
/// <param name="Shown">The place that the note counts and shows; null for a part of a repair that another mend tells of.</param>
public readonly record struct Mend(TextSpan Span, string NewText, Rule? Why = null, TextSpan? Shown = null);
