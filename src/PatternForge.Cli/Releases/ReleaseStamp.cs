using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Editions;

namespace PatternForge.Cli.Releases;

/// <summary>
/// What a release was made from: a release whose stamp is the same as what would be made now, and whose files are whole, need not be made again. It holds no place and no clock, so that it is the same on every machine.
/// </summary>
/// <param name="Text">SHA-256 of the source, the project file, the templates, what was asked for and the version of the program, in small hexadecimal digits.</param>
/// <param name="Beside">The files beside the pattern that were read for it, with the SHA-256 of each; empty where it was not there.</param>
internal sealed record ReleaseStamp(string Text, ImmutableArray<(string Name, string Sha256)> Beside)
{
    private const int MostBytes = 64_000_000;

    /// <summary>The first part of it, known before anything is rendered.</summary>
    public static string TextOf(ReleasePlan plan, WorkedFile worked, Compilation plain, IEnumerable<Edition> editions)
    {
        string[] parts =
        [
            CommandLine.Version, plain.Source.Text, worked.House?.File?.Source.Text ?? "", plan.Templates.Own, plan.Draft ? "draft" : "", plan.Site ?? "",
            string.Join(',', plan.Formats.Words), string.Join(',', editions.Select(e => e.Name)), plan.ListingLength?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "", plan.Print.Paper?.ToString() ?? "",
            plan.Shelf is { } shelf ? string.Join('\n', Rendering.Documents.ShelfBuilder.Others(shelf.View, Shelf.StemOf(worked.File), plan.Site, ".html").Select(d => $"{d.Title}\t{d.Kind}\t{d.Level}\t{d.Address}")) : "",
        ];
        return Sha(Encoding.UTF8.GetBytes(string.Join('\0', parts.Select(p => p.Length.ToString(System.Globalization.CultureInfo.InvariantCulture) + ":" + p))));
    }

    /// <summary>The files beside a pattern, as they are now.</summary>
    /// <param name="names">Their names as the pattern says them.</param>
    /// <param name="folder">The pattern's folder.</param>
    public static ImmutableArray<(string Name, string Sha256)> BesideOf(IEnumerable<string> names, string folder) =>
        [.. names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(n => (n, ShaOf(InputFiles.FullPathOf(n, folder))))];

    /// <summary>The SHA-256 of a file in small hexadecimal digits; empty where it cannot be read.</summary>
    public static string ShaOf(string? path)
    {
        try
        {
            return path is not null && new FileInfo(path) is { Exists: true, Length: <= MostBytes } ? Sha(File.ReadAllBytes(path)) : "";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    private static string Sha(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
