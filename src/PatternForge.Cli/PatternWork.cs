using System.Collections.Immutable;
using PatternForge.Cli.Photos;
using PatternForge.Cli.Reporting;
using PatternForge.Core;
using PatternForge.Core.Editions;
using PatternForge.Core.Findings;
using PatternForge.Core.Model;
using PatternForge.Core.Syntax;
using PatternForge.Core.Text;
using PatternForge.Core.Work;

namespace PatternForge.Cli;

/// <summary>A source after it was read and compiled.</summary>
/// <param name="File">The source.</param>
/// <param name="Compilation">What the compiler made of it; null when it could not be read, was refused, or the tool failed.</param>
/// <param name="Report">What a report says of it; null when it could not be read or the tool failed.</param>
/// <param name="Problem">Why it could not be read; null when it could.</param>
/// <param name="Fault">A fault of the tool on this file; null as it should be.</param>
internal sealed record WorkedFile(InputFile File, Compilation? Compilation, FileReport? Report, string? Problem, Exception? Fault)
{
    /// <summary>The editions that were asked for or that the header releases; empty where there are none.</summary>
    public ImmutableArray<EditionCompilation> Editions { get; init; } = [];

    /// <summary>The names of files beside it that were read for its header.</summary>
    public ImmutableArray<string> Beside { get; init; } = [];

    /// <summary>The same without what was compiled, for reports on thousands of files.</summary>
    public WorkedFile ForReport => this with { Compilation = null, Editions = [], Options = null };

    /// <summary>How it was compiled; null when it was not.</summary>
    public CompileOptions? Options { get; init; }

    /// <summary>The project file that holds for it; null where there is none.</summary>
    public FoundHouse? House { get; init; }

    /// <summary>True when an error stands that was not accepted.</summary>
    public bool HasErrors => Stands(Severity.Error);

    /// <summary>True when a finding of at least this weight stands that was not accepted.</summary>
    public bool Stands(Severity threshold) => Report is { } report && report.Stands(threshold);
}

/// <summary>Reads and compiles sources, side by side, in the order they were given.</summary>
internal static class PatternWork
{
    /// <summary>Does something for every file on the machine's cores; the results stand in the order of the files.</summary>
    public static T[] Each<T>(ImmutableArray<InputFile> files, Func<InputFile, T> work, Surroundings around)
    {
        var results = new T[files.Length];
        if (files.Length == 1)
        {
            results[0] = work(files[0]);
            return results;
        }

        var progress = new Progress(around, files.Length);
        var options = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = around.Stop };
        try
        {
            Parallel.For(0, files.Length, options, i =>
            {
                results[i] = work(files[i]);
                progress.Step();
            });
        }
        finally
        {
            progress.End();
        }

