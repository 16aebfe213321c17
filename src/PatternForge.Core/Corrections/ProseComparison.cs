using System.Collections.Immutable;
using PatternForge.Core.Model;

namespace PatternForge.Core.Corrections;

/// <summary>Holds what is written between the rows against each other.</summary>
internal static class ProseComparison
{
    /// <summary>What the prose of a section is compared by.</summary>
    public static string KeyOf(Section section) => Words.Key(Words.Of(TextOf(section)));

    /// <summary>Adds what is different in the prose of a section, with lines that stand for prose in their places.</summary>
    public static void Compare(Versions versions, Section old, Section now, ImmutableArray<RowItem> oldLines, ImmutableArray<RowItem> newLines)
    {
        var (a, b) = (TextOf(old, oldLines), TextOf(now, newLines));
        Text(versions, SubjectOf(now), now.Heading, "", a, b, versions.Old.LineOf(old.Origin), versions.New.LineOf(now.Origin));
    }

    /// <summary>Adds a difference in words. Where the numbers in them are other ones it may matter at work; else it is wording.</summary>
    public static void Text(Versions versions, CorrectionSubject subject, string section, string label, string? old, string? now, int? oldLine, int? newLine, CorrectionWeight? weight = null)
    {
        var (a, b) = (Words.Of(old ?? ""), Words.Of(now ?? ""));
        if (Words.Key(a) == Words.Key(b))
        {
            return;
        }

        a = Words.Of(versions.InNewTerms(old ?? ""));
        if (Words.Key(a) == Words.Key(b))
        {
            return; // the same in other terms
        }

        var (was, isNow) = Words.Changed(old ?? "", now ?? "");
        var numbers = Words.NumbersOnly(a, b);
        var telling = !a.Where(w => w.IsNumber).Select(w => w.Key).SequenceEqual(b.Where(w => w.IsNumber).Select(w => w.Key), StringComparer.Ordinal);
        versions.Add(new Correction
        {
            Subject = subject,
            Weight = weight ?? (telling ? CorrectionWeight.AtWork : CorrectionWeight.Wording),
            Section = section,
            Label = label,
            Text = a.Count == 0 ? "this is new" : b.Count == 0 ? "this is gone" : numbers ?? "the words have changed",
            Was = a.Count == 0 ? null : was,
            Now = b.Count == 0 ? null : isNow,
            OldLine = a.Count == 0 ? null : oldLine,
            NewLine = b.Count == 0 ? null : newLine,
        });
    }

    private static string TextOf(Section section, ImmutableArray<RowItem> lines = default) => string.Join(
        "\n\n",
        section.Blocks.OfType<ProseBlock>().Select(b => (b.Origin.Start, Text: b.Markdown))
            .Concat(lines.IsDefault ? [] : lines.Select(l => (l.Origin.Start, l.Text)))
            .OrderBy(p => p.Start)
            .Select(p => p.Text));

    private static CorrectionSubject SubjectOf(Section section) => section.Role switch
    {
        "care" => CorrectionSubject.Care,
        "notes" => CorrectionSubject.Notes,
        _ => CorrectionSubject.Words,
    };
}
