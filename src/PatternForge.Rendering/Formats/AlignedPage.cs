using System.Text;
using PatternForge.Rendering.Documents;

namespace PatternForge.Rendering.Formats;

/// <summary>A page of another form, laid beside the page of the pattern as it is written.</summary>
internal sealed class AlignedPage
{
    private AlignedPage(PageForm form, PageTokens tokens, List<Hunk> hunks, bool isSame) => (Form, Tokens, Hunks, IsSame) = (form, tokens, hunks, isSame);

    /// <summary>Which form.</summary>
    public PageForm Form { get; }

    /// <summary>Its page, with the identifiers of the plain one.</summary>
    public PageTokens Tokens { get; }

    /// <summary>Where it differs, in the order of the page.</summary>
    public List<Hunk> Hunks { get; }

    /// <summary>True when it does not differ at all.</summary>
    public bool IsSame { get; }

    /// <summary>Lays a page beside another; null where the two are built too differently.</summary>
    /// <param name="plain">The page of the pattern as it is written.</param>
    /// <param name="form">The other.</param>
    /// <param name="pool">Where the tokens of both are kept.</param>
    public static AlignedPage? Of(PageTokens plain, PageForm form, TokenPool pool)
    {
        var own = PageTokens.Of(form.Html, pool);
        if (plain.All.AsSpan().SequenceEqual(own.All))
        {
            return new(form, plain, [], true);
        }

        if (Renamed(plain, own, pool) is not { } tokens || Documents.Hunks.Between(LinesOf(plain), LinesOf(tokens)) is not { } lines)
        {
            return null;
        }

        var hunks = new List<Hunk>();
        foreach (var (start, end, otherStart, otherEnd) in lines)
        {
            // Lines that are as many on both sides are laid beside each other one by one.
            var pairs = end - start == otherEnd - otherStart ? end - start : 0;
            for (var i = 0; i < Math.Max(pairs, 1); i++)
            {
                var (from, to) = pairs == 0 ? (plain.Lines[start], plain.Lines[end]) : (plain.Lines[start + i], plain.Lines[start + i + 1]);
                var (otherFrom, otherTo) = pairs == 0 ? (tokens.Lines[otherStart], tokens.Lines[otherEnd]) : (tokens.Lines[otherStart + i], tokens.Lines[otherStart + i + 1]);
                if (Documents.Hunks.Between(plain.Keys.AsSpan(from, to - from), tokens.Keys.AsSpan(otherFrom, otherTo - otherFrom), from, otherFrom) is not { } found)
                {
                    return null;
                }

                var least = from;
                for (var n = 0; n < found.Count; n++)
                {
                    hunks.Add(Slid(plain, tokens, found[n], least, n + 1 == found.Count ? to : found[n + 1].Start));
                    least = hunks[^1].End;
                }
            }
        }

        return new(form, tokens, hunks, false);
    }

    /// <summary>Where a boundary of the plain page lies in this one: before what stands here alone at this place, or after it where the boundary is an end.</summary>
    public int Map(int at, bool isEnd)
    {
        var (low, high) = (0, Hunks.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            var hunk = Hunks[middle];
            if (hunk.End < at || (hunk.End == at && (isEnd || hunk.Start < at)))
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low == 0 ? at : Hunks[low - 1].OtherEnd + (at - Hunks[low - 1].End);
    }

    /// <summary>The text here of a stretch of the plain page.</summary>
    public string Text(int start, int end) => Tokens.Text(Map(start, isEnd: false), Map(end, isEnd: true));

    /// <summary>The differences that overlap or touch a stretch of the plain page.</summary>
    public IEnumerable<Hunk> Touching(int start, int end)
    {
        var (low, high) = (0, Hunks.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Hunks[middle].End < start ? (middle + 1, high) : (low, middle);
        }

        for (var i = low; i < Hunks.Count && Hunks[i].Start <= end; i++)
        {
            yield return Hunks[i];
        }
    }

    /// <summary>The same difference a few tokens further, where that makes whole elements of it: of `1 /td td 2 /td` it is the second cell that went, and not the end of one and the beginning of another.</summary>
    private static Hunk Slid(PageTokens plain, PageTokens other, Hunk hunk, int least, int most)
    {
        var isHere = hunk.OtherStart == hunk.OtherEnd;
        if (!isHere && hunk.Start != hunk.End)
        {
            return hunk;
        }

        var (keys, start, end) = isHere ? (plain.Keys, hunk.Start, hunk.End) : (other.Keys, hunk.OtherStart, hunk.OtherEnd);
        var right = most - hunk.End;
        var left = hunk.Start - least;
        for (var by = 0; by <= right; by++)
        {
            if (IsWhole(keys, start + by, end + by))
            {
                return Moved(by);
            }

            if (end + by >= keys.Length || keys[start + by] != keys[end + by])
            {
                break;
            }
        }

        for (var by = 1; by <= left && keys[start - by] == keys[end - by]; by++)
        {
            if (IsWhole(keys, start - by, end - by))
            {
                return Moved(-by);
            }
        }

        return hunk;

        Hunk Moved(int by) => new(hunk.Start + by, hunk.End + by, hunk.OtherStart + by, hunk.OtherEnd + by);
    }

    private static bool IsWhole(string[] keys, int start, int end)
    {
        var depth = 0;
        for (var i = start; i < end; i++)
        {
            depth += PageTokens.Step(keys[i]);
            if (depth < 0)
            {
                return false;
            }
        }

        return depth == 0;
    }

    private static string[] LinesOf(PageTokens page) =>
        [.. Enumerable.Range(0, page.Lines.Length - 1).Select(i => string.Concat(page.Keys.AsSpan(page.Lines[i], page.Lines[i + 1] - page.Lines[i])!))];

    /// <summary>A page with the identifiers of another, which has them at the same places; null where the two have not the same number.</summary>
    private static PageTokens? Renamed(PageTokens plain, PageTokens page, TokenPool pool)
    {
        string[] names = [.. Ids(plain)];
        string[] own = [.. Ids(page)];
        if (names.Length != own.Length)
        {
            return null;
        }

        var changed = own.Zip(names).Where(p => p.First != p.Second).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal);
        if (changed.Count == 0)
        {
            return page;
        }

        var html = new StringBuilder();
        foreach (var token in page.All)
        {
            html.Append(token[0] == '<' ? Renamed(token, changed) : token);
        }

        return PageTokens.Of(html.ToString(), pool);
    }

    private static IEnumerable<string> Ids(PageTokens page) => page.All.Where(t => t[0] == '<').Select(t => PageTokens.Value(t, "id")).OfType<string>();

    private static string Renamed(string tag, Dictionary<string, string> names)
    {
        foreach (var attribute in new[] { "id", "for", "aria-labelledby", "data-piece" })
        {
            if (PageTokens.Value(tag, attribute) is { Length: > 0 } value)
            {
                tag = tag.Replace($" {attribute}=\"{value}\"", $" {attribute}=\"{string.Join(' ', value.Split(' ').Select(n => names.GetValueOrDefault(n, n)))}\"", StringComparison.Ordinal);
            }
        }

        return PageTokens.Value(tag, "href") is ['#', .. var target] && names.TryGetValue(target, out var now) ? tag.Replace($" href=\"#{target}\"", $" href=\"#{now}\"", StringComparison.Ordinal) : tag;
    }
}
