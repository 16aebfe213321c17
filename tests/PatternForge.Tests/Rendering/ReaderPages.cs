using System.Collections.Immutable;
using Microsoft.Playwright;
using PatternForge.Core;
using PatternForge.Rendering;
using PatternForge.Rendering.Documents;

namespace PatternForge.Tests.Rendering;

/// <summary>Pages that a reader sets up, and what their editions say.</summary>
internal static class ReaderPages
{
    private const string Dot = "data:image/gif;base64,R0lGODlhAQABAIAAAMLCwgAAACH5BAAAAAAALAAAAAABAAEAAAICRAEAOw==";

    /// <summary>Every row as a reader sees it, and every stretch of prose; blanks are one blank.</summary>
    private const string Seen = """
        () => {
          const said = (e) => e ? e.innerText.replace(/\s+/g, ' ').trim() : '';
          const shown = (e) => e.getClientRects().length > 0;
          return Array.from(document.querySelectorAll('li.row, .work .prose')).filter(shown).map((e) => e.matches('li')
            ? [said(e.querySelector('.label')), said(e.querySelector('.words')), said(e.querySelector('.count')).replace('Count: ', '')].join(' | ') : said(e));
        }
        """;

    private const string Words = """
        () => {
          const parts = Array.from(document.querySelectorAll('#reader, #your-size, .counter, #place'));
          for (const part of parts) { part.style.display = 'none'; }
          const texts = document.body.innerText.split('\n').map((l) => l.replace(/\s+/g, ' ').trim()).filter((l) => l.length > 0);
          const spoken = Array.from(document.querySelectorAll('svg[aria-labelledby]')).filter((e) => e.getClientRects().length > 0)
            .map((e) => e.getAttribute('aria-labelledby').split(' ').map((i) => document.getElementById(i).textContent).join(' '));
          for (const part of parts) { part.style.display = ''; }
          return texts.concat(spoken);
        }
        """;

    public static string Html(Compilation compilation) => PageTests.Page(compilation, "html", new RenderOptions { Picture = _ => new(Dot) }).Text;

    /// <summary>The page for paper, which has no part of the reader's own.</summary>
    public static string Sheet(Compilation compilation) => PageTests.Page(compilation, "html", new RenderOptions { Paper = "A4", Picture = _ => new(Dot) }).Text;

    public static Compilation Edition(Compilation plain, params string[] names)
    {
        if (names.Length == 0)
        {
            return plain;
        }

        var made = EditionCompiler.Compile(plain, Core.Editions.Edition.Find(string.Join('+', names))!);
        Assert.False(made.HasErrors);
        return made.Compilation!;
    }

    public static ImmutableArray<string> SizeEditions(Compilation plain) => [.. Core.Editions.Edition.Find("sizes")!.For(plain).Select(e => e.Name)];

    public static async Task<string[]> RowsOf(IPage page) => await page.EvaluateAsync<string[]>(Seen);

    /// <summary>All words of a page but those of the reader's own part, which is out of sight meanwhile, and the descriptions of its drawings.</summary>
    public static async Task<string[]> WordsOf(IPage page) => await page.EvaluateAsync<string[]>(Words);

    /// <summary>Chooses one of some radio buttons, as a reader does.</summary>
    public static Task Choose(IPage page, string name, string value) => page.Locator($"#reader input[name={name}][value=\"{value}\"]").CheckAsync();

    public static ReaderView Reader(Compilation plain) => ViewBuilder.Build(plain).Reader;
}
