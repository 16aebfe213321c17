using System.Collections.Immutable;
using System.Globalization;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Corrections;

/// <summary>Holds the headers of two versions against each other, fact by fact.</summary>
internal static class HeaderComparison
{
    /// <summary>Adds what is different.</summary>
    public static void Compare(Versions versions)
    {
        var (old, now) = (versions.Old.Pattern.Facts, versions.New.Pattern.Facts);
        Sizes(versions);
        Said(versions, CorrectionSubject.Words, "Title", old.Title?.Value, now.Title?.Value, CorrectionWeight.Wording, old.Title?.Origin, now.Title?.Origin);
        Said(versions, CorrectionSubject.Words, "Designer", old.Designer, now.Designer, CorrectionWeight.Wording);
        Said(versions, CorrectionSubject.Words, "Craft", old.Craft.ToString(), now.Craft.ToString(), CorrectionWeight.AtWork);
        Terms(versions, old, now);
        Said(versions, CorrectionSubject.Words, "Level", old.Level?.Value.ToString(), now.Level?.Value.ToString(), CorrectionWeight.NotBegun, old.Level?.Origin, now.Level?.Origin);
        Said(versions, CorrectionSubject.Words, "Level", old.LevelReason, now.LevelReason, CorrectionWeight.Wording);
        Said(versions, CorrectionSubject.Words, "Summary", old.Summary, now.Summary, CorrectionWeight.Wording);
        Said(versions, CorrectionSubject.Words, "Audience", old.Audience?.Value.ToString(), now.Audience?.Value.ToString(), CorrectionWeight.NotBegun, old.Audience?.Origin, now.Audience?.Origin);
        Each(versions, CorrectionSubject.Words, "Techniques", Items(old.Techniques), Items(now.Techniques), CorrectionWeight.NotBegun);
        Measurements(versions, "Body measurements", old.Fits, now.Fits);
        Measurements(versions, "Finished measurements", old.Finished, now.Finished);
        Said(versions, CorrectionSubject.Measurement, "Ease", old.Ease, now.Ease, CorrectionWeight.NotBegun);
        Gauges(versions, old, now);
        YarnComparison.Compare(versions);
        Each(versions, CorrectionSubject.Tools, "Tools", Items(old.Tools), Items(now.Tools), CorrectionWeight.NotBegun);
        Each(versions, CorrectionSubject.Tools, "Notions", Items(old.Notions), Items(now.Notions), CorrectionWeight.NotBegun);
        Stitches(versions, old, now);
        Each(versions, CorrectionSubject.Notes, "Notes", Items(old.Notes), Items(now.Notes), CorrectionWeight.AtWork);
        Named(versions, CorrectionSubject.Chart, "Charts", [.. old.Charts.Select(c => (c.Name, Values(c.Values, q => q?.ToString() ?? "-"), c.Origin))], [.. now.Charts.Select(c => (c.Name, Values(c.Values, q => q?.ToString() ?? "-"), c.Origin))], CorrectionWeight.AtWork);
        Each(versions, CorrectionSubject.Care, "Care", [.. old.Care.Select(c => (c.Text, c.Origin))], [.. now.Care.Select(c => (c.Text, c.Origin))], CorrectionWeight.AtWork);
        Said(versions, CorrectionSubject.Words, "Photos show", Shown(old), Shown(now), CorrectionWeight.Wording);
        Each(versions, CorrectionSubject.Words, "Photos", [.. old.Photos.Select(p => ($"{p.Alt} {p.Caption}", p.Origin))], [.. now.Photos.Select(p => ($"{p.Alt} {p.Caption}", p.Origin))], CorrectionWeight.Wording);
        Each(versions, CorrectionSubject.Words, "Videos", Items(old.Videos), Items(now.Videos), CorrectionWeight.Wording);
        Each(versions, CorrectionSubject.Words, "Links", Items(old.Links), Items(now.Links), CorrectionWeight.Wording);
        Said(versions, CorrectionSubject.Words, "Contact", old.Contact, now.Contact, CorrectionWeight.Wording);
    }

