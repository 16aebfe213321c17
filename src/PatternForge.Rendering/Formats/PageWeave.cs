using System.Collections.Immutable;
using System.Text;

namespace PatternForge.Rendering.Formats;

/// <summary>A page in other terms or units.</summary>
/// <param name="Terms">The number of its terms; 0 for those of the pattern.</param>
/// <param name="Units">The number of its units; 0 for those of the pattern.</param>
/// <param name="Html">The page.</param>
internal sealed record PageForm(int Terms, int Units, string Html)
{
    /// <summary>The sign that this form goes by in the page.</summary>
    public char Sign => SignOf(Terms, Units);

    /// <summary>The sign of a form: <c>a</c> for the pattern as it is written.</summary>
    public static char SignOf(int terms, int units) => (char)('a' + (3 * terms) + units);
}

/// <summary>What came of weaving pages.</summary>
/// <param name="Html">The woven page; null when a form is in its way.</param>
/// <param name="Failed">The forms that are built otherwise than the page, or do not differ from it at all.</param>
/// <param name="NeedsBoth">True when somewhere terms and units change together, so that pages with both are needed.</param>
internal sealed record Woven(string? Html, ImmutableArray<PageForm> Failed, bool NeedsBoth);

/// <summary>
/// Brings pages of one pattern in several forms into one. What is the same stands once; where words differ they stand beside each other, each marked with the signs of
/// the forms that have them (<c>data-f</c>), all but the pattern's own hidden, so that the page can change from one form to another by showing and hiding alone.
/// </summary>
internal sealed class PageWeave
{
    // Elements that hold no text of their own: what changes in them is changed as a whole.
    private static readonly string[] Holders = ["ul", "ol", "dl", "table", "thead", "tbody", "tr", "colgroup", "svg", "g", "desc", "title", "text", "style", "script", "pattern", "defs"];

    private readonly PageTokens _plain;
    private readonly List<AlignedPage> _pages;
    private readonly int[] _termsSigns;
    private readonly int[] _unitSigns;
    private readonly int[] _drawing; // the token that begins the drawing a token is in; -1 outside
    private readonly int _body;
    private bool _needsBoth;

    private PageWeave(PageTokens plain, List<AlignedPage> pages)
    {
        (_plain, _pages) = (plain, pages);
        _termsSigns = [0, .. pages.Select(p => p.Form.Terms).Where(t => t > 0).Distinct().Order()];
        _unitSigns = [0, .. pages.Select(p => p.Form.Units).Where(u => u > 0).Distinct().Order()];
        _drawing = Drawings(plain.All);
        _body = Array.FindIndex(plain.All, t => t.StartsWith("<body", StringComparison.Ordinal));
    }

    /// <summary>Weaves forms into a page.</summary>
    public static Woven Of(string plain, IReadOnlyList<PageForm> forms)
    {
        var pool = new TokenPool();
        var tokens = PageTokens.Of(plain, pool);
        var failed = ImmutableArray.CreateBuilder<PageForm>();
        var pages = new List<AlignedPage>();
        foreach (var form in forms)
        {
            if (AlignedPage.Of(tokens, form, pool) is { IsSame: false } page)
            {
                pages.Add(page);
            }
            else
            {
                failed.Add(form);
            }
        }

        if (failed.Count > 0)
        {
            return new(null, failed.ToImmutable(), false);
        }

        var weave = new PageWeave(tokens, pages);
        if (weave._body < 0 || weave.Places() is not { } places)
        {
            return new(null, [.. forms], false);
        }

        var html = weave.Write(places);
        return weave._needsBoth ? new(null, [], true) : new(html, [], false);
    }

    private static int[] Drawings(string[] all)
    {
        var within = new int[all.Length];
        var (open, depth) = (-1, 0);
        for (var i = 0; i < all.Length; i++)
        {
            if (PageTokens.NameOf(all[i]) is "svg")
            {
                depth += PageTokens.Step(all[i]);
                open = depth == 1 && open < 0 ? i : open;
            }

            within[i] = open;
            open = depth == 0 ? -1 : open;
        }

        return within;
    }

