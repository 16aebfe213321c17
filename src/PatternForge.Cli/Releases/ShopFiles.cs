using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Cli.Photos;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Releases;

/// <summary>What a shop gets of a pattern: its listing, and its photos as shops take them.</summary>
/// <param name="Texts">The listing in its forms.</param>
/// <param name="Photos">The photos by their names below the release.</param>
/// <param name="Remarks">What the listing goes without, a sentence each.</param>
/// <param name="TemplateFindings">What is wrong with the templates; then there is nothing else.</param>
internal sealed record ShopFiles(ImmutableArray<RenderedFile> Texts, ImmutableArray<(string Name, byte[] Bytes)> Photos, ImmutableArray<string> Remarks, ImmutableArray<Finding> TemplateFindings)
{
    /// <summary>The name by which it is asked for.</summary>
    public const string Format = Rendering.Formats.ListingFormat.Name;

    /// <summary>Makes them.</summary>
    /// <param name="view">The pattern.</param>
    /// <param name="facts">Its header.</param>
    /// <param name="name">What the release is called.</param>
    /// <param name="release">What the release holds.</param>
    /// <param name="photos">Its photos.</param>
    /// <param name="templates">The templates.</param>
    /// <param name="most">The signs that a listing may have.</param>
    public static ShopFiles Of(PatternView view, PatternFacts facts, string name, ReleaseContents release, PhotoFiles photos, TemplateSet templates, int most)
    {
        var (listing, shortened) = Renderer.Listing(view, name, release, templates, most);
        if (!listing.Findings.IsEmpty)
        {
            return new([], [], [], listing.Findings);
        }

        var remarks = shortened.GroupBy(f => string.Join(", ", f.GivenUp), StringComparer.Ordinal).Select(same => Without(same, listing.Files, most));
        var copies = Copies(facts, name, photos).ToImmutableArray();
        var onPhotos = facts.Photos.IsEmpty ? "there is no photo for a shop: `photos` in the header names them" : copies.IsEmpty ? "there is no photo for a shop: shops take photos and no drawings" : null;
        return new(listing.Files, copies, [.. remarks, .. onPhotos is null ? Array.Empty<string>() : [onPhotos]], []);
    }

    private static string Without(IGrouping<string, (string Name, ImmutableArray<string> GivenUp)> same, ImmutableArray<RenderedFile> files, int most)
    {
        var names = string.Join(", ", same.Select(f => $"`{f.Name}`"));
        return same.All(f => files.Any(w => w.Name == f.Name))
            ? string.Create(CultureInfo.InvariantCulture, $"to stay within {most} characters, {names} {(same.Count() == 1 ? "goes" : "go")} without {same.Key}")
            : string.Create(CultureInfo.InvariantCulture, $"{names} cannot be written within {most} characters: the template says too much beside what the pattern says");
    }

    // Numbered in the order of the header: shops show them so. The first is the one of their lists.
    private static IEnumerable<(string Name, byte[] Bytes)> Copies(PatternFacts facts, string name, PhotoFiles photos)
    {
        var number = 0;
        foreach (var photo in facts.Photos)
        {
            if (photos.ForShop(photo.File, square: false) is not { } copy)
            {
                continue;
            }

            number++;
            yield return (string.Create(CultureInfo.InvariantCulture, $"{name}.shop/photo-{number}{copy.Extension}"), copy.Bytes);
            if (number == 1 && photos.ForShop(photo.File, square: true) is { } square)
            {
                yield return ($"{name}.shop/square{square.Extension}", square.Bytes);
            }
        }
    }
}
