using PatternForge.Cli.Printing;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Rendering;

namespace PatternForge.Cli.Releases;

/// <summary>A page made for one paper.</summary>
/// <param name="Name">The name of its files without the extension.</param>
/// <param name="Html">The page.</param>
/// <param name="Date">The date that its document bears.</param>
internal sealed record PrintPage(string Name, string Html, DateOnly Date);

/// <summary>Has the pages of a release printed.</summary>
/// <param name="Browser">The browser's file; null where there is none.</param>
/// <param name="Paper">The paper asked for; null for what each pattern says.</param>
internal sealed record PrintWork(string? Browser, Paper? Paper)
{
    /// <summary>The sheets that a pattern is made for.</summary>
    public IEnumerable<string> SheetsOf(Compilation compilation) => PaperNames.Sheets(Paper ?? compilation.Pattern.Facts.Paper?.Value);

    /// <summary>The name of a sheet's files without the extension.</summary>
    public static string NameOf(string name, string sheet) => $"{name}.{sheet.ToLowerInvariant()}";

    /// <summary>A page for a sheet.</summary>
    public static PrintPage PageOf(string name, string sheet, RenderedFile page, Compilation compilation) =>
        new(NameOf(name, sheet), page.Text, PdfDates.Of(compilation.Pattern.Facts.Date));

    /// <summary>Writes the document of a page, or, where there can be none, the page itself.</summary>
    public void Write(PrintPage page, ReleaseFolder folder, Surroundings around)
    {
        if (Browser is null)
        {
            folder.Write(page.Name + ".html", page.Html);
            return;
        }

        var (pdf, problem) = PdfPrinter.Print(Browser, page.Html, page.Date, around.Browsers.Patience, around.Stop);
        if (pdf is null)
        {
            folder.Write(page.Name + ".html", page.Html);
            folder.Miss(page.Name + ".pdf", $"could not be printed by `{Browser}`: {problem}; the page made for print stands in `{page.Name}.html`");
            return;
        }

        folder.Write(page.Name + ".pdf", pdf);
    }
}
