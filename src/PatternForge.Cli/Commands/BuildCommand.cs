using System.Collections.Immutable;
using System.CommandLine;
using PatternForge.Cli.Printing;
using PatternForge.Cli.Releases;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Rendering.Documents;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Commands;

/// <summary><c>build PATH...</c>: checks patterns and writes what a maker gets.</summary>
internal static class BuildCommand
{
    private const string DefaultFolder = "out";

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var paths = Arguments.Paths();
        var folder = new Option<string>("--out") { Description = $"The folder to write into; {DefaultFolder} where none is said", HelpName = "DIR" };
        folder.CompletionSources.Add(Suggestions.FolderNames);
        var known = Edition.All.Select(e => e.Name).ToArray();
        var editions = new Option<string[]>("--edition") { Description = $"An edition to release in place of the pattern as it is written: {string.Join(", ", known)}, size-m and marked-m for a size M; several in one with a plus between them", HelpName = "NAME" };
        editions.CompletionSources.Add(_ => known.Select(Suggestions.InList));
        var formats = new Option<string[]>("--format")
        {
            Description = $"What to write, parted by commas; {string.Join(" and ", OutputFormat.Usual.Select(f => f.Name))} where none is said; {ReleaseFormats.Pdf} is printed by an installed browser of the Chromium family; {ReleaseFormats.Png} writes each drawing as a picture for print too; {ReleaseFormats.Source} is the rewritten source of an edition; {ShopFiles.Format} is what a shop gets: what a buyer must know, as text, Markdown and HTML, and the photos",
            HelpName = string.Join(',', ReleaseFormats.Names),
        };
        formats.CompletionSources.Add(_ => ReleaseFormats.Names.Select(Suggestions.InList));
        var templates = new Option<string>("--templates") { Description = "A folder of templates that replace the built-in ones file by file", HelpName = "DIR" };
        templates.CompletionSources.Add(Suggestions.FolderNames);
        var paper = new Option<string>("--paper") { Description = "The paper of the PDF, in place of what the pattern says: a4, letter or both; a4 where nothing is said", HelpName = string.Join('|', PaperNames.Words) };
        paper.CompletionSources.Add([.. PaperNames.Words]);
        var browser = new Option<string>("--browser") { Description = "The browser that prints the PDF; one that is installed where none is named", HelpName = "PATH" };
        var length = new Option<int?>("--listing-length") { Description = $"The characters that a shop lets a listing have, tags counted in; {ListingFormat.UsualLength} where nothing is said", HelpName = "N" };
        var site = new Option<string>("--site") { Description = "The address on the web that the folder will have: other designs are linked to there", HelpName = "URL" };
        var anew = new Option<bool>("--anew") { Description = "Make every pattern of a folder again, also those that have not changed since they were last released" };
        var draft = new Option<bool>("--draft") { Description = "Write a pattern that has errors too, every page marked as a draft" };
        var command = new Command("build", "Check patterns and write what a maker gets.") { paths, folder, editions, formats, paper, browser, templates, length, site, anew, draft };
        command.SetAction(parsed => Run(
            parsed.GetValue(paths) ?? [],
            new Wishes(
                parsed.GetValue(folder) ?? DefaultFolder,
                parsed.GetValue(editions) ?? [],
                parsed.GetValue(formats) ?? [],
                parsed.GetValue(templates),
                parsed.GetValue(paper),
                parsed.GetValue(browser),
                parsed.GetValue(length) ?? ListingFormat.UsualLength,
                parsed.GetValue(site),
                parsed.GetValue(anew),
                parsed.GetValue(draft)),
            around));
        return command;
    }

    private static int Run(string[] paths, Wishes wishes, Surroundings around)
    {
        if (paths.Length == 0)
        {
            return CommandLine.Refuse("say what to release: a file, a folder, or `-` for standard input", around, "build");
        }

        if (EditionsOf(wishes, around) is not { } editions || ReleaseFormats.Of(wishes.Formats, around) is not { } formats || PrintOf(wishes, formats, around) is not { } print || TemplatesOf(wishes, around) is not { } templates)
        {
            return ExitCode.Usage;
        }

        if (InputFiles.FullPathOf(wishes.Folder, around.Folder) is not { } folder || File.Exists(folder))
        {
            return CommandLine.Refuse($"`{wishes.Folder}` cannot be the folder to write into", around, "build");
        }

        if (wishes.ListingLength < ListingFormat.LeastLength)
        {
            return CommandLine.Refuse($"a listing of {wishes.ListingLength} characters cannot tell what a buyer must know: allow at least {ListingFormat.LeastLength}", around, "build");
        }

        if (wishes.Site is { } said && !IsWeb(said))
        {
            return CommandLine.Refuse($"`{said}` is no address of the web: `--site https://example.com/designs/` is one", around, "build");
        }

        var input = InputFiles.Find(paths, around);
        var code = Arguments.Complain(input, around);
        var plan = new ReleasePlan(formats, templates, folder, wishes.Draft) { Editions = editions.IsEmpty ? null : editions, Print = print, ListingLength = formats.Listing ? wishes.ListingLength : null, Anew = wishes.Anew, Site = wishes.Site is { } site ? site.TrimEnd('/') + "/" : null, WritesShelf = IsShelf(paths, formats, editions, around) };
        if (plan.Clash(input.Files) is { } clash)
        {
            return CommandLine.Refuse(clash, around, "build");
        }

        if (!templates.Findings.IsEmpty)
        {
            code = Math.Max(code, Tell(templates.Findings, around));
            if (code != ExitCode.Clean)
            {
                return code;
            }
        }

        var houses = new HouseFiles(around);
        plan = plan with { Shelf = plan.WritesShelf ? Shelf.Of(input.Files, houses, plan.Draft, around) : null };
        var built = PatternWork.Each(input.Files, f => plan.Build(f, houses, around), around);
        return Math.Max(code, Report(built, plan, wishes, around));
    }

    // A folder that is released as pages gets a page of all of them.
    private static bool IsShelf(string[] paths, ReleaseFormats formats, ImmutableArray<Edition> editions, Surroundings around) =>
        editions.IsEmpty && formats.Rendered.Contains(OutputFormat.Html) && paths.Any(p => InputFiles.FullPathOf(p, around.Folder) is { } full && Directory.Exists(full));

    private static bool IsWeb(string said) => Uri.TryCreate(said, UriKind.Absolute, out var address) && address.Scheme is "https" or "http" && SafeAddress.ForLink(said) is not null;

    private static int Report(Released[] built, ReleasePlan plan, Wishes wishes, Surroundings around)
    {
        var worked = built.Select(b => b.Worked).ToArray();
        var code = Math.Max(PatternWork.Complain(worked, around), HouseFiles.Complain(worked, around));
        FileReport[] ofHouses = HouseFiles.Reports(worked);
        FileReport[] reports = [.. ofHouses, .. worked.Select(w => w.Report).OfType<FileReport>()];
        code = ofHouses.Any(r => r.Stands(Severity.Error)) ? Math.Max(code, ExitCode.Findings) : code;
        if (reports.Length > 0)
        {
            around.Tell(TextReport.Of(reports, around.Width, new Paint(around.ColourError)));
        }

        var findings = ImmutableArray.CreateBuilder<Finding>();
        findings.AddRange(built.SelectMany(b => b.TemplateFindings));
        var (shelf, shelfProblem) = plan.Shelf?.Write(built, plan, findings) ?? ([], null);
        code = Math.Max(code, Tell(findings.ToImmutable(), around));
        var root = wishes.Folder.Replace(Path.DirectorySeparatorChar, '/').TrimEnd('/') is { Length: > 0 } said ? said + "/" : "/";
        foreach (var one in built)
        {
            foreach (var remark in one.Remarks)
            {
                around.Say(remark);
            }

            foreach (var problem in one.Problems)
            {
                around.Say(problem);
                code = Math.Max(code, ExitCode.Usage);
            }

            if (one.IsRefusedForHouse)
            {
                around.Say($"`{one.Worked.File.Path}` was not released: its project file `{one.Worked.House!.File!.Source.Path}` has errors{(wishes.Draft ? "" : "; `--draft` writes it as a draft")}");
            }
            else if (one.Worked.HasErrors && one is { IsUnchanged: false, Written.IsEmpty: true, Problems.IsEmpty: true, TemplateFindings.IsEmpty: true })
            {
                around.Say($"`{one.Worked.File.Path}` has errors and was not released{(wishes.Draft ? "" : "; `--draft` writes it as a draft")}");
                code = Math.Max(code, ExitCode.Findings);
            }
        }

        if (built.Any(b => b.LacksBrowser))
        {
            around.Say($"no browser was found that can print PDF, so the pages made for print were written in its place; to have PDF {BrowserSearch.HowToInstall}");
            code = Math.Max(code, ExitCode.Usage);
        }

        if (shelfProblem is not null)
        {
            around.Say(shelfProblem);
            code = Math.Max(code, ExitCode.Usage);
        }

        if (built.Count(b => b.IsUnchanged) is > 0 and var same)
        {
            around.Say($"{same} of {built.Length} patterns {(same == 1 ? "has" : "have")} not changed since the last release and {(same == 1 ? "was" : "were")} left as {(same == 1 ? "it is" : "they are")}; --anew makes all of them again");
        }

        around.Write(string.Concat(built.SelectMany(b => b.Written).Concat(shelf).Select(name => root + name + "\n")));
        return code;
    }

    /// <summary>Tells what is wrong with the templates, each thing once; answers with the exit code for it.</summary>
    private static int Tell(ImmutableArray<Finding> findings, Surroundings around)
    {
        var reports = findings
            .DistinctBy(f => (f.Rule.Code, f.Source.Path, f.Span, f.Message))
            .GroupBy(f => f.Source.Path, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new FileReport { Path = g.Key, Sizes = [], Coverage = null, Findings = [.. g], IsPattern = false })
            .ToArray();
        if (reports.Length == 0)
        {
            return ExitCode.Clean;
        }

        around.Tell(TextReport.Of(reports, around.Width, new Paint(around.ColourError)));
        return findings.Any(f => f.Severity == Severity.Error) ? ExitCode.Findings : ExitCode.Clean;
    }

    private static ImmutableArray<Edition>? EditionsOf(Wishes wishes, Surroundings around)
    {
        var editions = ImmutableArray.CreateBuilder<Edition>();
        foreach (var name in wishes.Editions.SelectMany(e => e.Split(',', StringSplitOptions.TrimEntries)))
        {
            if (Edition.Clash(name) is var (first, second))
            {
                CommandLine.Refuse($"`{first}` and `{second}` cannot be had in one edition", around, "build");
                return null;
            }

            if (Edition.Find(name) is not { } edition)
            {
                Arguments.Choice(name, "edition", [.. Edition.All.Select(e => e.Name)], around, "build");
                return null;
            }

            editions.Add(edition);
        }

        return [.. editions.Distinct()];
    }

    private static PrintWork? PrintOf(Wishes wishes, ReleaseFormats formats, Surroundings around)
    {
        Paper? paper = null;
        if (wishes.Paper is { } said)
        {
            if (Arguments.Choice(said, "paper", PaperNames.Words, around, "build") is not { } word)
            {
                return null;
            }

            paper = PaperNames.Of(word);
        }

        if (wishes.Browser is not { } named)
        {
            return new(formats.Pdfs ? around.Browsers.Find() : null, paper);
        }

        if (InputFiles.FullPathOf(named, around.Folder) is { } file && File.Exists(file))
        {
            return new(file, paper);
        }

        CommandLine.Refuse($"there is no browser `{named}`", around, "build");
        return null;
    }

    private static TemplateSet? TemplatesOf(Wishes wishes, Surroundings around)
    {
        if (wishes.Templates is not { } said)
        {
            return TemplateSet.Default;
        }

        if (InputFiles.FullPathOf(said, around.Folder) is { } full && Directory.Exists(full))
        {
            return TemplateSet.FromFolder(full);
        }

        CommandLine.Refuse($"there is no folder of templates `{said}`", around, "build");
        return null;
    }

    /// <summary>What the command line asks for.</summary>
    private sealed record Wishes(string Folder, string[] Editions, string[] Formats, string? Templates, string? Paper, string? Browser, int ListingLength, string? Site, bool Anew, bool Draft);
}
