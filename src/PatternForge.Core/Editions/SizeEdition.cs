using System.Text;
using PatternForge.Core.Model;

namespace PatternForge.Core.Editions;

/// <summary>The pattern for one size: every list is that size's number, steps of other sizes are gone, formulas are their values. Row numbers stay, so that answers to a maker's question hold for both.</summary>
internal sealed class SizeEdition : Edition
{
    /// <summary>What stands before the name of a size.</summary>
    public const string Prefix = "size-";
    private readonly string _slug;

    private SizeEdition(string slug) => _slug = slug;

    /// <inheritdoc/>
    public override string Name => Prefix + _slug;

    /// <inheritdoc/>
    public override string Title => $"size {_slug} alone";

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Size;

    /// <inheritdoc/>
    public override string Subject => "sizes";

    /// <summary>The size as it stands in the name.</summary>
    public string Slugged => _slug;

    /// <summary>The edition that a name asks for; null where it asks for none of a size.</summary>
    public static SizeEdition? Named(string name) =>
        name.Trim().StartsWith(Prefix, StringComparison.OrdinalIgnoreCase) && Slug(name.Trim()[Prefix.Length..]) is { Length: > 0 } slug ? new SizeEdition(slug) : null;

    /// <summary>The edition of a size.</summary>
    public static SizeEdition Of(string size) => new(Slug(size));

    /// <inheritdoc/>
    public override int? OnlySize(Compilation plain) => IndexIn(plain.Pattern.Facts.Sizes) is >= 0 and var size ? size : null;

    /// <inheritdoc/>
    public override bool Exists(SizeSet sizes) => IndexIn(sizes) >= 0;

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain)
    {
        var size = IndexIn(plain.Pattern.Facts.Sizes);
        return size < 0
            ? new RewrittenSource(plain.Text, [], [Say(plain, EditionRules.NotPossible, plain.Pattern.Facts.SizesOrigin ?? plain.Pattern.Facts.HeaderOrigin ?? default, "the pattern has no such size", "name one of the sizes of the header")], isRefused: true)
            : new RewrittenSource(plain.Text, new SizeReduction(plain, size).Edits(), []);
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is SizeEdition other && other._slug == _slug;

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(_slug);

    private int IndexIn(SizeSet sizes) => sizes.Count < 2 ? -1 : Enumerable.Range(0, sizes.Count).FirstOrDefault(i => Slug(sizes.Names[i]) == _slug, -1);

    // "2 years" is "2-years", "S/M" is "s-m": what may stand in the name of a file.
    private static string Slug(string name)
    {
        var slug = new StringBuilder();
        foreach (var c in name.Trim().ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(c))
            {
                slug.Append(c);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        return slug.ToString().TrimEnd('-');
    }
}

/// <summary>One edition for each size of a pattern.</summary>
internal sealed class EverySizeEdition : Edition
{
    /// <inheritdoc/>
    public override string Name => "sizes";

    /// <inheritdoc/>
    public override string Title => "one of each size";

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Size;

    /// <inheritdoc/>
    public override string Subject => "sizes";

    /// <inheritdoc/>
    public override IEnumerable<Edition> For(Compilation plain) => plain.Pattern.Facts.Sizes is { Count: > 1 } sizes ? sizes.Names.Select(SizeEdition.Of) : [];

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain) => new(plain.Text, [], []);
}