    /// <summary>The stretches of the page in which any form differs, grown until each holds whole elements in every form; null where that cannot be.</summary>
    private List<(int Start, int End)>? Places()
    {
        var places = new List<(int Start, int End)>();
        foreach (var hunk in _pages.SelectMany(p => p.Hunks).OrderBy(h => h.Start).ThenBy(h => h.End))
        {
            if (places.Count > 0 && hunk.End <= places[^1].End)
            {
                continue;
            }

            var (start, end) = (hunk.Start, hunk.End);
            while (places.Count > 0 && (start <= places[^1].End || (start == places[^1].End + 1 && _plain.All[start - 1] == " ")))
            {
                start = Math.Min(start, places[^1].Start);
                places.RemoveAt(places.Count - 1);
            }

            if (Grown(start, end) is not { } grown)
            {
                return null;
            }

            while (places.Count > 0 && (grown.Start < places[^1].End || (grown.Start == places[^1].End && IsPutIn(grown.Start))))
            {
                var merged = Grown(Math.Min(grown.Start, places[^1].Start), Math.Max(grown.End, places[^1].End));
                places.RemoveAt(places.Count - 1);
                if (merged is null)
                {
                    return null;
                }

                grown = merged.Value;
            }

            places.Add(grown);
        }

        return places;
    }

    /// <summary>True where a form has something between two tokens of the page: it belongs to what ends there and to what begins there alike.</summary>
    private bool IsPutIn(int at) => _pages.Exists(p => p.Touching(at, at).Any(h => h.Start == at && h.End == at));

    private (int Start, int End)? Grown(int start, int end)
    {
        while (true)
        {
            if (start <= _body || end > _plain.All.Length)
            {
                return null;
            }

            var (from, to) = (start, end);
            foreach (var hunk in _pages.SelectMany(p => p.Touching(start, end)))
            {
                (start, end) = (Math.Min(start, hunk.Start), Math.Max(end, hunk.End));
            }

            if ((from, to) != (start, end))
            {
                continue;
            }

            if (_drawing[start] is >= 0 and var drawing && (drawing < start || end <= DrawingEnd(drawing)) && (drawing != start || end != DrawingEnd(drawing)))
            {
                (start, end) = (drawing, Math.Max(end, DrawingEnd(drawing)));
                continue;
            }

            var (below, open) = Balance(_plain.All, start, end);
            foreach (var page in _pages)
            {
                var (low, left) = Balance(page.Tokens.All, page.Map(start, isEnd: false), page.Map(end, isEnd: true));
                (below, open) = (Math.Min(below, low), Math.Max(open, left));
            }

            if (below < 0)
            {
                start--;
            }
            else if (open > 0)
            {
                end++;
            }
            else if (Parent(start) is { } parent && IsHolder(parent) && HasText(start, end))
            {
                start = parent;
            }
            else
            {
                return (start, end);
            }
        }
    }

    private int DrawingEnd(int drawing)
    {
        var depth = 0;
        for (var i = drawing; i < _plain.All.Length; i++)
        {
            depth += PageTokens.NameOf(_plain.All[i]) is "svg" ? PageTokens.Step(_plain.All[i]) : 0;
            if (depth == 0)
            {
                return i + 1;
            }
        }

        return _plain.All.Length;
    }

    private int? Parent(int at)
    {
        var depth = 0;
        for (var i = at - 1; i >= 0; i--)
        {
            depth -= PageTokens.Step(_plain.All[i]);
            if (depth < 0)
            {
                return i;
            }
        }

        return null;
    }

    private bool IsHolder(int at) => Array.Exists(Holders, h => PageTokens.NameOf(_plain.All[at]).SequenceEqual(h));

    private bool HasText(int start, int end) => HasText(_plain.All, start, end) || _pages.Exists(p => HasText(p.Tokens.All, p.Map(start, isEnd: false), p.Map(end, isEnd: true)));

    private static bool HasText(string[] all, int start, int end)
    {
        var depth = 0;
        for (var i = start; i < end; i++)
        {
            if (depth == 0 && all[i][0] != '<' && !string.IsNullOrWhiteSpace(all[i]))
            {
                return true;
            }

            depth += PageTokens.Step(all[i]);
        }

        return false;
    }