    /// <summary>Adds a difference of values that may differ by size.</summary>
    /// <param name="versions">The versions.</param>
    /// <param name="correction">What it is about, without its sentence.</param>
    /// <param name="old">The value in a size of the old version, by that version's number of it: what it is compared by, and as it is told; null where it says none.</param>
    /// <param name="now">The same in the new version.</param>
    public static void BySize(Versions versions, Correction correction, Func<int, (string Key, string Said)?> old, Func<int, (string Key, string Said)?> now)
    {
        var said = new string?[versions.Sizes.Length];
        for (var i = 0; i < said.Length; i++)
        {
            var (was, isNow) = (old(versions.Sizes[i].Old), now(versions.Sizes[i].New));
            said[i] = was?.Key == isNow?.Key ? null : was is null ? $"{isNow!.Value.Said} (it was not told)" : isNow is null ? $"no longer told (was {was.Value.Said})" : $"{isNow.Value.Said}, not {was.Value.Said}";
        }

        versions.AddBySize(
            said,
            () => $"{Versions.List([.. versions.Sizes.Where((_, i) => said[i] is not null).Select(s => now(s.New)?.Said ?? "–")])}, not {Versions.List([.. versions.Sizes.Where((_, i) => said[i] is not null).Select(s => old(s.Old)?.Said ?? "–")])}",
            text => correction with { Text = text });
    }

    /// <summary>A quantity as it is compared and as it is told: units make no difference.</summary>
    public static (string Key, string Said)? Quantity(Quantity? quantity) => quantity is null ? null
        : (string.Create(CultureInfo.InvariantCulture, $"{quantity.Unit.Dimension} {decimal.Round(quantity.InBase, 2):0.##} {(quantity.UpTo is { } upTo ? decimal.Round(upTo * quantity.Unit.InBase, 2) : null):0.##}"), quantity.ToString());

    /// <summary>The line of a place of the old version; null where there is none.</summary>
    public static int? OldLine(Versions versions, TextSpan? place) => place is { IsEmpty: false } p ? versions.Old.LineOf(p) : null;

    /// <summary>The line of a place of the new version; null where there is none.</summary>
    public static int? NewLine(Versions versions, TextSpan? place) => place is { IsEmpty: false } p ? versions.New.LineOf(p) : null;

    /// <summary>Adds a difference in one text of the header.</summary>
    public static void Said(Versions versions, CorrectionSubject subject, string label, string? old, string? now, CorrectionWeight weight, TextSpan? oldPlace = null, TextSpan? newPlace = null) =>
        ProseComparison.Text(versions, subject, "", label, old, now, OldLine(versions, oldPlace), NewLine(versions, newPlace), weight);

    /// <summary>Adds differences of a list of texts: what is gone and what is new, told as a change where one stands for one.</summary>
    public static void Each(Versions versions, CorrectionSubject subject, string label, ImmutableArray<(string Text, TextSpan Place)> old, ImmutableArray<(string Text, TextSpan Place)> now, CorrectionWeight weight)
    {
        string[] a = [.. old.Select(t => Words.Key(Words.Of(t.Text)) is var raw && now.Any(n => Words.Key(Words.Of(n.Text)) == raw) ? raw : Words.Key(Words.Of(versions.InNewTerms(t.Text))))];
        string[] b = [.. now.Select(t => Words.Key(Words.Of(t.Text)))];
        var gone = old.Where((_, i) => !b.Contains(a[i], StringComparer.Ordinal)).ToArray();
        var come = now.Where((_, i) => !a.Contains(b[i], StringComparer.Ordinal)).ToArray();
        for (var i = 0; i < Math.Max(gone.Length, come.Length); i++)
        {
            var (was, isNow) = (i < gone.Length ? gone[i].Text : null, i < come.Length ? come[i].Text : null);
            ProseComparison.Text(versions, subject, "", label, was, isNow, i < gone.Length ? OldLine(versions, gone[i].Place) : null, i < come.Length ? NewLine(versions, come[i].Place) : null, weight);
        }
    }

    private static void Sizes(Versions versions)
    {
        var (old, now) = (versions.Old.Pattern.Facts, versions.New.Pattern.Facts);
        Correction About(string text) => new()
        {
            Subject = CorrectionSubject.Sizes,
            Weight = CorrectionWeight.NotBegun,
            Label = "Sizes",
            Text = text,
            OldLine = OldLine(versions, old.SizesOrigin),
            NewLine = NewLine(versions, now.SizesOrigin),
        };
        foreach (var name in versions.Added)
        {
            versions.Add(About($"size {name} is new"));
        }

        foreach (var name in versions.Removed)
        {
            versions.Add(About($"size {name} is gone"));
        }

        foreach (var (was, isNow) in versions.Renamed.Where(r => r.Old.Length > 0 || r.New.Length > 0))
        {
            versions.Add(About(was.Length == 0 ? $"the size has a name now: {isNow}" : isNow.Length == 0 ? $"size {was} has no name any more" : $"size {was} is called {isNow} now") with { Weight = CorrectionWeight.Wording });
        }
    }

