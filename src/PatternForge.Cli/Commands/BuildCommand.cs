using System.Collections.Immutable;
using System.CommandLine;
using PatternForge.Cli.Reporting;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Rendering.Formats;
using PatternForge.Rendering.Templates;

namespace PatternForge.Cli.Commands;

/// <summary><c>build PATH...</c>: checks patterns and writes what a maker gets.</summary>
internal static class BuildCommand
{
    private const string DefaultFolder = "out";

    // Promised for later: asked for today, they get their own answer.
    private static readonly string[] LaterFormats = ["pdf", "json"];

    /// <summary>The command.</summary>
    public static Command Of(Surroundings around)
    {
        var paths = Arguments.Paths();
        var folder = new Option<string>("--out") { Description = $"The folder to write into; {DefaultFolder} where none is said", HelpName = "DIR" };
        folder.CompletionSources.Add(Suggestions.FolderNames);
        var known = Edition.All.Select(e => e.Name).ToArray();
        var editions = new Option<string[]>("--edition") { Description = $"An edition to release in place of the pattern as it is written: {string.Join(", ", known)}, size-m and marked-m for a size M; several in one with a plus between them", HelpName = "NAME" };
        editions.CompletionSources.Add(_ => known.Select(Suggestions.InList));
        string[] names = [.. OutputFormat.All.Select(f => f.Name), ReleasePlan.PngFormat, ReleasePlan.SourceFormat, ShopFiles.Format];
        var formats = new Option<string[]>("--format")
        {
            Description = $"What to write, parted by commas; {string.Join(" and ", OutputFormat.All.Select(f => f.Name))} where none is said; {ReleasePlan.PngFormat} writes each drawing as a picture for print too; {ReleasePlan.SourceFormat} is the rewritten source of an edition; {ShopFiles.Format} is what a shop gets: what a buyer must know, as text, Markdown and HTML, and the photos",
            HelpName = string.Join(',', names),
        };
        formats.CompletionSources.Add(_ => names.Select(Suggestions.InList));
        var templates = new Option<string>("--templates") { Description = "A folder of templates that replace the built-in ones file by file", HelpName = "DIR" };
        templates.CompletionSources.Add(Suggestions.FolderNames);
        var length = new Option<int?>("--listing-length") { Description = $"The characters that a shop lets a listing have, tags counted in; {ListingFormat.UsualLength} where nothing is said", HelpName = "N" };
        var draft = new Option<bool>("--draft") { Description = "Write a pattern that has errors too, every page marked as a draft" };
        var command = new Command("build", "Check patterns and write what a maker gets.") { paths, folder, editions, formats, templates, length, draft };
        command.SetAction(parsed => Run(
            parsed.GetValue(paths) ?? [],
            new Wishes(
                parsed.GetValue(folder) ?? DefaultFolder,
                parsed.GetValue(editions) ?? [],
                parsed.GetValue(formats) ?? [],
                parsed.GetValue(templates),
                parsed.GetValue(length) ?? ListingFormat.UsualLength,
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

        if (EditionsOf(wishes, around) is not { } editions || FormatsOf(wishes, around) is not { } formats || TemplatesOf(wishes, around) is not { } templates)
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

        var input = InputFiles.Find(paths, around);
        var code = Arguments.Complain(input, around);
        var plan = new ReleasePlan(formats.Rendered, templates, folder, wishes.Draft) { Editions = editions.IsEmpty ? null : editions, WritesSources = formats.Sources, WritesPngs = formats.Pngs, ListingLength = formats.Listing ? wishes.ListingLength : null };
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
        var built = PatternWork.Each(input.Files, f => plan.Build(f, houses, around), around);
        return Math.Max(code, Report(built, wishes, around));
    }

    private static int Report(Released[] built, Wishes wishes, Surroundings around)
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

        code = Math.Max(code, Tell([.. built.SelectMany(b => b.TemplateFindings)], around));
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
            else if (one.Worked.HasErrors && one is { Written.IsEmpty: true, Problems.IsEmpty: true, TemplateFindings.IsEmpty: true })
            {
                around.Say($"`{one.Worked.File.Path}` has errors and was not released{(wishes.Draft ? "" : "; `--draft` writes it as a draft")}");
                code = Math.Max(code, ExitCode.Findings);
            }
        }

        around.Write(string.Concat(built.SelectMany(b => b.Written).Select(name => root + name + "\n")));
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

    private static (ImmutableArray<OutputFormat> Rendered, bool Sources, bool Pngs, bool Listing)? FormatsOf(Wishes wishes, Surroundings around)
    {
        string[] known = [.. OutputFormat.All.Select(f => f.Name), ReleasePlan.PngFormat, ReleasePlan.SourceFormat, ShopFiles.Format];
        var said = wishes.Formats.SelectMany(f => f.Split(',', StringSplitOptions.TrimEntries)).ToArray();
        if (said.Length == 0)
        {
            return (OutputFormat.All, false, false, false);
        }

        var formats = ImmutableArray.CreateBuilder<OutputFormat>();
        var (sources, pngs, listing) = (false, false, false);
        foreach (var name in said)
        {
            if (OutputFormat.Find(name) is { } format)
            {
                formats.Add(format);
                continue;
            }

            if (string.Equals(name, ReleasePlan.SourceFormat, StringComparison.OrdinalIgnoreCase))
            {
                sources = true;
                continue;
            }

            if (string.Equals(name, ReleasePlan.PngFormat, StringComparison.OrdinalIgnoreCase))
            {
                pngs = true;
                continue;
            }

            if (string.Equals(name, ShopFiles.Format, StringComparison.OrdinalIgnoreCase))
            {
                listing = true;
                continue;
            }

            if (LaterFormats.Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                CommandLine.Refuse($"the format `{name}` does not exist yet: there are {string.Join(", ", known)}", around, "build");
            }
            else
            {
                Arguments.Choice(name, "format", known, around, "build");
            }

            return null;
        }

        return ([.. formats.Distinct()], sources, pngs, listing);
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
    private sealed record Wishes(string Folder, string[] Editions, string[] Formats, string? Templates, int ListingLength, bool Draft);
}
