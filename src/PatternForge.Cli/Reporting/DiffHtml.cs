using System.Globalization;
using System.Net;
using System.Text;
using PatternForge.Core.Corrections;

namespace PatternForge.Cli.Reporting;

/// <summary>What changed between two versions as one page that needs nothing but itself.</summary>
internal static class DiffHtml
{
    private const string Style = """
        :root{color-scheme:light dark;--ink:#1d2326;--back:#fdfcf9;--soft:#59646a;--line:#c9c5ba;--mark:#8a3b12}
        @media (prefers-color-scheme:dark){:root{--ink:#e9e6df;--back:#16191b;--soft:#a9b0b4;--line:#454b4f;--mark:#f0a878}}
        body{margin:0 auto;padding:1.5rem 1.1rem 3rem;max-width:44rem;font:1.05rem/1.55 Georgia,"Times New Roman",serif;color:var(--ink);background:var(--back);overflow-wrap:anywhere}
        h1{font-size:1.7rem;line-height:1.25;margin:0 0 1rem}h2{font-size:1.2rem;margin:2rem 0 .6rem;padding-bottom:.3rem;border-bottom:2px solid var(--line)}
        ul{list-style:none;margin:0;padding:0}li{padding:.7rem 0;border-bottom:1px solid var(--line);break-inside:avoid}
        .place{font-weight:700;color:var(--mark)}dl{margin:.35rem 0 0;display:grid;grid-template-columns:max-content 1fr;gap:.1rem .8rem;font-size:.95rem}dt{color:var(--soft)}dd{margin:0}
        @media print{:root{color-scheme:light;--ink:#000;--back:#fff;--soft:#444;--line:#999;--mark:#5a2408}body{max-width:none;padding:0;background:#fff;color:#000}h2{break-after:avoid}}
        """;

    /// <summary>The page.</summary>
    public static string Of(Comparison comparison)
    {
        var heading = Encoded(DiffReport.Heading(comparison));
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\" />\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" />\n<title>Corrections: ").Append(heading).Append("</title>\n<style>\n").Append(Style.ReplaceLineEndings("\n")).Append("\n</style>\n</head>\n<body>\n<main>\n<h1>Corrections: ").Append(heading).Append("</h1>\n");
        foreach (var (weight, group) in DiffReport.Groups)
        {
            var some = comparison.Corrections.Where(c => c.Weight == weight).ToArray();
            if (some.Length == 0)
            {
                continue;
            }

            page.Append("<h2>").Append(group).Append("</h2>\n<ul>\n");
            foreach (var correction in some)
            {
                page.Append("<li>").Append(correction.Place.Length > 0 ? $"<span class=\"place\">{Encoded(correction.Place)}:</span> " : "").Append(Encoded(correction.Text)).Append('.');
                var lines = DiffReport.Lines(correction).ToArray();
                if (lines.Length > 0)
                {
                    page.Append("\n<dl>").AppendJoin("", lines.Select(l => $"<dt>{l.Word}</dt><dd>{Encoded(l.Said)}</dd>")).Append("</dl>");
                }

                page.Append("</li>\n");
            }

            page.Append("</ul>\n");
        }

        if (comparison.Corrections.IsEmpty)
        {
            page.Append("<p>Nothing has changed in meaning.</p>\n");
        }

        if (!comparison.Unread.IsEmpty)
        {
            page.Append("<h2>Not understood, and compared by the words alone</h2>\n<ul>\n");
            foreach (var place in comparison.Unread)
            {
                page.Append(CultureInfo.InvariantCulture, $"<li><span class=\"place\">{(place.IsNew ? "New" : "Old")} file, line {place.Line}:</span> {Encoded(place.Words)}</li>\n");
            }

            page.Append("</ul>\n");
        }

        return page.Append("</main>\n</body>\n</html>\n").ToString();
    }

    private static string Encoded(string text) => WebUtility.HtmlEncode(string.Concat(Words.WellFormed(text).Select(c => char.IsControl(c) ? ' ' : c)));
}
