using System.Collections.Immutable;
using PatternForge.Core.Model;
using PatternForge.Core.Text;

namespace PatternForge.Core.Corrections;

/// <summary>Holds the yarns of two versions against each other.</summary>
internal static class YarnComparison
{
    private const int LongestName = 60;

    /// <summary>Adds what is different.</summary>
    public static void Compare(Versions versions)
    {
        var (old, now) = (versions.Old.Pattern.Facts.Yarns, versions.New.Pattern.Facts.Yarns);
        var matched = new HashSet<int>();
        for (var i = 0; i < now.Length; i++)
        {
            var at = Match(old, now[i], i);
            if (at < 0 || !matched.Add(at))
            {
                versions.Add(About(versions, null, now[i]) with { Text = "this yarn is new", Now = now[i].Name });
                continue;
            }

            One(versions, old[at], now[i]);
        }

        foreach (var (yarn, _) in old.Select((y, i) => (y, i)).Where(p => !matched.Contains(p.i)))
        {
            versions.Add(About(versions, yarn, null) with { Text = "this yarn is gone", Was = yarn.Name });
        }
    }

    private static int Match(ImmutableArray<Yarn> old, Yarn yarn, int place)
    {
        var list = old.ToList();
        var at = yarn.Label is { } label ? list.FindIndex(y => string.Equals(y.Label, label, StringComparison.OrdinalIgnoreCase)) : -1;
        at = at >= 0 ? at : yarn.Name is { } name ? list.FindIndex(y => string.Equals(y.Name, name, StringComparison.OrdinalIgnoreCase)) : -1;
        return at >= 0 ? at : place < list.Count ? place : -1;
    }

    private static void One(Versions versions, Yarn old, Yarn now)
    {
        var about = About(versions, old, now);
        void Say(string? was, string? isNow, CorrectionWeight weight) =>
            ProseComparison.Text(versions, CorrectionSubject.Yarn, "", about.Label, was, isNow, about.OldLine, about.NewLine, weight);

        // Two names stand side by side in one sentence: what words they share tells nothing.
        void Name(string? was, string? isNow)
        {
            if (was is { Length: > 0 } && isNow is { Length: > 0 } && Math.Max(was.Length, isNow.Length) <= LongestName)
            {
                if (Words.Key(Words.Of(was)) != Words.Key(Words.Of(isNow)) && Words.Key(Words.Of(versions.InNewTerms(was))) != Words.Key(Words.Of(isNow)))
                {
                    versions.Add(about with { Text = $"{Words.OneLine(isNow)}, not {Words.OneLine(was)}" });
                }
            }
            else
            {
                Say(was, isNow, CorrectionWeight.NotBegun);
            }
        }

        Name(old.Name, now.Name);
        Name(old.Fibre, now.Fibre);
        if (old.WeightClass is null || now.WeightClass is null || old.WeightClass != now.WeightClass)
        {
            Name(old.Weight, now.Weight);
        }

        Say(string.Join(", ", old.Colours), string.Join(", ", now.Colours), CorrectionWeight.Wording);
        foreach (var (was, isNow, what) in new[] { (old.PutUpMass, now.PutUpMass, "a ball weighs"), (old.PutUpLength, now.PutUpLength, "a ball measures") })
        {
            if (HeaderComparison.Quantity(was)?.Key != HeaderComparison.Quantity(isNow)?.Key)
            {
                versions.Add(about with { Text = $"{what} {(isNow is null ? "nothing that is told" : isNow.ToString())}{(was is null ? "" : $", not {was}")}" });
            }
        }

        if (old.Strands != now.Strands)
        {
            versions.Add(about with { Weight = CorrectionWeight.AtWork, Text = $"{now.Strands} {(now.Strands == 1 ? "strand" : "strands")}, not {old.Strands}" });
        }

        var needsMore = versions.Sizes.Any(s => HeaderComparison.In(old.Needs, s.Old) is { } a && HeaderComparison.In(now.Needs, s.New) is { } b && a.Unit.Dimension == b.Unit.Dimension && b.InBase > a.InBase);
        HeaderComparison.BySize(
            versions,
            about with { Label = about.Label + ", amount", Weight = needsMore ? CorrectionWeight.AtWork : CorrectionWeight.NotBegun, Why = needsMore ? "the amount that was told may not be enough" : null, OldLine = HeaderComparison.OldLine(versions, old.NeedsOrigin ?? old.Origin), NewLine = HeaderComparison.NewLine(versions, now.NeedsOrigin ?? now.Origin) },
            s => HeaderComparison.Quantity(HeaderComparison.In(old.Needs, s)),
            s => HeaderComparison.Quantity(HeaderComparison.In(now.Needs, s)));
        HeaderComparison.Each(versions, CorrectionSubject.Yarn, about.Label + ", alternatives", Alternatives(old), Alternatives(now), CorrectionWeight.NotBegun);
    }

    private static ImmutableArray<(string, TextSpan)> Alternatives(Yarn yarn) => [.. yarn.Alternatives.Select(a => (AlternativeWords(a), a.Origin))];

    // "Ledge DK, 50 g = 115 m: a little heavier"
    private static string AlternativeWords(YarnAlternative other)
    {
        var ball = string.Join(" = ", new[] { other.PutUpMass?.ToString(), other.PutUpLength?.ToString() }.Where(q => q is not null));
        return other.Name + (ball.Length > 0 ? $", {ball}" : "") + (other.Note is { Length: > 0 } note ? $": {note}" : "");
    }

    private static Correction About(Versions versions, Yarn? old, Yarn? now) => new()
    {
        Subject = CorrectionSubject.Yarn,
        Weight = CorrectionWeight.NotBegun,
        Label = (now ?? old) is { } yarn && (yarn.Label ?? yarn.Name) is { } name && Math.Max(versions.Old.Pattern.Facts.Yarns.Length, versions.New.Pattern.Facts.Yarns.Length) > 1 ? $"Yarn {name}" : "Yarn",
        Text = "",
        OldLine = HeaderComparison.OldLine(versions, old?.Origin),
        NewLine = HeaderComparison.NewLine(versions, now?.Origin),
    };
}