    private static void Terms(Versions versions, PatternFacts old, PatternFacts now)
    {
        if (old.TermsInForce is { } was && now.TermsInForce is { } isNow && was != isNow)
        {
            versions.Add(new Correction
            {
                Subject = CorrectionSubject.Words,
                Weight = CorrectionWeight.AtWork,
                Label = "Terms",
                Text = $"written in {isNow.ToString().ToUpperInvariant()} terms, not in {was.ToString().ToUpperInvariant()} terms",
                Why = "the same name may stand for another stitch",
                OldLine = OldLine(versions, old.Terms?.Origin),
                NewLine = NewLine(versions, now.Terms?.Origin),
            });
        }
    }

    private static void Measurements(Versions versions, string label, ImmutableArray<Measurement> old, ImmutableArray<Measurement> now)
    {
        foreach (var name in now.Concat(old).Select(m => Words.Key(Words.Of(m.Name))).Distinct(StringComparer.Ordinal))
        {
            var (was, isNow) = (old.FirstOrDefault(m => Words.Key(Words.Of(m.Name)) == name), now.FirstOrDefault(m => Words.Key(Words.Of(m.Name)) == name));
            var about = new Correction
            {
                Subject = CorrectionSubject.Measurement,
                Weight = CorrectionWeight.NotBegun,
                Label = $"{label}, {(isNow ?? was)!.Name}",
                Text = "",
                OldLine = OldLine(versions, was?.Origin),
                NewLine = NewLine(versions, isNow?.Origin),
            };
            BySize(versions, about, s => Quantity(In(was?.Values, s)), s => Quantity(In(isNow?.Values, s)));
        }
    }

    private static void Gauges(Versions versions, PatternFacts old, PatternFacts now)
    {
        for (var i = 0; i < Math.Max(old.Gauges.Length, now.Gauges.Length); i++)
        {
            var isNow = i < now.Gauges.Length ? now.Gauges[i] : null;
            var was = isNow?.Name is { } name && old.Gauges.FirstOrDefault(g => g.Name == name) is { } named ? named : i < old.Gauges.Length ? old.Gauges[i] : null;
            var (oldLine, newLine) = (OldLine(versions, was?.Origin), NewLine(versions, isNow?.Origin));
            var label = isNow?.Name is { } said ? $"Gauge, {said}" : "Gauge";
            var about = new Correction { Subject = CorrectionSubject.Gauge, Weight = CorrectionWeight.NotBegun, Label = label, Text = "", OldLine = oldLine, NewLine = newLine };
            if (was is null || isNow is null)
            {
                versions.Add(about with { Text = was is null ? "this gauge is new" : "this gauge is gone", Was = was is null ? null : Sentence(was), Now = isNow is null ? null : Sentence(isNow) });
                continue;
            }

            // 22 stitches to 10 cm and 11 stitches to 5 cm are one gauge.
            if (PerTen(was.StitchesPerCm) != PerTen(isNow.StitchesPerCm) || PerTen(was.RowsPerCm) != PerTen(isNow.RowsPerCm))
            {
                versions.Add(about with { Text = $"{Sentence(isNow)}, not {Sentence(was)}", Why = "a gauge that is another one makes another size" });
            }

            ProseComparison.Text(versions, CorrectionSubject.Gauge, "", label, was.Stitch, isNow.Stitch, oldLine, newLine, CorrectionWeight.NotBegun);
            ProseComparison.Text(versions, CorrectionSubject.Gauge, "", label, was.Tool, isNow.Tool, oldLine, newLine, CorrectionWeight.NotBegun);
            if (was.Blocked is { } a && isNow.Blocked is { } b && a != b)
            {
                versions.Add(about with { Text = b ? "measured after blocking, not before" : "measured before blocking, not after" });
            }
        }

        Said(versions, CorrectionSubject.Gauge, "Gauge", old.GaugeRemark, now.GaugeRemark, CorrectionWeight.NotBegun);

        static decimal? PerTen(decimal? perCm) => perCm is { } n ? decimal.Round(n * 10, 2) : null;

        static string Sentence(Gauge g) => string.Join(" and ", new[]
        {
            g.Stitches is { } n ? $"{Words.Told(n)} stitches" + (g.Rows is not null && Equals(g.Width, g.Height) || g.Width is null ? "" : $" = {g.Width}") : null,
            g.Rows is { } r ? $"{Words.Told(r)} {(g.RowsAreRounds ? "rounds" : "rows")}" + (g.Height is null ? "" : $" = {g.Height}") : null,
        }.OfType<string>());
    }