    private static (int Below, int Open) Balance(string[] all, int start, int end)
    {
        var (depth, below) = (0, 0);
        for (var i = start; i < end; i++)
        {
            depth += PageTokens.Step(all[i]);
            below = Math.Min(below, depth);
        }

        return (below, depth - below);
    }

    private string Write(List<(int Start, int End)> places)
    {
        var html = new StringBuilder(_plain.All.Sum(t => t.Length) * 5 / 4);
        var at = 0;
        foreach (var (start, end) in places)
        {
            Same(html, at, start);
            Differing(html, start, end);
            at = end;
        }

        Same(html, at, _plain.All.Length);
        return html.ToString();
    }

    /// <summary>What all forms have; a tag whose spoken words differ has those of the others beside its own.</summary>
    private void Same(StringBuilder html, int start, int end)
    {
        for (var i = start; i < end; i++)
        {
            var token = _plain.All[i];
            html.Append(token[0] == '<' && i > _body && PageTokens.IsSpoken(token) ? Spoken(token, i) : token);
        }
    }

    private string Spoken(string tag, int at)
    {
        StringBuilder? told = null;
        foreach (var (name, value) in PageTokens.SpokenOf(tag))
        {
            var said = Signs().Select(s => (s.Sign, Value: PageTokens.Value(TagIn(s.Terms, s.Units, at), name) ?? value)).Where(s => s.Value != value).ToArray();
            if (said.Length > 0)
            {
                told ??= new();
                told.Append($" data-{name}-a=\"{value}\"").AppendJoin("", said.Select(s => $" data-{name}-{s.Sign}=\"{s.Value}\""));
            }
        }

        return told is null ? tag : WithAttribute(tag, told.ToString());
    }

    private string TagIn(int terms, int units, int at)
    {
        var own = _plain.All[at];
        foreach (var page in _pages.Where(p => p.Form.Terms == terms && p.Form.Units == units).Concat(_pages.Where(p => p.Form is { Units: 0 } f && f.Terms == terms)).Concat(_pages.Where(p => p.Form is { Terms: 0 } f && f.Units == units)))
        {
            if (page.Tokens.All[page.Map(at, isEnd: false)] is var tag && tag != own)
            {
                return tag;
            }
        }

        return own;
    }

    private IEnumerable<(int Terms, int Units, char Sign)> Signs() => _termsSigns.SelectMany(t => _unitSigns.Select(u => (t, u, PageForm.SignOf(t, u))));

    private void Differing(StringBuilder html, int start, int end)
    {
        List<(string Text, string Signs)> variants = [];
        foreach (var (terms, units, sign) in Signs())
        {
            var text = TextIn(terms, units, start, end);
            var known = variants.FindIndex(v => v.Text == text);
            if (known < 0)
            {
                variants.Add((text, sign.ToString()));
            }
            else
            {
                variants[known] = (text, variants[known].Signs + sign);
            }
        }

        if (variants.Count == 1)
        {
            html.Append(variants[0].Text);
        }
        else if (!OneDrawing(html, variants))
        {
            var holds = Parent(start) is { } parent && IsHolder(parent);
            foreach (var (text, signs) in variants)
            {
                Marked(html, text, signs, holds);
            }
        }
    }

    private string TextIn(int terms, int units, int start, int end)
    {
        if (_pages.Find(p => p.Form.Terms == terms && p.Form.Units == units) is { } exact)
        {
            return exact.Text(start, end);
        }

        var own = _plain.Text(start, end);
        var byTerms = _pages.Find(p => p.Form is { Units: 0 } f && f.Terms == terms)?.Text(start, end) ?? own;
        var byUnits = _pages.Find(p => p.Form is { Terms: 0 } f && f.Units == units)?.Text(start, end) ?? own;
        _needsBoth |= byTerms != own && byUnits != own;
        return byTerms != own ? byTerms : byUnits;
    }

