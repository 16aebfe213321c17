using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Editions;

/// <summary>When an edition has its turn among others: sizes first, since what is left is quicker to rewrite, words in full last.</summary>
public enum EditionStage
{
    /// <summary>One size alone.</summary>
    Size,

    /// <summary>Whose terms.</summary>
    Terms,

    /// <summary>Which units.</summary>
    Units,

    /// <summary>Left and right.</summary>
    Sides,

    /// <summary>Words in full.</summary>
    Words,

    /// <summary>What the page does.</summary>
    Page,
}

/// <summary>Several editions in one, "uk+size-m+large-print": a chain of rewritings, each compiled and checked before the next.</summary>
internal sealed class CombinedEdition : Edition
{
    /// <summary>What stands between the names.</summary>
    public const char Sign = '+';

    private CombinedEdition(ImmutableArray<Edition> parts) => Parts = parts;

    /// <summary>The editions in the order in which they were named.</summary>
    public ImmutableArray<Edition> Parts { get; }

    /// <summary>The editions in the order in which they are made.</summary>
    public IEnumerable<Edition> InOrder => Parts.OrderBy(p => p.Stage);

    /// <inheritdoc/>
    public override string Name => string.Join(Sign, Parts.Select(p => p.Name));

    /// <inheritdoc/>
    public override string Title => string.Join(", ", Parts.Select(p => p.Title));

    /// <inheritdoc/>
    public override EditionStage Stage => EditionStage.Page;

    /// <summary>The combination that a name asks for; null where a part of it does not exist, or two do not go together.</summary>
    public static Edition? Named(string name)
    {
        if (!name.Contains(Sign, StringComparison.Ordinal) || FirstClash(name) is not null)
        {
            return null;
        }

        var parts = new List<Edition>();
        foreach (var one in name.Split(Sign))
        {
            if (Find(one) is not { } part)
            {
                return null;
            }

            parts.Add(part);
        }

        return Of([.. parts.Distinct()]);
    }

    /// <summary>The two editions of a combination that both settle the same; null where all go together.</summary>
    public static (string First, string Second)? FirstClash(string name)
    {
        var parts = name.Split(Sign).Take(32).Select(Find).OfType<Edition>().Distinct().ToArray();
        for (var i = 1; i < parts.Length; i++)
        {
            if (Array.Find(parts[..i], p => p.Subject == parts[i].Subject) is { } earlier)
            {
                return (earlier.Name, parts[i].Name);
            }
        }

        return null;
    }

    private static Edition? Of(ImmutableArray<Edition> parts) => parts.Length switch { 0 => null, 1 => parts[0], > 12 => null, _ => new CombinedEdition(parts) };

    /// <inheritdoc/>
    public override EditionForm FormOf(Compilation plain) => Parts.Aggregate(new EditionForm(Name, null, false), (form, part) => form.With(part.FormOf(plain)));

    /// <inheritdoc/>
    public override bool Exists(SizeSet sizes) => Parts.All(p => p.Exists(sizes));

    /// <inheritdoc/>
    public override int? OnlySize(Compilation plain) => Parts.Select(p => p.OnlySize(plain)).FirstOrDefault(s => s is not null);

    /// <inheritdoc/>
    public override IEnumerable<Edition> For(Compilation plain) =>
        Parts.Aggregate<Edition, IEnumerable<ImmutableArray<Edition>>>([[]], (all, part) => all.SelectMany(before => part.For(plain).Select(one => before.Add(one)))).Select(parts => new CombinedEdition(parts));

    /// <inheritdoc/>
    public override RewrittenSource Rewrite(Compilation plain) => new(plain.Text, [], []); // each part rewrites what the one before it came to

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is CombinedEdition other && other.Name == Name;

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Name);
}
