using System.Globalization;
using System.Text;
using System.Text.Json;
using PatternForge.Core.Corrections;

namespace PatternForge.Cli.Reporting;

/// <summary>What changed between two versions, for makers, for pages and for other programs.</summary>
internal static class DiffReport
{
    /// <summary>The headings that differences are told under, the most urgent first.</summary>
    public static IEnumerable<(CorrectionWeight Weight, string Heading)> Groups { get; } =
    [
        (CorrectionWeight.AtWork, "For everybody who is making it"),
        (CorrectionWeight.NotBegun, "For those who have not begun"),
        (CorrectionWeight.Wording, "Other words, the same stitches"),
    ];

    /// <summary>What is said where nothing changed.</summary>
    public const string Nothing = "nothing has changed in meaning";

    /// <summary>The title with both versions: "Ferryman cuff, version 1.1 to 1.2".</summary>
    public static string Heading(Comparison comparison)
    {
        var versions = comparison is { OldVersion: { } old, NewVersion: { } now } && old != now ? $"version {old} to {now}"
            : comparison.NewVersion is { } version ? $"version {version}"
            : "";
        return string.Join(", ", new[] { comparison.Title ?? "Untitled pattern", versions }.Where(s => s.Length > 0));
    }

    /// <summary>For people.</summary>
    public static string Text(Comparison comparison, Paint paint)
    {
        var page = new StringBuilder();
        page.Append(paint.Strong(DisplayText.OneLine(Heading(comparison)))).Append('\n');
        foreach (var (weight, heading) in Groups)
        {
            var some = comparison.Corrections.Where(c => c.Weight == weight).ToArray();
            if (some.Length == 0)
            {
                continue;
            }

            page.Append('\n').Append(paint.Strong(heading)).Append("\n\n");
            foreach (var correction in some)
            {
                page.Append("  ").Append(DisplayText.OneLine(correction.Sentence)).Append('\n');
                foreach (var (word, said) in Lines(correction))
                {
                    page.Append(paint.Faint($"      {word}: {DisplayText.OneLine(said)}")).Append('\n');
                }
            }
        }

        if (comparison.Corrections.IsEmpty)
        {
            page.Append('\n').Append(Nothing).Append('\n');
        }

        if (!comparison.Unread.IsEmpty)
        {
            page.Append('\n').Append(paint.Strong("Not understood, and compared by the words alone")).Append("\n\n");
            foreach (var place in comparison.Unread)
            {
                page.Append(CultureInfo.InvariantCulture, $"  {(place.IsNew ? "new" : "old")} file, line {place.Line}: {DisplayText.OneLine(place.Words)}\n");
            }
        }

        return page.ToString();
    }

    /// <summary>For a page, a newsletter or a repository.</summary>
    public static string Markdown(Comparison comparison)
    {
        var page = new StringBuilder();
        page.Append("# Corrections: ").Append(Escaped(Heading(comparison))).Append('\n');
        foreach (var (weight, heading) in Groups)
        {
            var some = comparison.Corrections.Where(c => c.Weight == weight).ToArray();
            if (some.Length == 0)
            {
                continue;
            }

            page.Append("\n## ").Append(heading).Append("\n\n");
            foreach (var correction in some)
            {
                page.Append("- ").Append(correction.Place.Length > 0 ? $"**{Escaped(correction.Place)}:** " : "").Append(Escaped(correction.Text)).Append('\n');
                foreach (var (word, said) in Lines(correction))
                {
                    page.Append("  - ").Append(word).Append(": ").Append(Escaped(said)).Append('\n');
                }
            }
        }

        if (comparison.Corrections.IsEmpty)
        {
            page.Append("\nNothing has changed in meaning.\n");
        }

        if (!comparison.Unread.IsEmpty)
        {
            page.Append("\n## Not understood, and compared by the words alone\n\n");
            foreach (var place in comparison.Unread)
            {
                page.Append(CultureInfo.InvariantCulture, $"- {(place.IsNew ? "new" : "old")} file, line {place.Line}: {Escaped(place.Words)}\n");
            }
        }

        return page.ToString();
    }