    /// <summary>A drawing that differs in its description alone stands once, with all of them in it.</summary>
    private static bool OneDrawing(StringBuilder html, List<(string Text, string Signs)> variants)
    {
        const string Close = "</desc>";
        static (int Start, int End)? Words(string text) =>
            text.StartsWith("<svg", StringComparison.Ordinal) && text.IndexOf("<desc", StringComparison.Ordinal) is > 0 and var open && text.IndexOf('>', open) is > 0 and var inside
            && text.IndexOf(Close, inside, StringComparison.Ordinal) is > 0 and var close ? (inside + 1, close) : null;
        if (!variants.TrueForAll(v => Words(v.Text) is not null))
        {
            return false;
        }

        var (start, end) = Words(variants[0].Text)!.Value;
        var (own, tag) = (variants[0].Text, variants[0].Text[..(variants[0].Text.IndexOf('>', StringComparison.Ordinal) + 1)]);
        if (PageTokens.Value(tag, "aria-labelledby") is not { } names
            || variants.Exists(v => Words(v.Text)!.Value is var (from, to) && (!v.Text.AsSpan(0, from).SequenceEqual(own.AsSpan(0, start)) || !v.Text.AsSpan(to).SequenceEqual(own.AsSpan(end)))))
        {
            return false;
        }

        var more = new StringBuilder();
        var told = new StringBuilder($" data-aria-labelledby-a=\"{names}\"");
        foreach (var (text, signs) in variants.Skip(1))
        {
            var (from, to) = Words(text)!.Value;
            more.Append($"<desc id=\"{names.Split(' ')[^1]}-{signs[0]}\">").Append(text, from, to - from).Append(Close);
            told.AppendJoin("", signs.Select(s => $" data-aria-labelledby-{s}=\"{names}-{signs[0]}\""));
        }

        html.Append(WithAttribute(tag, told.ToString())).Append(own, tag.Length, end + Close.Length - tag.Length).Append(more).Append(own, end + Close.Length, own.Length - end - Close.Length);
        return true;
    }

    private static string WithAttribute(string tag, string attribute) => tag[^2] == '/' ? $"{tag[..^2].TrimEnd()}{attribute} />" : $"{tag[..^1]}{attribute}>";

    /// <summary>Writes a stretch that some forms have: its elements marked, its words in a mark of their own.</summary>
    /// <param name="html">The page so far.</param>
    /// <param name="text">The stretch.</param>
    /// <param name="signs">The forms.</param>
    /// <param name="isHeld">True in an element that holds no words, not even a blank in a mark.</param>
    private static void Marked(StringBuilder html, string text, string signs, bool isHeld)
    {
        var isOwn = signs[0] == 'a';
        var mark = isOwn ? $" data-f=\"{signs}\"" : $" data-f=\"{signs}\" hidden=\"hidden\"";
        var tokens = PageTokens.Of(text, new TokenPool()).All;
        var depth = 0;
        var isDrawing = false;
        for (var i = 0; i < tokens.Length; i++)
        {
            var token = tokens[i];
            if (depth == 0 && token[0] != '<')
            {
                var end = i;
                while (end < tokens.Length && tokens[end][0] != '<')
                {
                    end++;
                }

                var words = string.Concat(tokens.AsSpan(i, end - i)!);
                html.Append(string.IsNullOrWhiteSpace(words) && (isHeld || words.Contains('\n', StringComparison.Ordinal)) ? words : $"<span{mark}>{words}</span>");
                i = end - 1;
                continue;
            }

            isDrawing = depth == 0 ? PageTokens.NameOf(token) is "svg" : isDrawing;
            var written = isOwn || token[0] != '<' ? token : isDrawing ? Renamed(token, signs[0]) : Nameless(token);
            html.Append(depth == 0 && token[0] == '<' ? WithAttribute(written, mark) : written);
            depth += PageTokens.Step(token);
        }
    }

    // An identifier stands once on a page.
    private static string Nameless(string tag) => PageTokens.Value(tag, "id") is { } id ? tag.Replace($" id=\"{id}\"", "", StringComparison.Ordinal) : tag;

    private static string Renamed(string tag, char sign)
    {
        var named = PageTokens.Value(tag, "id") is { } id ? tag.Replace($" id=\"{id}\"", $" id=\"{id}-{sign}\"", StringComparison.Ordinal) : tag;
        return PageTokens.Value(named, "aria-labelledby") is { } names ? named.Replace($"\"{names}\"", $"\"{string.Join(' ', names.Split(' ').Select(n => $"{n}-{sign}"))}\"", StringComparison.Ordinal) : named;
    }
}
