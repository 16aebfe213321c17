using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Model;

namespace PatternForge.Rendering.Documents;

/// <summary>What a page in mirror image says of itself: what is mirrored, and what is not.</summary>
internal static class MirrorNotes
{
    private static readonly string[] Endings = ["lc", "rc", "lt", "rt", "lpc", "rpc"];

    /// <summary>The sentences.</summary>
    public static ImmutableArray<string> Of(Compilation compilation)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        var hasDrawings = !compilation.Charts.IsEmpty || !compilation.Diagrams.IsEmpty || compilation.Outlines.Any(o => o.IsDrawn);
        notes.Add("For left-handed makers who work in mirror image, from left to right: what is made is the mirror image of the pattern.");
        var hasSides = HasSides(compilation);
        if (hasSides || hasDrawings)
        {
            notes.Add((hasSides, hasDrawings) switch
            {
                (true, true) => "Left and right have changed places in the words, and drawings are mirrored",
                (true, false) => "Left and right have changed places in the words",
                _ => "Drawings are mirrored",
            } + (compilation.Charts.IsEmpty ? "." : ": right-side rows of a chart begin at its left edge."));
        }

        var names = compilation.Abbreviations.Select(a => a.Name).Where(IsOfADirection).Distinct(StringComparer.OrdinalIgnoreCase).Take(6).ToArray();
        var such = names.Length > 0 ? $" ({string.Join(", ", names)})" : "";
        notes.Add($"Rows, counts and the names of stitches are not changed: work each stitch as it is defined, with the hands exchanged. One that leans or crosses to one side then leans or crosses to the other, whatever its name says{such}.");
        if (compilation.Lines.Any(l => l.Text.Contains("buttonhole", StringComparison.OrdinalIgnoreCase) || l.Piece.Contains("button", StringComparison.OrdinalIgnoreCase)))
        {
            notes.Add("Buttonholes come to lie on the other front than in the pattern as it is written.");
        }

        var facts = compilation.Pattern.Facts;
        if (!facts.Photos.IsEmpty || !facts.Videos.IsEmpty)
        {
            notes.Add(facts.Videos.IsEmpty ? "Photos are not mirrored." : facts.Photos.IsEmpty ? "Videos are not mirrored." : "Photos and videos are not mirrored.");
        }

        return notes.ToImmutable();
    }

    private static bool HasSides(Compilation compilation)
    {
        var terms = compilation.Pattern.Facts.TermsInForce;
        bool Changes(string? words) => words is not null && MirrorWords.In(words, terms) != words;
        return compilation.Lines.Any(l => Changes(l.Text) || Changes(l.Label))
            || compilation.Pattern.Sections.Any(s => Changes(s.Heading) || s.Blocks.Any(b => b is ProseBlock prose && Changes(prose.Markdown)))
            || compilation.Pattern.Facts.Stitches.Any(s => Changes(s.How));
    }

    private static bool IsOfADirection(string name)
    {
        var lower = name.ToLowerInvariant();
        return Array.Exists(Endings, e => lower.EndsWith(e, StringComparison.Ordinal)) || (name.Length > 2 && name[^1] is 'L' or 'R' && char.IsAsciiDigit(name[^2])) || lower is "lli" or "rli" or "ssk" or "k2tog" or "skp" or "skpo";
    }
}
