using System.Globalization;
using System.Net;
using System.Text;
using PatternForge.Core;
using PatternForge.Core.Text;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;

namespace PatternForge.Benchmarks;

/// <summary>All drawings of many patterns on one page, to be looked at in a browser: as they are, in grey, and in print.</summary>
public static class ContactSheet
{
    /// <summary>Writes the page.</summary>
    /// <param name="file">Where to.</param>
    /// <param name="sources">Patterns, or folders of them.</param>
    public static int Write(string file, string[] sources)
    {
        var page = new StringBuilder("<!doctype html>\n<html lang=\"en\"><meta charset=\"utf-8\"><title>Contact sheet</title>\n<style>body{font:14px sans-serif;margin:12px}figure{display:inline-block;vertical-align:top;margin:6px;padding:6px;border:1px solid #999;break-inside:avoid}figcaption{margin:0 0 6px}svg{max-width:100%;height:auto}.grey{filter:grayscale(1)}@media print{figure{border:0}}</style>\n<body>\n");
        var count = 0;
        foreach (var path in sources.SelectMany(s => Directory.Exists(s) ? [.. Directory.EnumerateFiles(s, "*.pattern.md").Order(StringComparer.Ordinal)] : new[] { s }))
        {
            foreach (var drawing in Renderer.Drawings(ViewBuilder.Build(Compiler.Compile(new SourceText(path, File.ReadAllText(path))))))
            {
                // Each drawing keeps its identifiers to itself.
                page.Append("<figure><figcaption>").Append(WebUtility.HtmlEncode(drawing.Name)).Append("</figcaption>").Append(drawing.Text.Replace("id=\"", string.Create(CultureInfo.InvariantCulture, $"id=\"d{count}-"), StringComparison.Ordinal)).Append("</figure>\n");
                count++;
            }
        }

        page.Append("<script>if(location.hash==='#grey')document.body.className='grey'</script>\n</body></html>\n");
        File.WriteAllText(file, page.ToString());
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{count} drawings"));
        return 0;
    }
}