    private static void Stitches(Versions versions, PatternFacts old, PatternFacts now)
    {
        Named(
            versions,
            CorrectionSubject.Stitches,
            "Special stitches",
            [.. old.Stitches.Select(s => (s.Name, s.How, s.Origin))],
            [.. now.Stitches.Select(s => (s.Name, s.How, s.Origin))],
            CorrectionWeight.AtWork);
        foreach (var stitch in now.Stitches)
        {
            if (old.Stitches.FirstOrDefault(s => s.Name == stitch.Name) is { } was)
            {
                Said(versions, CorrectionSubject.Stitches, $"Special stitches, {stitch.Name}", was.FullName, stitch.FullName, CorrectionWeight.Wording, was.Origin, stitch.Origin);
                if ((was.Takes, was.Makes) != (stitch.Takes, stitch.Makes) && was is { Takes: not null, Makes: not null } && stitch is { Takes: not null, Makes: not null })
                {
                    Said(versions, CorrectionSubject.Stitches, $"Special stitches, {stitch.Name}", $"uses {was.Takes} and makes {was.Makes}", $"uses {stitch.Takes} and makes {stitch.Makes}", CorrectionWeight.AtWork, was.Origin, stitch.Origin);
                }
            }
        }

        Named(
            versions,
            CorrectionSubject.Stitches,
            "Abbreviations",
            [.. (old.Abbreviations ?? []).Select(a => (versions.InNewTerms(a.Name), a.Meaning ?? "", a.Origin))],
            [.. (now.Abbreviations ?? []).Select(a => (a.Name, a.Meaning ?? "", a.Origin))],
            CorrectionWeight.AtWork);
    }

    private static void Named(Versions versions, CorrectionSubject subject, string label, ImmutableArray<(string Name, string Text, TextSpan Place)> old, ImmutableArray<(string Name, string Text, TextSpan Place)> now, CorrectionWeight weight)
    {
        foreach (var name in now.Concat(old).Select(n => n.Name).Distinct(StringComparer.OrdinalIgnoreCase))
        {
            var was = old.Where(o => string.Equals(o.Name, name, StringComparison.OrdinalIgnoreCase)).Select(o => ((string, TextSpan)?)(o.Text, o.Place)).FirstOrDefault();
            var isNow = now.Where(o => string.Equals(o.Name, name, StringComparison.OrdinalIgnoreCase)).Select(o => ((string, TextSpan)?)(o.Text, o.Place)).FirstOrDefault();
            if (was is { } a && isNow is { } b)
            {
                Said(versions, subject, $"{label}, {name}", a.Item1, b.Item1, weight, a.Item2, b.Item2);
                continue;
            }

            versions.Add(new Correction
            {
                Subject = subject,
                Weight = was is null ? CorrectionWeight.Wording : weight,
                Label = $"{label}, {name}",
                Text = was is null ? "this is new" : "this is gone",
                Was = was is { Item1.Length: > 0 } ? Words.OneLine(was.Value.Item1) : null,
                Now = isNow is { Item1.Length: > 0 } ? Words.OneLine(isNow.Value.Item1) : null,
                OldLine = OldLine(versions, was?.Item2),
                NewLine = NewLine(versions, isNow?.Item2),
            });
        }
    }

    /// <summary>A value in a size; null where there is none.</summary>
    public static T? In<T>(PerSize<T?>? values, int size)
        where T : class => values is null || (!values.IsShared && size >= values.Values.Length) ? null : values[size];

    private static string Values<T>(PerSize<T> values, Func<T, string> said) => Versions.List([.. values.Values.Select(said)]);

    private static string? Shown(PatternFacts facts) => facts.Shown is { } shown ? $"{shown.Size} {shown.Ease}".Trim() : null;

    private static ImmutableArray<(string, TextSpan)> Items(ImmutableArray<Located<string>> items) => [.. items.Select(i => (i.Value, i.Origin))];

    private static ImmutableArray<(string, TextSpan)> Items(ImmutableArray<Item> items) => [.. items.Select(i => (i.Text, i.Origin))];

    private static ImmutableArray<(string, TextSpan)> Items(ImmutableArray<Link> links) => [.. links.Select(l => (l.Title, l.Origin))];
}
