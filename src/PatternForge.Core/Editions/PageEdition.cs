using System.Collections.Immutable;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;

namespace PatternForge.Core.Editions;

/// <summary>An edition whose words are those of the pattern, and whose page is another: large print, low ink, words or charts alone, the names of both terms.</summary>
/// <param name="name">Its name.</param>
/// <param name="title">What it is, in a few words.</param>
/// <param name="form">What its page does otherwise.</param>
internal sealed class PageEdition(string name, string title, EditionForm form) : Edition
{
    private static EditionForm Plain(string name) => new(name, null, false);

    /// <summary>All of them that every pattern may have.</summary>
    public static ImmutableArray<Edition> Each { get; } =
    [
        new PageEdition("both-terms", "US and UK names side by side", Plain("both-terms") with { HasBothTerms = true }),
        new PageEdition("large-print", "large print", Plain("large-print") with { IsLargePrint = true }),
        new PageEdition("low-ink", "sparing of ink", Plain("low-ink") with { IsLowInk = true }),
        new PageEdition("words-only", "words in place of charts", Plain("words-only") with { Content = PageContent.Words }),
        new PageEdition("charts-only", "charts in place of their rows", Plain("charts-only") with { Content = PageContent.Charts }),
    ];

    /// <inheritdoc/>
    public override string Name => name;

    /// <inheritdoc/>
    public override string Title => title;

    /// <inheritdoc/>
    public override EditionForm Form => form;

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Page;

    /// <inheritdoc/>
    public override string Subject => form.Content != PageContent.All ? "content" : name;

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain) => new(plain.Text, [], [.. form.Content switch { PageContent.Words => Wordless(plain), PageContent.Charts => Chartless(plain), _ => [] }]);

    /// <summary>Charts that the page keeps because no words give their rows.</summary>
    private IEnumerable<Finding> Wordless(Compilation plain) =>
        plain.Charts.Where(c => c.StandsAlone).Select(c => Say(plain, EditionRules.ChartWithoutWords, FirstLine(plain, c.Block!.Value), $"the chart of {c.Name} stays: no words give its rows", "write its rows in words as well"));

    private IEnumerable<Finding> Chartless(Compilation plain)
    {
        if (plain.Charts.IsEmpty && plain.Diagrams.IsEmpty)
        {
            yield return Say(plain, EditionRules.NothingCharted, plain.Pattern.Facts.HeaderOrigin ?? default, "no row is left to a chart: the pattern has none that shows its rows", "ask for charts with a block `chart`, or leave this edition out");
        }
    }

    private static Text.TextSpan FirstLine(Compilation plain, Text.TextSpan block) => Text.TextSpan.FromBounds(block.Start, FileSplitter.LineAt(plain.Text.Text.Text, block.Start).End);
}

/// <summary>All sizes, one of them marked throughout.</summary>
internal sealed class MarkedEdition : Edition
{
    private const string Prefix = "marked-";
    private readonly SizeEdition _size;

    private MarkedEdition(SizeEdition size) => _size = size;

    /// <inheritdoc/>
    public override string Name => Prefix + _size.Slugged;

    /// <inheritdoc/>
    public override string Title => $"all sizes, {_size.Slugged} marked";

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Page;

    /// <inheritdoc/>
    public override string Subject => "sizes";

    /// <summary>The edition that a name asks for; null where it asks for none of a size.</summary>
    public static MarkedEdition? Named(string name) =>
        name.Trim().StartsWith(Prefix, StringComparison.OrdinalIgnoreCase) && SizeEdition.Named(SizeEdition.Prefix + name.Trim()[Prefix.Length..]) is { } size ? new MarkedEdition(size) : null;

    /// <inheritdoc/>
    public override bool Exists(SizeSet sizes) => _size.Exists(sizes);

    /// <inheritdoc/>
    public override EditionForm FormOf(Compilation plain) => Form with { MarkedSize = _size.OnlySize(plain) };

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain) => _size.OnlySize(plain) is not null
        ? new(plain.Text, [], [])
        : new(plain.Text, [], [Say(plain, EditionRules.NotPossible, plain.Pattern.Facts.SizesOrigin ?? plain.Pattern.Facts.HeaderOrigin ?? default, "the pattern has no such size", "name one of the sizes of the header")], isRefused: true);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is MarkedEdition other && other._size.Equals(_size);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Prefix, _size);
}

/// <summary>The pattern as it is read out: no abbreviations, drawings and tables in words, signs by their names.</summary>
internal sealed class ReadOutEdition : Edition
{
    private static readonly SpelledOutEdition Words = new();

    /// <inheritdoc/>
    public override string Name => "screen-reader";

    /// <inheritdoc/>
    public override string Title => "for screen readers";

    /// <inheritdoc/>
    public override EditionForm Form => new(Name, null, true) { IsReadOut = true, Content = PageContent.Words };

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Words;

    /// <inheritdoc/>
    public override string Subject => "content";

    /// <inheritdoc/>
    public override bool MayLeaveLines => true;

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain) => Words.Rewrite(plain);
}
