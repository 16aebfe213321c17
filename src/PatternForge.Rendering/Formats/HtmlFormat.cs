using System.Collections.Immutable;
using PatternForge.Core;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Templates;

namespace PatternForge.Rendering.Formats;

/// <summary>
/// One web page that needs nothing but itself: no network, and no script to be read. With its script a reader can choose size, terms and units, and keep ticks.
/// </summary>
internal sealed class HtmlFormat : OutputFormat
{
    // The element with which a page offers choices; a page of other templates that lacks it stays as it is.
    private const string Reader = " id=\"reader\"";

    private static readonly Landing s_landing = new(Escaping.Html, prose => Prose.ToHtml(prose), SizeMarks.ToHtml, picture => picture.Svg);

    /// <inheritdoc/>
    public override string Name => "html";

    /// <inheritdoc/>
    public override string Extension => ".html";

    /// <inheritdoc/>
    public override string Description => "one web page, complete in itself";

    /// <inheritdoc/>
    public override string ForBuyers => "a web page that needs no network";

    /// <inheritdoc/>
    internal override TemplateResult Write(Compilation compilation, PatternView view, TemplateSet templates)
    {
        if (view.Paper is not null)
        {
            return Page(view, templates); // a sheet of paper offers no choice
        }

        var forms = Offered(view);
        while (true)
        {
            var shown = view with { Reader = ReaderOf(view, forms) };
            var page = Page(shown, templates);
            if (page.Text is not { } text || forms.IsEmpty || !text.Contains(Reader, StringComparison.Ordinal))
            {
                return page;
            }

            if (Woven(shown, text, forms, templates) is not { } woven)
            {
                forms = []; // what fails in another form's words is no matter of the page itself
                continue;
            }

            if (woven.Html is { } html)
            {
                return page with { Text = html };
            }

            var left = forms.Where(f => !woven.Failed.Any(w => w.Terms == f.Terms && w.Units == f.Units)).ToImmutableArray();
            forms = left.Length < forms.Length ? left : [];
        }
    }

    private static TemplateResult Page(PatternView view, TemplateSet templates)
    {
        var landing = view.Picture is { } picture ? s_landing with { Prose = prose => Prose.ToHtml(prose, picture) } : s_landing;
        if (!view.Reader.LeavesOut)
        {
            // No size stands alone here, so that nothing needs to be known of it.
            var prose = landing.Prose;
            landing = landing with { Prose = p => prose(p with { In = null }), Sized = s => SizeMarks.ToHtml(s with { In = null }) };
        }

        var result = templates.Render("html/pattern.html", view, landing);
        return result with { Text = result.Text is { } text ? BlankLines.Drop(text, "<pre", "</pre>") : null };
    }

    /// <summary>The forms that can be made.</summary>
    private static ImmutableArray<(int Terms, int Units)> Offered(PatternView view)
    {
        if (view.Others is not { } others)
        {
            return [];
        }

        var forms = ImmutableArray.CreateBuilder<(int, int)>();
        if (others.OtherTerms is { } terms && others.In(terms, null) is not null)
        {
            forms.Add((1, 0));
        }

        forms.AddRange(others.Units.Select((name, i) => (name, i)).Where(u => others.In(null, u.name) is not null).Select(u => (0, u.i + 1)));
        return forms.ToImmutable();
    }

    private static ReaderView ReaderOf(PatternView view, ImmutableArray<(int Terms, int Units)> forms)
    {
        var terms = forms.Any(f => f.Terms > 0) ? view.Others?.OtherTerms : null;
        var units = forms.Where(f => f.Units > 0).Select(f => new ChoiceView { Value = f.Units, Name = view.Others!.Units[f.Units - 1] }).ToArray();
        return view.Reader with
        {
            LeavesOut = view.Own is { AreKnown: true },
            Terms = terms is null ? [] : [new ChoiceView { Value = 0, Name = view.Terms ?? "" }, new ChoiceView { Value = 1, Name = terms.ToUpperInvariant() }],
            Units = units.Length == 0 ? [] : [new ChoiceView { Value = 0, Name = "as written" }, .. units],
        };
    }

    private static Woven? Woven(PatternView shown, string text, ImmutableArray<(int Terms, int Units)> forms, TemplateSet templates)
    {
        var others = shown.Others!;
        var pages = new List<PageForm>();
        foreach (var (terms, units) in forms)
        {
            if (!Add(terms, units))
            {
                return null;
            }
        }

        var woven = PageWeave.Of(text, pages);
        if (!woven.NeedsBoth)
        {
            return woven;
        }

        foreach (var units in forms.Where(f => f.Units > 0).Select(f => f.Units))
        {
            if (!Add(1, units))
            {
                return woven with { NeedsBoth = false, Failed = [.. pages.Where(p => p.Units == units)] };
            }
        }

        woven = PageWeave.Of(text, pages);
        return woven with { Failed = [.. woven.Failed.Select(f => f is { Terms: > 0, Units: > 0 } ? f with { Terms = 0 } : f)] };

        bool Add(int terms, int units)
        {
            if (others.In(terms == 0 ? null : others.OtherTerms, units == 0 ? null : others.Units[units - 1]) is not { } form)
            {
                return false;
            }

            var photos = form.Photos.Length != shown.Photos.Length ? shown.Photos : [.. shown.Photos.Zip(form.Photos, (own, other) => own with { Alt = other.Alt, Caption = other.Caption })];
            var page = Page(form with { Reader = shown.Reader, OtherDesigns = shown.OtherDesigns, AllDesigns = shown.AllDesigns, Photos = photos, Picture = shown.Picture }, templates);
            if (page.Text is not { } html)
            {
                return false;
            }

            pages.Add(new PageForm(terms, units, html));
            return true;
        }
    }
}