    /// <summary>For other programs, on one line.</summary>
    public static string Json(string old, string now, Comparison comparison) => JsonSerializer.Serialize(
        new DiffShape(
            1,
            Words.WellFormed(old),
            Words.WellFormed(now),
            Clean(comparison.Title),
            Clean(comparison.OldVersion),
            Clean(comparison.NewVersion),
            [.. comparison.Corrections.Select(c => new CorrectionShape(
                Word(c.Subject),
                Word(c.Weight),
                Words.WellFormed(c.Section),
                Words.WellFormed(c.Label),
                c.Sizes.IsEmpty ? null : [.. c.Sizes.Select(Words.WellFormed)],
                Words.WellFormed(c.Text),
                Clean(c.Was),
                Clean(c.Now),
                Clean(c.Why),
                c.OldLine,
                c.NewLine))],
            [.. comparison.Unread.Select(u => new UnreadPlaceShape(u.IsNew ? "new" : "old", u.Line, Words.WellFormed(u.Words)))]),
        JsonReport.Shapes.DiffShape) + "\n";

    /// <summary>The list of corrections as it goes into the header. Changes of wording alone are left out.</summary>
    public static string Yaml(Comparison comparison, DateOnly today)
    {
        var page = new StringBuilder("corrections:\n");
        var some = comparison.Corrections.Where(c => c.Weight != CorrectionWeight.Wording).ToArray();
        foreach (var correction in some)
        {
            page.Append("  - version: ").Append(Quoted(comparison.NewVersion ?? "")).Append('\n');
            page.Append("    date: ").Append(comparison.NewDate is { } date && comparison.NewVersion != comparison.OldVersion ? Quoted(date) : today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)).Append('\n');
            if (!correction.Sizes.IsEmpty)
            {
                page.Append("    sizes: [").Append(string.Join(", ", correction.Sizes.Select(Quoted))).Append("]\n");
            }

            var place = string.Join(", ", new[] { correction.Section, correction.Label }.Where(s => s.Length > 0));
            if (place.Length > 0)
            {
                page.Append("    rows: ").Append(Quoted(place)).Append('\n');
            }

            var text = char.ToUpperInvariant(correction.Text[0]) + correction.Text[1..];
            page.Append("    text: ").Append(Quoted(correction is { Now: { } now } && correction.Text.EndsWith("new", StringComparison.Ordinal) ? $"{text}: {now}" : text)).Append('\n');
        }

        return some.Length == 0 ? "corrections: []\n" : page.ToString();
    }

    /// <summary>The lines under a difference: how it was, how it is, and why it matters.</summary>
    public static IEnumerable<(string Word, string Said)> Lines(Correction correction)
    {
        if (correction.Was is { Length: > 0 } was)
        {
            yield return ("was", was);
        }

        if (correction.Now is { Length: > 0 } now)
        {
            yield return ("now", now);
        }

        if (correction.Why is { } why)
        {
            yield return ("why", why);
        }
    }

    private static string Word(CorrectionSubject subject) => subject switch
    {
        CorrectionSubject.Row => "row",
        CorrectionSubject.Section => "section",
        CorrectionSubject.Chart => "chart",
        CorrectionSubject.Sizes => "sizes",
        CorrectionSubject.Measurement => "measurement",
        CorrectionSubject.Gauge => "gauge",
        CorrectionSubject.Yarn => "yarn",
        CorrectionSubject.Tools => "tools",
        CorrectionSubject.Stitches => "stitches",
        CorrectionSubject.Care => "care",
        CorrectionSubject.Notes => "notes",
        _ => "words",
    };

    private static string Word(CorrectionWeight weight) => weight switch
    {
        CorrectionWeight.AtWork => "at-work",
        CorrectionWeight.NotBegun => "not-begun",
        _ => "wording",
    };

    private static string? Clean(string? text) => text is null ? null : Words.WellFormed(text);

    private static string Quoted(string text)
    {
        var said = new StringBuilder("\"");
        foreach (var rune in Words.WellFormed(text).EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '"' => said.Append("\\\""),
                '\\' => said.Append("\\\\"),
                < 0x20 or 0x7F => said.Append(' '),
                _ => said.Append(rune.ToString()),
            };
        }

        return said.Append('"').ToString();
    }

    /// <summary>A text that stands in Markdown as it is.</summary>
    public static string Escaped(string text)
    {
        var said = new StringBuilder(text.Length + 8);
        foreach (var c in Words.WellFormed(text))
        {
            if (c is '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '#' or '|' or '&' or '~')
            {
                said.Append('\\');
            }

            said.Append(char.IsControl(c) ? ' ' : c);
        }

        return said.ToString();
    }
}
