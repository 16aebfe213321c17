using System.Collections.Immutable;
using PatternForge.Core;

namespace PatternForge.Rendering.Documents;

/// <summary>Puts the patterns of a studio beside each other.</summary>
public static class ShelfBuilder
{
    /// <summary>How many other designs a page names.</summary>
    public const int MostOthers = 6;

    /// <summary>A design in a few words.</summary>
    /// <param name="compilation">The pattern.</param>
    /// <param name="stem">Its files without their extension, as a path below the shelf with forward slashes.</param>
    /// <param name="extension">The extension of its page; null where none is made.</param>
    /// <param name="draft">True where it is released as a draft.</param>
    public static DesignView Design(Compilation compilation, string stem, string? extension, bool draft)
    {
        var facts = compilation.Pattern.Facts;
        var weights = facts.Yarns.Select(y => Wording.Weight(y.WeightClass, y.Weight)).OfType<string>().Select(Wording.Capital).Distinct(StringComparer.Ordinal);
        return new()
        {
            Title = Wording.Said(facts.Title?.Value) ?? "Untitled pattern",
            Designer = Wording.Said(facts.Designer),
            Kind = Wording.Kind(facts.Craft),
            Stem = stem,
            Address = extension is null ? null : Escaped(stem + extension),
            Level = facts.Level is { } level ? Wording.LevelName(level.Value) : null,
            Sizes = Wording.Said(SizesBuilder.Build(facts)?.List),
            Yarn = Wording.Said(string.Join("; ", weights)),
            Edition = Wording.Edition(facts.Version, facts.Date),
            Draft = draft,
        };
    }

    /// <summary>The shelf of some designs.</summary>
    /// <param name="designs">The designs, in any order.</param>
    public static ShelfView Build(IEnumerable<DesignView> designs)
    {
        ImmutableArray<DesignView> all = [.. designs.OrderBy(d => d.Title, StringComparer.OrdinalIgnoreCase).ThenBy(d => d.Stem, StringComparer.Ordinal)];
        var designer = all.Select(d => d.Designer).Distinct(StringComparer.Ordinal).ToArray() is [{ } one] ? one : null;
        return new()
        {
            Title = designer is null ? "Designs" : $"Designs by {designer}",
            Designer = designer,
            Designs = designer is null ? all : [.. all.Select(d => d with { Designer = null })],
        };
    }

    /// <summary>
    /// The other designs that a page names: those that follow it on the shelf, first of its own craft, and round again from the beginning, so that each design is named by others.
    /// </summary>
    /// <param name="shelf">The shelf.</param>
    /// <param name="stem">The page's own files, as a path below the shelf without extension.</param>
    /// <param name="site">The address of the shelf on the web, with a slash at its end; null where there is none, and then the others are named without an address.</param>
    /// <param name="extension">The extension of the pages to link to.</param>
    public static ImmutableArray<DesignView> Others(ShelfView shelf, string stem, string? site, string extension)
    {
        if (shelf.Designs.FirstOrDefault(d => d.Stem == stem) is not { } self)
        {
            return [];
        }

        var at = shelf.Designs.IndexOf(self);
        return
        [
            .. shelf.Designs.Skip(at + 1).Concat(shelf.Designs.Take(at)).Where(d => d is { Draft: false, Stem: not null })
                .OrderBy(d => d.Kind == self.Kind ? 0 : 1).Take(MostOthers).Select(d => d with { Address = site is null ? null : site + Escaped(d.Stem + extension), Photo = null }),
        ];
    }

    private static string Escaped(string path) => string.Join('/', path.Split('/').Select(Uri.EscapeDataString));
}
