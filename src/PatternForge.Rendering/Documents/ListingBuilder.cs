using System.Collections.Immutable;
using System.Globalization;

namespace PatternForge.Rendering.Documents;

/// <summary>
/// Puts together what a buyer must know before paying. A listing has a bounded length, so each is made in several degrees of fullness: what is missed least goes first,
/// sizes and yarn stay to the last.
/// </summary>
internal static class ListingBuilder
{
    /// <summary>What the listing goes without at each degree after the first, in words.</summary>
    public static readonly ImmutableArray<string> GivenUp =
    [
        "the other yarns that will do",
        "the techniques",
        "the notions",
        "what the sample was",
        "the measurements in inches",
        "all but the beginning of the summary",
        "the other editions and files",
        "the tools",
        "what the release holds",
        "the body measurements",
        "the summary",
        "all but the first measurements",
        "all but the title, the level and the sizes",
        "all but the title",
    ];

    private const int FewMeasures = 3;
    private const int Least = 13;
    private const int LongestLine = 120;
    private const int LongestOpening = 160;

    /// <summary>The listing at a degree of fullness: 0 is all of it, <see cref="GivenUp"/>'s length the least.</summary>
    public static ListingView Build(PatternView view, ReleaseContents release, int degree)
    {
        var parts = ImmutableArray.CreateBuilder<ListingPartView>();
        if (degree > Least)
        {
            return new ListingView();
        }

        Add("Level", Level(view, degree));
        Add("Sizes", Sizes(view, degree));
        if (degree < Least)
        {
            Add("Yarn", Yarns(view, degree));
            Add(view.GaugeName, view.Gauges.Select(g => g.Name is { } name ? $"{Wording.Capital(name)}: {g.Sentence}" : g.Sentence).Append(view.GaugeRemark));
            Add("Tools", degree < 8 ? [Joined(view.Tools), degree < 3 ? Joined(view.Notions) : null] : []);
            Add("Language", [view.Terms is { } terms ? $"English, {terms} terms" : "English", degree < 7 && !release.Editions.IsEmpty ? $"Also in the release: {string.Join("; ", release.Editions)}" : null]);
            Add("In the release", degree < 9 ? Contents(view, release, degree) : []);
        }

        return new ListingView
        {
            Summary = degree < 6 ? view.Summary : degree < 11 && view.Summary is { } whole ? whole with { Markdown = Beginning(whole.Markdown) } : null,
            Parts = parts.ToImmutable(),
        };

        void Add(string name, IEnumerable<string?> lines)
        {
            ImmutableArray<string> said = [.. lines.Select(Wording.Said).OfType<string>().Select(l => degree < Least ? l : Cut(l, LongestLine))];
            if (!said.IsEmpty)
            {
                parts.Add(new ListingPartView { Name = name, Lines = said });
            }
        }
    }

    private static IEnumerable<string?> Level(PatternView view, int degree)
    {
        yield return view.Level is { } level ? Wording.Capital(view.LevelReason is { } why ? $"{level}: {why}" : level) : null;
        if (degree < 2 && view.Facts.FirstOrDefault(f => f.Name is "Techniques") is { } techniques)
        {
            yield return $"Techniques: {techniques.Value}";
        }
    }

    private static IEnumerable<string?> Sizes(PatternView view, int degree)
    {
        if (view.Sizes is not { } sizes)
        {
            yield break;
        }

        yield return sizes.List;
        foreach (var measure in sizes.Measures.Where(m => degree < 10 || m.Kind is "Finished").Take(degree < 12 ? int.MaxValue : FewMeasures))
        {
            yield return $"{measure.Kind} {measure.Name}: {measure.Metric}{(degree < 5 && measure.Imperial is { } inches ? $" / {inches}" : "")}";
        }

        yield return degree < 12 && sizes.Ease is { } ease ? $"Ease: {ease}" : null;
        if (degree < 4)
        {
            yield return sizes.Shown;
            yield return sizes.Sample;
        }
    }

