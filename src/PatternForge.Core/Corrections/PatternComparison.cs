using PatternForge.Core.Work;

namespace PatternForge.Core.Corrections;

/// <summary>
/// Works two versions of a pattern and tells what changed in meaning, in the words of the trade. How rows are put on paper (blanks, line breaks, spelling, the
/// form of repeats, the order of header keys) is no difference. Files with errors are compared as well.
/// </summary>
public static class PatternComparison
{
    private const int MostUnread = 50;

    /// <summary>Holds two compiled versions against each other.</summary>
    /// <param name="old">The old version.</param>
    /// <param name="now">The new one.</param>
    /// <param name="inNewTerms">Says words of the old version in the terms of the new one; null where nobody does, and then such words are told as other ones.</param>
    public static Comparison Compare(Compilation old, Compilation now, Func<string, string>? inNewTerms = null)
    {
        var versions = new Versions(old, now) { InNewTerms = inNewTerms ?? (words => words) };
        HeaderComparison.Compare(versions);
        BodyComparison.Compare(versions);
        return new Comparison
        {
            Title = now.Pattern.Facts.Title?.Value,
            OldVersion = old.Pattern.Facts.Version,
            NewVersion = now.Pattern.Facts.Version,
            NewDate = now.Pattern.Facts.Date,
            Sizes = [.. now.Pattern.Facts.Sizes.Names.Concat(versions.Removed).Where(n => n.Length > 0)],
            Corrections = versions.Corrections,
            Unread = [.. Unread(old, isNew: false), .. Unread(now, isNew: true)],
        };
    }

    private static IEnumerable<UnreadPlace> Unread(Compilation compilation, bool isNew) =>
        compilation.Lines.Where(l => l.Status == LineStatus.Unread).Take(MostUnread).Select(l => new UnreadPlace(isNew, compilation.LineOf(l.Origin), Words.OneLine((l.Label.Length > 0 ? l.Label + ": " : "") + l.Text)));
}