        return results;
    }

    /// <summary>Reads and compiles one source; a fault of the tool is caught, so that the other files are still worked.</summary>
    /// <param name="file">The source.</param>
    /// <param name="houses">Where its project file is found.</param>
    /// <param name="around">What the program sees of the world.</param>
    /// <param name="trace">True to write down how each count comes about.</param>
    /// <param name="editions">The editions to make as well; null for those that the header releases, which a tracing run leaves out.</param>
    public static WorkedFile Compile(InputFile file, HouseFiles houses, Surroundings around, bool trace = false, ImmutableArray<Edition>? editions = null)
    {
        try
        {
            var options = OptionsFor(file, houses, around, out var house) with { Trace = trace };
            var read = InputFiles.Read(file, options.MaxLength, around);
            return read.Problem is not null || read.TooLarge
                ? Refused(file, read, house, options)
                : WorkedOf(file, Compiler.Compile(read.Source, options, around.Stop), house, options, trace ? [] : editions, around) with { Beside = [.. (options.ReadFile?.Target as BesideFiles)?.Asked ?? []] };
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            return new(file, null, null, null, e);
        }
    }

    /// <summary>The limits and settings that hold for a source: those of its project file, if it has one.</summary>
    public static CompileOptions OptionsFor(InputFile file, HouseFiles houses, Surroundings around, out FoundHouse? house)
    {
        house = houses.Of(file);
        var photos = new PhotoFiles(file.FullPath is { } full ? Path.GetDirectoryName(full)! : around.Folder);
        return (house is null ? CompileOptions.Default : CompileOptions.Default.Under(house.House)) with { LookAtPhoto = photos.Look, ReadFile = new BesideFiles(file.FullPath is { } path ? Path.GetDirectoryName(path)! : around.Folder).Read };
    }

    /// <summary>A source that could not be read, or is too large to be.</summary>
    public static WorkedFile Refused(InputFile file, ReadResult read, FoundHouse? house, CompileOptions options) => read.Problem is { } problem
        ? new(file, null, null, problem, null) { House = house }
        : new(file, null, RefusedReport(read.Source, [FileRules.TooLarge(read.Source, options.MaxLength)]), null, null) { House = house };

    /// <summary>What was made of a source that could be read, with its editions: those asked for, else those that the header releases.</summary>
    public static WorkedFile WorkedOf(InputFile file, Compilation compilation, FoundHouse? house, CompileOptions options, ImmutableArray<Edition>? editions, Surroundings around)
    {
        if (compilation.Findings.Any(FileRules.IsRefusal))
        {
            return new(file, null, RefusedReport(compilation.Source, compilation.Findings), null, null) { House = house };
        }

        var wanted = editions?.SelectMany(e => e.For(compilation)).Distinct() ?? EditionCompiler.Released(compilation);
        var made = wanted.Select(e => EditionCompiler.Compile(compilation, e, options, around.Stop)).ToImmutableArray();
        return new(file, compilation, ReportOf(compilation, EditionCompiler.WithEditions(compilation, made)) with { Editions = [.. made.Select(e => e.Edition.Name)] }, null, null) { House = house, Editions = made, Options = options };
    }

    /// <summary>Asks for the addresses of the patterns over the network, and checks those that have some once more with the answers.</summary>
    public static WorkedFile[] WithAnswers(WorkedFile[] files, HouseFiles houses, Surroundings around)
    {
        var addresses = files.Select(f => f.Compilation is { } made ? AddressesOf(made) : []).ToArray();
        using var prober = new LinkProber(around.Links);
        var answers = prober.Ask(addresses.SelectMany(a => a), around.Stop);
        if (addresses.SelectMany(a => a).Select(a => a.AbsoluteUri).Distinct(StringComparer.Ordinal).Count() is var all && all > answers.Count)
        {
            around.Say($"{answers.Count} of {all} addresses were asked for: more are not asked for at once");
        }

        return [.. files.Select((file, i) => addresses[i].Length == 0 ? file : file with { Report = ReportAgain(file, OptionsFor(file.File, houses, around, out _) with { Answers = answers }, around) })];
    }

    private static FileReport ReportAgain(WorkedFile file, CompileOptions options, Surroundings around)
    {
        var compilation = Compiler.Compile(file.Compilation!.Source, options, around.Stop);
        return ReportOf(compilation, EditionCompiler.WithEditions(compilation, file.Editions)) with { Editions = [.. file.Editions.Select(e => e.Edition.Name)] };
    }

    private static Uri[] AddressesOf(Compilation made) =>
        [.. WebLinks.Of(made.Pattern.Facts).Concat(WebLinks.InProse(made.Pattern)).Select(l => WebLinks.OfWeb(l.Address)).OfType<Uri>()];

    /// <summary>Says what could not be read or went wrong, and answers with the exit code for it.</summary>
    public static int Complain(IEnumerable<WorkedFile> files, Surroundings around)
    {
        var code = ExitCode.Clean;
        foreach (var file in files)
        {
            if (file.Problem is { } problem)
            {
                around.Say(problem);
                code = Math.Max(code, ExitCode.Usage);
            }
            else if (file.Fault is { } fault)
            {
                Faults.Tell(fault, around, file.File.Path);
                code = ExitCode.Fault;
            }
        }

        return code;
    }

    private static FileReport RefusedReport(SourceText source, ImmutableArray<Finding> findings) => new()
    {
        Path = source.Path,
        Sizes = [],
        Coverage = null,
        Findings = findings,
    };

    private static FileReport ReportOf(Compilation compilation, ImmutableArray<Finding> findings)
    {
        var (source, facts) = (compilation.Source, compilation.Pattern.Facts);
        var coverage = compilation.Coverage;
        return new()
        {
            Path = source.Path,
            Title = facts.Title?.Value,
            Sizes = facts.Sizes.Names,
            Coverage = new(coverage.Instructions, coverage.Checked, coverage.Trusted, coverage.Unread),
            OpenLines = [.. compilation.Lines.Where(l => l.Status != LineStatus.Checked).Select(line => new OpenLine(
                compilation.LineOf(line.Origin),
                line.Label.Length == 0 ? line.Text : $"{line.Label}: {line.Text}",
                line.Status == LineStatus.Trusted))],
            Findings = findings,
        };
    }
}