    private static IEnumerable<string?> Yarns(PatternView view, int degree)
    {
        // One yarn in several colours is told once.
        foreach (var same in view.Yarns.GroupBy(y => (y.Name, y.Weight, y.Fibre, y.PutUp, y.Strands)))
        {
            var yarn = same.First();
            string?[] facts = [yarn.Weight, yarn.Fibre, yarn.PutUp, yarn.Grist, yarn.Strands, same.Count() == 1 && view.Amounts is null ? yarn.Needs : null];
            var labels = string.Join(", ", same.Select(y => y.Label).OfType<string>());
            yield return $"{(labels.Length > 0 ? labels + ": " : "")}{yarn.Name}: {string.Join("; ", facts.OfType<string>())}".TrimEnd(' ', ':');
            if (same.Count() > 1 && view.Amounts is null)
            {
                yield return string.Join("; ", same.Where(y => y.Needs is not null).Select(y => $"{y.Label ?? y.Name}: {y.Needs}"));
            }

            if (same.Sum(y => y.Colours.Length) > 1)
            {
                yield return $"{(view.Terms is "US" ? "Colors" : "Colours")}: {string.Join(", ", same.SelectMany(y => y.Colours))}";
            }

            foreach (var other in same.SelectMany(y => y.Alternatives).DistinctBy(a => (a.Name, a.PutUp)).Where(_ => degree < 1))
            {
                yield return "Or: " + string.Join(", ", new[] { other.Name, other.PutUp, other.Grist }.OfType<string>());
            }
        }

        if (view.Amounts is not { } amounts)
        {
            yield break;
        }

        var column = 0;
        foreach (var yarn in amounts.Yarns)
        {
            var told = new List<string>();
            for (var i = 0; i < yarn.Columns; i++, column++)
            {
                var (unit, at) = (amounts.Units[column], column);
                if (unit is not "m left" && (degree < 5 || unit is not "yd"))
                {
                    told.Add($"{Wording.TradeForm([.. amounts.Rows.Select(r => r.Cells[at])])} {unit}");
                }
            }

            yield return $"Needed{(amounts.Yarns.Length > 1 ? $" of {yarn.Name}" : "")}: {string.Join(", ", told)}";
        }
    }

    private static IEnumerable<string?> Contents(PatternView view, ReleaseContents release, int degree)
    {
        if (!release.Papers.IsEmpty)
        {
            var same = release.Papers.All(p => p.Pages == release.Papers[0].Pages);
            yield return same
                ? $"PDF for {string.Join(" and ", release.Papers.Select(p => p.Paper))}, {Counted(release.Papers[0].Pages, "page")}"
                : "PDF: " + string.Join(", ", release.Papers.Select(p => $"{Counted(p.Pages, "page")} of {p.Paper}"));
        }

        if (degree < 7)
        {
            foreach (var file in release.Files)
            {
                yield return Wording.Capital(file);
            }
        }

        if (view.Instructions.Any(s => s.HasRows))
        {
            yield return "Instructions in words, row by row";
        }

        foreach (var kind in view.Drawings.GroupBy(d => d.Kind).OrderBy(g => g.Key))
        {
            yield return Counted(kind.Count(), kind.Key switch { DrawingKind.Chart => "chart", DrawingKind.Diagram => "crochet diagram", DrawingKind.Schematic => "schematic", _ => "drawing of the stripes" });
        }

        string?[] seen = [view.Photos.IsEmpty ? null : Counted(view.Photos.Length, "photo"), view.Videos.IsEmpty ? null : $"links to {Counted(view.Videos.Length, "video")}"];
        yield return Wording.Capital(string.Join(", ", seen.OfType<string>()));
    }

    private static string Joined(ImmutableArray<LinkView> things) => string.Join("; ", things.Select(t => t.Text));

    private static string Counted(int number, string thing) => string.Create(CultureInfo.InvariantCulture, $"{number} {thing}{(number == 1 ? "" : "s")}");

    // The first sentence, or as many words as a short line holds; a mark that would be left open is not worth keeping.
    private static string Beginning(string markdown)
    {
        var line = string.Concat(markdown.ReplaceLineEndings(" ").Where(c => c is not ('*' or '_' or '`' or '[' or ']')));
        var end = line.IndexOf(". ", StringComparison.Ordinal);
        return Cut(end < 0 ? line : line[..(end + 1)], LongestOpening);
    }

    /// <summary>A text cut short at a word.</summary>
    public static string Cut(string text, int most)
    {
        if (text.Length <= most)
        {
            return text;
        }

        var end = text.LastIndexOf(' ', most - 1);
        end = end < most / 2 ? most - 1 : end;
        return (char.IsHighSurrogate(text[end - 1]) ? text[..(end - 1)] : text[..end]).TrimEnd(' ', ',', ';') + "…";
    }
}
