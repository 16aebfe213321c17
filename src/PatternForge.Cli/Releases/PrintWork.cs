using PatternForge.Cli.Printing;
using PatternForge.Core;
using PatternForge.Core.Model;
using PatternForge.Rendering;

namespace PatternForge.Cli.Releases;

/// <summary>A page made for one paper.</summary>
/// <param name="Name">The name of its files without the extension.</param>
/// <param name="Sheet">The paper, "A4" or "letter".</param>
/// <param name="Html">The page.</param>
/// <param name="Date">The date that its document bears.</param>
/// <param name="Author">Who made the pattern; null where it does not say.</param>
internal sealed record PrintPage(string Name, string Sheet, string Html, DateOnly Date, string? Author);

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
        new(NameOf(name, sheet), sheet, page.Text, PdfDates.Of(compilation.Pattern.Facts.Date), compilation.Pattern.Facts.Designer);

    /// <summary>Prints a page; where there is no browser the page stands for itself.</summary>
    public PrintedPage Print(PrintPage page, Surroundings around)
    {
        if (Browser is null)
        {
            return new(page, null, null);
        }

        var (pdf, problem) = PdfPrinter.Print(Browser, page.Html, page.Date, page.Author, around.Browsers.Patience, around.Stop);
        return new(page, pdf, problem is null ? null : $"could not be printed by `{Browser}`: {problem}; the page made for print stands in `{page.Name}.html`");
    }
}

/// <summary>What came of printing a page.</summary>
/// <param name="Page">The page.</param>
/// <param name="Pdf">The document; null where there is none.</param>
/// <param name="Problem">What went wrong, as the end of a sentence that begins with the document's name; null where nothing did.</param>
internal sealed record PrintedPage(PrintPage Page, byte[]? Pdf, string? Problem)
{
    /// <summary>Writes the document, or, where there is none, the page itself.</summary>
    public void Write(ReleaseFolder folder)
    {
        if (Pdf is not null)
        {
            folder.Write(Page.Name + ".pdf", Pdf);
            return;
        }

        folder.Write(Page.Name + ".html", Page.Html);
        if (Problem is not null)
        {
            folder.Miss(Page.Name + ".pdf", Problem);
        }
    }
}
